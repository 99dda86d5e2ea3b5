import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  arc,
  boundsOf,
  circlePath,
  distanceToPath,
  flatten,
  moved,
  openPath,
  type Point,
  pathLength,
  pointAt,
  unionBox,
} from "../../src/geometry/index.ts";
import {
  anyOutline,
  coordinates,
  ellipse,
  neile,
  oneCubic,
  points,
  roundedRectangle,
  swelledStrap,
} from "./shapes.ts";

describe("bounds", () => {
  test("a circle's box is its diameter; an arc's reaches only where it goes", () => {
    expect(boundsOf(circlePath([3, 4], 5))).toEqual({ minX: -2, minY: -1, maxX: 8, maxY: 9 });
    const top = boundsOf(openPath([3, 4], [arc([-3, 4], [0, 0], true)]));
    expect([top.minX, top.minY, top.maxX, top.maxY].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([
      -3, 4, 3, 5,
    ]);
    const bottom = boundsOf(openPath([3, 4], [arc([-3, 4], [0, 0], false)]));
    expect(bottom.minY).toBeCloseTo(-5, 12);
    expect(bottom.maxX).toBeCloseTo(5, 12);
  });

  test("cubics: bezier-js 6.1.4", () => {
    for (const path of [oneCubic(0, 0, 60, 40, -20, 60, 50, 100), oneCubic(0, 0, 120, 80, -90, 70, 5, -3)]) {
      const { x, y } = new Bezier(...coordinates(path)).bbox();
      const box = boundsOf(path);
      expect(box.minX).toBeCloseTo(x.min, 9);
      expect(box.maxX).toBeCloseTo(x.max, 9);
      expect(box.minY).toBeCloseTo(y.min, 9);
      expect(box.maxY).toBeCloseTo(y.max, 9);
    }
  });

  test("all of the path lies within, and every side is reached", () => {
    fc.assert(
      fc.property(anyOutline, (path) => {
        const { minX, minY, maxX, maxY } = boundsOf(path);
        const points = Array.from({ length: 1500 }, (_, i) => pointAt(path, (pathLength(path) * i) / 1500));
        const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
        expect(Math.min(...xs)).toBeGreaterThan(minX - 1e-9);
        expect(Math.max(...ys)).toBeLessThan(maxY + 1e-9);
        expect(Math.min(...xs) - minX).toBeLessThan(0.4);
        expect(maxX - Math.max(...xs)).toBeLessThan(0.4);
        expect(Math.min(...ys) - minY).toBeLessThan(0.4);
      }),
      { seed: 41, numRuns: 40 },
    );
  });

  test("what was found for a path is kept with it", () => {
    const path = swelledStrap();
    expect(boundsOf(path)).toBe(boundsOf(path));
    expect(boundsOf(path)).not.toBe(boundsOf(swelledStrap()));
  });

  test("boxes together", () => {
    const boxes = [circlePath([0, 0], 1), circlePath([9, 2], 2)].map(boundsOf);
    expect(unionBox(boxes)).toEqual({ minX: -1, minY: -1, maxX: 11, maxY: 4 });
    expect(() => unionBox([])).toThrow(RangeError);
    expect(boundsOf(openPath([2, 3], []))).toEqual({ minX: 2, minY: 3, maxX: 2, maxY: 3 });
  });
});

describe("flatten", () => {
  const deviation = (points: readonly Point[], path: Parameters<typeof pathLength>[0]): number => {
    // The furthest that the path itself lies from the chords, by 4,000 points on it.
    const chords = openPath(
      points[0]!,
      [...points.slice(1), ...(path.closed ? [points[0]!] : [])].map((to) => ({ kind: "line", to })),
    );
    const total = pathLength(path);
    const off = Array.from({ length: 4000 }, (_, i) =>
      distanceToPath(pointAt(path, (total * i) / 4000), chords),
    );
    return Math.max(...off);
  };

  test.each([
    ["rounded rectangle", roundedRectangle(120, 70, 15)],
    ["swelled strap", swelledStrap()],
    ["ellipse", ellipse(60, 40, 4)],
    ["cusp", neile(100)],
  ])("%s: chords stray no further than asked, and not needlessly little", (_, path) => {
    for (const tolerance of [0.5, 0.02]) {
      const off = deviation(flatten(path, tolerance), path);
      expect(off).toBeLessThan(tolerance);
      expect(off).toBeGreaterThan(tolerance / 10);
    }
  });

  test("a circle takes the known number of chords: π / acos(1 − tolerance / r), a half at a time", () => {
    const least = Math.PI / Math.acos(1 - 0.01 / 20);
    const { length } = flatten(circlePath([0, 0], 20), 0.01);
    expect(length).toBeGreaterThanOrEqual(least);
    expect(length).toBeLessThan(least + 2);
  });

  test("a closed path does not repeat its start; crumbs leave no double points", () => {
    const square = flatten(roundedRectangle(20, 20, 0), 0.1);
    expect(square).toEqual(points(-10, -10, 10, -10, 10, 10, -10, 10));
    expect(flatten(openPath([1, 1], []), 0.1)).toEqual([[1, 1]]);
    expect(() => flatten(circlePath([0, 0], 1), 0)).toThrow(RangeError);
    expect(flatten(moved(circlePath([0, 0], 1), [5, 5]), 10).length).toBeGreaterThanOrEqual(2);
  });
});
