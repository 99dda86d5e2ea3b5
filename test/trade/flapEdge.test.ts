import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import {
  closedPath,
  cornerTurns,
  endPoint,
  flatten,
  type Point,
  pathLength,
  selfCrossings,
} from "../../src/geometry/index.ts";
import { FLAP_EDGES, type FlapShape, flapEdge, TONGUE_FILLET_MM } from "../../src/trade/flapEdge.ts";
import { svgData } from "../geometry/shapes.ts";
import { degrees, radians } from "../support/quantities.ts";

// A flap's edge is compared with closed forms, with the directions of its own drawn points, and with
// svg-path-properties 1.3.0.

const KINDS = [...FLAP_EDGES, "tongue"] as const;
const PLAIN: FlapShape = {
  kind: "straight",
  halfWidth: 120,
  from: 180,
  end: 340,
  corner: 20,
  depth: 60,
  tongueWidth: 50,
};

const anyFlap: fc.Arbitrary<FlapShape> = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    halfWidth: fc.double({ min: 20, max: 300, noNaN: true }),
    corner: fc.double({ min: 0, max: 1, noNaN: true }),
    depth: fc.double({ min: 0, max: 1, noNaN: true }),
    tongue: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ kind, halfWidth, corner, depth, tongue }) => {
    const shares = { straight: 0.9, round: 0.6, pointed: 0.6, bell: 0.4, tongue: 0.2 } as const;
    const c = 3 + corner * (shares[kind] * halfWidth - 3);
    const room = 2 * (halfWidth - c) - 4 * TONGUE_FILLET_MM - 6;
    const least = kind === "bell" ? c + 8 : 14;
    const most = kind === "pointed" ? Math.max(least, halfWidth) : least + 200;
    return {
      kind,
      halfWidth,
      from: 100,
      end: 100 + c + least + 260 + halfWidth,
      corner: c,
      depth: least + depth * (most - least),
      tongueWidth: 6 + tongue * Math.max(0, room),
    };
  })
  .filter((s) => s.kind !== "tongue" || s.tongueWidth / 2 + s.corner + TONGUE_FILLET_MM < s.halfWidth);

/** The sharpest turn between two chords of a curve that is drawn ever finer falls away; at a corner it stays. */
function sharpestChord(points: readonly Point[]): number {
  const turns = points.slice(2).map((c, i) => {
    const [a, b] = [points[i]!, points[i + 1]!];
    const [u, v] = [Math.atan2(b[1] - a[1], b[0] - a[0]), Math.atan2(c[1] - b[1], c[0] - b[0])];
    return Math.abs(Math.atan2(Math.sin(v - u), Math.cos(v - u)));
  });
  return Math.max(0, ...turns);
}

describe("any flap's edge", () => {
  test("tangents meet within 0.1° all along it", () => {
    fc.assert(
      fc.property(anyFlap, (s) => {
        const worst = Math.max(0, ...cornerTurns(flapEdge(s)).map((t) => Math.abs(t.turn)));
        expect(degrees(worst), s.kind).toBeLessThan(0.1);
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  test("no chord of its fine drawing turns sharply either", () => {
    for (const kind of KINDS)
      expect(sharpestChord(flatten(flapEdge({ ...PLAIN, kind }), 1e-5)), kind).toBeLessThan(radians(1));
  });

  test("begins and ends at its sides, reaches its end and no further, and keeps within its width", () => {
    fc.assert(
      fc.property(anyFlap, (s) => {
        const path = flapEdge(s);
        const points = flatten(path, 0.001);
        expect(path.start).toEqual([s.halfWidth, s.from]);
        expect(endPoint(path)).toEqual([-s.halfWidth, s.from]);
        expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(s.end, 2);
        expect(Math.max(...points.map(([x]) => Math.abs(x)))).toBeCloseTo(s.halfWidth, 6);
        expect(selfCrossings(closedPath(path.start, path.segments)), s.kind).toEqual([]);
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  test("is as long as svg-path-properties 1.3.0 finds it", () => {
    fc.assert(
      fc.property(anyFlap, (s) => {
        const path = flapEdge(s);
        const length = new svgPathProperties(svgData(path)).getTotalLength();
        expect(Math.abs(length / pathLength(path) - 1)).toBeLessThan(1e-6);
      }),
      { seed: 23, numRuns: 100 },
    );
  });
});

/** Area under the drawn edge, above where its sides begin. */
function areaOf(s: FlapShape): number {
  const points = flatten(flapEdge(s), 1e-4);
  return (
    points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length]!;
      return sum + x * ny - nx * y;
    }, 0) / 2
  );
}

describe("each kind", () => {
  test("straight with round corners: 2w·l − (2 − π/2) r²", () => {
    expect(areaOf(PLAIN)).toBeCloseTo(240 * 160 - (2 - Math.PI / 2) * 400, 0);
  });

  test("round, as deep as it is half wide, is a half circle within 0.03 % of its radius", () => {
    const s: FlapShape = { ...PLAIN, kind: "round", depth: 120 };
    for (const [x, y] of flatten(flapEdge(s), 0.001).filter(([, y]) => y > 220))
      expect(Math.abs(Math.hypot(x, y - 220) / 120 - 1)).toBeLessThan(0.0003);
  });

  test("pointed: a triangle less its rounded tip and shoulders", () => {
    // Sharp but for a small rounding the area is that of side and triangle; the rounding takes less than 1 %.
    const s: FlapShape = { ...PLAIN, kind: "pointed", corner: 3 };
    const sharp = 240 * 100 + (240 * 60) / 2;
    expect(areaOf(s) / sharp).toBeGreaterThan(0.99);
    expect(areaOf(s) / sharp).toBeLessThan(1.01);
  });

  test("a bell narrows to half its width halfway down its flank", () => {
    const s: FlapShape = { ...PLAIN, kind: "bell" };
    const flank = 60 - 20;
    const middle = flatten(flapEdge(s), 0.001).filter(
      ([x, y]) => x > 0 && Math.abs(y - (340 - flank / 2)) < 0.05,
    );
    for (const [x] of middle) expect(x).toBeCloseTo(50, 0);
    expect(middle.length).toBeGreaterThan(0);
  });

  test("a tongue has its width, and leaves the flap's own edge its depth before the end", () => {
    const s: FlapShape = { ...PLAIN, kind: "tongue" };
    const points = flatten(flapEdge(s), 0.001);
    const high = points.filter(([, y]) => y > 340 - 60 + TONGUE_FILLET_MM + 0.01);
    expect(Math.max(...high.map(([x]) => x))).toBeCloseTo(25, 6);
    const edge = points.filter(([x]) => x > 25 + TONGUE_FILLET_MM && x < 99);
    for (const [, y] of edge) expect(y).toBeCloseTo(280, 6);
  });
});
