import { Bezier } from "bezier-js";
import fc from "fast-check";
import polygonClipping from "polygon-clipping";
import { describe, expect, test } from "vitest";
import {
  type ArcSegment,
  anticlockwise,
  arc,
  circlePath,
  closedPath,
  containsPath,
  distanceToPath,
  flatten,
  line,
  mirroredInX,
  offsetPath,
  openPath,
  type Path,
  type Point,
  pathLength,
  pointAt,
  polyline,
  rectanglePath,
  reversed,
  selfCrossings,
  signedArea,
  tangentAt,
  turned,
  withStarts,
} from "../../src/geometry/index.ts";
import { polygonOffset } from "../../src/geometry/offset-net.ts";
import {
  anyOpenPath,
  anyOutline,
  coordinates,
  ellipse,
  neile,
  oneCubic,
  points,
  roundedRectangle,
  swelledStrap,
} from "./shapes.ts";

const only = (paths: readonly Path[]): Path => {
  expect(paths.length).toBe(1);
  return paths[0]!;
};
const areaOf = (paths: readonly Path[]): number => paths.reduce((sum, path) => sum + signedArea(path), 0);
const along = (path: Path, count: number): Point[] =>
  Array.from({ length: count }, (_, i) => pointAt(path, (pathLength(path) * (i + 0.5)) / count));

/** The furthest that any of `count` points on the results lies from the distance it should have. */
function deviation(results: readonly Path[], source: Path, d: number, count = 60): number {
  const off = results.flatMap((path) =>
    along(path, count).map((p) => Math.abs(distanceToPath(p, source) - Math.abs(d))),
  );
  return Math.max(0, ...off);
}

const radii = (path: Path): number[] =>
  withStarts(path)
    .filter(({ segment }) => segment.kind === "arc")
    .map(({ from, segment }) =>
      Math.hypot(from[0] - (segment as ArcSegment).centre[0], from[1] - (segment as ArcSegment).centre[1]),
    );

describe("offsets in closed form", () => {
  test("rounded rectangle 200 × 120, r 15, d 3: 21992.39 mm² by its formula, arcs of r − d", () => {
    const inner = only(offsetPath(roundedRectangle(200, 120, 15), 3));
    expect(inner.segments.map(({ kind }) => kind).filter((kind) => kind === "arc").length).toBe(4);
    for (const radius of radii(inner)) expect(radius).toBeCloseTo(12, 9);
    expect(signedArea(inner)).toBeCloseTo(21992.39, 2);
    expect(signedArea(inner)).toBeCloseTo(194 * 114 - (4 - Math.PI) * 144, 6);
    expect(inner.segments.length).toBe(8);
  });

  test("a corner whose radius is used up becomes sharp", () => {
    for (const d of [6, 10]) {
      const inner = only(offsetPath(roundedRectangle(100, 60, 6), d));
      expect(inner.segments.map(({ kind }) => kind)).toEqual(["line", "line", "line", "line"]);
      expect(signedArea(inner)).toBeCloseTo((100 - 2 * d) * (60 - 2 * d), 6);
    }
  });

  test("convex shapes grow by L d + π d² (Steiner's formula), corners rounded with arcs", () => {
    const hexagon = polyline(
      Array.from({ length: 6 }, (_, i): Point => [40 * Math.cos(i), 40 * Math.sin(i)]),
      true,
    );
    for (const shape of [
      rectanglePath([3, 4], 90, 25),
      hexagon,
      roundedRectangle(80, 50, 9),
      ellipse(60, 40),
      circlePath([5, 5], 12),
    ]) {
      for (const d of [0.5, 7, 40]) {
        const outer = only(offsetPath(shape, -d));
        const steiner = signedArea(shape) + pathLength(shape) * d + Math.PI * d * d;
        expect(Math.abs(signedArea(outer) - steiner)).toBeLessThan(0.0005 * pathLength(outer));
      }
    }
    for (const radius of radii(only(offsetPath(hexagon, -7)))) expect(radius).toBeCloseTo(7, 9);
  });

  test("a smooth strip's area is its width times its middle line (Pappus's theorem, for plane strips)", () => {
    for (const shape of [ellipse(60, 40), roundedRectangle(120, 70, 15), swelledStrap()]) {
      const [outer, inner] = [only(offsetPath(shape, -3)), only(offsetPath(shape, 3))];
      expect((signedArea(outer) - signedArea(inner)) / (6 * pathLength(shape))).toBeCloseTo(1, 5);
    }
  });

  test("an ellipse's parallel curve at its ends: half-axes less d", () => {
    const inner = only(offsetPath(ellipse(60, 40), 10));
    for (const point of [
      [50, 0],
      [-50, 0],
      [0, 30],
      [0, -30],
    ] as const) {
      expect(distanceToPath(point, inner)).toBeLessThan(0.001);
    }
  });

  test("an L: outside round its five corners, inside sharp in them, a quarter circle in the sixth", () => {
    const ell = polyline(points(0, 0, 60, 0, 60, 20, 20, 20, 20, 50, 0, 50), true);
    const outer = only(offsetPath(ell, -3));
    // Five rounded corners make 5 quarter discs, the inner corner takes one square away.
    expect(signedArea(outer)).toBeCloseTo(1800 + 220 * 3 + (5 / 4) * Math.PI * 9 - 9, 9);
    const inner = only(offsetPath(ell, 3));
    expect(signedArea(inner)).toBeCloseTo(1800 - 220 * 3 + 5 * 9 - (Math.PI / 4) * 9, 9);
    expect(radii(inner).length).toBe(1);
  });
});

describe("offsets that split, vanish or enclose", () => {
  const dumbbell = (waist: number): Path =>
    polyline(
      points(
        0,
        0,
        60,
        0,
        60,
        30 - waist / 2,
        140,
        30 - waist / 2,
        140,
        0,
        200,
        0,
        200,
        60,
        140,
        60,
        140,
        30 + waist / 2,
        60,
        30 + waist / 2,
        60,
        60,
        0,
        60,
      ),
      true,
    );

  test("a waist of 16 splits at 10 and holds at 7", () => {
    const halves = offsetPath(dumbbell(16), 10);
    expect(halves.length).toBe(2);
    for (const half of halves) expect(signedArea(half)).toBeGreaterThan(1500);
    expect(offsetPath(dumbbell(16), 7).length).toBe(1);
  });

  test("a waist of twice the distance gives two pieces, not a line between them", () => {
    const halves = offsetPath(dumbbell(20), 10);
    expect(halves.length).toBe(2);
    for (const half of halves) expect(selfCrossings(half)).toEqual([]);
  });

  test.each([
    ["200 × 18", rectanglePath([0, 0], 200, 18), 10],
    ["exactly half of 20", rectanglePath([0, 0], 200, 20), 10],
    ["a square at exactly its half", rectanglePath([0, 0], 20, 20), 10],
    ["a circle at its radius", circlePath([3, 3], 8), 8],
    ["a circle beyond", circlePath([3, 3], 8), 11],
    ["a swelled strap beyond its swell", swelledStrap(), 17],
    ["a rounded rectangle", roundedRectangle(60, 40, 12), 30],
    ["a thin triangle", polyline(points(0, 0, 100, 0, 50, 3), true), 2],
  ])("%s vanishes", (_, shape, d) => {
    expect(offsetPath(shape, d)).toEqual([]);
    expect(offsetPath(turned(shape, 0.77), d)).toEqual([]);
  });

  test("a C that closes when it grows leaves a hole, running the other way", () => {
    const c = polyline(
      points(0, 0, 60, 0, 60, 25, 50, 25, 50, 10, 10, 10, 10, 50, 50, 50, 50, 35, 60, 35, 60, 60, 0, 60),
      true,
    );
    expect(offsetPath(c, -4.9).length).toBe(1);
    const grown = offsetPath(c, -6);
    expect(grown.length).toBe(2);
    expect(grown.map((path) => Math.sign(signedArea(path))).sort()).toEqual([-1, 1]);
    const [outer, hole] = [...grown].sort((a, b) => signedArea(b) - signedArea(a)) as [Path, Path];
    expect(containsPath(outer, hole)).toBe(true);
    expect(deviation(grown, c, 6)).toBeLessThan(1e-6);
    // Grown until the hole is gone: the middle is 20 mm from the nearest side.
    expect(offsetPath(c, -20.5).length).toBe(1);
  });

  test("a hole that grows and shrinks: clockwise, d > 0 lies in the material", () => {
    const hole = reversed(circlePath([0, 0], 10));
    expect(signedArea(only(offsetPath(hole, 4)))).toBeCloseTo(-Math.PI * 196, 6);
    expect(signedArea(only(offsetPath(hole, -4)))).toBeCloseTo(-Math.PI * 36, 6);
    expect(offsetPath(hole, -11)).toEqual([]);
    const mirrored = mirroredInX(roundedRectangle(60, 40, 5));
    expect(Math.abs(signedArea(only(offsetPath(mirrored, -3))))).toBeLessThan(2400);
    expect(signedArea(only(offsetPath(anticlockwise(mirrored), -3)))).toBeGreaterThan(2400);
  });

  test("an arc and corners that are used up, in one shape", () => {
    const keyhole = closedPath(
      [-4, 0],
      [line([4, 0]), line([4, 30]), arc([-4, 30], [0, 36], true), line([-4, 0])],
    );
    const inner = only(offsetPath(keyhole, 5));
    // The slot is 8 wide and goes; of the circle round (0, 36) the middle is left.
    expect(deviation([inner], keyhole, 5)).toBeLessThan(1e-6);
    expect(Math.max(...along(inner, 50).map(([, y]) => y))).toBeCloseTo(36 + Math.hypot(4, 6) - 5, 2);
  });
});

describe("offsets against other libraries", () => {
  test("a cubic's parallel curve: bezier-js 6.1.4, point by point", () => {
    const path = oneCubic(0, 0, 30, 60, 60, -60, 90, 0);
    const bezier = new Bezier(...coordinates(path));
    for (const d of [4, -4]) {
      const beside = only(offsetPath(path, d));
      for (let i = 1; i < 60; i++) {
        // Their normal points to the left, as ours does.
        const { x, y } = bezier.offset(i / 60, d);
        expect(distanceToPath([x, y], beside)).toBeLessThan(0.001);
      }
    }
  });

  test("growth of an outline is its union with a disc on every point: polygon-clipping 0.15.7", () => {
    const shapes = [
      polyline(points(0, 0, 60, 0, 60, 20, 22, 18, 20, 50, 0, 50), true),
      polyline(points(0, 0, 30, 12, 70, -5, 50, 30, 64, 60, 20, 41), true),
      roundedRectangle(50, 30, 7),
    ];
    const d = 6;
    type Ring = [number, number][];
    // Six decimals: the library loses its way among points that are nearly the same.
    const tidy = (x: number, y: number): [number, number] => [
      Math.round(x * 1e6) / 1e6,
      Math.round(y * 1e6) / 1e6,
    ];
    const disc = ([x, y]: Point): Ring =>
      Array.from({ length: 96 }, (_, i) => (i * Math.PI) / 48 + 0.01).map((angle) =>
        tidy(x + d * Math.cos(angle), y + d * Math.sin(angle)),
      );
    const band = ([x0, y0]: Point, [x1, y1]: Point): Ring => {
      const k = d / Math.hypot(x1 - x0, y1 - y0);
      const [x, y] = [(y1 - y0) * k, (x0 - x1) * k];
      return [tidy(x0 + x, y0 + y), tidy(x1 + x, y1 + y), tidy(x1 - x, y1 - y), tidy(x0 - x, y0 - y)];
    };
    for (const shape of shapes) {
      const corners = flatten(shape, 0.02);
      const grown = polygonClipping.union(
        [corners.map(([x, y]) => tidy(x, y))],
        ...corners.map((a, i): [Ring] => [band(a, corners[(i + 1) % corners.length]!)]),
        ...corners.map((corner): [Ring] => [disc(corner)]),
      );
      const area = (ring: readonly (readonly [number, number])[]): number =>
        ring.slice(1).reduce((sum, [x, y], i) => sum + (ring[i]![0] * y - x * ring[i]![1]) / 2, 0);
      const theirs = grown.flat().reduce((sum, ring) => sum + area(ring), 0);
      expect(areaOf(offsetPath(shape, -d))).toBeGreaterThan(theirs - 1e-6);
      expect(areaOf(offsetPath(shape, -d)) - theirs).toBeLessThan(1.5);
    }
  });

  test("any outline, either way: pieces and area as clipper2-ts 2.0.1 finds them", () => {
    const thick = (path: Path): boolean => Math.abs(signedArea(path)) > 0.05;
    fc.assert(
      fc.property(anyOutline, fc.double({ min: -25, max: 25, noNaN: true }), (path, d) => {
        if (Math.abs(d) < 0.2 || selfCrossings(path).length > 0) return;
        const [ours, theirs] = [offsetPath(path, d), polygonOffset(path, -d)];
        const length = theirs.reduce((sum, ring) => sum + pathLength(ring), 1);
        expect(ours.filter(thick).length).toBe(theirs.filter(thick).length);
        expect(Math.abs(areaOf(ours) - areaOf(theirs))).toBeLessThan(0.005 * length);
      }),
      { seed: 81, numRuns: 40 },
    );
  });
});

describe("offset properties", () => {
  const anyDistance = fc.double({ min: -25, max: 25, noNaN: true });

  test("every point lies at the distance, on the right side, and no ring crosses itself", () => {
    fc.assert(
      fc.property(anyOutline, anyDistance, (path, d) => {
        if (Math.abs(d) < 0.01 || selfCrossings(path).length > 0) return;
        const rings = offsetPath(path, d);
        expect(deviation(rings, path, d)).toBeLessThan(0.002);
        for (const ring of rings) {
          expect(ring.closed).toBe(true);
          expect(selfCrossings(ring)).toEqual([]);
          expect(d > 0 ? containsPath(path, ring) : containsPath(ring, path) || signedArea(ring) < 0).toBe(
            true,
          );
        }
      }),
      { seed: 82, numRuns: 120 },
    );
  });

  test("nothing is missing: whatever lies at the full distance beside the path is on the result", () => {
    fc.assert(
      fc.property(fc.oneof(anyOutline, anyOpenPath), anyDistance, (path, d) => {
        if (Math.abs(d) < 0.01 || selfCrossings(path).length > 0) return;
        const results = offsetPath(path, d);
        for (let i = 0; i < 50; i++) {
          const s = (pathLength(path) * (i + 0.5)) / 50;
          const [[x, y], angle] = [pointAt(path, s), tangentAt(path, s)];
          const beside: Point = [x - d * Math.sin(angle), y + d * Math.cos(angle)];
          if (distanceToPath(beside, path) < Math.abs(d) - 1e-6) continue;
          expect(Math.min(Infinity, ...results.map((result) => distanceToPath(beside, result)))).toBeLessThan(
            0.01,
          );
        }
      }),
      { seed: 83, numRuns: 100 },
    );
  });

  test("open paths: at the distance, to the left for d > 0", () => {
    fc.assert(
      fc.property(anyOpenPath, anyDistance, (path, d) => {
        if (Math.abs(d) < 0.01 || selfCrossings(path).length > 0) return;
        for (const run of offsetPath(path, d)) expect(deviation([run], path, d)).toBeLessThan(0.002);
      }),
      { seed: 84, numRuns: 100 },
    );
    const strap = polyline(points(0, 0, 100, 0, 100, 50));
    expect(only(offsetPath(strap, 5)).segments.map(({ to }) => to)).toEqual(points(95, 5, 95, 50));
    const right = only(offsetPath(strap, -5));
    expect(right.start).toEqual([0, -5]);
    expect(pathLength(right)).toBeCloseTo(150 + 2.5 * Math.PI, 9);
    expect(right.closed).toBe(false);
  });

  test("a seam line does not come nearer than its distance to any other part: a hook", () => {
    const hook = polyline(points(0, 0, 60, 0, 60, 12, 20, 12));
    const inside = offsetPath(hook, 4);
    expect(deviation(inside, hook, 4)).toBeLessThan(1e-6);
    expect(offsetPath(hook, 7).every((run) => deviation([run], hook, 7) < 1e-6)).toBe(true);
    expect(offsetPath(hook, 7).length).toBe(1);
  });
});

describe("degenerate offsets", () => {
  test("nothing, a point, no distance, no number", () => {
    expect(offsetPath(openPath([1, 1], []), 3)).toEqual([]);
    expect(offsetPath(closedPath([1, 1], [line([1, 1])]), 3)).toEqual([]);
    const square = rectanglePath([0, 0], 5, 5);
    expect(offsetPath(square, 0)).toEqual([square]);
    expect(() => offsetPath(square, Number.NaN)).toThrow(/cannot offset by NaN/);
    expect(() => offsetPath(square, Infinity)).toThrow(RangeError);
  });

  test("segments of no length, and a line cut into many", () => {
    const crumbs = closedPath(
      [0, 0],
      [line([0, 0]), line([20, 0]), line([40, 0]), line([40, 0]), line([40, 30]), line([0, 30])],
    );
    expect(signedArea(only(offsetPath(crumbs, 5)))).toBeCloseTo(600, 9);
  });

  test("a cusp and a near-cusp, both sides", () => {
    for (const path of [
      neile(50),
      oneCubic(0, 0, 100, 100.5, 0, 100, 100, 0),
      oneCubic(0, 0, 60, 80, 40, 80, 100, 0),
    ]) {
      for (const d of [1, -1, 8, -8]) {
        const runs = offsetPath(path, d);
        expect(runs.length).toBeGreaterThan(0);
        expect(deviation(runs, path, d, 300)).toBeLessThan(0.002);
      }
    }
  });

  test("a spike: round its tip outside", () => {
    const spike = polyline(points(0, 0, 80, 1, 0, 2), true);
    const outer = only(offsetPath(spike, -5));
    expect(deviation([outer], spike, 5)).toBeLessThan(1e-6);
    expect(signedArea(outer)).toBeCloseTo(80 + 5 * pathLength(spike) + Math.PI * 25, 6);
  });

  test("same input, same output; the source is not changed", () => {
    const [a, b] = [swelledStrap(), swelledStrap()];
    expect(JSON.stringify(offsetPath(a, 3))).toBe(JSON.stringify(offsetPath(b, 3)));
    expect(a).toEqual(swelledStrap());
  });

  test("a cubic needs few cubics beside it: two for a gentle one, four for a quarter ellipse, five for an S", () => {
    expect(only(offsetPath(swelledStrap(), 3)).segments.length).toBe(6 + 4 * 2);
    expect(only(offsetPath(ellipse(60, 40, 4), 10)).segments.length).toBe(4 * 4);
    expect(only(offsetPath(oneCubic(0, 0, 60, 40, -20, 60, 50, 100), -5)).segments.length).toBe(5);
  });

  test("the polygon net lies within a hundredth of the exact offset", () => {
    for (const d of [3, -3]) {
      const [exact, polygon] = [only(offsetPath(swelledStrap(), d)), only(polygonOffset(swelledStrap(), -d))];
      for (const { to } of polygon.segments) expect(distanceToPath(to, exact)).toBeLessThan(0.01);
      expect(Math.abs(signedArea(exact) - signedArea(polygon))).toBeLessThan(0.005 * pathLength(exact));
    }
  });
});
