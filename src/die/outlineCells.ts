// The outline's table as words, and read again: what a drawing prints is all that a die maker has.
import type { Point } from "../geometry/path.ts";
import type { OutlineRow } from "./outlineTable.ts";

/** Headings of the table, in order; lengths in mm. */
export const OUTLINE_COLUMNS = [
  "no.",
  "kind",
  "start x",
  "start y",
  "end x",
  "end y",
  "radius",
  "centre x",
  "centre y",
  "turns",
] as const;

/** What stands in a cell that does not apply. */
const NOTHING = "–";

/** A length with all three decimals, so that the column's points stand under one another. */
export const figure = (mm: number): string => mm.toFixed(3);

const point = ([x, y]: Point): readonly string[] => [figure(x), figure(y)];

/** One row in words, a cell a column. */
export const outlineCells = (row: OutlineRow): readonly string[] => [
  String(row.number),
  row.kind,
  ...point(row.start),
  ...point(row.end),
  ...(row.kind === "arc"
    ? [figure(row.radius), ...point(row.centre), row.sense]
    : [NOTHING, NOTHING, NOTHING, NOTHING]),
];

function read(cell: string | undefined): number {
  const value = Number(cell);
  if (cell === undefined || cell.trim() === "" || !Number.isFinite(value))
    throw new RangeError(`"${cell ?? ""}" is no length`);
  return value;
}

/** The row that the cells say. Throws a RangeError when they don't say one. */
export function readOutlineCells(cells: readonly string[]): OutlineRow {
  const [number, kind, x0, y0, x1, y1, radius, cx, cy, sense] = cells;
  const ends = {
    number: read(number),
    start: [read(x0), read(y0)] as const,
    end: [read(x1), read(y1)] as const,
  };
  if (kind === "line") return { ...ends, kind };
  if (kind !== "arc" || (sense !== "anticlockwise" && sense !== "clockwise"))
    throw new RangeError(`"${kind ?? ""} ${sense ?? ""}" is neither a line nor an arc`);
  return { ...ends, kind, radius: read(radius), centre: [read(cx), read(cy)], sense };
}
