import { describe, expect, test } from "vitest";
import { nestPair } from "../../src/die/nest.ts";
import {
  circlePath,
  closedPath,
  distanceBetween,
  intersect,
  line,
  placed,
  polyline,
  rectanglePath,
  signedArea,
  turned,
} from "../../src/geometry/index.ts";
import { swelledStrap } from "../geometry/shapes.ts";
import { strapOutline } from "../support/samplePieces.ts";

/** What the search promises, mm on a side. */
const FOUND_MM = 0.02;

const S = 3.09;

describe("a pair on one board", () => {
  test("two rectangles lie end to end on the least box, side by side where the board has a margin", () => {
    const [long, wide, margin] = [100, 20, 12];
    const none = nestPair(rectanglePath([5, -3], long, wide), { spacing: S, margin: 0, second: "same" });
    expect(Math.abs(none.area - wide * (2 * long + S))).toBeLessThan(FOUND_MM * wide);
    const some = nestPair(rectanglePath([5, -3], long, wide), { spacing: S, margin, second: "same" });
    const board = (long + 2 * margin) * (2 * wide + S + 2 * margin);
    expect(Math.abs(some.area - board)).toBeLessThan(FOUND_MM * (long + 2 * margin));
  });

  test("two right triangles, the second turned, meet along their long sides: a b + s √(a² + b²)", () => {
    // The rectangle a × b holds both at no spacing; moved apart along one leg by s √(a² + b²) ÷ b, the slanted
    // sides stand s apart, and the box grows to (a + s √(a² + b²) ÷ b) b.
    const [a, b] = [90, 40];
    const triangle = polyline(
      [
        [0, 0],
        [a, 0],
        [0, b],
      ],
      true,
    );
    const { area, second } = nestPair(triangle, { spacing: S, margin: 0, second: "same" });
    expect(area).toBeLessThanOrEqual(a * b + S * Math.hypot(a, b) + FOUND_MM * (a + b));
    expect(area).toBeGreaterThanOrEqual(a * b + S * Math.hypot(a, b) - 0.001 * (a + b));
    expect(Math.abs(second.angle)).toBeCloseTo(Math.PI, 9);
  });

  test("two L pieces hook into each other at no spacing: the rectangle they were cut from", () => {
    // A 60 × 40 rectangle cut in two alike pieces along a line with one step.
    const piece = polyline(
      [
        [0, 0],
        [60, 0],
        [60, 10],
        [40, 10],
        [40, 20],
        [20, 20],
        [20, 30],
        [0, 30],
      ],
      true,
    );
    const { area } = nestPair(piece, { spacing: 0, margin: 0, second: "same" });
    expect(Math.abs(area - 2 * signedArea(piece))).toBeLessThan(FOUND_MM * 200);
  });

  test("two circles lie side by side: 2 r (4 r + s)", () => {
    const { area } = nestPair(circlePath([7, 9], 30), { spacing: S, margin: 0, second: "same" });
    expect(Math.abs(area - 60 * (120 + S))).toBeLessThan(FOUND_MM * 60);
  });

  test("the other side of a pair is turned over", () => {
    // A scalene triangle fits itself by half a turn, its mirror image only back to back.
    const triangle = polyline(
      [
        [0, 0],
        [90, 0],
        [30, 40],
      ],
      true,
    );
    const same = nestPair(triangle, { spacing: S, margin: 0, second: "same" });
    const pair = nestPair(triangle, { spacing: S, margin: 0, second: "mirrored" });
    expect(pair.second.mirrored).toBe(true);
    expect(same.second.mirrored).toBeUndefined();
    const turnedOver = placed(triangle, pair.second);
    expect(signedArea(turnedOver)).toBeCloseTo(-signedArea(triangle), 6);
  });

  test.each([
    ["strap with a point", strapOutline(240, 25)],
    ["swelled strap", swelledStrap()],
    // Its chords' ends do not lie where the two come nearest.
    ["circle, turned", turned(circlePath([0, 0], 200), 0.013)],
    [
      "hollow",
      closedPath(
        [0, 0],
        [
          line([60, 0]),
          line([60, 50]),
          line([45, 50]),
          line([45, 15]),
          line([15, 15]),
          line([15, 50]),
          line([0, 50]),
        ],
      ),
    ],
  ])(
    "the spacing is kept and nothing overlaps: %s",
    (_, outline) => {
      for (const second of ["same", "mirrored"] as const) {
        const nest = nestPair(outline, { spacing: S, margin: 12, second });
        const other = placed(outline, nest.second);
        const distance = distanceBetween(outline, other);
        expect(distance).toBeGreaterThanOrEqual(S - 0.001);
        expect(distance).toBeCloseTo(nest.gap, 6);
        expect(intersect(outline, other)).toEqual([]);
        // It touches: were the board larger than need be on every side, the gap would show it.
        expect(distance).toBeLessThan(S + FOUND_MM);
      }
    },
    20000,
  );

  test("an open outline has no board", () => {
    expect(() =>
      nestPair(
        polyline([
          [0, 0],
          [1, 1],
        ]),
        { spacing: 1, margin: 0, second: "same" },
      ),
    ).toThrow(RangeError);
    expect(() => nestPair(circlePath([0, 0], 1), { spacing: -1, margin: 0, second: "same" })).toThrow(
      RangeError,
    );
  });
});
