// Two arcs that leave one point in a given direction, meet smoothly and arrive at another in a given direction.
import { type Curve, curveOf } from "../geometry/curve.ts";
import { arc, line, type Point, SAME_POINT_MM } from "../geometry/path.ts";
import { apart, dot, leftOf, minus, plus, scaled, unit } from "../geometry/vector.ts";

/** A place on a curve and the direction of travel there, length 1. */
export type Knot = { readonly at: Point; readonly way: Point };

export type Biarc = {
  readonly curves: readonly [Curve, Curve];
  readonly joint: Knot;
};

/** An arc that turns by less than this, and bulges by less than a knife can follow, is a straight line. */
const STRAIGHT_TURN = 0.001;

/** The circle through both points that has direction `way` at `at`; a line where it is straight. */
function arcFrom(from: Point, to: Point, { at, way }: Knot): Curve {
  const chord = at === from ? minus(to, at) : minus(from, at);
  const left = leftOf(way);
  const off = dot(chord, left);
  const length = apart(from, to);
  // sin of half the turn is off ÷ chord; the bulge is about off ÷ 4.
  const straight = 2 * Math.abs(off) < STRAIGHT_TURN * length && Math.abs(off) < 4 * SAME_POINT_MM;
  if (straight || length === 0) return curveOf(from, line(to));
  const centre = plus(at, scaled(left, dot(chord, chord) / (2 * off)));
  return curveOf(from, arc(to, centre, off > 0));
}

/**
 * The biarc from `a` to `b` whose tangent lengths are in the given ratio. With v = b − a, tangents t₀ and t₁
 * and tangent lengths r·d and d: v² − 2d v·(r t₀ + t₁) + 2 r d² (t₀·t₁ − 1) = 0; the joint parts the line
 * between both tangents' ends as r : 1 (the classical construction: the two legs of each arc's tangents are
 * equal). undefined when there is none.
 */
export function biarc(a: Knot, b: Knot, ratio: number): Biarc | undefined {
  const v = minus(b.at, a.at);
  const size2 = dot(v, v);
  const square = 2 * ratio * (1 - dot(a.way, b.way));
  const middle = 2 * dot(v, plus(scaled(a.way, ratio), b.way));
  const divisor = middle + Math.sqrt(middle * middle + 4 * square * size2);
  if (!(divisor > 0) || size2 === 0) return undefined;
  const d = (2 * size2) / divisor;
  const [first, last] = [plus(a.at, scaled(a.way, ratio * d)), minus(b.at, scaled(b.way, d))];
  const between = minus(last, first);
  const at = plus(first, scaled(between, ratio / (ratio + 1)));
  return {
    curves: [arcFrom(a.at, at, a), arcFrom(at, b.at, b)],
    joint: { at, way: unit(between) },
  };
}

const strayFrom = (curve: Curve, point: Point): number => {
  if (curve.kind === "arc") return Math.abs(apart(point, curve.centre) - curve.radius);
  return Math.abs(dot(minus(point, curve.p0), leftOf(unit(minus(curve.p1, curve.p0)))));
};

/** How far the furthest of the points lies from the biarc, for points along it between its ends. */
export function strayOf({ curves, joint }: Biarc, points: readonly Point[]): number {
  return points.reduce((most, point) => {
    const before = dot(minus(point, joint.at), joint.way) < 0;
    return Math.max(most, strayFrom(curves[before ? 0 : 1], point));
  }, 0);
}
