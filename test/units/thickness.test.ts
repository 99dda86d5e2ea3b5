import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readThickness } from "../../src/units/index.ts";
import { checkFaults, type FaultRow, valueIn } from "./faults.ts";

const HOW = 'write a number and its unit, as in "9 oz", "8-9 oz", "6 iron", "3.5 mm" or "1/8 in"';
const one = (mm: number) => ({ ok: true, value: { middle: mm, thinnest: mm, thickest: mm } });

describe("one thickness", () => {
  // 8 oz = 1/8 in = 6 iron = 3.175 mm: brettunsvillage.com's table and 1 in = 25.4 mm.
  test.each([
    "8 oz",
    "8oz",
    "8 OZ",
    "8 oz.",
    "8 ounces",
    "6 iron",
    "6 irons",
    "3.175 mm",
    "1/8 in",
    '1/8"',
    "⅛ in",
    "0.125 in",
    "8.0 oz",
  ])("%s", (text) => expect(readThickness(text)).toEqual(one(3.175)));
  test("nothing is left of a feathered edge", () => expect(readThickness("0 mm")).toEqual(one(0)));
});

describe("a range is read as its middle, and says so", () => {
  test.each([
    "8-9 oz",
    "8/9 oz",
    "8–9 oz",
    "8—9 oz",
    "8 - 9 oz",
    "8 / 9 oz",
    "8 to 9 oz",
    "8 TO 9 oz",
    "8to9oz",
    "8 oz - 9 oz",
    "8 oz to 9 oz",
    "8⁄9 oz",
    " 8-9  oz",
  ])("%s", (text) => {
    expect(readThickness(text)).toEqual({
      ok: true,
      value: { middle: 3.3734375, thinnest: 3.175, thickest: 3.571875 },
      note: `${text.trim()} read as its middle, 8.5 oz (3.37 mm)`,
    });
  });

  test.each([
    ["6-7 iron", (6.5 * 25.4) / 48, "6.5 iron (3.44 mm)"],
    ["6/7 iron", (6.5 * 25.4) / 48, "6.5 iron (3.44 mm)"],
    ["3-3.5 mm", 3.25, "3.25 mm"],
    ["3/3.5 mm", 3.25, "3.25 mm"],
    ["1.2/1.4 mm", 1.3, "1.3 mm"],
    ["1/8-3/16 in", 3.96875, "0.156 in (3.97 mm)"],
    ["8½-9½ oz", 3.571875, "9 oz (3.57 mm)"],
    ["3 1/2-4 oz", 1.48828125, "3.75 oz (1.49 mm)"],
    ["3-1/2-4 oz", 1.48828125, "3.75 oz (1.49 mm)"],
  ])("%s", (text, middle, said) => {
    const reading = readThickness(text);
    expect(valueIn(reading).middle).toBeCloseTo(middle, 9);
    expect(reading).toHaveProperty("note", `${text} read as its middle, ${said}`);
  });
});

describe("what a slash and a hyphen mean", () => {
  test("a slash with oz or iron is a range, for no leather for straps is a part of an ounce", () => {
    expect(valueIn(readThickness("3/4 oz"))).toEqual({
      middle: 1.3890625,
      thinnest: 1.190625,
      thickest: 1.5875,
    });
    expect(valueIn(readThickness("1/2 oz"))).toMatchObject({ thinnest: 0.396875, thickest: 0.79375 });
  });
  test("with in, after a whole number, or in one character it is a fraction", () => {
    expect(readThickness("3/4 in")).toEqual(one(19.05));
    expect(readThickness("½ oz")).toEqual(one(0.1984375));
    for (const text of ["8 1/2 oz", "8-1/2 oz", "8½ oz", "8.5 oz"])
      expect(readThickness(text), text).toEqual(one(3.3734375));
    expect(readThickness("3 1/2 mm")).toEqual(one(3.5));
  });
});

const TOO_WIDE = "the thick end of a range is at most 2 times the thin end";
const faults: Record<string, readonly FaultRow[]> = {
  "a bare number asks for oz, iron or mm": [
    ["9", 'got "9", a thickness without a unit', 'write "9 oz", "9 iron" or "9 mm", whichever is meant'],
    [
      "3.5",
      'got "3.5", a thickness without a unit',
      'write "3.5 oz", "3.5 iron" or "3.5 mm", whichever is meant',
    ],
    [
      "8-9",
      'got "8-9", a thickness without a unit',
      'write "8-9 oz", "8-9 iron" or "8-9 mm", whichever is meant',
    ],
    [
      "8/9",
      'got "8/9", a thickness without a unit',
      'write "8-9 oz", "8-9 iron", "8-9 mm" or "8/9 in", whichever is meant',
    ],
    ["1/8", 'got "1/8", a thickness without a unit', 'write "1/8 in" if inches are meant'],
    ["⅛", 'got "⅛", a thickness without a unit', 'write "1/8 in" if inches are meant'],
    ["1 1/3", 'got "1 1/3", a thickness without a unit', 'write "1 1/3 in" if inches are meant'],
    ["9-8", 'got "9-8", a thickness without a unit', HOW],
    [
      "1/0",
      'got "1/0": nothing can be divided by 0',
      'put a number other than 0 under the fraction, as in "1/2"',
    ],
    [
      "1 1/8",
      'got "1 1/8", a thickness without a unit',
      'write "1 1/8 oz", "1 1/8 iron", "1 1/8 mm" or "1 1/8 in", whichever is meant',
    ],
  ],
  "a slash that could be either": [
    [
      "3/4 mm",
      'got "3/4 mm", which could be a range or a fraction',
      'write "3-4 mm" or "0.75 mm", whichever is meant',
    ],
    ["3/0 mm", 'got "3/0 mm", which could be a range or a fraction', HOW],
    ["1/4 mm", 'got "1/4 mm", which could be a range or a fraction', 'write "0.25 mm"'],
    ["8-9/10 oz", 'got "8-9/10 oz", with a fraction that is not in halves, quarters or eighths', HOW],
    ["8 1/3 oz", 'got "8 1/3 oz", with a fraction that is not in halves, quarters or eighths', HOW],
  ],
  "a range that is none": [
    ["9-8 oz", 'got "9-8 oz", a range from thick to thin', 'write "8-9 oz"'],
    ["9/8 oz", 'got "9/8 oz", a range from thick to thin', 'write "8-9 oz"'],
    ["3.5 to 3 mm", 'got "3.5 to 3 mm", a range from thick to thin', 'write "3-3.5 mm"'],
    ["8-8 oz", 'got "8-8 oz", a range with two ends alike', 'write "8 oz"'],
    ["8-90 oz", `got "8-90 oz": ${TOO_WIDE}`, 'measure the leather and write that, as in "8 oz"'],
    [
      "1/8 oz",
      `got "1/8 oz": ${TOO_WIDE}`,
      'measure the leather and write that, as in "8 oz", or "1/8 in" if inches are meant',
    ],
    ["8/0 oz", `got "8/0 oz": ${TOO_WIDE}`, 'measure the leather and write that, as in "8 oz"'],
    ["8 oz-3.5 mm", 'got "8 oz-3.5 mm": both ends of a range must have the same unit', HOW],
    ["8-9-10 oz", 'got "8-9-10 oz", which cannot be read as a thickness', HOW],
  ],
  "other units and other traps": [
    ["0.35 cm", 'got "0.35 cm": a thickness is written in oz, iron, mm or in, not in cm', HOW],
    ["9'", 'got "9\'": a thickness is written in oz, iron, mm or in, not in ft', HOW],
    ["9 stone", 'got "9 stone": the unit "stone" is not known here', HOW],
    ["-3 mm", 'got "-3 mm": a thickness cannot be less than 0', HOW],
    ["3,5 mm", 'got "3,5 mm": a comma is not read in a number', 'write "3.5 mm"'],
    ["3,0-3,5 mm", 'got "3,0-3,5 mm": a comma is not read in a number', 'write "3.0-3.5 mm"'],
    [
      "9 1/0 oz",
      'got "9 1/0 oz": nothing can be divided by 0',
      'put a number other than 0 under the fraction, as in "1/2"',
    ],
    [
      "8 9/8 oz",
      'got "8 9/8 oz": after a whole number the fraction must be less than 1',
      'write "9 1/8 oz" if that is meant',
    ],
    ["0x10 mm", 'got "0x10 mm": a number is written in plain digits here', 'write "16 mm"'],
    ["1e1 oz", 'got "1e1 oz": a number is written in plain digits here', 'write "10 oz"'],
    [".inf", 'got ".inf", which is not a thickness', HOW],
    ["", 'got "": a thickness is missing', HOW],
    ["about 9 oz", 'got "about 9 oz", which cannot be read as a thickness', HOW],
  ],
};
for (const [name, rows] of Object.entries(faults)) test(name, () => checkFaults(rows, readThickness));

test("the middle of any range lies between its ends, halfway", () => {
  const range = fc.tuple(
    fc.integer({ min: 2, max: 40 }),
    fc.integer({ min: 1, max: 40 }),
    fc.constantFrom("oz", "iron", "mm", "in"),
    fc.constantFrom("-", " to ", "–"),
  );
  fc.assert(
    fc.property(range, ([low, more, unit, between]) => {
      fc.pre(more <= low);
      const { middle, thinnest, thickest } = valueIn(
        readThickness(`${low / 4}${between}${(low + more) / 4} ${unit}`),
      );
      expect(thinnest).toBeLessThan(middle);
      expect(thickest - middle).toBeCloseTo(middle - thinnest, 9);
    }),
    { seed: 7, numRuns: 200 },
  );
});
