import { Bezier } from "bezier-js";
import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  curvatureAt,
  line,
  openPath,
  pathLength,
  pointAt,
  polyline,
  slotPath,
  subPath,
  tangentAt,
} from "../../src/geometry/index.ts";
import {
  anyOpenPath,
  anyOutline,
  coordinates,
  ellipse,
  inPaper,
  neile,
  oneCubic,
  points,
  roundedRectangle,
  svgData,
  swelledStrap,
} from "./shapes.ts";

const apart = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);

describe("length against closed forms", () => {
  test("circle 2πr, slot 2(L − w) + πw", () => {
    expect(pathLength(circlePath([3, -7], 12.5))).toBeCloseTo(2 * Math.PI * 12.5, 10);
    expect(pathLength(slotPath([5, 5], 20, 6, 0.7))).toBeCloseTo(2 * 14 + Math.PI * 6, 10);
  });

  test("ellipse: Ramanujan's second formula, good to 1e-11 here (Ramanujan 1914, Modular equations; from memory)", () => {
    for (const [a, b] of [
      [60, 40],
      [50, 45],
      [30, 29],
    ] as const) {
      const h = ((a - b) / (a + b)) ** 2;
      const ramanujan = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
      expect(pathLength(ellipse(a, b, 128))).toBeCloseTo(ramanujan, 6);
    }
  });

  test("parabola y = x² from 0 to 1: (2√5 + asinh 2) / 4", () => {
    const parabola = oneCubic(0, 0, 1 / 3, 0, 2 / 3, 1 / 3, 1, 1);
    expect(pathLength(parabola)).toBeCloseTo((2 * Math.sqrt(5) + Math.asinh(2)) / 4, 11);
  });

  test("Neile's parabola with its cusp: (13√13 − 8) / 27 from the cusp to t = 1 (Neile 1657; from memory)", () => {
    const half = (13 * Math.sqrt(13) - 8) / 27;
    expect(pathLength(neile(100))).toBeCloseTo(200 * half, 8);
    const fromCusp = oneCubic(0, 0, 0, 0, 100 / 3, 0, 100, 100);
    expect(pathLength(fromCusp)).toBeCloseTo(100 * half, 8);
    expect(pointAt(neile(100), 100 * half)[0]).toBeCloseTo(0, 3);
  });
});

describe("length against other libraries", () => {
  const gentle = oneCubic(0, 0, 30, 10, 60, -10, 90, 0);
  const sShaped = oneCubic(0, 0, 60, 40, -20, 60, 50, 100);

  // Their own errors on these: under 1e-9 and 1e-8 relative (measured against 20,000 panels).
  test.each([
    ["gentle", gentle],
    ["S", sShaped],
  ])("%s cubic: bezier-js 6.1.4 and svg-path-properties 1.3.0", (_, path) => {
    const length = pathLength(path);
    expect(Math.abs(new Bezier(...coordinates(path)).length() / length - 1)).toBeLessThan(1e-8);
    expect(Math.abs(new svgPathProperties(svgData(path)).getTotalLength() / length - 1)).toBeLessThan(1e-7);
  });

  test("lines, arcs and cubics in one outline: svg-path-properties 1.3.0", () => {
    for (const path of [roundedRectangle(120, 70, 15), swelledStrap()]) {
      expect(Math.abs(new svgPathProperties(svgData(path)).getTotalLength() - pathLength(path))).toBeLessThan(
        1e-3,
      );
    }
  });

  // Their places on cubics are up to 0.09 mm off, so theirs are taken on lines and arcs only.
  test("points along lines and arcs: svg-path-properties 1.3.0", () => {
    const path = roundedRectangle(120, 70, 15);
    const theirs = new svgPathProperties(svgData(path));
    for (let i = 0; i < 40; i++) {
      const { x, y } = theirs.getPointAtLength((pathLength(path) * i) / 40);
      expect(apart([x, y], pointAt(path, (pathLength(path) * i) / 40))).toBeLessThan(1e-4);
    }
  });

  test("points along lines and cubics: paper 0.12.20", () => {
    const path = openPath([40, -8], swelledStrap().segments.slice(1, 4));
    const theirs = inPaper(path);
    for (let i = 0; i < 40; i++) {
      const { x, y } = theirs.getPointAt((pathLength(path) * i) / 40);
      expect(apart([x, y], pointAt(path, (pathLength(path) * i) / 40))).toBeLessThan(1e-4);
    }
  });

  test("curvature and direction of a cubic: bezier-js 6.1.4", () => {
    const theirs = new Bezier(...coordinates(sShaped));
    for (const t of [0.1, 0.35, 0.5, 0.8]) {
      const s = new Bezier(...theirs.split(t).left.points.flatMap(({ x, y }) => [x, y])).length();
      expect(curvatureAt(sShaped, s)).toBeCloseTo(theirs.curvature(t).k, 6);
      const { x, y } = theirs.get(t);
      expect(apart(pointAt(sShaped, s), [x, y])).toBeLessThan(1e-5);
    }
  });
});

describe("curvature and direction", () => {
  test("a left turn is positive, by the radius", () => {
    const left = circlePath([0, 0], 8);
    expect(curvatureAt(left, 5)).toBeCloseTo(1 / 8, 12);
    const right = openPath([0, 8], [arc([8, 0], [0, 0], false)]);
    expect(curvatureAt(right, 5)).toBeCloseTo(-1 / 8, 12);
    expect(curvatureAt(polyline(points(0, 0, 9, 2)), 5)).toBe(0);
  });

  test("y = x²: curvature 2 / (1 + 4x²)^1.5 at its start, its tip the origin", () => {
    const parabola = oneCubic(0, 0, 1 / 3, 0, 2 / 3, 1 / 3, 1, 1);
    expect(curvatureAt(parabola, 0)).toBeCloseTo(2, 9);
    expect(curvatureAt(parabola, pathLength(parabola))).toBeCloseTo(2 / 5 ** 1.5, 9);
  });

  test("at a corner the direction is the one in which the path goes on", () => {
    const square = polyline(points(0, 0, 10, 0, 10, 10, 0, 10), true);
    expect(tangentAt(square, 10)).toBeCloseTo(Math.PI / 2, 12);
    expect(tangentAt(square, 40)).toBeCloseTo(0, 12);
    const angle = polyline(points(0, 0, 10, 0, 10, 10));
    expect(tangentAt(angle, 20)).toBeCloseTo(Math.PI / 2, 12);
  });

  test("a cubic whose handles are drawn in still has a direction at both ends", () => {
    const drawnIn = oneCubic(0, 0, 0, 0, 10, 10, 10, 10);
    expect(tangentAt(drawnIn, 0)).toBeCloseTo(Math.PI / 4, 12);
    expect(tangentAt(drawnIn, pathLength(drawnIn))).toBeCloseTo(Math.PI / 4, 12);
    expect(curvatureAt(drawnIn, 0)).toBe(0);
  });
});

describe("places and stretches", () => {
  test("parts of a path add up to it, and join where they should", () => {
    fc.assert(
      fc.property(anyOpenPath, fc.double({ min: 0, max: 1, noNaN: true }), (path, share) => {
        const total = pathLength(path);
        const [a, b] = [subPath(path, 0, share * total), subPath(path, share * total, total)];
        // A part shorter than 1e-6 mm counts as nothing.
        expect(Math.abs(pathLength(a) + pathLength(b) - total)).toBeLessThan(2e-6);
        expect(apart(pointAt(a, pathLength(a)), b.start)).toBeLessThan(2e-6);
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test("a place within a part is the same place of the whole; arcs stay arcs", () => {
    fc.assert(
      fc.property(anyOutline, fc.double({ min: 0.05, max: 0.9, noNaN: true }), (path, share) => {
        const total = pathLength(path);
        const part = subPath(path, share * total, total * 1.2 * share + 1);
        for (const s of [0, 0.3 * pathLength(part), pathLength(part)]) {
          expect(apart(pointAt(part, s), pointAt(path, share * total + s))).toBeLessThan(1e-6);
        }
        const kinds = new Set(path.segments.map(({ kind }) => kind));
        for (const { kind } of part.segments) expect(kinds.has(kind)).toBe(true);
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  test("a part of a cubic has the handles of de Casteljau: bezier-js 6.1.4", () => {
    const path = oneCubic(0, 0, 60, 40, -20, 60, 50, 100);
    const { right } = new Bezier(...coordinates(path)).split(0.4);
    const rest = subPath(path, pathLength(path) - right.length(), pathLength(path));
    right.points
      .flatMap(({ x, y }) => [x, y])
      .forEach((value, i) => {
        expect(coordinates(rest)[i]).toBeCloseTo(value, 5);
      });
  });

  test("a closed path is run round its start", () => {
    const circle = circlePath([0, 0], 10);
    const round = 2 * Math.PI * 10;
    expect(apart(pointAt(circle, round), [10, 0])).toBeLessThan(1e-12);
    expect(apart(pointAt(circle, -round / 4), [0, -10])).toBeLessThan(1e-9);
    const over = subPath(circle, 0.75 * round, 0.25 * round);
    expect(pathLength(over)).toBeCloseTo(round / 2, 9);
    expect(apart(pointAt(over, round / 4), [10, 0])).toBeLessThan(1e-9);
    expect(pathLength(subPath(circle, 0, round))).toBeCloseTo(round, 9);
    expect(pathLength(subPath(circle, 5, 5 + round))).toBeCloseTo(round, 9);
  });

  test("an open path has nothing beyond its ends", () => {
    const strap = polyline(points(0, 0, 100, 0));
    expect(() => pointAt(strap, 100.01)).toThrow(/100 mm long has no place at 100.01 mm/);
    expect(() => pointAt(strap, Number.NaN)).toThrow(RangeError);
    expect(() => subPath(strap, 60, 50)).toThrow(RangeError);
    expect(() => subPath(circlePath([0, 0], 1), 0, 7)).toThrow(/more than once round/);
    expect(pointAt(strap, 100.0000001)).toEqual([100, 0]);
  });
});

describe("degenerate paths", () => {
  test("segments of no length change nothing", () => {
    const clean = polyline(points(0, 0, 10, 0, 10, 10));
    const crumbs = openPath(
      [0, 0],
      [line([0, 0]), line([10, 0]), arc([10, 0], [12, 0], true), line([10, 0]), line([10, 10])],
    );
    expect(pathLength(crumbs)).toBe(pathLength(clean));
    for (const s of [0, 5, 10, 15, 20]) {
      expect(pointAt(crumbs, s)).toEqual(pointAt(clean, s));
      expect(tangentAt(crumbs, s)).toBe(tangentAt(clean, s));
    }
  });

  test("a path that is a point has length 0 and one place", () => {
    for (const point of [openPath([2, 3], []), closedPath([2, 3], [line([2, 3])])]) {
      expect(pathLength(point)).toBe(0);
      expect(pointAt(point, 0)).toEqual([2, 3]);
      expect(tangentAt(point, 0)).toBe(0);
      expect(subPath(point, 0, 0).segments).toEqual([]);
    }
  });

  test("a near-cusp: length by 2,000,000 chords, places evenly apart", () => {
    const path = oneCubic(0, 0, 100, 100.5, 0, 100, 100, 0);
    const [x0, y0, x1, y1, x2, y2, x3, y3] = coordinates(path) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const at = (t: number): readonly [number, number] => {
      const s = 1 - t;
      const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t] as const;
      return [w[0] * x0 + w[1] * x1 + w[2] * x2 + w[3] * x3, w[0] * y0 + w[1] * y1 + w[2] * y2 + w[3] * y3];
    };
    let sum = 0;
    let before = at(0);
    for (let i = 1; i <= 2_000_000; i++) {
      const next = at(i / 2_000_000);
      sum += apart(before, next);
      before = next;
    }
    expect(pathLength(path)).toBeCloseTo(sum, 6);
    const [first, second] = [subPath(path, 0, sum / 2), subPath(path, sum / 2, sum)];
    expect(pathLength(first)).toBeCloseTo(pathLength(second), 6);
  });
});
