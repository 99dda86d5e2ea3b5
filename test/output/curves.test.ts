import { Bezier } from "bezier-js";
import { describe, expect, test } from "vitest";
import { arc, type Point } from "../../src/geometry/path.ts";
import { arcCubics, shortArcs } from "../../src/output/curves.ts";

const CENTRE: Point = [12.5, -3.25];
const at = (radius: number, angle: number): Point => [
  CENTRE[0] + radius * Math.cos(angle),
  CENTRE[1] + radius * Math.sin(angle),
];
const RADII = [0.05, 1, 8, 60, 400, 5000];
const TURNS = [0.001, 0.3, Math.PI / 2, 2, Math.PI, 4, 2 * Math.PI - 0.001];
const cases = RADII.flatMap((radius) =>
  TURNS.flatMap((turn) => [true, false].map((ccw) => ({ radius, turn, ccw }))),
);

/** Greatest distance of the cubics from the circle, and the angle they run through, sampled by bezier-js. */
function sampled(
  from: Point,
  cubics: ReturnType<typeof arcCubics>,
  radius: number,
): { stray: number; turn: number } {
  let [stray, turn, at] = [0, 0, from];
  let last = Math.atan2(from[1] - CENTRE[1], from[0] - CENTRE[0]);
  for (const { c1, c2, to } of cubics) {
    const curve = new Bezier(...at, ...c1, ...c2, ...to);
    for (let i = 1; i <= 64; i += 1) {
      const { x, y } = curve.get(i / 64);
      stray = Math.max(stray, Math.abs(Math.hypot(x - CENTRE[0], y - CENTRE[1]) - radius));
      const angle = Math.atan2(y - CENTRE[1], x - CENTRE[0]);
      turn += Math.atan2(Math.sin(angle - last), Math.cos(angle - last));
      last = angle;
    }
    at = to;
  }
  return { stray, turn };
}

describe("arcs as cubics", () => {
  test.each(cases)(
    "radius $radius, turn $turn, anticlockwise $ccw: within 0.001 mm, the right way round",
    ({ radius, turn, ccw }) => {
      const from = at(radius, 0.4);
      const cubics = arcCubics(from, arc(at(radius, ccw ? 0.4 + turn : 0.4 - turn), CENTRE, ccw));
      const found = sampled(from, cubics, radius);
      expect(found.stray).toBeLessThan(0.001);
      expect(found.turn).toBeCloseTo(ccw ? turn : -turn, 6);
      expect(cubics.length).toBeGreaterThanOrEqual(Math.floor(turn / (Math.PI / 4)));
    },
  );

  test("the sampling sees a coarse cubic: a quarter turn of 60 mm in one piece strays", () => {
    const k = (60 * 4 * (Math.SQRT2 - 1)) / 3;
    const [x, y] = CENTRE;
    const coarse = [{ kind: "cubic", c1: [x + 60, y + k], c2: [x + k, y + 60], to: [x, y + 60] }] as const;
    expect(sampled([x + 60, y], coarse, 60).stray).toBeGreaterThan(0.01);
  });
});

describe("arcs as short arcs", () => {
  test("a half circle whose radius is off by a thousandth keeps its middle", () => {
    // Ends as rounding may leave them: 0.0005 further apart than twice the radius.
    const arcs = shortArcs([-10, 0], arc([10.001, 0], [0, 0], false));
    expect(arcs.length).toBe(2);
    expect(Math.hypot(...arcs[0]!.to)).toBeCloseTo(10, 2);
    expect(arcs[0]!.to[1]).toBeGreaterThan(9.999);
  });

  test("no piece turns by more than a quarter", () => {
    for (const turn of TURNS) {
      const arcs = shortArcs(at(30, 0), arc(at(30, turn), CENTRE, true));
      let from = at(30, 0);
      for (const { to, radius } of arcs) {
        expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeLessThan(radius * 1.4145);
        from = to;
      }
    }
  });
});
