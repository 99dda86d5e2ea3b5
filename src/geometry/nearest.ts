// The point of one curve nearest to a given point.
import * as trig from "../units/trigonometry.ts";
import {
  type ArcCurve,
  arcParameter,
  bendingAt,
  type CubicCurve,
  type Curve,
  curveAt,
  velocityAt,
} from "./curve.ts";
import type { Point } from "./path.ts";
import { bernsteinProduct, rootsBetween } from "./roots.ts";
import { apart, dot, minus } from "./vector.ts";

export type Near = { readonly t: number; readonly point: Point; readonly distance: number };

function nearAt(curve: Curve, t: number, to: Point): Near {
  const point = curveAt(curve, t);
  return { t, point, distance: apart(point, to) };
}

const nearer = (a: Near, b: Near): Near => (b.distance < a.distance ? b : a);

export function lineParameter(p0: Point, p1: Point, point: Point): number {
  const along = minus(p1, p0);
  const length2 = dot(along, along);
  return length2 > 0 ? Math.min(Math.max(dot(minus(point, p0), along) / length2, 0), 1) : 0;
}

function arcNear(curve: ArcCurve, to: Point): Near {
  const { centre } = curve;
  const ends = nearer(nearAt(curve, 0, to), nearAt(curve, 1, to));
  const t = arcParameter(curve, trig.atan2(to[1] - centre[1], to[0] - centre[0]));
  return t > 0 && t < 1 ? nearer(ends, nearAt(curve, t, to)) : ends;
}

/** The t where a cubic runs square to the way from `to`: (p − q) · p′ = 0, a polynomial of degree 5. */
export function squareTo({ p0, c1, c2, p1 }: CubicCurve, to: Point): readonly number[] {
  const product = (axis: 0 | 1): readonly number[] => {
    const place = [p0[axis] - to[axis], c1[axis] - to[axis], c2[axis] - to[axis], p1[axis] - to[axis]];
    return bernsteinProduct(place, [c1[axis] - p0[axis], c2[axis] - c1[axis], p1[axis] - c2[axis]]);
  };
  const [x, y] = [product(0), product(1)];
  return rootsBetween(x.map((value, i) => value + y[i]!));
}

function cubicNear(curve: CubicCurve, to: Point): Near {
  let best = nearAt(curve, 0, to);
  for (const t of squareTo(curve, to)) best = nearer(best, nearAt(curve, t, to));
  return nearer(best, nearAt(curve, 1, to));
}

/** The nearest point of the whole curve; of several, the one that comes first. */
export function nearestOnCurve(curve: Curve, to: Point): Near {
  if (curve.kind === "line") return nearAt(curve, lineParameter(curve.p0, curve.p1, to), to);
  if (curve.kind === "arc") return arcNear(curve, to);
  return cubicNear(curve, to);
}

/** One Newton step from t towards the foot of the perpendicular from `to`; t itself where there is none near. */
export function towardsFoot(curve: CubicCurve, to: Point, t: number): number {
  const from = minus(curveAt(curve, t), to);
  const velocity = velocityAt(curve, t);
  const slope = dot(velocity, velocity) + dot(from, bendingAt(curve, t));
  return slope > 0 ? Math.min(Math.max(t - dot(from, velocity) / slope, 0), 1) : t;
}
