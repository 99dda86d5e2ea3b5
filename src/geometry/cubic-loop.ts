import { type CubicCurve, curveAt } from "./curve.ts";
import { type Point, SAME_POINT_MM } from "./path.ts";
import { rootsBetween } from "./roots.ts";
import { apart, cross, dot, minus, scaled, sizeOf, unit } from "./vector.ts";

/** Sines below this are straight: 1e-9 of 1 m is a thousandth of a µm. */
const STRAIGHT = 1e-9;

/** The points where a straight cubic turns back on itself. */
function turnsBack({ p0, c1, c2, p1 }: CubicCurve, way: Point): readonly number[] {
  return rootsBetween([minus(c1, p0), minus(c2, c1), minus(p1, c2)].map((leg) => dot(leg, way))).filter(
    (t) => t > 0 && t < 1,
  );
}

/**
 * The point where a cubic crosses itself, if it does; where it is straight and turns back, the turns.
 * `closed`: its end is its start, which is then no crossing.
 *
 * With p(t) = A t³ + B t² + C t + p0, p(t) = p(u) divided by t − u is A (t² + tu + u²) + B (t + u) + C = 0:
 * crossed with A it gives t + u, dotted with A it gives t u.
 */
export function cubicLoop(curve: CubicCurve, closed: boolean): readonly Point[] {
  const { p0, c1, c2, p1 } = curve;
  const C = scaled(minus(c1, p0), 3);
  const B = scaled([p0[0] - 2 * c1[0] + c2[0], p0[1] - 2 * c1[1] + c2[1]], 3);
  const A: Point = [p1[0] - p0[0] + 3 * (c1[0] - c2[0]), p1[1] - p0[1] + 3 * (c1[1] - c2[1])];
  const legs = [minus(c1, p0), minus(c2, p0), minus(p1, p0)];
  const longest = legs.reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a));
  const way = unit(longest);
  if (legs.every((leg) => Math.abs(cross(way, leg)) <= STRAIGHT * sizeOf(longest))) {
    return turnsBack(curve, way).map((t) => curveAt(curve, t));
  }
  const bend = cross(A, B);
  if (bend === 0) return [];
  const sum = -cross(A, C) / bend;
  const product = sum * sum + (dot(A, B) * sum + dot(A, C)) / dot(A, A);
  const spread = sum * sum - 4 * product;
  if (!(spread > 0)) return [];
  const [t, u] = [(sum - Math.sqrt(spread)) / 2, (sum + Math.sqrt(spread)) / 2];
  // A closed loop's start is found as t = 0, u = 1, give or take rounding.
  if (!(t >= -STRAIGHT && u <= 1 + STRAIGHT) || (closed && t < STRAIGHT && u > 1 - STRAIGHT)) return [];
  const loopWidth = apart(curveAt(curve, (t + u) / 2), curveAt(curve, t));
  return loopWidth < SAME_POINT_MM ? [] : [curveAt(curve, t)];
}
