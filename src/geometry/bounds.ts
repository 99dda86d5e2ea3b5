import { type ArcCurve, arcParameter, type CubicCurve, type Curve, curveAt, curvesOf } from "./curve.ts";
import type { Box, Path, Point } from "./path.ts";
import { remembered } from "./remember.ts";
import { rootsBetween } from "./roots.ts";
import { polar } from "./vector.ts";

const QUARTERS = [0, Math.PI / 2, Math.PI, -Math.PI / 2] as const;

/** Where an arc is furthest right, up, left and down, if it reaches there. */
function arcExtremes(curve: ArcCurve): readonly Point[] {
  return QUARTERS.filter((angle) => {
    const t = arcParameter(curve, angle);
    return t > 0 && t < 1;
  }).map((angle) => polar(curve.centre, curve.radius, angle));
}

/** The t at which a cubic turns back in x (axis 0) or y (axis 1). */
export function cubicTurns({ p0, c1, c2, p1 }: CubicCurve, axis: 0 | 1): readonly number[] {
  return rootsBetween([c1[axis] - p0[axis], c2[axis] - c1[axis], p1[axis] - c2[axis]]);
}

function extremes(curve: Curve): readonly Point[] {
  if (curve.kind === "line") return [];
  if (curve.kind === "arc") return arcExtremes(curve);
  return [...cubicTurns(curve, 0), ...cubicTurns(curve, 1)].map((t) => curveAt(curve, t));
}

function boxAround(points: readonly Point[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

export const boxOfCurve = remembered(
  (curve: Curve): Box => boxAround([curve.p0, curve.p1, ...extremes(curve)]),
);

/** The smallest upright box that holds the path; exact for arcs and cubics too. */
export const boundsOf = remembered((path: Path): Box => {
  const curves = curvesOf(path);
  return curves.length > 0 ? unionBox(curves.map(boxOfCurve)) : boxAround([path.start]);
});

/** The smallest box that holds all the boxes. Throws when there are none: nothing has no place. */
export function unionBox(boxes: readonly Box[]): Box {
  if (boxes.length === 0) throw new RangeError("unionBox: needs at least one box");
  return boxes.reduce((a, b) => ({
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  }));
}

/** True when the boxes share a point, or come within `slack` of it. */
export function boxesMeet(a: Box, b: Box, slack = 0): boolean {
  return (
    a.minX <= b.maxX + slack &&
    b.minX <= a.maxX + slack &&
    a.minY <= b.maxY + slack &&
    b.minY <= a.maxY + slack
  );
}

/** Distance from a point to a box; 0 inside. */
export function boxDistance(box: Box, [x, y]: Point): number {
  const dx = Math.max(box.minX - x, 0, x - box.maxX);
  const dy = Math.max(box.minY - y, 0, y - box.maxY);
  return Math.sqrt(dx * dx + dy * dy);
}

/** Distance between two boxes; 0 when they share a point. */
export function boxGap(a: Box, b: Box): number {
  const dx = Math.max(b.minX - a.maxX, a.minX - b.maxX, 0);
  const dy = Math.max(b.minY - a.maxY, a.minY - b.maxY, 0);
  return Math.sqrt(dx * dx + dy * dy);
}
