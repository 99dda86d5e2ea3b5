import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  conditionsOf,
  isSaid,
  namesIn,
  type Sentence,
  sentenceParts,
  tellTogether,
} from "../../src/model/sentence.ts";

describe("sentenceParts", () => {
  test.each([
    ["A strap {measures.width} wide.", ["A strap ", { name: "measures.width" }, " wide."]],
    ["{for}", [{ name: "for" }]],
    ["{a.b}{c-d}.", [{ name: "a.b" }, { name: "c-d" }, "."]],
    ["Plain.", ["Plain."]],
    ["", []],
  ])("%s", (text, parts) => {
    expect(sentenceParts(text)).toEqual(parts);
  });

  test.each(["an { open brace", "empty {} braces", "{Not a name}", "{a b}", "a.b}"])(
    "a brace that opens no name stays in the words: %s",
    (text) => {
      expect(sentenceParts(text)).toEqual([text]);
    },
  );

  test("its parts, put together again, are the text", () => {
    const word = fc.stringMatching(/^[ a-z.{}]{0,12}$/);
    const name = fc.stringMatching(/^\{[a-z][a-z0-9.-]{0,9}\}$/);
    const property = fc.property(fc.array(fc.oneof(word, name)), (words) => {
      const text = words.join("");
      const parts = sentenceParts(text);
      expect(parts.map((p) => (typeof p === "string" ? p : `{${p.name}}`)).join("")).toBe(text);
      expect(parts).not.toContain("");
    });
    fc.assert(property, { seed: 20261125, numRuns: 300 });
  });
});

describe("isSaid", () => {
  const left = { name: "left", is: ["buckle", "ring"] };
  const right = { name: "right", is: ["buckle"] };
  const keeper = { name: "keeper", is: ["yes"] };
  const said = (s: Omit<Sentence, "text">, values: Readonly<Record<string, string>>): boolean =>
    isSaid({ text: "{x}", ...s }, (name) => values[name]);

  test("without a condition always", () => {
    expect(said({}, {})).toBe(true);
  });

  test("while the name has one of the values", () => {
    expect(said({ when: left }, { left: "ring" })).toBe(true);
    expect(said({ when: left }, { left: "plain" })).toBe(false);
    expect(said({ when: left }, {})).toBe(false);
  });

  test("of two alternatives either is enough", () => {
    expect(said({ when: left, or: right }, { left: "plain", right: "buckle" })).toBe(true);
    expect(said({ when: left, or: right }, { left: "buckle", right: "plain" })).toBe(true);
    expect(said({ when: left, or: right }, { left: "plain", right: "plain" })).toBe(false);
  });

  test("a further condition must hold whichever alternative does", () => {
    const s = { when: left, or: right, and: keeper };
    expect(said(s, { left: "buckle", right: "plain", keeper: "yes" })).toBe(true);
    expect(said(s, { left: "plain", right: "buckle", keeper: "no" })).toBe(false);
    expect(said(s, { left: "plain", right: "plain", keeper: "yes" })).toBe(false);
    expect(said({ and: keeper }, { keeper: "no" })).toBe(false);
  });

  test("names and conditions are listed as they stand", () => {
    const s = { text: "{b} and {a}", when: left, and: keeper };
    expect(namesIn(s)).toEqual(["b", "a"]);
    expect(conditionsOf(s)).toEqual([left, keeper]);
    expect(conditionsOf({ text: "" })).toEqual([]);
  });
});

test("what is told together keeps its order", () => {
  const [a, b] = [{ text: "A." }, { text: "B." }];
  const told = tellTogether({ sentences: [a], rest: ["x"] }, { sentences: [b], rest: ["y"] });
  expect(told).toEqual({ sentences: [a, b], rest: ["x", "y"] });
});
