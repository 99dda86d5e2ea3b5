import fc from "fast-check";
import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import type { Point } from "../../src/geometry/path.ts";
import { type FlapFold, flapBends, flapRun } from "../../src/trade/flapLength.ts";
import { hull, onCircle } from "../support/hull.ts";
import { given } from "../support/quantities.ts";
import { allIn, readExpression, written } from "../support/readExpression.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// Expected values: fixtures/published/worked-cases.json (independent simulation); a taut skin over rounds, by
// convex hull of points; and the flat piece folded forward in small steps.

type Numbers = Readonly<
  Record<"over" | "reach" | "back" | "front" | "thickness" | "neutral" | "bulge" | "height", number>
>;

const fold = (v: Numbers): FlapFold => ({
  label: "flap",
  over: given("over", v.over),
  reach: given("reach", v.reach),
  backFold: given("back", v.back),
  frontFold: given("front", v.front),
  thickness: given("thickness", v.thickness, "thickness"),
  neutral: given("neutral", v.neutral, "ratio"),
  bulge: given("bulge", v.bulge),
});
const run = (v: Numbers) => flapRun(fold(v), given("height", v.height), "base line to closure");

const c = worked.cases.flapUpright;
const upright: Numbers = {
  over: c.flapHeight,
  reach: c.depth,
  back: c.backRadius,
  front: c.frontRadius,
  thickness: c.thickness,
  neutral: 0.5,
  bulge: 0,
  height: c.studHeight,
};

/** Any flap that a bag may have; its bends have room, its half lies under the bend. */
const anyFlap = fc
  .record({
    thickness: fc.double({ min: 1, max: 5, noNaN: true }),
    neutral: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
    back: fc.double({ min: 1, max: 15, noNaN: true }),
    front: fc.double({ min: 1, max: 15, noNaN: true }),
    room: fc.double({ min: 0, max: 200, noNaN: true }),
    height: fc.double({ min: 0, max: 250, noNaN: true }),
    below: fc.double({ min: 1, max: 250, noNaN: true }),
    bulge: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true })),
  })
  .map(({ room, below, ...v }) => ({
    ...v,
    reach: v.back + v.front + room,
    over: v.height + below + Math.max(v.back, v.front),
  }));

/** Points on each round; a polygon of so many is shorter than its round by less than 1e-5 of it. */
const ROUND = 6000;

/** The flap's inner face as a taut skin from the back's foot over two rounds to its place on the front. */
function skin(v: Numbers): { readonly length: number; readonly turn: number } {
  // Of each bend's round only the quarter that the leather can touch: bends that lie close overlap.
  const [back, front]: readonly [Point, Point] = [
    [v.back, v.over - v.back],
    [v.reach - v.front, v.over - v.front],
  ];
  const rounds = [
    ...onCircle(back, v.back, ROUND).filter(([x, y]) => x <= back[0] && y >= back[1]),
    ...onCircle(front, v.front, ROUND).filter(([x, y]) => x >= front[0] && y >= front[1]),
  ];
  const [foot, half]: readonly [Point, Point] = [
    [0, 0],
    [v.reach + v.bulge, v.height],
  ];
  const corners = hull([...rounds, foot, half]);
  const at = (p: Point): number => corners.findIndex((q) => q[0] === p[0] && q[1] === p[1]);
  // Anticlockwise from the half over the top to the foot.
  const turned = [...corners.slice(at(half)), ...corners.slice(0, at(half))];
  const way = turned.slice(0, turned.findIndex((q) => q[0] === foot[0] && q[1] === foot[1]) + 1);
  const length = way
    .slice(1)
    .reduce((all, q, i) => all + Math.hypot(q[0] - way[i]![0], q[1] - way[i]![1]), 0);
  const [first, next] = [way[0]!, way[1]!];
  const rise = Math.atan2(next[1] - first[1], next[0] - first[0]);
  return { length, turn: (3 * Math.PI) / 2 - rise };
}

describe("base line to the closure's half", () => {
  test("the worked case, front upright", () => expect(run(upright).value).toBeCloseTo(c.alongPiece, 4));

  test("is a taut skin's length and what its turns add at the neutral fibre, upright and bulged", () => {
    fc.assert(
      fc.property(anyFlap, (v) => {
        const { length, turn } = skin(v);
        expect(run(v).value).toBeCloseTo(length + v.neutral * v.thickness * turn, 2);
      }),
      { seed: 11, numRuns: 40 },
    );
  }, 20_000);

  test("folded forward in small steps, the flap's inner face comes to the front's face at the height", () => {
    fc.assert(
      fc.property(anyFlap, (v) => {
        const bends = flapBends(fold(v), given("height", v.height));
        const s = run(v).value;
        const fibre = v.neutral * v.thickness;
        const steps = 20_000;
        let [x, y, heading] = [-fibre, 0, Math.PI / 2];
        for (let i = 0; i < steps; i++) {
          const [from, to] = [(i * s) / steps, ((i + 1) * s) / steps];
          // What of each bend lies in the step turns it.
          const turn = bends.reduce((all, { centre, bend }) => {
            const r = bend.inner + bend.neutral * bend.thickness;
            const half = (r * bend.angle) / 2;
            return all + Math.max(0, Math.min(to, centre + half) - Math.max(from, centre - half)) / r;
          }, 0);
          x += (s / steps) * Math.cos(heading - turn / 2);
          y += (s / steps) * Math.sin(heading - turn / 2);
          heading -= turn;
        }
        expect(x + fibre * Math.sin(heading)).toBeCloseTo(v.reach + v.bulge, 2);
        expect(y - fibre * Math.cos(heading)).toBeCloseTo(v.height, 2);
      }),
      { seed: 12, numRuns: 40 },
    );
  }, 20_000);
});

describe("the bends", () => {
  test("upright: two quarters, each of its own radius, the flesh side inside", () => {
    const [back, front] = flapBends(fold(upright), given("height", c.studHeight));
    for (const b of [back!, front!]) expect(b.bend.angle).toBeCloseTo(Math.PI / 2, 12);
    expect([back!.bend.inner, front!.bend.inner]).toEqual([c.backRadius, c.frontRadius]);
    expect(back!.bend).toMatchObject({ thickness: c.thickness, neutral: 0.5, inside: "flesh" });
  });

  test("a bulged front opens the second bend by the run's slant", () => {
    const v = { ...upright, bulge: 12 };
    const [back, front] = flapBends(fold(v), given("height", v.height));
    expect(back!.bend.angle).toBeCloseTo(Math.PI / 2, 12);
    expect(front!.bend.angle).toBeCloseTo(skin(v).turn - Math.PI / 2, 4);
    expect(front!.bend.angle).toBeLessThan(Math.PI / 2 - 0.1);
  });
});

describe("the history", () => {
  const work = (v: Readonly<Record<string, number>>) => run(v as Numbers);

  test.each([
    ["upright", upright],
    ["bulged", { ...upright, bulge: 12 }],
  ])("%s: names what it moves with and nothing else, and its text gives its value", (_, v) => {
    expect(faultsOfHistory(work, v)).toEqual([]);
    for (const q of allIn(run(v))) {
      const read = readExpression(q);
      if (read !== undefined) expect(read, `${q.name}: ${written(q)}`).toBeCloseTo(q.value, 2);
    }
    expect(run(v).name).toBe("base line to closure");
    expect(run(v).kind).toBe("length");
  });
});
