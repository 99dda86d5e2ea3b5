import { cubicLoop } from "./cubic-loop.ts";
import { type Curve, curveAt, curvesOf } from "./curve.ts";
import { lengthAt, measureOf } from "./measure.ts";
import { type Meetings, meetCurves } from "./meet.ts";
import type { Meeting } from "./meet-cubics.ts";
import { type Path, type Point, SAME_POINT_MM } from "./path.ts";
import { apart } from "./vector.ts";

function eachOnce(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    if (!kept.some((other) => apart(point, other) < SAME_POINT_MM)) kept.push(point);
  }
  return kept;
}

/**
 * The points that two paths share, in order along `a`: crossings and touches. Where the paths run along
 * each other: both ends of each shared stretch and its middle.
 */
export function crossings(a: Path, b: Path): Point[] {
  const bs = curvesOf(b);
  return eachOnce(
    curvesOf(a).flatMap((one) => {
      const found = bs.flatMap((other) => meetCurves(one, other).points);
      return [...found].sort((x, y) => x.a - y.a).map(({ at }) => at);
    }),
  );
}

type Pair = { readonly i: number; readonly j: number };

/** How far apart along the path the two passes through a meeting are; on a closed path the shorter way. */
function separation(path: Path, { i, j }: Pair, { a, b }: Meeting): number {
  const measure = measureOf(path);
  const along = Math.abs(lengthAt(measure, { index: j, t: b }) - lengthAt(measure, { index: i, t: a }));
  return path.closed ? Math.min(along, measure.total - along) : along;
}

/**
 * Smooth neighbours may cross again a little beyond their joint by rounding. Between joint and crossing
 * they are then nearer than what counts as the same point.
 */
function hugsJoint(curves: readonly Curve[], { i, j }: Pair, { a, b }: Meeting): boolean {
  const [one, other] = [curves[i]!, curves[j]!];
  const follows = j === i + 1 && apart(curveAt(one, (a + 1) / 2), curveAt(other, b / 2)) < SAME_POINT_MM;
  const closes =
    i === 0 &&
    j === curves.length - 1 &&
    apart(curveAt(one, a / 2), curveAt(other, (b + 1) / 2)) < SAME_POINT_MM;
  return follows || closes;
}

function pairCrossings(path: Path, curves: readonly Curve[], pair: Pair): readonly Point[] {
  const { points, runTogether }: Meetings = meetCurves(curves[pair.i]!, curves[pair.j]!);
  const neighbours = pair.j === pair.i + 1 || (path.closed && pair.i === 0 && pair.j === curves.length - 1);
  return points
    .filter((meeting) => separation(path, pair, meeting) >= SAME_POINT_MM)
    .filter((meeting) => !neighbours || runTogether || !hugsJoint(curves, pair, meeting))
    .map(({ at }) => at);
}

/**
 * Points where the path crosses or touches itself. Neighbouring segments share their joint, which is no
 * crossing, and so is the start of a closed path; a figure eight's middle and a stretch run back on (its
 * far end and its middle) are.
 */
export function selfCrossings(path: Path): Point[] {
  const curves = curvesOf(path);
  const found: Point[] = [];
  for (let i = 0; i < curves.length; i++) {
    const one = curves[i]!;
    if (one.kind === "cubic") found.push(...cubicLoop(one, path.closed && curves.length === 1));
    for (let j = i + 1; j < curves.length; j++) found.push(...pairCrossings(path, curves, { i, j }));
  }
  return eachOnce(found);
}
