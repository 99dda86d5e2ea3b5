import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import type { Section } from "../../src/articles/definition.ts";
import { articles } from "../../src/articles/index.ts";
import {
  type DimensionTable,
  isMeasured,
  type MeasuredDimension,
  orderKey,
} from "../../src/model/dimension.ts";
import { allowedWords } from "../../src/order/about.ts";
import { beginOrder } from "../../src/order/begin.ts";
import { readOrder } from "../../src/order/read.ts";
import { sampleOrder, sampleText } from "../../src/order/sample.ts";
import { sayFault } from "../../src/order/say.ts";
import { jsonSchema } from "../../src/order/schema.ts";
import { topTable } from "../../src/order/top.ts";

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

describe.each(articles.map((a) => [a.name, a] as const))("the ranges shown for a %s", (_, article) => {
  const order = sampleOrder(article);
  const shown = [...article.sections, { path: "", table: topTable([article.name]) }].flatMap((s) =>
    Object.entries(s.table as DimensionTable).flatMap(([name, d]) => {
      if (d.handed || !isMeasured(d)) return [];
      const values = s.path === "" ? undefined : order.values.of(s as Section);
      const words = allowedWords(d, { table: s.table, values }).replace(/, from .*|; the .*/, "");
      const texts = words
        .replace(/^at (least|most) /, "")
        .split(" to ")
        .flatMap((end) => end.split(/ \(|\)/))
        .filter(Boolean);
      return texts.map((text) => [s.path === "" ? orderKey(name) : `${s.path}.${orderKey(name)}`, text, d]);
    }),
  ) as (readonly [string, string, MeasuredDimension])[];

  test("are many, in inches and in mm", () => {
    expect(shown.length).toBeGreaterThan(40);
    expect(shown.filter(([, text]) => / in$/.test(text)).length).toBeGreaterThan(10);
  });

  // The values that follow from it may be at odds with it, never its own range.
  test("are taken as they are shown", () => {
    for (const [path, text, d] of shown) {
      const sample = { ...article.sample, [path]: text };
      const { faults } = readOrder(sampleText({ ...article, sample }), "x.yaml", [article]);
      const own = faults.filter((f) => f.key === path && !(d.odd && f.allowed?.startsWith("an odd")));
      expect(
        own.map((f) => sayFault(f, "x.yaml")),
        `${path}: ${text}`,
      ).toEqual([]);
    }
  });
});
