import { boxDistance, boxOfCurve, cubicTurns } from "./bounds.ts";
import { type ArcCurve, arcParameter, type CubicCurve, type Curve, curveAt, curvesOf } from "./curve.ts";
import { meetCurves } from "./meet.ts";
import { nearestOnCurve } from "./nearest.ts";
import { type Path, type Point, SAME_POINT_MM } from "./path.ts";
import { rootsBetween } from "./roots.ts";

/** The t between which a curve only rises or only falls. */
function steadyBounds(curve: ArcCurve | CubicCurve): readonly number[] {
  const turns =
    curve.kind === "cubic"
      ? cubicTurns(curve, 1)
      : [Math.PI / 2, -Math.PI / 2].map((angle) => arcParameter(curve, angle)).filter((t) => t > 0 && t < 1);
  return [0, ...[...turns].sort((a, b) => a - b), 1];
}

/** x where a curve that rises or falls steadily from t0 to t1 is at height y. */
function xAtHeight(curve: ArcCurve | CubicCurve, t0: number, t1: number, y: number): number {
  if (curve.kind === "arc") {
    const dy = y - curve.centre[1];
    const dx = Math.sqrt(Math.max(curve.radius * curve.radius - dy * dy, 0));
    return curveAt(curve, (t0 + t1) / 2)[0] >= curve.centre[0] ? curve.centre[0] + dx : curve.centre[0] - dx;
  }
  const heights = [curve.p0, curve.c1, curve.c2, curve.p1].map((point) => point[1] - y);
  const t = rootsBetween(heights).find((root) => root >= t0 && root <= t1) ?? (t0 + t1) / 2;
  return curveAt(curve, t)[0];
}

/** How often a ray from the point to the right passes through the curve; a height belongs to what rises from it. */
function rayPasses(curve: Curve, [x, y]: Point): number {
  const passes = (y0: number, y1: number): boolean => y0 > y !== y1 > y;
  const box = boxOfCurve(curve);
  if (box.maxX < x || box.maxY < y || box.minY > y) return 0;
  // All of the curve is to the right: only its ends matter to even and odd.
  if (box.minX > x) return passes(curve.p0[1], curve.p1[1]) ? 1 : 0;
  if (curve.kind === "line") {
    const [[x0, y0], [x1, y1]] = [curve.p0, curve.p1];
    return passes(y0, y1) && x0 + ((y - y0) * (x1 - x0)) / (y1 - y0) > x ? 1 : 0;
  }
  const bounds = steadyBounds(curve);
  return bounds.slice(1).filter((t1, i) => {
    const t0 = bounds[i]!;
    return passes(curveAt(curve, t0)[1], curveAt(curve, t1)[1]) && xAtHeight(curve, t0, t1, y) > x;
  }).length;
}

function onEdge(curves: readonly Curve[], point: Point): boolean {
  return curves.some(
    (curve) =>
      boxDistance(boxOfCurve(curve), point) < SAME_POINT_MM &&
      nearestOnCurve(curve, point).distance < SAME_POINT_MM,
  );
}

/**
 * True when the point lies inside the closed path or on its edge (within SAME_POINT_MM). The path's
 * direction does not matter. Throws a RangeError for an open path, which has no inside.
 */
export function containsPoint(closedPath: Path, point: Point): boolean {
  if (!closedPath.closed) throw new RangeError("containsPoint: an open path has no inside");
  const curves = curvesOf(closedPath);
  const passes = curves.reduce((sum, curve) => sum + rayPasses(curve, point), 0);
  return passes % 2 === 1 || onEdge(curves, point);
}

/** Points of a curve, one in each part between its meetings with the outer path. */
function probes(curve: Curve, outer: readonly Curve[]): readonly Point[] {
  const cuts = outer.flatMap((other) => meetCurves(curve, other).points.map(({ a }) => a));
  const bounds = [0, ...cuts.sort((a, b) => a - b), 1];
  return bounds.slice(1).map((t, i) => curveAt(curve, (bounds[i]! + t) / 2));
}

/**
 * True when all of `inner` (open or closed) lies inside the closed path `outer`. Touching the edge from
 * inside, or running along it, is allowed; how near an edge something may lie is another question.
 */
export function containsPath(outer: Path, inner: Path): boolean {
  const edge = curvesOf(outer);
  if (!containsPoint(outer, inner.start)) return false;
  return curvesOf(inner).every((curve) => probes(curve, edge).every((point) => containsPoint(outer, point)));
}
