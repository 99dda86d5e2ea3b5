import fc from "fast-check";
import { expect, test } from "vitest";
import { roundMm, roundTo } from "../../src/units/index.ts";

test("every odd sixteenth of an inch, a tie of 0.001 mm, goes up", () => {
  // 1/16 in = 1.5875 mm exactly, so an odd number of sixteenths ends in …75 or …25 ten-thousandths: in
  // whole ten-thousandths the tie and its answer are exact.
  for (let sixteenths = 1; sixteenths < 16 * 60; sixteenths += 2) {
    const tenThousandths = sixteenths * 15875;
    expect(tenThousandths % 10).toBe(5);
    expect(roundMm((sixteenths * 25.4) / 16)).toBe((tenThousandths + 5) / 10000);
    expect(roundMm(sixteenths * 1.5875)).toBe((tenThousandths + 5) / 10000);
  }
});

test("the last bits of a sum do not move a tie", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -2_000_000, max: 2_000_000 }),
      fc.integer({ min: -4, max: 4 }),
      (thousandths, bits) => {
        const tie = thousandths / 1000 + 0.0005;
        const shaken = tie * (1 + bits * Number.EPSILON);
        expect(roundMm(shaken)).toBe((thousandths + 1) / 1000);
      },
    ),
    { seed: 7, numRuns: 500 },
  );
});

test("never -0", () => {
  for (const x of [-0, -1e-9, -0.0004]) expect(Object.is(roundMm(x), 0), `${x}`).toBe(true);
});

test("rounds to the nearest, and what is rounded stays", () => {
  fc.assert(
    fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (x) => {
      expect(Math.abs(roundMm(x) - x)).toBeLessThanOrEqual(0.0005 + 2e-9);
      expect(roundMm(roundMm(x))).toBe(roundMm(x));
    }),
    { seed: 7, numRuns: 500 },
  );
});

test("a number too large for decimals is given back", () => {
  expect(roundTo(2 ** 53, 3)).toBe(2 ** 53);
  expect(roundTo(1e300, 9)).toBe(1e300);
  expect(roundTo(-Number.MAX_VALUE, 9)).toBe(-Number.MAX_VALUE);
});

test("a length that is none is our own fault", () => {
  expect(() => roundMm(Number.NaN)).toThrow("it must be finite");
  expect(() => roundTo(1, 10)).toThrow("from 0 to 9, not 10");
});
