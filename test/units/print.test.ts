import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type LengthUnit,
  printAngle,
  printLength,
  printLengthShort,
  printNumber,
  printThickness,
  readAngle,
  readLength,
  readThickness,
} from "../../src/units/index.ts";
import { valueIn } from "./faults.ts";

describe("lengths", () => {
  test.each([
    [1054.1, "41 1/2 in (1054.1 mm)"],
    [15.875, "5/8 in (15.9 mm)"],
    [25.4, "1 in (25.4 mm)"],
    [304.8, "12 in (304.8 mm)"],
    [304.79, "12 in (304.8 mm)"], // 11 31.99/32: the whole inch is carried
    [0.79375, "1/32 in (0.79 mm)"],
    [26.19375, "1 1/32 in (26.2 mm)"],
    [3.96875, "5/32 in (4 mm)"],
    [-1054.1, "-41 1/2 in (-1054.1 mm)"],
    [-15.875, "-5/8 in (-15.9 mm)"],
    [0, "0 in (0 mm)"],
    [0.3, "0.012 in (0.3 mm)"],
    [0.396, "0.016 in (0.4 mm)"],
    [0.4, "1/64 in (0.4 mm)"],
    [5.2, "13/64 in (5.2 mm)"], // 7/32 in would be 7 % off
    [2.2, "0.087 in (2.2 mm)"], // 5/64 in and 3/32 in are both more than 3 % off
    [-0.3, "-0.012 in (-0.3 mm)"],
    [0.001, "0 in (0 mm)"],
    [-0.001, "0 in (0 mm)"],
  ])("%f mm in inches", (mm, text) => expect(printLength(mm, "in")).toBe(text));

  test.each<[number, LengthUnit, string]>([
    [1054.1, "mm", "1054.1 mm"],
    [1054.1, "cm", "105.41 cm"],
    [1054.1, "in", "41 1/2 in"],
    [1054, "mm", "1054 mm"],
    [1000, "cm", "100 cm"],
    [0.06, "mm", "0.06 mm"],
    [0.06, "cm", "0.006 cm"],
    [-3, "mm", "-3 mm"],
    [-0.001, "mm", "0 mm"],
    [12.34, "mm", "12.3 mm"],
  ])("%f mm in %s", (mm, unit, text) => {
    expect(printLengthShort(mm, unit)).toBe(text);
    if (unit !== "in") expect(printLength(mm, unit)).toBe(text);
  });

  const anyMm = fc.double({ min: -5000, max: 5000, noNaN: true });
  // Half of the 1/32 in, or half of the 0.1 mm, that is printed; the last bits of the sum are let off.
  const furthest = { in: 25.4 / 64 + 1e-6, mm: 0.05 + 1e-6, cm: 0.05 + 1e-6 } as const;
  test.each<LengthUnit>(["in", "mm", "cm"])("printed in %s, read again, is the same length", (unit) => {
    const check = (mm: number): void => {
      expect(Math.abs(valueIn(readLength(printLengthShort(mm, unit))) - mm)).toBeLessThanOrEqual(
        furthest[unit],
      );
    };
    fc.assert(fc.property(anyMm, check), { seed: 7, numRuns: 500 });
    fc.assert(fc.property(fc.double({ min: -2, max: 2, noNaN: true }), check), { seed: 7, numRuns: 300 });
  });

  test("a mark on the rule prints as itself: in lowest terms, no 0/32, no 32/32", () => {
    for (let parts = 1; parts <= 12 * 32; parts++) {
      const text = printLengthShort((parts * 25.4) / 32, "in");
      expect(text).toMatch(
        /^(?:\d+|(?:\d+ )?(?:1\/2|[13]\/4|[1357]\/8|(?:[13579]|1[135])\/16|(?:[13579]|[12][13579]|31)\/32)) in$/,
      );
      expect(valueIn(readLength(text))).toBeCloseTo((parts * 25.4) / 32, 9);
    }
  });
});

test.each([
  [3.571875, "oz", "9 oz (3.57 mm)"],
  [3.5, "oz", "8.8 oz (3.5 mm)"],
  [3.175, "iron", "6 iron (3.18 mm)"],
  [3.5, "mm", "3.5 mm"],
  [0, "oz", "0 oz (0 mm)"],
] as const)("thickness %f mm in %s", (mm, unit, text) => expect(printThickness(mm, unit)).toBe(text));

test("a thickness printed and read again differs by half a tenth at most", () => {
  const mm = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(mm, fc.constantFrom("oz", "iron", "mm"), (thick, unit) => {
      const text = printThickness(thick, unit).replace(/ \(.*/, "");
      expect(Math.abs(valueIn(readThickness(text)).middle - thick)).toBeLessThanOrEqual(
        0.05 * (unit === "mm" ? 1 : 0.53) + 1e-6,
      );
    }),
    { seed: 7, numRuns: 300 },
  );
});

test.each([
  [Math.PI / 3, "60°"],
  [(4 * Math.PI) / 3, "240°"],
  [-Math.PI / 2, "-90°"],
  [0, "0°"],
  [-1e-9, "0°"],
  [valueIn(readAngle("9.6979")), "9.7°"],
])("angle %f", (rad, text) => expect(printAngle(rad)).toBe(text));

describe("numbers", () => {
  test.each([
    [1.5, 2, "1.5"],
    [100, 0, "100"],
    [100, 2, "100"],
    [1200.5, 0, "1201"],
    [0.1 + 0.2, 6, "0.3"],
    [-0.0004, 3, "0"],
    [-0, 2, "0"],
    [1e-7, 6, "0"],
    [1e21, 2, "1000000000000000000000"],
    [123456789.125, 2, "123456789.13"],
    [1.005, 2, "1.01"],
    [35.3321, 3, "35.332"],
  ])("%f to %i decimals", (n, decimals, text) => expect(printNumber(n, decimals)).toBe(text));

  test("no exponent, no -0, no trailing zeros, and the value it stands for", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.integer({ min: 0, max: 9 }),
        (n, decimals) => {
          const text = printNumber(n, decimals);
          expect(text).toMatch(/^(?:0|-?(?:[1-9]\d*|0(?=\.))(?:\.\d*[1-9])?)$/);
          expect(text).not.toBe("-0");
          const half = 0.5 / 10 ** decimals;
          expect(Math.abs(Number(text) - n)).toBeLessThanOrEqual(
            Math.max(half * 1.00001, Math.abs(n) * 2 ** -50),
          );
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });

  test("a number that is none is our own fault", () => {
    for (const n of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => printNumber(n, 2)).toThrow("must be finite");
    expect(() => printLength(Number.NaN, "in")).toThrow("must be finite");
    expect(() => printNumber(1, 2.5)).toThrow("whole number from 0 to 9, not 2.5");
  });
});
