// Lengths along a path and what is found there. `s` is the length from the path's start in mm. On a closed
// path s runs on round (s = length is the start again); on an open path an s beyond either end by more
// than SAME_POINT_MM throws a RangeError.
import * as trig from "../units/trigonometry.ts";
import {
  type ArcCurve,
  bendingAt,
  type Curve,
  curveAt,
  directionAt,
  partOf,
  segmentOf,
  velocityAt,
} from "./curve.ts";
import { measureOf, type Place, placeAt, withinPath } from "./measure.ts";
import { openPath, type Path, type Point, SAME_POINT_MM } from "./path.ts";
import { cross, sizeOf } from "./vector.ts";

/** How far into a cubic its curvature is read where the curve stands still. */
const BESIDE_REST = 1e-6;

/** Length of the path in mm, a closed path's whole way round. */
export const pathLength = (path: Path): number => measureOf(path).total;

type Found = { readonly curve: Curve; readonly t: number };

function find(path: Path, s: number): Found | undefined {
  const measure = measureOf(path);
  const place = measure.rows.length > 0 ? placeAt(measure, withinPath(path, measure.total, s)) : undefined;
  if (!place) return undefined;
  // A closed path's end is its start, and the curve that begins there is the first.
  const last = place.index === measure.rows.length - 1 && place.t === 1;
  const { index, t } = path.closed && last ? { index: 0, t: 0 } : place;
  return { curve: measure.rows[index]!.curve, t };
}

/** The point at length `s`. A path of no length has one point, its start. */
export function pointAt(path: Path, s: number): Point {
  const found = find(path, s);
  return found ? curveAt(found.curve, found.t) : path.start;
}

/**
 * Direction of travel at length `s`, in radians from the x axis, in (−π, π]. At a corner it is the
 * direction in which the path goes on; at the end of an open path that in which it arrives. A path of no
 * length has direction 0.
 */
export function tangentAt(path: Path, s: number): number {
  const found = find(path, s);
  if (!found) return 0;
  const [x, y] = directionAt(found.curve, found.t);
  return trig.atan2(y, x);
}

const arcCurvature = ({ radius, sweep }: ArcCurve): number => (sweep > 0 ? 1 : -1) / radius;

/**
 * Curvature of one curve at t in 1/mm, positive when it turns left: (x′y″ − y′x″) / |p′|³. Very large at a
 * cusp, where no number says it better.
 */
export function curvatureOf(curve: Curve, t: number): number {
  if (curve.kind === "line") return 0;
  if (curve.kind === "arc") return arcCurvature(curve);
  const velocity = velocityAt(curve, t);
  const speed = sizeOf(velocity);
  const bend = cross(velocity, bendingAt(curve, t));
  if (speed > 0) return bend / speed ** 3;
  const beside = t < 0.5 ? t + BESIDE_REST : t - BESIDE_REST;
  const nextVelocity = velocityAt(curve, beside);
  const nextSpeed = sizeOf(nextVelocity);
  return nextSpeed > 0 ? cross(nextVelocity, bendingAt(curve, beside)) / nextSpeed ** 3 : 0;
}

/**
 * Curvature at length `s` in 1/mm, positive when the path turns left. At a joint it is that of the segment
 * that begins there; a corner itself has none.
 */
export function curvatureAt(path: Path, s: number): number {
  const found = find(path, s);
  return found ? curvatureOf(found.curve, found.t) : 0;
}

function curvesFromTo(path: Path, from: Place, to: Place): readonly Curve[] {
  const { rows } = measureOf(path);
  const parts: Curve[] = [];
  for (let index = from.index; index <= to.index; index++) {
    const t0 = index === from.index ? from.t : 0;
    const t1 = index === to.index ? to.t : 1;
    if (t1 > t0) parts.push(partOf(rows[index]!.curve, t0, t1));
  }
  return parts;
}

/**
 * The stretch from length `s0` to `s1` as an open path. Arcs stay arcs, cubics are split exactly. On a
 * closed path an `s1` that is not beyond `s0` is taken one round further (`s0` = `s1` gives just the
 * point), so a stretch may run over the start; on an open path `s1` < `s0` throws a RangeError.
 */
export function subPath(path: Path, s0: number, s1: number): Path {
  const measure = measureOf(path);
  const { total } = measure;
  if (s1 < s0 && !path.closed) throw new RangeError(`subPath: ${s1} mm lies before ${s0} mm`);
  if (s1 - s0 > total + SAME_POINT_MM) throw new RangeError(`subPath: more than once round ${total} mm`);
  if (total === 0 || s0 === s1) return openPath(pointAt(path, s0), []);
  const [from, to] = [withinPath(path, total, s0), withinPath(path, total, s1)];
  const [first, last] = [placeAt(measure, from), placeAt(measure, to)];
  const end: Place = { index: measure.rows.length - 1, t: 1 };
  const parts =
    to > from
      ? curvesFromTo(path, first, last)
      : [...curvesFromTo(path, first, end), ...curvesFromTo(path, { index: 0, t: 0 }, last)];
  return openPath(parts[0]?.p0 ?? curveAt(measure.rows[first.index]!.curve, first.t), parts.map(segmentOf));
}
