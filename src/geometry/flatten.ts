import * as trig from "../units/trigonometry.ts";
import { bendingAt, type Curve, curveAt, curvesOf } from "./curve.ts";
import { type Path, type Point, SAME_POINT_MM } from "./path.ts";
import { apart, sizeOf } from "./vector.ts";

/**
 * How many chords of equal t keep a curve within `tolerance`. Arc: sagitta r (1 − cos(θ/2)). Cubic: a
 * chord over h strays at most h²/8 · max|p″|, and p″ is greatest at an end (the usual bound for linear
 * interpolation).
 */
export function chordCount(curve: Curve, tolerance: number): number {
  if (curve.kind === "line") return 1;
  if (curve.kind === "arc") {
    const cosine = Math.max(1 - tolerance / curve.radius, -1);
    return Math.max(1, Math.ceil(Math.abs(curve.sweep) / (2 * trig.acos(cosine))));
  }
  const bending = Math.max(sizeOf(bendingAt(curve, 0)), sizeOf(bendingAt(curve, 1)));
  return Math.max(1, Math.ceil(Math.sqrt(bending / (8 * tolerance))));
}

/**
 * Points on the path whose chords stray from it by no more than `tolerance` (mm, above 0). A closed path's
 * first point is not repeated at the end. Throws a RangeError for a tolerance that is not above 0.
 */
export function flatten(path: Path, tolerance: number): Point[] {
  if (!(tolerance > 0)) throw new RangeError(`flatten: tolerance must be above 0 mm, not ${tolerance}`);
  const points: Point[] = [path.start];
  for (const curve of curvesOf(path)) {
    const count = chordCount(curve, tolerance);
    for (let i = 1; i <= count; i++) points.push(curveAt(curve, i / count));
  }
  const repeats = path.closed && points.length > 1 && apart(points.at(-1)!, path.start) < SAME_POINT_MM;
  return repeats ? points.slice(0, -1) : points;
}
