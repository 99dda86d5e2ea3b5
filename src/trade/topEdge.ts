import { cubic, line, type Point, type Segment } from "../geometry/path.ts";

/** Handles of this share of half the edge: the curve leaves and arrives level, and has no flat middle. */
const HANDLE = 0.45;

/**
 * A top edge from one side to the other: straight, or dipped to the left of the way it runs (into the
 * leather of an anticlockwise outline) by two curves that are level at the sides and in the middle. mm.
 */
export function topEdge(from: Point, to: Point, dip: number): readonly Segment[] {
  if (dip <= 0) return [line(to)];
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(x, y);
  const at = (along: number, inward: number): Point => [
    from[0] + x * along - (y / length) * inward,
    from[1] + y * along + (x / length) * inward,
  ];
  const handle = HANDLE / 2;
  return [
    cubic(at(handle, 0), at(0.5 - handle, dip), at(0.5, dip)),
    cubic(at(0.5 + handle, dip), at(1 - handle, 0), to),
  ];
}

/**
 * A dip that comes no more than `most` down at a point `inset` from a side, mm: over its outer half the edge
 * lies above the straight line from the side to the dip's middle.
 */
export const deepestDip = (width: number, inset: number, most: number): number =>
  (most * width) / (2 * inset);
