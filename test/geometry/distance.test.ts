import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  circlePath,
  distanceBetween,
  distanceToPath,
  flatten,
  moved,
  nearestOnPath,
  openPath,
  type Path,
  type Point,
  pathLength,
  pointAt,
  polyline,
  rectanglePath,
  slotPath,
  turned,
} from "../../src/geometry/index.ts";
import {
  anyOpenPath,
  anyOutline,
  coordinates,
  inPaper,
  neile,
  oneCubic,
  points,
  swelledStrap,
} from "./shapes.ts";

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const anyPoint = fc.tuple(
  fc.double({ min: -120, max: 120, noNaN: true }),
  fc.double({ min: -120, max: 120, noNaN: true }),
);

/** Least distance between two polygons' corners and sides: brute force over every pair. */
function polygonGap(a: Path, b: Path, tolerance: number): number {
  const sides = (path: Path): (readonly [Point, Point])[] => {
    const points = flatten(path, tolerance);
    const last = path.closed ? [[points.at(-1)!, points[0]!] as const] : [];
    return [...points.slice(1).map((q, i) => [points[i]!, q] as const), ...last];
  };
  const toSide = (p: Point, [a, b]: readonly [Point, Point]): number => {
    const [x, y] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / (x * x + y * y)));
    return Math.hypot(p[0] - a[0] - t * x, p[1] - a[1] - t * y);
  };
  let best = Infinity;
  for (const s of sides(a)) {
    for (const r of sides(b))
      best = Math.min(best, toSide(s[0], r), toSide(s[1], r), toSide(r[0], s), toSide(r[1], s));
  }
  return best;
}

describe("nearest point", () => {
  test("closed forms: circle and rectangle, from inside and outside", () => {
    const circle = circlePath([10, 0], 6);
    expect(distanceToPath([10, 1], circle)).toBeCloseTo(5, 12);
    expect(distanceToPath([10, 0], circle)).toBeCloseTo(6, 12);
    expect(distanceToPath([22, 5], circle)).toBeCloseTo(7, 12);
    const box = rectanglePath([0, 0], 30, 20);
    expect(distanceToPath([33, 24], box)).toBeCloseTo(5, 12);
    expect(nearestOnPath([12, 3], box)).toEqual({ point: [12, 0], at: 12, distance: 3 });
  });

  test("cubics: bezier-js 6.1.4 and paper 0.12.20, whichever is nearer", () => {
    const path = oneCubic(0, 0, 60, 40, -20, 60, 50, 100);
    const [bezier, item] = [new Bezier(...coordinates(path)), inPaper(path)];
    for (let i = 0; i < 60; i++) {
      const point: Point = [120 * Math.cos(i * 2.4) + 20, 90 * Math.sin(i * 1.7) + 50];
      const theirs = bezier.project({ x: point[0], y: point[1] });
      const best = Math.min(
        apart(point, [theirs.x, theirs.y]),
        item.getNearestPoint(point as [number, number]).getDistance(point as [number, number]),
      );
      // Ours may find a nearer one than both; never a further one.
      expect(distanceToPath(point, path)).toBeLessThan(best + 1e-6);
      expect(distanceToPath(point, path)).toBeGreaterThan(best - 0.05);
    }
  });

  test("no point of the path is nearer, and `at` leads to the point", () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, (path, point) => {
        const near = nearestOnPath(point, path);
        expect(near.distance).toBeCloseTo(distanceToPath(point, path), 12);
        expect(apart(near.point, point)).toBeCloseTo(near.distance, 9);
        expect(apart(pointAt(path, near.at), near.point)).toBeLessThan(1e-6);
        const total = pathLength(path);
        for (let i = 0; i < 200; i++) {
          expect(apart(pointAt(path, (total * i) / 200), point)).toBeGreaterThan(near.distance - 1e-9);
        }
      }),
      { seed: 51, numRuns: 50 },
    );
  });

  test("degenerate: a point, a cusp, a line drawn as a cubic", () => {
    expect(nearestOnPath([3, 4], openPath([0, 0], []))).toEqual({ point: [0, 0], at: 0, distance: 5 });
    expect(distanceToPath([-30, 0], neile(100))).toBeCloseTo(30, 9);
    expect(distanceToPath([15, 7], oneCubic(0, 0, 10, 0, 20, 0, 30, 0))).toBeCloseTo(7, 12);
  });
});

describe("distance between paths", () => {
  test("closed forms: circles apart and inside one another, circle and slot, squares", () => {
    expect(distanceBetween(circlePath([0, 0], 5), circlePath([13, 0], 3))).toBeCloseTo(5, 9);
    expect(distanceBetween(circlePath([0, 0], 20), circlePath([3, 4], 6))).toBeCloseTo(9, 9);
    expect(distanceBetween(circlePath([0, 0], 20), circlePath([0, 0], 12))).toBeCloseTo(8, 9);
    expect(distanceBetween(circlePath([3, 10], 2), slotPath([0, 0], 30, 6))).toBeCloseTo(5, 9);
    const square = rectanglePath([0, 0], 10, 10);
    expect(distanceBetween(square, moved(square, [13, 14]))).toBeCloseTo(5, 9);
    expect(distanceBetween(square, turned(rectanglePath([30, 0], 8, 8), Math.PI / 4))).toBeGreaterThan(5);
  });

  test("the parabola y = x² / 100 and the line y = x − 40 come nearest where its slope is 1, at (50, 25)", () => {
    const parabola = oneCubic(-100, 100, -100 / 3, -100 / 3, 100 / 3, -100 / 3, 100, 100);
    const slope = polyline(points(-40, -80, 120, 80));
    expect(distanceBetween(parabola, slope)).toBeCloseTo(15 / Math.SQRT2, 9);
  });

  test("crossing and touching are 0", () => {
    const strap = swelledStrap();
    expect(distanceBetween(strap, polyline(points(130, 0, 130, 40)))).toBe(0);
    expect(distanceBetween(strap, polyline(points(95, 0, 101, 40)))).toBe(0);
    expect(distanceBetween(circlePath([0, 0], 5), circlePath([6, 1], 5))).toBe(0);
    expect(distanceBetween(circlePath([0, 0], 5), circlePath([10, 0], 5))).toBe(0);
    expect(distanceBetween(strap, strap)).toBe(0);
    expect(distanceBetween(rectanglePath([0, 0], 5, 5), rectanglePath([5, 5], 5, 5))).toBe(0);
  });

  test("one path's distance from any other: brute force over polygons", () => {
    fc.assert(
      fc.property(anyOutline, anyOpenPath, fc.double({ min: 0, max: 6.3, noNaN: true }), (a, b, angle) => {
        const other = moved(b, [190 * Math.cos(angle), 190 * Math.sin(angle)]);
        const distance = distanceBetween(a, other);
        if (distance === 0) return;
        expect(Math.abs(distance - polygonGap(a, other, 0.02))).toBeLessThan(0.05);
        expect(distanceBetween(other, a)).toBeCloseTo(distance, 3);
      }),
      { seed: 52, numRuns: 40 },
    );
  });

  test("cubics side by side, 3 mm apart all along", () => {
    const upper = oneCubic(0, 3, 30, 13, 60, -7, 90, 3);
    const distance = distanceBetween(oneCubic(0, 0, 30, 10, 60, -10, 90, 0), upper);
    expect(Math.abs(distance - polygonGap(upper, moved(upper, [0, -3]), 0.0005))).toBeLessThan(0.0025);
  });

  test("a path that is a point", () => {
    const point = openPath([0, 9], []);
    expect(distanceBetween(point, circlePath([0, 0], 5))).toBeCloseTo(4, 12);
    expect(distanceBetween(circlePath([0, 0], 5), point)).toBeCloseTo(4, 12);
    expect(distanceBetween(point, openPath([3, 5], []))).toBe(5);
  });
});
