import { expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { isSaid, namesIn, type Sentence, sentenceParts } from "../../src/model/sentence.ts";
import { isRead, keysOf, partsOf } from "../../src/web/order/parts.ts";

// The page takes a sentence apart by the engine's own rules, without loading the engine.

const told: readonly Sentence[] = articles.flatMap((a) => a.told.sentences);

test("the page parts every sentence as the engine does", () => {
  expect(told.length).toBeGreaterThan(20);
  for (const sentence of told) {
    const parts = partsOf(sentence.text).map((p) => ("key" in p ? { name: p.key } : p.words));
    expect(parts).toEqual(sentenceParts(sentence.text));
    expect(keysOf(sentence)).toEqual(namesIn(sentence));
  }
});

test.each([
  ["{a.b-c}{d2} end", [{ key: "a.b-c" }, { key: "d2" }, { words: " end" }]],
  ["no value, {not one} and {A}", [{ words: "no value, {not one} and {A}" }]],
  ["", []],
] as const)("%j", (text, parts) => {
  expect(partsOf(text)).toEqual(parts);
  expect(sentenceParts(text)).toEqual(parts.map((p) => ("key" in p ? { name: p.key } : p.words)));
});

test("the page reads aloud the very sentences that the engine would, whatever the choices are", () => {
  const conditions = told.flatMap((s) => [s.when, s.or, s.and]).filter((c) => c !== undefined);
  expect(conditions.length).toBeGreaterThan(5);
  // Every condition's own value in turn, the other names without one.
  for (const { name, is } of conditions)
    for (const value of [...is, "another"]) {
      const textOf = (key: string) => (key === name ? value : undefined);
      expect(told.map((s) => isRead(s, textOf))).toEqual(told.map((s) => isSaid(s, textOf)));
    }
});
