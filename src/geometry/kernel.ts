// The only place that speaks to paper: paths in, paths out. Paper keeps one project as global state; it is
// set up once, and nothing is ever inserted into it.

import paper from "paper/dist/paper-core.js";
import * as trig from "../units/trigonometry.ts";
import { type ArcCurve, type CubicCurve, type Curve, curvesOf, partOf, velocityAt } from "./curve.ts";
import { closedPath, cubic, line, type Path, type Point, type Segment } from "./path.ts";
import { minus, plus, scaled } from "./vector.ts";

export type Operation = "unite" | "subtract" | "intersect";

/** Paper has no arcs; a cubic may stray this far from the arc it stands for. A tenth of SAME_POINT_MM. */
const ARC_ERROR_MM = 0.0001;
/**
 * Coordinates go in as whole multiples of this: shapes that should share an edge but differ in the last
 * digits would otherwise stay apart.
 */
const GRID_MM = 0.0001;

const onGrid = (value: number): number => Math.round(value / GRID_MM) * GRID_MM;

/**
 * How far the usual cubic (handles 4/3 tan(θ/4) r) bulges over an arc of angle θ, as a share of r:
 * 2/27 · sin⁶(θ/4) / cos²(θ/4) (from memory; 2.7e-4 for a quarter circle).
 */
const arcError = (angle: number): number => ((2 / 27) * trig.sin(angle / 4) ** 6) / trig.cos(angle / 4) ** 2;

function arcCubics(curve: ArcCurve): readonly CubicCurve[] {
  const sweep = Math.abs(curve.sweep);
  let count = Math.ceil(sweep / (Math.PI / 2));
  while (curve.radius * arcError(sweep / count) > ARC_ERROR_MM) count++;
  return Array.from({ length: count }, (_, i) => {
    const part = partOf(curve, i / count, (i + 1) / count) as ArcCurve;
    const handle = (4 / 3) * (trig.tan(part.sweep / 4) / part.sweep);
    const c1 = plus(part.p0, scaled(velocityAt(part, 0), handle));
    const c2 = minus(part.p1, scaled(velocityAt(part, 1), handle));
    return { kind: "cubic", p0: part.p0, c1, c2, p1: part.p1 };
  });
}

const paperPoint = ([x, y]: Point): paper.Point => new paper.Point(onGrid(x), onGrid(y));

function drawCurve(ring: paper.Path, curve: Curve): void {
  if (curve.kind === "line") ring.lineTo(paperPoint(curve.p1));
  else if (curve.kind === "cubic")
    ring.cubicCurveTo(paperPoint(curve.c1), paperPoint(curve.c2), paperPoint(curve.p1));
  else for (const part of arcCubics(curve)) drawCurve(ring, part);
}

function paperRing(path: Path): paper.Path {
  const ring = new paper.Path({ insert: false });
  ring.moveTo(paperPoint(path.start));
  for (const curve of curvesOf(path)) drawCurve(ring, curve);
  ring.closePath();
  return ring;
}

function paperShape(rings: readonly Path[]): paper.PathItem {
  const [first, ...others] = rings.map(paperRing);
  if (first && others.length === 0) return first;
  return new paper.CompoundPath({
    insert: false,
    children: first ? [first, ...others] : [],
    fillRule: "nonzero",
  });
}

const ourPoint = ({ x, y }: paper.Point): Point => [x, y];

function ourSegment(curve: paper.Curve): Segment {
  const [start, end] = [curve.point1, curve.point2];
  if (!curve.hasHandles()) return line(ourPoint(end));
  return cubic(ourPoint(start.add(curve.handle1)), ourPoint(end.add(curve.handle2)), ourPoint(end));
}

function ourRings(shape: paper.PathItem): Path[] {
  const rings =
    shape instanceof paper.CompoundPath ? (shape.children as paper.Path[]) : [shape as paper.Path];
  return rings
    .filter((ring) => ring.curves.length > 0)
    .map((ring) => closedPath(ourPoint(ring.firstSegment.point), ring.curves.map(ourSegment)));
}

/**
 * What lies in either shape, in the first but not in the second, or in both. A shape is a list of closed
 * rings, outlines anticlockwise and holes clockwise; no two of its rings cross. The rings that come back run
 * either way.
 */
export function combined(operation: Operation, a: readonly Path[], b: readonly Path[]): Path[] {
  if (!paper.project) paper.setup(new paper.Size(1, 1));
  return ourRings(paperShape(a)[operation](paperShape(b), { insert: false }));
}
