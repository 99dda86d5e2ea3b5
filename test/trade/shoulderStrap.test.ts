import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overRound, strapParts, strapRange } from "../../src/trade/shoulderStrap.ts";
import { onCircle, tautRound } from "../support/hull.ts";
import { given } from "../support/quantities.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// A taut string by convex hull, and closed forms; no tangent of the engine's stands behind the figures.

type Values = { apart: number; drop: number; radius: number; thickness: number; neutral: number };

const lengthOf = (v: Values) =>
  overRound({
    label: "strap",
    apart: given("apart", v.apart),
    drop: given("drop", v.drop),
    radius: given("radius", v.radius),
    thickness: given("thickness", v.thickness, "thickness"),
    neutral: given("neutral", v.neutral, "ratio"),
  });

/** Points enough for the string to be right within 0.0001 mm on a shoulder. */
const POINTS = 40_000;
const byHull = (v: Values): number => {
  const round = onCircle([0, 0], v.radius + v.neutral * v.thickness, POINTS);
  return tautRound(round, v.drop - v.radius, v.apart / 2);
};

describe("a strap over a round", () => {
  test.each([
    ["a shoulder bag", { apart: 260, drop: 560, radius: 60, thickness: 3.2, neutral: 0.5 }],
    ["a narrow purse, worn short", { apart: 110, drop: 250, radius: 55, thickness: 2, neutral: 0.45 }],
    ["a wide bag on a short strap", { apart: 600, drop: 260, radius: 90, thickness: 4, neutral: 0.5 }],
    ["a handle in the hand", { apart: 120, drop: 170, radius: 20, thickness: 3, neutral: 0.5 }],
  ])("%s is as long as a taut string", (_, v) => {
    expect(lengthOf(v).value).toBeCloseTo(byHull(v), 3);
  });

  test("whatever the sizes", () => {
    const values = fc.record({
      apart: fc.double({ min: 50, max: 600, noNaN: true }),
      drop: fc.double({ min: 260, max: 900, noNaN: true }),
      radius: fc.double({ min: 20, max: 120, noNaN: true }),
      thickness: fc.double({ min: 1, max: 8, noNaN: true }),
      neutral: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
    });
    fc.assert(
      fc.property(values, (v) => {
        expect(lengthOf(v).value).toBeCloseTo(byHull(v), 3);
      }),
      { numRuns: 12, seed: 560 },
    );
  });

  test("hangs straight down when its ends are as far apart as the round is wide", () => {
    const v = { apart: 2 * 61.5, drop: 560, radius: 60, thickness: 3, neutral: 0.5 };
    expect(lengthOf(v).value).toBeCloseTo(2 * 500 + Math.PI * 61.5, 9);
  });

  test("lies in two straight lines over a round of no size", () => {
    const v = { apart: 600, drop: 400, radius: 0, thickness: 0, neutral: 0.5 };
    expect(lengthOf(v).value).toBeCloseTo(2 * Math.hypot(300, 400), 9);
  });

  test("is no length where the ends lie inside the round", () => {
    expect(lengthOf({ apart: 40, drop: 70, radius: 60, thickness: 3, neutral: 0.5 }).value).toBeNaN();
  });

  test("its history tells what it changes with, and nothing else", () => {
    const values = { apart: 260, drop: 560, radius: 60, thickness: 3.2, neutral: 0.5, width: 25 };
    expect(faultsOfHistory((v) => lengthOf(v as unknown as Values), values)).toEqual([]);
  });
});

describe("two parts", () => {
  test("buckled in the middle hole they are the whole again", () => {
    const whole = given("whole", 1202.7);
    const parts = strapParts("strap", whole, given("buckle part", 360), given("offset", 1.5));
    expect(parts.buckle.value + 1.5 + parts.billet.value).toBeCloseTo(1202.7, 9);
  });

  test("seven holes 28.575 apart give three steps each way", () => {
    const range = strapRange(
      "strap",
      given("whole", 1200),
      given("holes", 7, "count"),
      given("pitch", 28.575),
    );
    expect(range.longest.value - 1200).toBeCloseTo(3 * 28.575, 9);
    expect(1200 - range.shortest.value).toBeCloseTo(3 * 28.575, 9);
  });

  test("one hole gives no range", () => {
    const range = strapRange("strap", given("whole", 1200), given("holes", 1, "count"), given("pitch", 30));
    expect([range.shortest.value, range.longest.value]).toEqual([1200, 1200]);
  });
});
