import { describe, expect, test } from "vitest";
import { mirrorAxis } from "../../src/die/symmetry.ts";
import {
  circlePath,
  type Path,
  polyline,
  rectanglePath,
  slotPath,
  turned,
} from "../../src/geometry/index.ts";
import { ellipse, roundedRectangle, swelledStrap } from "../geometry/shapes.ts";
import { strapOutline } from "../support/samplePieces.ts";

const hole = (x: number, y: number, r = 2): Path => circlePath([x, y], r);
const scalene = polyline(
  [
    [0, 0],
    [90, 0],
    [30, 40],
  ],
  true,
);
const parallelogram = polyline(
  [
    [0, 0],
    [60, 0],
    [80, 30],
    [20, 30],
  ],
  true,
);
const square = rectanglePath([-20, -20], 40, 40);

describe("is it its own mirror image", () => {
  test.each<readonly [string, Path, readonly Path[]]>([
    ["strap with a point", strapOutline(240, 25), []],
    [
      "strap with holes on its middle line",
      strapOutline(240, 25),
      [hole(20, 0), hole(40, 0), slotPath([100, 0], 20, 5)],
    ],
    ["swelled strap", swelledStrap(), []],
    ["holes in mirrored places", roundedRectangle(80, 40, 6), [hole(20, 8), hole(20, -8), hole(-30, 0)]],
    [
      "upright axis",
      polyline(
        [
          [0, 0],
          [60, 0],
          [45, 80],
          [15, 80],
        ],
        true,
      ),
      [hole(10, 10), hole(50, 10)],
    ],
    ["ellipse", ellipse(50, 30), []],
    ["square", square, []],
    ["square with holes on a diagonal", square, [hole(10, 10), hole(-5, -5)]],
    ["circle with one hole", circlePath([5, 5], 30), [hole(17, 21)]],
  ])("%s is, however it lies", (_, outline, inner) => {
    for (const angle of [0, 0.7, 2.5]) {
      const lying = (p: Path): Path => turned(p, angle, [13, -7]);
      expect(mirrorAxis(lying(outline), inner.map(lying))).toBeDefined();
    }
  });

  test.each<readonly [string, Path, readonly Path[]]>([
    ["scalene triangle", scalene, []],
    ["parallelogram: turned it fits itself, mirrored it doesn't", parallelogram, []],
    ["strap with one hole off its middle line", strapOutline(240, 25), [hole(20, 0), hole(40, 0.2)]],
    [
      "mirrored holes of two sizes",
      roundedRectangle(80, 40, 6),
      [hole(20, 8), hole(-20, 8, 2.2), hole(30, -8)],
    ],
    ["square with one hole on no axis", square, [hole(10, 4)]],
    [
      "round-cornered on one side",
      polyline(
        [
          [0, 0],
          [100, 0],
          [100, 15],
          [97, 20],
          [0, 20],
        ],
        true,
      ),
      [],
    ],
  ])("%s is not", (_, outline, inner) => {
    expect(mirrorAxis(outline, inner)).toBeUndefined();
    expect(
      mirrorAxis(
        turned(outline, 1.2),
        inner.map((p) => turned(p, 1.2)),
      ),
    ).toBeUndefined();
  });

  test("a strap's axis is its middle line", () => {
    const { at, angle } = mirrorAxis(strapOutline(240, 25), [])!;
    expect(Math.abs(at[1])).toBeLessThan(1e-3);
    expect(Math.abs(Math.sin(angle))).toBeLessThan(1e-6);
  });
});
