import fc from "fast-check";
import { describe, expect, test } from "vitest";
import bends from "../../fixtures/published/bend-allowance.json";
import worked from "../../fixtures/published/worked-cases.json";
import {
  defaultWrapThickness,
  developFlatBar,
  developRoundBar,
  EASY_STRAIN,
  foldOfStrain,
  grainStrain,
  LARGEST_STRAIN,
  type Legs,
  legGap,
  liftOffForSlope,
  neutralRadius,
  thickestFold,
} from "../../src/trade/turnBack.ts";
import { onCircle, onRoundedBar, tautRound } from "../support/hull.ts";
import { degrees, given, radians } from "../support/quantities.ts";

// Expected values: fixtures/published/worked-cases.json (independent simulation: taut string by convex
// hull, folds by stepping) and bend-allowance.json (machinecalcs.com, READ).

const { cases } = worked;

const legs = (front: number, back = front, wrap = front, caught = 0, neutral = 0.5): Legs => ({
  label: "end",
  neutral: given("neutral", neutral, "ratio"),
  front: given("front", front, "thickness"),
  back: given("back", back, "thickness"),
  wrap: given("wrap", wrap, "thickness"),
  caught: given("caught", caught, "thickness"),
});

describe("worked cases", () => {
  test("round bar", () => {
    const c = cases.roundBar;
    const d = developRoundBar(legs(c.thickness), given("bar", c.bar), given("clamp", c.clamp));
    expect(d.holeToMate.value).toBeCloseTo(c.holeToMate, 4);
    expect(degrees(d.slope.value)).toBeCloseTo(c.slopeDegrees, 4);
  });

  test("a caught layer that begins before the clamp", () => {
    const c = cases.caughtLayer;
    const l = legs(c.thickness, c.thickness, c.thickness, c.caught);
    const d = developRoundBar(
      l,
      given("bar", c.bar),
      given("clamp", c.clamp),
      given("lift-off", c.clamp - c.nearer),
    );
    expect(d.holeToMate.value).toBeCloseTo(c.holeToMate, 4);
  });

  test("flat bar", () => {
    const c = cases.flatBar;
    const bar = {
      along: given("along", c.along),
      through: given("through", c.through),
      corner: given("corner", c.corner),
    };
    const d = developFlatBar(legs(c.thickness), bar, given("clamp", c.clamp));
    expect(d.holeToMate.value).toBeCloseTo(c.holeToMate, 4);
  });

  test("skived back leg", () => {
    const c = cases.skivedBack;
    const d = developRoundBar(legs(c.front, c.back, c.wrap), given("bar", c.bar), given("clamp", c.clamp));
    expect(d.holeToMate.value).toBeCloseTo(c.holeToMate, 4);
  });

  test("bit end: first and second pair", () => {
    const c = cases.bitEnd;
    const l = legs(c.front, c.back, c.wrap);
    const at = (clamp: number) =>
      developRoundBar(l, given("bar", c.bar), given("clamp", clamp), given("lift-off", c.clamp));
    expect(at(c.clamp).holeToMate.value).toBeCloseTo(c.first, 4);
    expect(at(c.clamp + c.spacing).holeToMate.value).toBeCloseTo(c.second, 4);
    expect(degrees(at(c.clamp).slope.value)).toBeCloseTo(c.slopeDegrees, 1);
  });
});

describe("bend allowance of sheet, the part that lies on the bar", () => {
  test("a bend of 90°: the published 5.75 mm", () => {
    const b = bends.figures.B2;
    // Legs that stand at a right angle to each other leave a quarter turn on the bar: the lift-off lies
    // on the tangent at 135°, 20 mm along it.
    const r = b.insideRadius + b.neutral * b.thickness;
    const along = 20;
    const x = (along - r) / Math.SQRT2;
    const h = (along + r) / Math.SQRT2;
    const caught = 2 * h - 2 * b.neutral * b.thickness;
    const l = legs(b.thickness, b.thickness, b.thickness, caught, b.neutral);
    const d = developRoundBar(l, given("bar", 2 * b.insideRadius), given("clamp", x));
    expect(degrees(d.wrapAngle.value)).toBeCloseTo(b.angleDegrees, 9);
    expect(d.holeToMate.value - 2 * along).toBeCloseTo(b.allowance, 2);
    expect(d.holeToMate.value - 2 * along).toBeCloseTo(b.exact, 4);
  });

  test("a tight fold of 180° with no bar: half a circle at half the thickness", () => {
    const b = bends.figures.B6;
    const l = legs(b.thickness, b.thickness, b.thickness, 0, b.neutral);
    const d = developRoundBar(l, given("bar", 0), given("clamp", 15));
    expect(degrees(d.wrapAngle.value)).toBeCloseTo(b.angleDegrees, 9);
    expect(d.holeToMate.value - 2 * 15).toBeCloseTo(b.allowance, 3);
  });
});

/** A circle of so many points is shorter than the round by less than 1e-5 mm on the bars below. */
const POINTS = 4000;
const HULL_SLACK_MM = 5e-5;

const thickness = fc.double({ min: 1, max: 6, noNaN: true });
const neutral = fc.double({ min: 0.3, max: 0.7, noNaN: true });

describe("against a taut string, by convex hull of points", () => {
  test("any round bar", () => {
    const input = fc.record({
      bar: fc.double({ min: 2, max: 14, noNaN: true }),
      front: thickness,
      back: thickness,
      wrap: thickness,
      caught: fc.double({ min: 0, max: 3, noNaN: true }),
      neutral,
      beyond: fc.double({ min: 1, max: 40, noNaN: true }),
      behind: fc.double({ min: 0, max: 15, noNaN: true }),
    });
    fc.assert(
      fc.property(input, (i) => {
        const l = legs(i.front, i.back, i.wrap, i.caught, i.neutral);
        const r = i.bar / 2 + i.neutral * i.wrap;
        const lift = r + i.beyond;
        const h = (i.neutral * (i.front + i.back) + i.caught) / 2;
        const string = tautRound(onCircle([0, 0], r, POINTS), lift, h);
        const d = developRoundBar(
          l,
          given("bar", i.bar),
          given("clamp", lift + i.behind),
          given("lift-off", lift),
        );
        expect(Math.abs(d.holeToMate.value - string - 2 * i.behind)).toBeLessThan(HULL_SLACK_MM);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  test("any flat bar, legs held closer than its faces and wider", () => {
    const input = fc.record({
      along: fc.double({ min: 2, max: 12, noNaN: true }),
      through: fc.double({ min: 1.5, max: 6, noNaN: true }),
      rounded: fc.double({ min: 0.05, max: 1, noNaN: true }),
      front: thickness,
      wrap: thickness,
      caught: fc.double({ min: 0, max: 14, noNaN: true }),
      neutral,
      beyond: fc.double({ min: 1, max: 40, noNaN: true }),
      behind: fc.double({ min: 0, max: 15, noNaN: true }),
    });
    let wider = 0;
    fc.assert(
      fc.property(input, (i) => {
        const corner = (i.rounded * Math.min(i.along, i.through)) / 2;
        const l = legs(i.front, i.front, i.wrap, i.caught, i.neutral);
        const grown = i.neutral * i.wrap;
        const lift = i.along / 2 + grown + i.beyond;
        const h = i.neutral * i.front + i.caught / 2;
        if (h > i.through / 2 + grown) wider += 1;
        const solid = onRoundedBar(i.along + 2 * grown, i.through + 2 * grown, corner + grown, POINTS);
        const bar = {
          along: given("along", i.along),
          through: given("through", i.through),
          corner: given("corner", corner),
        };
        const d = developFlatBar(l, bar, given("clamp", lift + i.behind), given("lift-off", lift));
        expect(Math.abs(d.holeToMate.value - tautRound(solid, lift, h) - 2 * i.behind)).toBeLessThan(
          HULL_SLACK_MM,
        );
      }),
      { seed: 7, numRuns: 60 },
    );
    expect(wider).toBeGreaterThan(5);
    expect(wider).toBeLessThan(55);
  });

  test("a flat bar as round as it can be is a round bar", () => {
    const l = legs(3.5, 2.1, 2.1, 1);
    const bar = { along: given("along", 6), through: given("through", 6), corner: given("corner", 3) };
    const flat = developFlatBar(l, bar, given("clamp", 18));
    const round = developRoundBar(l, given("bar", 6), given("clamp", 18));
    expect(flat.holeToMate.value).toBeCloseTo(round.holeToMate.value, 9);
    expect(flat.slope.value).toBeCloseTo(round.slope.value, 9);
  });
});

test("the slope is the one that the folded legs have", () => {
  // Walks the neutral fibre from the bar's far side in small steps: round the bar, then straight on.
  const l = legs(3.5, 2.1, 2.1);
  const d = developRoundBar(l, given("bar", 8), given("clamp", 20));
  const r = d.radius.value;
  const steps = 20000;
  const step = d.holeToMate.value / 2 / steps;
  let [x, y, heading] = [-r, 0, Math.PI / 2];
  for (let i = 0; i < steps; i += 1) {
    const onBar = (i + 0.5) * step < (r * d.wrapAngle.value) / 2;
    if (onBar) heading -= step / r / 2;
    x += step * Math.cos(heading);
    y += step * Math.sin(heading);
    if (onBar) heading -= step / r / 2;
  }
  expect(x).toBeCloseTo(20, 2);
  expect(y).toBeCloseTo(0.5 * 2.8, 2);
  expect(Math.abs(heading)).toBeCloseTo(d.slope.value, 3);
});

test("least lift-off for a slope gives that slope", () => {
  for (const slope of [5, 15, 30]) {
    const l = legs(3.5, 2.1, 2.1);
    const bar = given("bar", 8);
    const clamp = liftOffForSlope(
      l,
      neutralRadius(l, bar),
      legGap(l),
      given("slope", radians(slope), "angle"),
    );
    expect(degrees(developRoundBar(l, bar, clamp).slope.value)).toBeCloseTo(slope, 9);
  }
});

test("no taut fold: the clamp lies inside the wrap", () => {
  const d = developRoundBar(legs(3), given("bar", 8), given("clamp", 3));
  expect(d.holeToMate.value).toBeNaN();
});

test("grain strain: the outer face is longer than the neutral fibre by so much", () => {
  // Lengths of two half circles, 3 mm leather round a 4 mm bar, neutral fibre in the middle.
  const l = legs(3);
  const strain = grainStrain(l, neutralRadius(l, given("bar", 4)));
  expect(strain.value).toBeCloseTo((Math.PI * 5) / (Math.PI * 3.5) - 1, 9);
});

describe("leather left in a fold", () => {
  const half = given("neutral", 0.5, "ratio");
  const left = (leather: number, bar: number): number =>
    defaultWrapThickness(given("leather", leather, "thickness"), given("bar", bar), half).value;

  // 0.6 of it, at most 0.54 of the bar, at least 1.2 mm: common practice, no source.
  test.each([
    ["under 2.5 mm it is not skived", 2.4, 4, 2.4],
    ["from 2.5 mm it is", 2.5, 4, 1.5],
    ["a thin bar asks for thinner leather", 4, 3, 1.62],
    ["a thick bar does not", 4, 8, 2.4],
    ["never under 1.2 mm", 4, 2, 1.2],
    ["leather thinner than that stays as it is", 1, 1.5, 1],
  ])("by default: %s", (_, leather, bar, expected) => expect(left(leather, bar)).toBeCloseTo(expected, 2));

  test("leather of 1/4 in goes round a 5 mm bar without a strain that is an error (common practice, no source)", () => {
    const wrap = left(6.35, 5);
    const l = legs(6.35, wrap, wrap);
    expect(grainStrain(l, neutralRadius(l, given("bar", 5))).value).toBeLessThanOrEqual(LARGEST_STRAIN);
  });

  test("the thickest fold of a strain has that strain", () => {
    for (const strain of [EASY_STRAIN, LARGEST_STRAIN]) {
      for (const [bar, k] of [
        [4, 0.5],
        [8, 0.4],
        [2.5, 0.3],
      ] as const) {
        const t = foldOfStrain(strain, given("bar", bar), given("k", k, "ratio")).value;
        // Lengths of half circles: the grain side against the neutral fibre.
        const stretched = (Math.PI * (bar / 2 + t)) / (Math.PI * (bar / 2 + k * t)) - 1;
        expect(stretched).toBeCloseTo(strain, 9);
      }
    }
    expect(thickestFold(given("bar", 4), half).value).toBeCloseTo(4, 9);
  });

  test("with the neutral fibre near the grain no strap leather is too thick", () => {
    const t = thickestFold(given("bar", 4), given("k", 0.68, "ratio"));
    expect(t.value).toBe(8);
    expect(0.32 * 8).toBeLessThan(LARGEST_STRAIN * (2 + 0.68 * 8));
  });
});
