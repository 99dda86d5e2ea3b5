import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLength } from "../../src/units/index.ts";
import { valueIn } from "./faults.ts";

/** 41 1/2 in: the measure over the poll of the demo order. 41.5 × 25.4 by hand. */
const OVER_POLL = 1054.1;

describe("one length, written in many ways", () => {
  test.each([
    "41 1/2 in",
    "41-1/2 in",
    "41½ in",
    "41 ½ in",
    "41-½ in",
    "41.5 in",
    '41.5"',
    "41½″",
    "41½”",
    "41½''",
    "41½′′",
    "41 1/2in",
    "41 1/2 inch",
    "41 1/2 Inches",
    "41 1/2 in.",
    "41 1⁄2 in",
    "41 1∕2 in",
    "41¹⁄₂ in",
    "41 ¹/₂ in",
    "41⅟2 in",
    "41–1/2 in",
    "41‑1/2 in",
    "41\u00a01/2\u202fin",
    "  41 1/2 in\t",
    "+41 1/2 in",
    "83/2 in",
    "41 16/32 in",
    "041.50 in",
    "3 ft 5 1/2",
    "3 ft 5 1/2 in",
    "3 ft. 5 1/2 in.",
    "3 feet 5½ inches",
    "3ft5½in",
    "3′ 5½″",
    "3' 5 1/2\"",
    "3'5.5\"",
    "3'-5 1/2\"",
    "3’ 5½”",
    "3´ 5½´´",
    "3 ft - 5½ in",
    "1054.1 mm",
    "1054.1mm",
    "105.41 cm",
    "105.41 centimetres",
    "1.0541 m",
    "1.0541 meters",
    "1054.1 MM",
  ])("%s", (text) => {
    expect(readLength(text)).toEqual({ ok: true, value: expect.closeTo(OVER_POLL, 9) });
  });

  test.each(["41 1/2", "41-1/2", "41½", "41.5", "83/2"])("%s, bare, in inches", (text) => {
    expect(readLength(text, "in")).toEqual({ ok: true, value: OVER_POLL });
  });
});

// Unicode Standard, chart Number Forms U+2150 and Latin-1: the value of every fraction character (from memory).
test.each([
  ["¼", 0.25],
  ["½", 0.5],
  ["¾", 0.75],
  ["⅐", 1 / 7],
  ["⅑", 1 / 9],
  ["⅒", 0.1],
  ["⅓", 1 / 3],
  ["⅔", 2 / 3],
  ["⅕", 0.2],
  ["⅖", 0.4],
  ["⅗", 0.6],
  ["⅘", 0.8],
  ["⅙", 1 / 6],
  ["⅚", 5 / 6],
  ["⅛", 0.125],
  ["⅜", 0.375],
  ["⅝", 0.625],
  ["⅞", 0.875],
  ["↉", 0],
  ["⅟10", 0.1],
])("%s of an mm, and after a whole number", (char, value) => {
  expect(valueIn(readLength(`${char} mm`))).toBeCloseTo(value, 12);
  expect(valueIn(readLength(`2${char} mm`))).toBeCloseTo(2 + value, 12);
  expect(valueIn(readLength(`2 ${char} mm`))).toBeCloseTo(2 + value, 12);
});

test("Unicode's own numeric value of each fraction character agrees with its compatibility form", () => {
  for (const char of "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉") {
    const [top, bottom] = char.normalize("NFKC").split("⁄").map(Number);
    expect(valueIn(readLength(`${char} mm`)), char).toBe(top! / bottom!);
  }
});

describe("decided", () => {
  test("a fraction by itself may be 1 or more", () => {
    expect(valueIn(readLength("8/8 in"))).toBe(25.4);
    expect(valueIn(readLength("10/4", "in"))).toBe(63.5);
  });

  test("a negative length is a value, never -0", () => {
    expect(valueIn(readLength("-3 mm"))).toBe(-3);
    expect(valueIn(readLength("−41½ in"))).toBe(-OVER_POLL);
    expect(valueIn(readLength("-3 ft 5 1/2 in"))).toBe(-OVER_POLL);
    expect(Object.is(valueIn(readLength("-0 mm")), 0)).toBe(true);
    expect(Object.is(valueIn(readLength("-0", "in")), 0)).toBe(true);
  });

  test("a bare number has the unit it is given, with a note when a fraction turns out metric", () => {
    expect(readLength("25", "mm")).toEqual({ ok: true, value: 25 });
    expect(readLength("2.5", "cm")).toEqual({ ok: true, value: 25 });
    expect(readLength("5/8", "in")).toEqual({ ok: true, value: 15.875 });
    expect(readLength("5/8", "mm")).toEqual({
      ok: true,
      value: 0.625,
      note: '5/8 read as 0.625 mm; write "5/8 in" if inches are meant',
    });
    expect(readLength("1½", "cm")).toEqual({
      ok: true,
      value: 15,
      note: '1 1/2 read as 15 mm; write "1 1/2 in" if inches are meant',
    });
    expect(readLength("1 1/2 cm", "in")).toEqual({ ok: true, value: 15 });
  });

  test("a bare number after feet is inches, whatever a bare number means elsewhere", () => {
    expect(readLength("3 ft 5 1/2", "mm")).toEqual({ ok: true, value: OVER_POLL });
  });
});

test("decimals may be as many as a reckoner shows", () => {
  expect(valueIn(readLength("41.333333333333333 in"))).toBeCloseTo(valueIn(readLength("41 1/3 in")), 9);
});

test("leading zeros count nothing: YAML's octal is not read", () => {
  expect(valueIn(readLength("010 mm"))).toBe(10);
});

test("every way of writing a measure to 1/64 in gives the same length", () => {
  const measure = fc.record({
    feet: fc.integer({ min: 0, max: 9 }),
    inches: fc.integer({ min: 0, max: 11 }),
    parts: fc.integer({ min: 0, max: 63 }),
  });
  fc.assert(
    fc.property(measure, ({ feet, inches, parts }) => {
      const whole = 12 * feet + inches;
      const ways = [
        `${whole} ${parts}/64 in`,
        `${whole}-${parts}/64"`,
        `${whole + parts / 64} in`,
        `${64 * whole + parts}/64 in`,
        `${feet} ft ${inches} ${parts}/64 in`,
        `${feet}' ${inches + parts / 64}"`,
        `${feet}′-${inches}-${parts}/64″`,
      ];
      // 1 in = 25.4 mm, so 1/64 in = 0.396875 mm: whole micro-units keep the expectation exact.
      const exact = ((64 * whole + parts) * 396875) / 1e6;
      for (const way of ways) expect(valueIn(readLength(way)), way).toBeCloseTo(exact, 9);
    }),
    { seed: 7, numRuns: 300 },
  );
});
