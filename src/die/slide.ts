// A closed run of points slid straight against another until it touches.
import type { Point } from "../geometry/path.ts";

/** A ring of points, and the same points in order of x and of y. */
export type Ring = {
  readonly points: readonly Point[];
  readonly byAxis: readonly [readonly Point[], readonly Point[]];
};

/** Which way something is slid: along x (0) or y (1), coming from the side of greater (1) or lesser (−1) values. */
export type Way = { readonly axis: 0 | 1; readonly sign: 1 | -1 };

/** A ring, ready to be slid many times. */
export function ringOf(points: readonly Point[]): Ring {
  const sorted = (axis: 0 | 1): readonly Point[] => [...points].sort((a, b) => a[axis] - b[axis]);
  return { points, byAxis: [sorted(0), sorted(1)] };
}

/** The number of the first point whose coordinate is not below `least`. */
function firstFrom(sorted: readonly Point[], axis: 0 | 1, least: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]![axis] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Greatest overlap, along the way, of the corners of `a` over the edges of `b` moved by `across`. */
function contact(a: Ring, b: Ring, { axis, sign }: Way, across: number): number {
  const cross = axis === 0 ? 1 : 0;
  const corners = a.byAxis[cross];
  let most = -Infinity;
  b.points.forEach((p, i) => {
    const q = b.points[(i + 1) % b.points.length]!;
    const [p0, q0] = [p[cross] + across, q[cross] + across];
    const [lowest, highest] = p0 < q0 ? [p0, q0] : [q0, p0];
    const slope = highest > lowest ? (q[axis] - p[axis]) / (q0 - p0) : 0;
    const nearEnd = sign * p[axis] < sign * q[axis] ? p[axis] : q[axis];
    for (let n = firstFrom(corners, cross, lowest); n < corners.length; n++) {
      const corner = corners[n]!;
      if (corner[cross] > highest) break;
      const edge = highest > lowest ? p[axis] + slope * (corner[cross] - p0) : nearEnd;
      most = Math.max(most, sign * (corner[axis] - edge));
    }
  });
  return most;
}

/**
 * How far the ring `b` must be moved along the way's axis to touch the ring `a` from outside, when it is moved
 * by `across` along the other axis. Exact for polygons: they touch at a corner of one and an edge of the other.
 * undefined when they slide past each other.
 */
export function slideContact(a: Ring, b: Ring, way: Way, across: number): number | undefined {
  const { axis, sign } = way;
  const one = contact(a, b, way, across);
  // The same question, seen from b: its corners against a's edges.
  const other = contact(b, a, { axis, sign: sign === 1 ? -1 : 1 }, -across);
  const far = Math.max(one, other);
  return far === -Infinity ? undefined : sign * far;
}
