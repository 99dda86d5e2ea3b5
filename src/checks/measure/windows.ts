import type { Box, Point } from "../../geometry/path.ts";

/** The stretch of the line from a to b, as shares of it, that lies in a box grown by `slack`. */
export function stretchIn(
  box: Box,
  a: Point,
  b: Point,
  slack: number,
): readonly [number, number] | undefined {
  let [t0, t1] = [0, 1];
  const ways: readonly (readonly [number, number, number, number])[] = [
    [a[0], b[0], box.minX - slack, box.maxX + slack],
    [a[1], b[1], box.minY - slack, box.maxY + slack],
  ];
  for (const [from, to, low, high] of ways) {
    if (from === to) {
      if (from < low || from > high) return undefined;
      continue;
    }
    const [s, e] = [(low - from) / (to - from), (high - from) / (to - from)];
    t0 = Math.max(t0, Math.min(s, e));
    t1 = Math.min(t1, Math.max(s, e));
  }
  return t0 <= t1 ? [t0, t1] : undefined;
}

/** The first place on the line from a to b that no box shows, if there is one. */
export function firstUnseen(boxes: readonly Box[], a: Point, b: Point, slack: number): Point | undefined {
  const stretches = boxes
    .map((box) => stretchIn(box, a, b, slack))
    .filter((s) => s !== undefined)
    .sort((p, q) => p[0] - q[0]);
  let reached = 0;
  for (const [from, to] of stretches) {
    if (from > reached) break;
    reached = Math.max(reached, to);
  }
  return reached >= 1 ? undefined : [a[0] + reached * (b[0] - a[0]), a[1] + reached * (b[1] - a[1])];
}
