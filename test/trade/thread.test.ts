import { describe, expect, test } from "vitest";
import threads from "../../fixtures/published/thread-and-stitches.json";
import { saddleThread } from "../../src/trade/seam.ts";
import { laid, side, straight, uPath } from "../support/seamEdges.ts";

// Sources: fixtures/published/thread-and-stitches.json (S1, S2, S5: READ; S9: derived).

const INCH = 25.4;

type At = readonly [x: number, z: number];
const lengthOf = (points: readonly At[]): number =>
  points.slice(1).reduce((sum, [x, z], i) => sum + Math.hypot(x - points[i]![0], z - points[i]![1]), 0);

/**
 * A saddle stitch followed needle by needle through holes at `xs` in leather from z = 0 to `thickness`: the
 * thread hangs half out of the first hole on each side, then both needles go through every further hole
 * from opposite sides.
 */
function followed(xs: readonly number[], thickness: number): number {
  const needle = (from: 0 | 1): readonly At[] => {
    let z = from * thickness;
    const points: At[] = [
      [xs[0]!, thickness / 2],
      [xs[0]!, z],
    ];
    for (const x of xs.slice(1)) {
      points.push([x, z]);
      z = thickness - z;
      points.push([x, z]);
    }
    return points;
  };
  return lengthOf(needle(0)) + lengthOf(needle(1));
}

describe("thread of a laid seam", () => {
  const u = laid([side("front", uPath(240, 180, 40))], { pitch: INCH / 8 }).sides[0]!.seams[0]!;

  test("is what two needles draw through its holes", () => {
    for (const thickness of [2.4, 4, 9.5]) {
      const xs = Array.from({ length: u.stitches + 1 }, (_, i) => i * u.pitch);
      expect(saddleThread(u.stitches, 0, u.pitch, thickness, 0)).toBeCloseTo(followed(xs, thickness), 6);
    }
  });

  test("back-stitches go over the last holes again", () => {
    const xs = [0, 3, 6, 9, 12, 15, 12, 9];
    expect(saddleThread(5, 2, 3, 4, 0)).toBeCloseTo(followed(xs, 4), 9);
  });

  test("2 + 2TS to the inch, as type 301 takes it; about 4 times an eighth of an inch at 8 to the inch", () => {
    const inches = (thickness: number): number =>
      saddleThread(u.stitches, 0, u.pitch, thickness * INCH, 0) / (u.stitches * u.pitch);
    // The laid pitch is the nearest whole division of the seam; one passage through the first hole comes on top.
    expect(inches(1 / 8)).toBeCloseTo(threads.figures.S5.times, 1);
    for (const c of threads.figures.S9.cases) expect(inches(c.thickness)).toBeCloseTo(c.times, 1);
  });

  test("the published example, 2.2 in to the inch", () => {
    const { thickness, stitchesPerInch, threadPerInch } = threads.figures.S2;
    const seam = laid([side("front", straight(100 * INCH))], { pitch: INCH / stitchesPerInch }).sides[0]!
      .seams[0]!;
    const thread = saddleThread(seam.stitches, 0, seam.pitch, thickness * INCH, 0);
    expect(thread / (100 * INCH)).toBeCloseTo(threadPerInch, 3);
  });
});
