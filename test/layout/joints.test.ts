import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chooseJoints, crossingCost, type JointTask, type Obstacle } from "../../src/layout/joints.ts";

const task = (length: number, obstacles: readonly Obstacle[] = [], tile = 200): JointTask => ({
  length,
  tile,
  overlap: 10,
  obstacles,
  edge: "low",
});

/** The stretches that sheets show. */
function windows(
  joints: readonly number[],
  { length, overlap }: JointTask,
): readonly (readonly [number, number])[] {
  const ends = [...joints.map((j) => j + overlap / 2), length];
  return ends.map((end, i) => [i === 0 ? 0 : joints[i - 1]! - overlap / 2, end] as const);
}

const hole = (at: number, size = 8): Obstacle => ({ from: at - size / 2, to: at + size / 2, weight: 24 });

describe("joints", () => {
  test("a length that fits on one sheet has none", () => {
    expect(chooseJoints(task(200))).toEqual([]);
  });

  test("nothing in the way: they lie evenly", () => {
    expect(chooseJoints(task(390))).toHaveLength(1);
    const [a, b] = chooseJoints(task(540));
    expect(a).toBeCloseTo(180, 0);
    expect(b).toBeCloseTo(360, 0);
  });

  test("a row of holes is passed between two of them", () => {
    // Holes of 8 mm (with their crosses) every 19 mm leave 11 mm: just enough for an overlap of 10.
    const holes = Array.from({ length: 20 }, (_, i) => hole(20 + i * 19));
    const joints = chooseJoints(task(390 - 20, holes));
    expect(joints).toHaveLength(1);
    for (const h of holes) {
      const [from, to] = [joints[0]! - 5, joints[0]! + 5];
      expect(h.to <= from + 1e-9 || h.from >= to - 1e-9).toBe(true);
    }
  });

  test("where it can't be avoided the edge on top misses the hole at least", () => {
    // All of the 20 mm in which the joint may lie is hole, but for its middle 4 mm.
    const wide: readonly Obstacle[] = [
      { from: 170, to: 183, weight: 24 },
      { from: 187, to: 220, weight: 24 },
    ];
    const [joint] = chooseJoints(task(370, wide));
    const edge = joint! - 5;
    expect(edge).toBeGreaterThanOrEqual(183);
    expect(edge).toBeLessThanOrEqual(187);
  });

  test("sheets never show more than a tile, share exactly the overlap, and are as few as can be", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 2500, noNaN: true }),
        fc.array(fc.tuple(fc.double({ min: 0, max: 2500, noNaN: true }), fc.integer({ min: 1, max: 30 })), {
          maxLength: 40,
        }),
        (length, raw) => {
          const t = task(
            length,
            raw.map(([at, size]) => hole(at, size)),
          );
          const joints = chooseJoints(t);
          const shown = windows(joints, t);
          expect(shown[0]![0]).toBe(0);
          expect(shown.at(-1)![1]).toBe(length);
          shown.forEach(([from, to], i) => {
            expect(to - from).toBeLessThanOrEqual(t.tile + 1e-6);
            expect(to - from).toBeGreaterThan(0);
            if (i > 0) expect(shown[i - 1]![1] - from).toBeCloseTo(t.overlap, 6);
          });
          // One sheet fewer would show at most this much.
          const fewer = joints.length * t.tile - (joints.length - 1) * t.overlap;
          if (joints.length > 0) expect(fewer).toBeLessThan(length);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });

  test("no other pair of joints crosses less", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 395, max: 560 }),
        fc.array(fc.tuple(fc.integer({ min: 0, max: 560 }), fc.integer({ min: 2, max: 20 })), {
          minLength: 5,
          maxLength: 25,
        }),
        (length, raw) => {
          const t = task(
            length,
            raw.map(([at, size]) => hole(at, size)),
          );
          const found = chooseJoints(t);
          const cost = (joints: readonly number[]): number =>
            joints.reduce((sum, j) => sum + crossingCost(j, t), 0);
          // Every pair on a grid of 1 mm, tried one by one.
          let least = Number.POSITIVE_INFINITY;
          for (let a = 5; a <= 195; a++) {
            for (let b = a + 20; b <= a + 190; b++) {
              if (b >= length - 195 && b <= length - 5) least = Math.min(least, cost([a, b]));
            }
          }
          expect(cost(found)).toBeLessThanOrEqual(least);
        },
      ),
      { seed: 12, numRuns: 40 },
    );
  });
});
