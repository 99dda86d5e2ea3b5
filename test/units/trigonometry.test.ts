import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { acos, asin, atan2, cos, sin, tan } from "../../src/units/trigonometry.ts";

const SEED = { seed: 6, numRuns: 5000 };

/** Two units in the last place of a number. */
const twoUnits = (x: number): number =>
  Math.max(Math.abs(x), Number.MIN_VALUE / Number.EPSILON) * 2 * Number.EPSILON;

const near = (got: number, want: number): void => {
  if (Math.abs(got - want) > twoUnits(want)) throw new Error(`got ${got}; want ${want}`);
};

describe("against the platform's own, which is right to a unit in the last place", () => {
  const angle = fc.double({ min: -700, max: 700, noNaN: true });
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  const length = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  test("sine, cosine, tangent", () => {
    fc.assert(
      fc.property(angle, (a) => {
        near(sin(a), Math.sin(a));
        near(cos(a), Math.cos(a));
        if (Math.abs(tan(a) - Math.tan(a)) > 2 * twoUnits(tan(a))) throw new Error(`tan ${a}`);
      }),
      SEED,
    );
  });
  test("the angle of a direction, and of a sine or a cosine", () => {
    fc.assert(
      fc.property(length, length, part, (y, x, s) => {
        near(atan2(y, x), Math.atan2(y, x));
        // Near ±1 a cosine tells its angle badly, whoever reads it.
        near(asin(s), Math.asin(s));
        if (Math.abs(acos(s) - Math.acos(s)) > 2 * twoUnits(Math.acos(s))) throw new Error(`acos ${s}`);
      }),
      SEED,
    );
  });
  test("what has an exact answer has it, with its sign", () => {
    for (const [y, x] of [
      [0, 1],
      [-0, 1],
      [0, -1],
      [-0, -1],
      [1, 0],
      [-1, 0],
      [0, 0],
      [1, 1],
      [1, -1],
      [-1, -1],
    ] as const)
      expect(Object.is(atan2(y, x), Math.atan2(y, x)), `${y}, ${x}`).toBe(true);
    expect([sin(0), cos(0), tan(0), acos(1), asin(1), acos(-1), asin(0)]).toEqual([
      0,
      1,
      0,
      0,
      Math.PI / 2,
      Math.PI,
      0,
    ]);
    expect(Object.is(sin(-0), -0)).toBe(true);
    // IEEE 754: half a turn as a number is not half a turn; what it lacks is the sine.
    expect([sin(Math.PI), cos(Math.PI / 2)]).toEqual([1.2246467991473532e-16, 6.123233995736766e-17]);
    for (const f of [sin, cos, tan, acos, asin]) expect(f(Number.NaN)).toBeNaN();
    expect([sin(Infinity), acos(1.1), asin(-1.1)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });
});
