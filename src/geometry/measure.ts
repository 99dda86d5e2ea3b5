// Where each curve of a path begins along it: the one table that lengths and positions are read from.
import { type LengthTable, lengthTable, lengthTo, parameterAt } from "./cubic-length.ts";
import { type Curve, curvesOf } from "./curve.ts";
import { type Path, SAME_POINT_MM } from "./path.ts";
import { remembered } from "./remember.ts";
import { apart } from "./vector.ts";

type Row = {
  readonly curve: Curve;
  readonly start: number;
  readonly length: number;
  readonly table?: LengthTable;
};
export type Measure = { readonly rows: readonly Row[]; readonly total: number };
/** A place on a path: the curve's number among `curvesOf`, and t on that curve. */
export type Place = { readonly index: number; readonly t: number };

/** A place this near a joint is the joint; far above rounding, far below what a knife follows. */
const AT_JOINT_MM = 1e-9;

function rowOf(curve: Curve, start: number): Row {
  if (curve.kind === "line") return { curve, start, length: apart(curve.p0, curve.p1) };
  if (curve.kind === "arc") return { curve, start, length: curve.radius * Math.abs(curve.sweep) };
  const table = lengthTable(curve);
  return { curve, start, length: table.total, table };
}

export const measureOf = remembered((path: Path): Measure => {
  const rows: Row[] = [];
  let total = 0;
  for (const curve of curvesOf(path)) {
    const row = rowOf(curve, total);
    rows.push(row);
    total += row.length;
  }
  return { rows, total };
});

/**
 * `s` as a length within the path. On a closed path it runs on round; on an open one it must lie on the
 * path, give or take what a knife can follow.
 */
export function withinPath(path: Path, total: number, s: number): number {
  if (path.closed && total > 0 && (s < 0 || s > total)) return s - total * Math.floor(s / total);
  if (!(s >= -SAME_POINT_MM && s <= total + SAME_POINT_MM)) {
    throw new RangeError(`a path ${total} mm long has no place at ${s} mm`);
  }
  return Math.min(Math.max(s, 0), total);
}

/** The place at length `s` (already within the path); at a joint, the curve that begins there. */
export function placeAt({ rows }: Measure, s: number): Place {
  let index = 0;
  while (index < rows.length - 1 && rows[index + 1]!.start <= s + AT_JOINT_MM) index++;
  const row = rows[index]!;
  const along = s - row.start;
  if (along <= AT_JOINT_MM) return { index, t: 0 };
  if (along >= row.length - AT_JOINT_MM) return { index, t: 1 };
  const t =
    row.table && row.curve.kind === "cubic" ? parameterAt(row.curve, row.table, along) : along / row.length;
  return { index, t };
}

/** The length along the path at a place on it. */
export function lengthAt({ rows }: Measure, { index, t }: Place): number {
  const { curve, start, length, table } = rows[index]!;
  return start + (table && curve.kind === "cubic" ? lengthTo(curve, table, t) : length * t);
}
