import fc from "fast-check";
import paper from "paper/dist/paper-core.js";
import { expect, test } from "vitest";
import {
  arc,
  curvatureAt,
  mirroredInX,
  mirroredInY,
  moved,
  openPath,
  type Path,
  type Placement,
  type Point,
  pathLength,
  placed,
  placedPoint,
  pointAt,
  reversed,
  signedArea,
  turned,
} from "../../src/geometry/index.ts";
import { anyOutline } from "./shapes.ts";

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const anyNumber = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });
const anyPlacement: fc.Arbitrary<Placement> = fc.record({
  at: fc.tuple(anyNumber(-500, 500), anyNumber(-500, 500)),
  angle: anyNumber(-7, 7),
  mirrored: fc.boolean(),
});

test("moving, turning and mirroring change no length and no area but its sign", () => {
  fc.assert(
    fc.property(anyOutline, anyPlacement, (path, placement) => {
      const images: readonly (readonly [Path, number])[] = [
        [moved(path, placement.at), 1],
        [turned(path, placement.angle, placement.at), 1],
        [mirroredInX(path), -1],
        [mirroredInY(path), -1],
        [reversed(path), -1],
        [placed(path, placement), placement.mirrored ? -1 : 1],
      ];
      for (const [image, sign] of images) {
        expect(pathLength(image)).toBeCloseTo(pathLength(path), 7);
        expect(signedArea(image)).toBeCloseTo(sign * signedArea(path), 5);
        expect(image.segments.map(({ kind }) => kind).sort()).toEqual(
          path.segments.map(({ kind }) => kind).sort(),
        );
      }
    }),
    { seed: 31, numRuns: 100 },
  );
});

test("a placement is mirror, then turn, then move: the same by paper's matrices", () => {
  fc.assert(
    fc.property(anyPlacement, anyNumber(-100, 100), anyNumber(-100, 100), (placement, x, y) => {
      const matrix = new paper.Matrix();
      matrix.translate(placement.at[0], placement.at[1]);
      matrix.rotate((placement.angle * 180) / Math.PI, 0, 0);
      if (placement.mirrored) matrix.scale(1, -1);
      const image = matrix.transform(new paper.Point(x, y));
      expect(apart(placedPoint([x, y], placement), [image.x, image.y])).toBeLessThan(1e-9);
    }),
    { seed: 32, numRuns: 100 },
  );
});

test("the length s finds the image of the same place, arcs included", () => {
  fc.assert(
    fc.property(anyOutline, anyPlacement, anyNumber(0, 1), (path, placement, share) => {
      const s = share * pathLength(path);
      const image = placedPoint(pointAt(path, s), placement);
      expect(apart(pointAt(placed(path, placement), s), image)).toBeLessThan(1e-6);
      const back = reversed(path);
      expect(apart(pointAt(back, pathLength(path) - s), pointAt(path, s))).toBeLessThan(1e-6);
    }),
    { seed: 33, numRuns: 100 },
  );
});

test("a quarter turn about a point, and a mirrored arc bends the other way", () => {
  expect(apart(turned(openPath([3, 1], []), Math.PI / 2, [1, 1]).start, [1, 3])).toBeLessThan(1e-12);
  const left = openPath([5, 0], [arc([0, 5], [0, 0], true)]);
  expect(curvatureAt(left, 2)).toBeCloseTo(0.2, 12);
  expect(curvatureAt(mirroredInX(left), 2)).toBeCloseTo(-0.2, 12);
  expect(pointAt(mirroredInX(left), 0)).toEqual([-5, 0]);
  expect(Object.is(mirroredInY(left).start[1], 0)).toBe(true);
});
