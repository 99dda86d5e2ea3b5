import fc from "fast-check";
import polygonClipping from "polygon-clipping";
import { expect, test } from "vitest";
import {
  anticlockwise,
  arc,
  circlePath,
  closedPath,
  flatten,
  line,
  moved,
  openPath,
  pathLength,
  rectanglePath,
  reversed,
  signedArea,
  slotPath,
} from "../../src/geometry/index.ts";
import { anyOutline, ellipse, inPaper, oneCubic, roundedRectangle, swelledStrap } from "./shapes.ts";

test("closed forms: rectangle, circle, slot, rounded rectangle, ellipse", () => {
  expect(signedArea(rectanglePath([5, -3], 40, 25))).toBeCloseTo(1000, 9);
  expect(signedArea(circlePath([100, 50], 7))).toBeCloseTo(Math.PI * 49, 9);
  expect(signedArea(slotPath([1, 2], 30, 8, 1.1))).toBeCloseTo(22 * 8 + Math.PI * 16, 9);
  expect(signedArea(roundedRectangle(200, 120, 15))).toBeCloseTo(200 * 120 - (4 - Math.PI) * 225, 9);
  expect(Math.abs(signedArea(ellipse(60, 40)) / (Math.PI * 2400) - 1)).toBeLessThan(1e-9);
});

test("under the parabola y = x² from 0 to 1 lies a third (Archimedes)", () => {
  const parabola = oneCubic(0, 0, 1 / 3, 0, 2 / 3, 1 / 3, 1, 1);
  const under = closedPath([1, 0], [line([1, 1]), ...reversed(parabola).segments]);
  expect(signedArea(under)).toBeCloseTo(1 / 3, 12);
});

test("a half disc in strips, turned about its straight side, makes a sphere (Pappus's second theorem)", () => {
  const r = 10;
  const strips = 400;
  let [whole, volume] = [0, 0];
  for (let i = 0; i < strips; i++) {
    const [y0, y1] = [(r * i) / strips, (r * (i + 1)) / strips];
    const [x0, x1] = [Math.sqrt(r * r - y0 * y0), Math.sqrt(r * r - y1 * y1)];
    const strip = signedArea(
      closedPath(
        [-x0, y0],
        [line([x0, y0]), arc([x1, y1], [0, 0], true), line([-x1, y1]), arc([-x0, y0], [0, 0], true)],
      ),
    );
    whole += strip;
    // A thin strip's centroid lies half way up it.
    volume += strip * 2 * Math.PI * ((y0 + y1) / 2);
  }
  expect(whole).toBeCloseTo((Math.PI * r * r) / 2, 9);
  expect(volume / ((4 / 3) * Math.PI * r ** 3)).toBeCloseTo(1, 4);
});

test("paper 0.12.20 on a swelled outline of lines and cubics", () => {
  const body = swelledStrap().segments.slice(0, 5);
  const half = closedPath(
    [0, -8],
    [...body, line([260, 0]), line([0, 0])].filter(({ kind }) => kind !== "arc"),
  );
  expect(signedArea(half)).toBeCloseTo(inPaper(half).area, 6);
});

test("any outline: its polygon's area by polygon-clipping 0.15.7", () => {
  fc.assert(
    fc.property(anyOutline, (path) => {
      const ring = flatten(path, 0.001).map(([x, y]): [number, number] => [x, y]);
      // A union of one ring with itself also mends what crosses itself; such outlines are left out.
      const united = polygonClipping.union([[ring]]);
      if (united.length !== 1 || united[0]!.length !== 1) return;
      const points = united[0]![0]!;
      const shoelace = points
        .slice(1)
        .reduce((sum, [x, y], i) => sum + points[i]![0] * y - x * points[i]![1], 0);
      expect(Math.abs(Math.abs(shoelace) / 2 - signedArea(path))).toBeLessThan(
        0.001 * pathLength(path) + 0.01,
      );
    }),
    { seed: 21, numRuns: 60 },
  );
});

test("the sign follows the direction, and being far away changes nothing", () => {
  fc.assert(
    fc.property(anyOutline, (path) => {
      expect(signedArea(reversed(path))).toBeCloseTo(-signedArea(path), 7);
      expect(signedArea(moved(path, [1e5, -3e5]))).toBeCloseTo(signedArea(path), 3);
      expect(signedArea(anticlockwise(reversed(path)))).toBeCloseTo(Math.abs(signedArea(path)), 7);
    }),
    { seed: 22, numRuns: 100 },
  );
});

test("an open path is closed by a straight line; a point has none", () => {
  expect(signedArea(openPath([10, 0], [arc([-10, 0], [0, 0], true)]))).toBeCloseTo(50 * Math.PI, 9);
  expect(signedArea(openPath([4, 4], []))).toBe(0);
});
