import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { beginOrder } from "../../src/order/begin.ts";
import { jsonSchema, orderSchema } from "../../src/order/schema.ts";
import { sampleArticle } from "../support/sampleArticle.ts";

// Ajv judges by the published schema as an editor does, on what yaml's own reading makes of the text.
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(
  jsonSchema(sampleArticle),
);
const zod = orderSchema(sampleArticle);
const accepts = (value: unknown): boolean => {
  const byAjv = validate(value) as boolean;
  expect(zod.safeParse(value).success).toBe(byAjv);
  return byAjv;
};
const belt = { article: "plain belt", measures: { waist: "34 1/2 in" } };

describe("the schema of an order", () => {
  test("takes a new order as it stands, and with every setting set", () => {
    const text = beginOrder(sampleArticle);
    expect(accepts(parse(text))).toBe(true);
    expect(accepts(parse(text.replace(/^( *)#(?=[^ #\n])/gm, "$1")))).toBe(true);
  });

  test("takes numbers, words and empty sections", () => {
    expect(accepts(belt)).toBe(true);
    expect(accepts({ ...belt, measures: { waist: 34.5 } })).toBe(true);
    expect(accepts({ ...belt, hardware: null, pieces: { strap: null } })).toBe(true);
    expect(
      accepts(
        parse(
          "article: plain belt\nmeasures: { waist: 34 1/2 }\npieces: { strap: { creased: no, holes: 7, stamp: 1904 } }",
        ),
      ),
    ).toBe(true);
    expect(
      accepts(
        parse("article: plain belt\nmeasures: { waist: 34 1/2 }\npieces: { strap: { creased: false } }"),
      ),
    ).toBe(true);
  });

  test.each([
    ["an unknown section", { ...belt, hardwear: {} }],
    ["an unknown name", { ...belt, hardware: { fixng: "stitched" } }],
    ["an unknown name deep down", { ...belt, hardware: { buckle: { barr: "4 mm" } } }],
    ["what the article sets", { ...belt, pieces: { strap: { "inside-width": "1 in" } } }],
    ["a name as code has it", { ...belt, pieces: { strap: { holePitch: "1 in" } } }],
    ["no article", { measures: belt.measures }],
    ["another article", { ...belt, article: "saddle" }],
    ["no measures", { article: "plain belt" }],
    ["empty measures", { article: "plain belt", measures: null }],
    ["no waist", { article: "plain belt", measures: {} }],
    ["another choice", { ...belt, hardware: { fixing: "rivet" } }],
    ["a word for yes or no", { ...belt, pieces: { strap: { creased: "perhaps" } } }],
    ["a value where a section is wanted", { ...belt, hardware: { buckle: "5/8" } }],
    ["a section where a value is wanted", { ...belt, measures: { waist: { in: 34 } } }],
    ["a list", { ...belt, measures: { waist: [34] } }],
    ["an empty value", { ...belt, hardware: { buckle: { bar: null } } }],
    ["too long a text", { ...belt, pieces: { strap: { stamp: "x".repeat(21) } } }],
    ["a word", "plain belt"],
  ])("refuses %s", (_, value) => {
    expect(accepts(value)).toBe(false);
  });

  test("says what each value means", () => {
    const schema = jsonSchema(sampleArticle) as {
      $schema: string;
      properties: Record<
        string,
        { description: string; properties: Record<string, { description: string }> }
      >;
    };
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(schema.properties.measures?.description).toBe("What was measured.");
    expect(schema.properties.measures?.properties.waist?.description).toBe(
      "Round the waist, where the belt lies. 15 3/4 in (400 mm) to 62 31/32 in (1600 mm).",
    );
    const words = JSON.stringify(schema);
    expect(words).toContain("Default from width, holes and hole pitch (3.3 widths (H30)).");
    // A range that follows from other values is not given in figures: those are another order's.
    expect(words).toContain("Width of the strap. A range from inside width.");
  });

  test("is the same each time", () => {
    expect(JSON.stringify(jsonSchema(sampleArticle))).toBe(JSON.stringify(jsonSchema(sampleArticle)));
  });
});
