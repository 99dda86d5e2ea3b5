import type { Box, Point } from "../geometry/path.ts";

// Lines and upright boxes, by Liang and Barsky's clipping: each side of the box cuts the line's t from 0 to 1.

/** How fast a line leaves a side behind (p), and how far inside it begins (q), for each side in turn. */
function sidesOf(box: Box, a: Point, b: Point): readonly (readonly [p: number, q: number])[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return [
    [-dx, a[0] - box.minX],
    [dx, box.maxX - a[0]],
    [-dy, a[1] - box.minY],
    [dy, box.maxY - a[1]],
  ];
}

/** True when some part of the line from a to b lies inside the box; a line along its edge does not. */
export function touches(box: Box, a: Point, b: Point): boolean {
  // Most lie wholly to one side: that is told without cutting.
  if (a[0] < box.minX && b[0] < box.minX) return false;
  if (a[0] > box.maxX && b[0] > box.maxX) return false;
  if (a[1] < box.minY && b[1] < box.minY) return false;
  if (a[1] > box.maxY && b[1] > box.maxY) return false;
  let [t0, t1] = [0, 1];
  for (const [p, q] of sidesOf(box, a, b)) {
    if (p === 0 && q <= 0) return false;
    if (p < 0) t0 = Math.max(t0, q / p);
    if (p > 0) t1 = Math.min(t1, q / p);
  }
  return t0 < t1;
}

/** The part of the line from a to b inside the box or on its edge, if any. */
export function clipped([a, b]: readonly [Point, Point], box: Box): readonly [Point, Point] | undefined {
  let [t0, t1] = [0, 1];
  for (const [p, q] of sidesOf(box, a, b)) {
    if (p === 0 && q < 0) return undefined;
    if (p < 0) t0 = Math.max(t0, q / p);
    if (p > 0) t1 = Math.min(t1, q / p);
  }
  if (t0 > t1) return undefined;
  const at = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  return [at(t0), at(t1)];
}
