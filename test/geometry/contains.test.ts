import fc from "fast-check";
import { expect, test } from "vitest";
import {
  anticlockwise,
  circlePath,
  closedPath,
  containsPath,
  containsPoint,
  distanceToPath,
  flatten,
  mirroredInX,
  moved,
  openPath,
  polyline,
  rectanglePath,
  reversed,
  selfCrossings,
  slotPath,
} from "../../src/geometry/index.ts";
import { anyOutline, inPaper, points, roundedRectangle, swelledStrap } from "./shapes.ts";

const anyPoint = fc.tuple(
  fc.double({ min: -90, max: 90, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
);

test("any outline, any point: paper 0.12.20 on the same outline in fine chords", () => {
  fc.assert(
    fc.property(anyOutline, fc.array(anyPoint, { minLength: 8, maxLength: 8 }), (path, points) => {
      if (selfCrossings(path).length > 0) return;
      const theirs = inPaper(polyline(flatten(path, 0.001), true));
      for (const point of points) {
        if (distanceToPath(point, path) < 0.01) continue;
        expect(containsPoint(path, point)).toBe(theirs.contains(point as [number, number]));
        expect(containsPoint(reversed(path), point)).toBe(containsPoint(path, point));
      }
    }),
    { seed: 61, numRuns: 50 },
  );
});

test("at the heights of corners, tangents and joints", () => {
  const diamond = polyline(points(10, 0, 0, 10, -10, 0, 0, -10), true);
  const circle = circlePath([0, 0], 10);
  for (const shape of [diamond, circle, roundedRectangle(20, 20, 5), roundedRectangle(20, 20, 10)]) {
    expect(containsPoint(shape, [0, 0])).toBe(true);
    expect(containsPoint(shape, [-3, 0])).toBe(true);
    expect(containsPoint(shape, [-40, 0])).toBe(false);
    expect(containsPoint(shape, [-40, 10])).toBe(false);
    expect(containsPoint(shape, [-40, -10])).toBe(false);
    expect(containsPoint(shape, [40, 0])).toBe(false);
  }
  const swelled = swelledStrap();
  expect(containsPoint(swelled, [130, 15.9])).toBe(true);
  expect(containsPoint(swelled, [130, 16.1])).toBe(false);
  expect(containsPoint(swelled, [-7.9, 0])).toBe(true);
  expect(containsPoint(swelled, [-8.1, 0])).toBe(false);
  expect(containsPoint(swelled, [30, 8.1])).toBe(false);
});

test("the edge itself belongs to the inside, a hundredth beyond does not", () => {
  expect(containsPoint(circlePath([0, 0], 10), [6, 8])).toBe(true);
  expect(containsPoint(circlePath([0, 0], 10), [6.01, 8])).toBe(false);
  expect(() => containsPoint(openPath([0, 0], []), [0, 0])).toThrow(RangeError);
});

test("paths inside paths: wholly inside, through the edge, outside, round it, touching from inside", () => {
  const strap = swelledStrap();
  expect(containsPath(strap, circlePath([130, 0], 10))).toBe(true);
  expect(containsPath(strap, circlePath([130, 10], 10))).toBe(false);
  expect(containsPath(strap, circlePath([130, 60], 10))).toBe(false);
  expect(containsPath(strap, circlePath([130, 0], 400))).toBe(false);
  expect(containsPath(circlePath([0, 0], 10), circlePath([4, 0], 6))).toBe(true);
  expect(containsPath(strap, strap)).toBe(true);
  expect(containsPath(strap, polyline(points(0, 0, 260, 0)))).toBe(true);
  expect(containsPath(strap, polyline(points(0, 8, 40, 8, 60, 3)))).toBe(true);
});

test("both ends inside are not enough: a line over a notch", () => {
  const notched = polyline(points(0, 0, 40, 0, 40, 20, 25, 20, 20, 5, 15, 20, 0, 20), true);
  expect(containsPath(notched, polyline(points(5, 15, 35, 15)))).toBe(false);
  expect(containsPath(notched, polyline(points(5, 15, 28, 15)))).toBe(false);
  expect(containsPath(notched, polyline(points(5, 4, 35, 4)))).toBe(true);
  expect(containsPath(notched, polyline(points(5, 5, 35, 5)))).toBe(true);
});

test("a slot in a strap moved out step by step leaves it once", () => {
  const strap = rectanglePath([0, 0], 100, 20);
  const slot = slotPath([50, 10], 24, 4);
  const inside = Array.from({ length: 40 }, (_, i) => containsPath(strap, moved(slot, [0, i * 0.5])));
  expect(inside.indexOf(false)).toBe(17);
  expect(inside.lastIndexOf(true)).toBe(16);
  expect(containsPath(mirroredInX(strap), mirroredInX(slot))).toBe(true);
  expect(containsPath(anticlockwise(mirroredInX(strap)), closedPath([-50, 10], []))).toBe(true);
});
