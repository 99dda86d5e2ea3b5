import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { num } from "../../src/output/number.ts";

describe("numbers in files", () => {
  test.each([
    [0, "0"],
    [-0, "0"],
    [-0.0004, "0"],
    [0.0005, "0.001"],
    [1.5875, "1.588"],
    [-1.5875, "-1.587"],
    [100, "100"],
    [10.1, "10.1"],
    [1e-9, "0"],
    [123456789.125, "123456789.125"],
    [0.1 + 0.2, "0.3"],
  ])("%d is written %s", (n, written) => {
    expect(num(n)).toBe(written);
  });

  test("never an exponent, never more than 3 decimals, and read back within half a thousandth", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (n) => {
        expect(num(n)).toMatch(/^(0|-?(0\.\d{0,2}[1-9]|[1-9]\d*(\.\d{0,2}[1-9])?))$/);
        expect(Math.abs(Number(num(n)) - n)).toBeLessThanOrEqual(0.00050001);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, -1e300])("%d is refused", (n) => {
    expect(() => num(n)).toThrow(/cannot write/);
  });
});
