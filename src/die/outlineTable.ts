// The table that defines an outline: each line and arc with its ends, and an arc with its circle.
import { type ArcCurve, type Curve, curvesOf, partOf } from "../geometry/curve.ts";
import { arc, closedPath, line, type Path, type Point, SAME_POINT_MM } from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import { roundMm } from "../units/index.ts";
import { MOST_TURN, SMOOTH_RAD } from "./arcMerge.ts";

/** One line or arc of an outline, counted from 1 in the outline's direction; mm, to 0.001. */
export type OutlineRow = { readonly number: number; readonly start: Point; readonly end: Point } & (
  | { readonly kind: "line" }
  | { readonly kind: "arc"; readonly radius: number; readonly centre: Point; readonly sense: Sense }
);
export type Sense = "anticlockwise" | "clockwise";

/** An arc whose chord or radius is below this is a line: rounding its ends could turn it inside out. */
const TINY_ARC_MM = 0.01;
/** Rows whose ends or circles disagree by more than this were misread; rounding explains a hair. */
const DISAGREES_MM = 2 * SAME_POINT_MM;

/** Ties go away from 0, so that both halves of a symmetric piece print alike. */
const even = (mm: number): number => (mm < 0 ? -roundMm(-mm) : roundMm(mm));
const rounded = ([x, y]: Point): Point => [even(x), even(y)];

/** An arc over three quarters of a turn is halved: its ends may lie so near each other that they say little of it. */
const pieces = (curve: Curve): readonly Curve[] => (curve.kind === "arc" && Math.abs(curve.sweep) > MOST_TURN + SMOOTH_RAD ? [partOf(curve, 0, 0.5), partOf(curve, 0.5, 1)] : [curve]);

const isTiny = (curve: ArcCurve): boolean => curve.radius < TINY_ARC_MM || apart(curve.p0, curve.p1) < TINY_ARC_MM;

function rowOf(curve: Curve, number: number): OutlineRow {
  const ends = { number, start: rounded(curve.p0), end: rounded(curve.p1) };
  if (curve.kind === "cubic") throw new Error("outlineTable: a curve must be fitted by arcs first");
  if (curve.kind === "line" || isTiny(curve)) return { ...ends, kind: "line" };
  const sense = curve.sweep > 0 ? "anticlockwise" : "clockwise";
  return { ...ends, kind: "arc", radius: roundMm(curve.radius), centre: rounded(curve.centre), sense };
}

/**
 * The rows of a path of lines and arcs, in order. What rounds to no length is left out. Throws when the path
 * has a cubic: that is our own fault.
 */
export function outlineTable(path: Path): readonly OutlineRow[] {
  const rows = curvesOf(path)
    .flatMap(pieces)
    .map((curve) => rowOf(curve, 0))
    .filter(({ start, end }) => start[0] !== end[0] || start[1] !== end[1]);
  return rows.map((row, i) => ({ ...row, number: i + 1 }));
}

function segmentOfRow(row: OutlineRow, at: Point) {
  if (apart(row.start, at) > DISAGREES_MM) throw new RangeError(`row ${row.number} does not start where the row before it ends`);
  if (row.kind === "line") return line(row.end);
  const radii = [apart(row.start, row.centre), apart(row.end, row.centre)];
  if (radii.some((r) => Math.abs(r - row.radius) > DISAGREES_MM)) throw new RangeError(`row ${row.number}: its radius is not the distance from its ends to its centre`);
  return arc(row.end, row.centre, row.sense === "anticlockwise");
}

/**
 * The closed outline that the rows describe. Throws a RangeError when there are none, when a row does not
 * start where the one before it ended, when the last does not end where the first began, or when an arc's
 * radius is not that of its ends and centre.
 */
export function outlineFromTable(rows: readonly OutlineRow[]): Path {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) throw new RangeError("an outline needs at least one row");
  if (apart(last.end, first.start) > DISAGREES_MM) throw new RangeError(`row ${last.number} does not end where row ${first.number} starts`);
  const segments = rows.map((row, i) => segmentOfRow(row, rows[i - 1]?.end ?? row.start));
  return closedPath(first.start, segments);
}
