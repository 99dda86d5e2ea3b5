import fc from "fast-check";
import polygonClipping from "polygon-clipping";
import { describe, expect, test } from "vitest";
import {
  circlePath,
  containsPoint,
  distanceToPath,
  flatten,
  intersect,
  mirroredInX,
  moved,
  openPath,
  type Path,
  pathLength,
  pointAt,
  rectanglePath,
  selfCrossings,
  signedArea,
  subtract,
  turned,
  unite,
} from "../../src/geometry/index.ts";
import { anyOutline, swelledStrap } from "./shapes.ts";

const areaOf = (paths: readonly Path[]): number => paths.reduce((sum, path) => sum + signedArea(path), 0);
const plate = rectanglePath([0, 0], 100, 60);

describe("regions in closed form", () => {
  test("the lens of two circles: 2r² acos(d/2r) − d/2 √(4r² − d²)", () => {
    const [r, d] = [60, 40];
    const lens = 2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);
    const [a, b] = [circlePath([0, 0], r), circlePath([d, 0], r)];
    expect(Math.abs(areaOf(intersect(a, b)) - lens)).toBeLessThan(0.02);
    expect(Math.abs(areaOf(unite([a, b])) - (2 * Math.PI * r * r - lens))).toBeLessThan(0.05);
    expect(Math.abs(areaOf(subtract(a, [b])) - (Math.PI * r * r - lens))).toBeLessThan(0.02);
  });

  test("arcs come back within 0.0001 mm of themselves", () => {
    const [piece] = subtract(circlePath([0, 0], 50), [rectanglePath([0, -60], 60, 120)]);
    for (let i = 0; i < 100; i++) {
      const [x, y] = pointAt(piece!, (pathLength(piece!) * i) / 100);
      if (x < -0.001) expect(Math.abs(Math.hypot(x, y) - 50)).toBeLessThan(0.0003);
    }
  });

  test("outlines run anticlockwise and holes clockwise; an island in a hole anticlockwise again", () => {
    const holed = subtract(plate, [circlePath([50, 30], 20)]);
    expect(holed.map((path) => Math.sign(signedArea(path)))).toEqual([1, -1]);
    const island = unite([holed, circlePath([50, 30], 10)]);
    expect(island.map((path) => Math.sign(signedArea(path)))).toEqual([1, -1, 1]);
    expect(areaOf(island)).toBeCloseTo(6000 - 300 * Math.PI, 1);
    expect(areaOf(subtract(holed, [rectanglePath([0, 0], 50, 60)]))).toBeCloseTo(3000 - 200 * Math.PI, 1);
  });

  test("shapes that touch, overlap, cover, miss", () => {
    expect(areaOf(unite([plate, moved(plate, [100, 0])]))).toBeCloseTo(12000, 6);
    expect(unite([plate, moved(plate, [100.0000001, 0])]).length).toBe(1);
    expect(unite([plate, moved(plate, [300, 0])]).length).toBe(2);
    expect(unite([plate, moved(plate, [100, 60])]).length).toBe(2);
    expect(
      areaOf(unite([plate, rectanglePath([50, 30], 100, 60), rectanglePath([-20, -20], 40, 40)])),
    ).toBeCloseTo(11700, 6);
    expect(
      areaOf(subtract(plate, [rectanglePath([10, 10], 20, 20), rectanglePath([20, 20], 20, 20)])),
    ).toBeCloseTo(5300, 6);
    expect(intersect(plate, moved(plate, [100, 0]))).toEqual([]);
    expect(intersect(plate, moved(plate, [300, 0]))).toEqual([]);
    expect(subtract(plate, [rectanglePath([-1, -1], 200, 200)])).toEqual([]);
    expect(areaOf(subtract(plate, [moved(plate, [300, 0])]))).toBeCloseTo(6000, 9);
    expect(areaOf(unite([plate, plate]))).toBeCloseTo(6000, 9);
    expect(areaOf(intersect(plate, plate))).toBeCloseTo(6000, 9);
    expect(unite([])).toEqual([]);
    // A sliver half a thousandth wide is nothing, a hundredth is something.
    expect(intersect(plate, moved(plate, [99.9995, 0]))).toEqual([]);
    expect(intersect(plate, moved(plate, [99.99, 0])).length).toBe(1);
    expect(areaOf(subtract(plate, []))).toBeCloseTo(6000, 9);
  });

  test("a mirrored outline, which runs clockwise, is as much an area as any", () => {
    expect(areaOf(unite([plate, mirroredInX(plate)]))).toBeCloseTo(12000, 6);
    expect(areaOf(unite([mirroredInX(plate)]))).toBeCloseTo(6000, 9);
    expect(() => unite([openPath([0, 0], [])])).toThrow(/open path has no area/);
  });

  test("lines stay lines and cubics cubics", () => {
    const kinds = (paths: readonly Path[]): string[] =>
      paths.flatMap(({ segments }) => segments.map(({ kind }) => kind));
    expect(new Set(kinds(unite([plate, rectanglePath([50, 30], 100, 60)])))).toEqual(new Set(["line"]));
    expect(
      kinds(subtract(swelledStrap(), [rectanglePath([-20, -20], 150, 40)])).filter((kind) => kind === "cubic")
        .length,
    ).toBeGreaterThan(1);
  });
});

describe("regions against polygon-clipping 0.15.7", () => {
  type Ring = [number, number][];
  const ring = (path: Path): [Ring] => [flatten(path, 0.002).map(([x, y]) => [x, y])];
  const theirArea = (shapes: readonly (readonly (readonly (readonly [number, number])[])[])[]): number =>
    shapes.flat().reduce((sum, points) => {
      return (
        sum +
        points.slice(1).reduce((part, [x, y], i) => part + (points[i]![0] * y - x * points[i]![1]) / 2, 0)
      );
    }, 0);

  test("any two outlines: the same areas", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, fc.double({ min: -3, max: 3, noNaN: true }), (a, other, angle) => {
        const b = moved(turned(other, angle), [25, -10]);
        if (selfCrossings(a).length > 0 || selfCrossings(b).length > 0) return;
        const slack = 0.005 * (pathLength(a) + pathLength(b));
        const [p, q] = [ring(a), ring(b)];
        expect(Math.abs(areaOf(unite([a, b])) - theirArea(polygonClipping.union(p, q)))).toBeLessThan(slack);
        expect(
          Math.abs(areaOf(intersect(a, b)) - theirArea(polygonClipping.intersection(p, q))),
        ).toBeLessThan(slack);
        expect(Math.abs(areaOf(subtract(a, [b])) - theirArea(polygonClipping.difference(p, q)))).toBeLessThan(
          slack,
        );
      }),
      { seed: 91, numRuns: 30 },
    );
  });

  test("what lies in both lies in each; the edge of a union lies on an edge", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, (a, other) => {
        const b = moved(other, [40, 5]);
        if (selfCrossings(a).length > 0 || selfCrossings(b).length > 0) return;
        for (const part of intersect(a, b)) {
          const point = pointAt(part, pathLength(part) * 0.37);
          expect(containsPoint(a, point) || distanceToPath(point, a) < 0.002).toBe(true);
          expect(containsPoint(b, point) || distanceToPath(point, b) < 0.002).toBe(true);
        }
        for (const part of unite([a, b])) {
          const point = pointAt(part, pathLength(part) * 0.61);
          expect(Math.min(distanceToPath(point, a), distanceToPath(point, b))).toBeLessThan(0.002);
        }
      }),
      { seed: 92, numRuns: 30 },
    );
  });
});
