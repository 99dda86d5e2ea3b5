import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type Reading,
  readAngle,
  readCount,
  readHands,
  readLength,
  readRatio,
  readStitchPitch,
  readThickness,
} from "../../src/units/index.ts";

const readers: Record<string, (text: string) => Reading<unknown>> = {
  readLength: (text) => readLength(text),
  readBareLength: (text) => readLength(text, "in"),
  readThickness,
  readHands,
  readStitchPitch,
  readCount,
  readRatio,
  readAngle,
};

const numbersIn = (value: unknown): number[] =>
  typeof value === "number" ? [value] : Object.values(value as Record<string, number>);

function soundReading(reading: Reading<unknown>): void {
  if (reading.ok) {
    for (const n of numbersIn(reading.value)) {
      expect(Number.isFinite(n)).toBe(true);
      expect(Object.is(n, -0)).toBe(false);
    }
    return;
  }
  expect(reading.problem).toMatch(/^got "/);
  expect(reading.mend).toMatch(/^(?:write|put|measure) /);
  expect(reading.problem.length + reading.mend.length).toBeLessThan(600);
  expect(reading.problem + reading.mend).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
  expect(reading.problem + reading.mend).not.toMatch(/NaN|Infinity(?!")|undefined(?!")|\de[+-]\d/);
}

/** What measures are made of, put together in any order. */
const scraps = [
  "0",
  "1",
  "7",
  "8",
  "9",
  "41",
  "054",
  "1/2",
  "1/0",
  "8/8",
  "½",
  "⅛",
  "⅟",
  "¹⁄₂",
  ".",
  ",",
  " ",
  " ",
  "-",
  "–",
  "−",
  "+",
  "/",
  "⁄",
  "'",
  '"',
  "′",
  "″",
  "”",
  "in",
  "ft",
  "mm",
  "cm",
  "m",
  "oz",
  "iron",
  "hands",
  "hh",
  "per",
  " per inch",
  "spi",
  "%",
  "°",
  "deg",
  " to ",
  "e3",
  "0x",
  ".inf",
  "\u00a0",
  "\u200b",
  "\u0000",
  "__proto__",
];
const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 70 }),
  fc.string({ maxLength: 20 }),
  fc.array(fc.constantFrom(...scraps), { maxLength: 9 }).map((parts) => parts.join("")),
);

test.each(Object.entries(readers))("%s never throws and answers soundly, the same each time", (_, reader) => {
  fc.assert(
    fc.property(anyText, (text) => {
      soundReading(reader(text));
      expect(reader(text)).toEqual(reader(text));
    }),
    { seed: 7, numRuns: 3000 },
  );
});

test("lone surrogates, a whole book and names that objects have by birth", () => {
  for (const reader of Object.values(readers)) {
    for (const text of [
      "\ud83d",
      "1 \udc00",
      "1".repeat(1e6),
      " ".repeat(1e6),
      "1 ".repeat(5e5),
      "toString",
      "1 toString",
      "8 hasOwnProperty",
    ]) {
      soundReading(reader(text));
    }
  }
});
