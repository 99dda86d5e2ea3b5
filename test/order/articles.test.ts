import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { articles } from "../../src/articles/index.ts";
import { beginOrder } from "../../src/order/begin.ts";
import { readOrder } from "../../src/order/read.ts";
import { sayFault } from "../../src/order/say.ts";
import { jsonSchema } from "../../src/order/schema.ts";

// What is tested in detail on a made-up article holds for those that can be ordered.

const said = (text: string) =>
  readOrder(text, "new.yaml", articles).faults.map((f) => sayFault(f, "new.yaml"));
const dimensionsOf = (text: string) =>
  new Map(
    readOrder(text, "new.yaml", articles).order?.sections.flatMap((s) =>
      s.dimensions.map((d) => [d.key, d] as const),
    ),
  );
const isSetting = (line: string) => /^ *#[^ #]/.test(line);

describe.each(articles.map((a) => [a.name, a] as const))("a new order for a %s", (_, article) => {
  const text = beginOrder(article);
  const lines = text.split("\n");

  test("reads back without a fault, in lines of 100 columns", () => {
    expect(said(text)).toEqual([]);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(100);
  });

  test("stays the same whichever setting is set to its default", () => {
    const begun = dimensionsOf(text);
    for (const [at, line] of lines.entries()) {
      if (!isSetting(line)) continue;
      const set = lines.map((l, i) => (i === at ? l.replace("#", "") : l)).join("\n");
      expect(said(set)).toEqual([]);
      for (const [key, d] of dimensionsOf(set)) {
        const was = begun.get(key)?.value;
        // Settings that may be left out have no default: what they change is theirs. Angles are rad.
        if (was === undefined || d.origin !== "given" || typeof d.value !== "number") continue;
        expect(Math.abs(d.value - (was as number))).toBeLessThanOrEqual(0.01);
      }
    }
  });

  test("is taken by the published schema", () => {
    const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(
      jsonSchema(article),
    );
    const set = lines.map((l) => (isSetting(l) ? l.replace("#", "") : l)).join("\n");
    for (const order of [text, set]) expect([validate(parse(order)), validate.errors]).toEqual([true, null]);
    expect(validate({ ...parse(text), saddle: "yes" })).toBe(false);
  });
});
