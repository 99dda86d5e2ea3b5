import fc from "fast-check";
import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import { slotLength, slotWidth, weavingSlotWidth } from "../../src/trade/slot.ts";
import { tongueReach, tongueSlotLength } from "../../src/trade/tongueSlot.ts";
import { developRoundBar } from "../../src/trade/turnBack.ts";
import { leastThatFits } from "../support/bisect.ts";
import { given, radians } from "../support/quantities.ts";

// Expected values: fixtures/published/worked-cases.json (independent simulation: slots by bisection on
// whether the solid fits), and the same kind of bisection here.

const { cases } = worked;

/** Is a point inside a slot of that length and width over all, with round ends? */
function inSlot(x: number, y: number, length: number, width: number): boolean {
  const flat = length / 2 - width / 2;
  return Math.hypot(Math.max(0, Math.abs(x) - flat), y) <= width / 2;
}

/** Least length of a slot that a rectangle passes through. */
const slotFor = (width: number, thickness: number, slot: number): number =>
  leastThatFits((length) => inSlot(width / 2, thickness / 2, length, slot), slot, width + 2 * slot);

describe("a strap through a round-ended slot", () => {
  test("the worked case, no room", () => {
    const c = cases.strapSlot;
    const length = slotLength(
      "ear",
      given("strap", c.strapWidth),
      given("t", c.strapThickness),
      given("b", c.slotWidth),
      0,
    );
    expect(length.value).toBeCloseTo(c.slotLength, 4);
  });

  test("any strap: bisection on whether it fits", () => {
    const input = fc.record({
      strap: fc.double({ min: 8, max: 50, noNaN: true }),
      thickness: fc.double({ min: 1, max: 7, noNaN: true }),
      spare: fc.double({ min: 0.1, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(input, ({ strap, thickness, spare }) => {
        const b = thickness + spare;
        const length = slotLength("s", given("w", strap), given("t", thickness), given("b", b), 0);
        expect(length.value).toBeCloseTo(slotFor(strap, thickness, b), 6);
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  test("a strap straight through has half a millimetre of room, and one lengthwise", () => {
    const width = slotWidth("s", given("t", 4));
    expect(width.value).toBe(4.5);
    const tight = slotLength("s", given("w", 16), given("t", 4), width, 0).value;
    expect(slotLength("s", given("w", 16), given("t", 4), width).value - tight).toBeCloseTo(1, 9);
  });

  test("a slot is never shorter than it is wide, and the room", () => {
    const slot = slotLength("s", given("w", 2), given("t", 8), given("b", 8.5));
    expect(slot.value).toBeGreaterThanOrEqual(9.5);
  });

  test("a strap that weaves through at an angle: bisection on whether its band fits", () => {
    // Cross-section along the slotted leather: a band of the strap's thickness, slanted, must not touch
    // the slot's edges on either face.
    for (const [t, slotted, deg] of [
      [4, 3, 45],
      [3, 3.5, 30],
      [5, 2, 60],
    ] as const) {
      const a = radians(deg);
      const depths = [-slotted / 2, slotted / 2];
      const clears = (width: number): boolean =>
        depths.every((y) =>
          [-1, 1].every((side) => Math.abs(y / Math.tan(a) + (side * t) / 2 / Math.sin(a)) <= width / 2),
        );
      const width = weavingSlotWidth("s", given("t", t), given("T", slotted), given("angle", a, "angle"));
      expect(width.value).toBeCloseTo(leastThatFits(clears, 0.1, 100), 6);
    }
  });
});

type TongueCase = {
  readonly bar: number;
  readonly wrap: number;
  readonly tongue: number;
  readonly breadth: number;
  readonly open: number;
};

const reachOf = (c: TongueCase) =>
  tongueReach({
    label: "buckle",
    bar: given("bar", c.bar),
    wrap: given("wrap", c.wrap, "thickness"),
    thickness: given("tongue", c.tongue),
    breadth: given("breadth", c.breadth),
    open: given("open", c.open, "angle"),
  });

/**
 * How far from the bar the tongue's eye and its opened shank stand in the leg's leather: the leg lies from
 * bar's surface outwards; the eye is a disc round the bar, the shank a strip from the bar's centre.
 */
function solidReach(c: TongueCase, leg: "eye only" | "eye and shank"): number {
  const layer = Array.from({ length: 401 }, (_, i) => c.bar / 2 + (c.wrap * i) / 400);
  const eye = (x: number, y: number): boolean => Math.hypot(x, y) <= c.bar / 2 + c.tongue;
  const shank = (x: number, y: number): boolean =>
    Math.abs(y * Math.cos(c.open) - x * Math.sin(c.open)) <= c.tongue / 2;
  const furthest = (solid: (x: number, y: number) => boolean, from: (y: number) => number): number =>
    Math.max(...layer.map((y) => (solid(from(y), y) ? leastThatFits((x) => !solid(x, y), from(y), 500) : 0)));
  const reach = furthest(eye, () => 0);
  return leg === "eye only"
    ? reach
    : Math.max(
        reach,
        furthest(shank, (y) => y / Math.tan(c.open)),
      );
}

describe("a buckle tongue's slot", () => {
  test("the worked case: half reach on the neutral fibre", () => {
    const c = cases.tongueSlot;
    const l = {
      label: "e",
      neutral: 0.5,
      front: c.thickness,
      back: c.thickness,
      wrap: c.thickness,
      caught: 0,
    };
    const d = developRoundBar(l, given("bar", c.bar), given("clamp", c.clamp));
    const tongue: TongueCase = {
      bar: c.bar,
      wrap: c.thickness,
      tongue: c.tongue,
      breadth: 4,
      open: radians(c.openDegrees),
    };
    const half = (d.radius.value * d.wrapAngle.value) / 2;
    expect(half + reachOf(tongue).reach.value).toBeCloseTo(c.front, 4);
    expect(half + solidReach(tongue, "eye and shank")).toBeCloseTo(c.front, 4);
    // The back leg has the eye alone; the slot takes the longer reach on both sides.
    expect(half + solidReach(tongue, "eye only")).toBeCloseTo(c.back, 4);
  });

  const anyTongue = fc.record({
    bar: fc.double({ min: 2, max: 8, noNaN: true }),
    wrap: fc.double({ min: 1, max: 5, noNaN: true }),
    tongue: fc.double({ min: 1.5, max: 6, noNaN: true }),
    breadth: fc.double({ min: 2, max: 8, noNaN: true }),
    open: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
  });

  test("any tongue: bisection on how far the solid stands in the leather", () => {
    fc.assert(
      fc.property(anyTongue, (c) => {
        expect(reachOf(c).reach.value).toBeCloseTo(solidReach(c, "eye and shank"), 6);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  test("any tongue: the round ends clear its breadth", () => {
    fc.assert(
      fc.property(anyTongue, (c) => {
        const r = reachOf(c);
        // A tongue drawn as a rectangle of its breadth, as long as the reach on both sides.
        const long = 2 * r.reach.value;
        const needed = slotFor(long, c.breadth, r.width.value);
        expect(long + 2 * r.roundEnd.value).toBeCloseTo(needed, 6);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  test("the slot is as long as the wrap, the reaches and 1 mm, up to the next millimetre", () => {
    const r = reachOf({ bar: 4, wrap: 2, tongue: 3, breadth: 4, open: radians(60) });
    const raw = 3 * Math.PI + 2 * (r.reach.value + r.roundEnd.value);
    const length = tongueSlotLength("b", given("radius", 3), given("wrap angle", Math.PI, "angle"), r).value;
    expect(Number.isInteger(length)).toBe(true);
    expect(length - raw).toBeGreaterThanOrEqual(1);
    expect(length - raw).toBeLessThan(2);
  });
});
