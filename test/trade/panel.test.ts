import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import {
  cornerTurns,
  curvatureAt,
  distanceToPath,
  endPoint,
  flatten,
  type Path,
  type Point,
  pathLength,
  pointAt,
  polyline,
} from "../../src/geometry/index.ts";
import {
  mostClipRound,
  mostCorner,
  type PanelShape,
  panelCorners,
  panelEdge,
  panelOffset,
} from "../../src/trade/panel.ts";
import { deepestDip, topEdge } from "../../src/trade/topEdge.ts";
import { svgData } from "../geometry/shapes.ts";
import { radians } from "../support/quantities.ts";

// A panel's edge is compared with closed forms of the rounded and clipped rectangle and of the circle's
// segment, and with svg-path-properties 1.3.0.

const PLAIN: PanelShape = {
  height: 180,
  topWidth: 240,
  baseWidth: 240,
  corners: "round",
  cornerSize: 40,
  baseSag: 0,
};
const FINE_MM = 0.001;

/** Area of flattened points, shoelace. */
function shoelace(points: readonly Point[]): number {
  return (
    points.reduce((area, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length]!;
      return area + x * ny - nx * y;
    }, 0) / 2
  );
}
const areaOf = (s: PanelShape): number => shoelace(flatten(panelEdge(s), FINE_MM / 10));

/** Joints that turn by more than 0.1°. */
const turnsOf = (path: Path): readonly Point[] =>
  cornerTurns(path)
    .filter((t) => Math.abs(t.turn) > radians(0.1))
    .map((t) => t.at);

/** Area between a chord and its arc of this height: r² (φ − sin φ) / 2. */
function segmentArea(chord: number, rise: number): number {
  const r = (chord * chord) / (8 * rise) + rise / 2;
  const angle = 2 * Math.asin(chord / (2 * r));
  return (r * r * (angle - Math.sin(angle))) / 2;
}

describe("a rectangular panel", () => {
  test.each([10, 40, 90, 118])(
    "round corners of %d mm: length 2h + w − (4 − π) r and area wh − (2 − π/2) r²",
    (r) => {
      const s = { ...PLAIN, cornerSize: r };
      expect(pathLength(panelEdge(s))).toBeCloseTo(2 * 180 + 240 - (4 - Math.PI) * r, 9);
      expect(areaOf(s)).toBeCloseTo(240 * 180 - (2 - Math.PI / 2) * r * r, 0);
    },
  );

  test("clipped corners: each takes off 2c − c√2 of the edge and c²/2 of the leather", () => {
    const s: PanelShape = { ...PLAIN, corners: "clipped", cornerSize: 30 };
    expect(pathLength(panelEdge(s))).toBeCloseTo(600 - 2 * (60 - 30 * Math.SQRT2), 9);
    expect(areaOf(s)).toBeCloseTo(240 * 180 - 900, 6);
  });

  test("square corners", () => {
    const s: PanelShape = { ...PLAIN, corners: "square" };
    expect(pathLength(panelEdge(s))).toBeCloseTo(600, 9);
    expect(panelCorners(s).map((c) => c.at)).toEqual([
      [-120, 0],
      [120, 0],
    ]);
  });
});

describe("a base that sags", () => {
  test("adds the circle's segment below its corners", () => {
    for (const sag of [2, 12, 36]) {
      const s: PanelShape = { ...PLAIN, corners: "square", baseSag: sag };
      expect(areaOf(s)).toBeCloseTo(240 * (180 - sag) + segmentArea(240, sag), 1);
      expect(Math.min(...flatten(panelEdge(s), FINE_MM).map(([, y]) => y))).toBeCloseTo(0, 2);
    }
  });

  test("a corner's round has its radius, and leads smoothly from a sloping side into the arc", () => {
    const s: PanelShape = { ...PLAIN, topWidth: 280, baseSag: 24, cornerSize: 35 };
    const path = panelEdge(s);
    expect(turnsOf(path)).toEqual([]);
    const [first, second] = path.segments;
    const [a, b]: readonly Point[] = [first!.to, second!.to];
    const along = Math.hypot(a![0] + 140, a![1] - 180);
    // Measured on the drawn curve, a little beyond where the side ends.
    expect(1 / curvatureAt(path, along + 1)).toBeCloseTo(35, 6);
    expect(b![1]).toBeLessThan(24);
  });
});

const ROOM = { below: 20, beside: 6 };
const anyShape: fc.Arbitrary<PanelShape> = fc
  .record({
    height: fc.double({ min: 60, max: 500, noNaN: true }),
    baseWidth: fc.double({ min: 70, max: 600, noNaN: true }),
    taper: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    sag: fc.double({ min: 0, max: 0.15, noNaN: true }),
    corners: fc.constantFrom("round", "clipped", "square"),
    size: fc.double({ min: 0.05, max: 1, noNaN: true }),
    clip: fc.option(fc.double({ min: 0.01, max: 1, noNaN: true }), { nil: 0 }),
  })
  .map(({ height, baseWidth, taper, sag, corners, size, clip }) => {
    const topWidth = baseWidth + taper * Math.min(height, baseWidth);
    const shape = { height, baseWidth, topWidth, corners, baseSag: sag * Math.min(baseWidth, height) };
    const sized = { ...shape, cornerSize: size * mostCorner(shape, ROOM) };
    return { ...sized, clipRound: corners === "clipped" ? clip * mostClipRound(sized, ROOM) : 0 };
  });

describe("any panel", () => {
  test("turns only where a corner is named, within 0.1°, and is its own mirror image", () => {
    fc.assert(
      fc.property(anyShape, (s) => {
        const path = panelEdge(s);
        const named = panelCorners(s).map((c) => c.at);
        expect(turnsOf(path).length).toBeLessThanOrEqual(named.length);
        for (const at of turnsOf(path))
          expect(named.some((n) => Math.hypot(n[0] - at[0], n[1] - at[1]) < FINE_MM)).toBe(true);
        const total = pathLength(path);
        for (const share of [0.1, 0.3, 0.45]) {
          const [x, y] = pointAt(path, share * total);
          const [mx, my] = pointAt(path, (1 - share) * total);
          expect(Math.hypot(x + mx, y - my)).toBeLessThan(FINE_MM);
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test("is as long as svg-path-properties 1.3.0 finds it", () => {
    fc.assert(
      fc.property(anyShape, (s) => {
        const path = panelEdge(s);
        const length = new svgPathProperties(svgData(path)).getTotalLength();
        expect(Math.abs(length - pathLength(path))).toBeLessThan(FINE_MM);
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  test("every point of a line beside it lies at its distance from dense points of the edge", () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: -14, max: 6, noNaN: true }), (s, inward) => {
        const line = panelOffset(s, inward, s.height - 15);
        const edge = polyline(flatten(panelEdge(s), FINE_MM));
        for (let i = 0; i <= 20; i++) {
          const at = pointAt(line, (pathLength(line) * i) / 20);
          expect(Math.abs(distanceToPath(at, edge) - Math.abs(inward))).toBeLessThan(3 * FINE_MM);
        }
        expect(line.start[1]).toBeCloseTo(s.height - 15, 9);
        expect(endPoint(line)[1]).toBeCloseTo(s.height - 15, 9);
      }),
      { seed: 13, numRuns: 60 },
    );
  });
});

describe("the greatest corner", () => {
  test("round corners of a rectangle: half the base but what is left beside its middle, or the side that is free", () => {
    const { cornerSize: _, ...wide } = PLAIN;
    expect(mostCorner(wide, { below: 20, beside: 10 })).toBeCloseTo(110, 6);
    expect(mostCorner({ ...wide, height: 100 }, { below: 20, beside: 10 })).toBeCloseTo(80, 6);
  });

  test("the ends of a clip at 45° take r tan(22.5°) each, of the clip and beyond it", () => {
    const s: PanelShape = { ...PLAIN, corners: "clipped", cornerSize: 40 };
    const most = (40 * Math.SQRT2 - 1) / (2 * Math.tan(Math.PI / 8));
    // 1 mm of the clip stays straight, give or take what the search leaves.
    expect(Math.abs(mostClipRound(s, { below: 10, beside: 10 }) - most)).toBeLessThan(0.7);
    const rounded = panelEdge({ ...s, clipRound: 30 });
    expect(turnsOf(rounded)).toEqual([]);
    const saved = 4 * (2 * Math.tan(Math.PI / 8) - Math.PI / 4) * 30;
    expect(pathLength(rounded)).toBeCloseTo(pathLength(panelEdge(s)) - saved, 9);
  });

  test("on sloping sides a round takes r tan(turn/2) of side and base", () => {
    const { cornerSize: _, ...shape } = { ...PLAIN, topWidth: 200 };
    const turn = Math.PI / 2 + Math.atan2(20, 180);
    expect(mostCorner(shape, { below: 0, beside: 5 })).toBeCloseTo(115 / Math.tan(turn / 2), 6);
  });
});

describe("a dipped top", () => {
  const dipped = (width: number, dip: number): Path => ({
    start: [width / 2, 100],
    segments: topEdge([width / 2, 100], [-width / 2, 100], dip),
    closed: false,
  });

  test("is smooth, level at its ends and in its middle, and dips to the left of its way", () => {
    const points = flatten(dipped(200, 30), FINE_MM);
    expect(turnsOf(dipped(200, 30))).toEqual([]);
    expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(70, 6);
    expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(100, 6);
    const level = (a: Point, b: Point): number => Math.abs((b[1] - a[1]) / (b[0] - a[0]));
    const near = points.findIndex(([x]) => x < 99.9);
    expect(level(points[0]!, points[near]!)).toBeLessThan(0.01);
    const middle = points.findIndex(([x]) => x <= 0);
    expect(level(points[middle - 1]!, points[middle]!)).toBeLessThan(0.02);
  });

  test("the deepest dip keeps over what it must leave", () => {
    for (const [width, inset, most] of [
      [200, 4, 4],
      [80, 12, 3],
      [60, 14, 9],
    ] as const) {
      const points = flatten(dipped(width, deepestDip(width, inset, most)), FINE_MM);
      const beside = points.filter(([x]) => x >= width / 2 - inset);
      expect(Math.min(...beside.map(([, y]) => y))).toBeGreaterThan(100 - most);
    }
  });

  test("without a dip it is a straight line", () => {
    expect(topEdge([1, 2], [-1, 2], 0)).toEqual([{ kind: "line", to: [-1, 2] }]);
  });
});
