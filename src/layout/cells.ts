import { boxesMeet } from "../geometry/bounds.ts";
import { containsPoint } from "../geometry/contains.ts";
import type { Box, Point } from "../geometry/path.ts";
import { placed as laid, placedPoint } from "../geometry/transform.ts";
import type { Placed } from "../model/sheet.ts";
import { touches } from "./clip.ts";
import { boxOnPlate } from "./draw.ts";
import type { Part, Parts } from "./part.ts";
import type { Settled } from "./settle.ts";

/** A place in a plate's grid of sheets; row 0 is the uppermost. */
export type Cell = { readonly row: number; readonly column: number; readonly window: Box };

/** A place with the pieces that lie there. */
export type UsedCell = Cell & { readonly pieces: readonly string[] };

type Span = readonly [from: number, to: number];

/** The stretches that sheets show: from joint to joint and half an overlap beyond. */
export function spansOf(length: number, joints: readonly number[], overlap: number): readonly Span[] {
  const starts = [0, ...joints.map((j) => j - overlap / 2)];
  const ends = [...joints.map((j) => j + overlap / 2), length];
  return starts.map((from, i): Span => [from, ends[i]!]);
}

/** All places of a plate's grid, row by row from above. */
export function gridOf(
  plate: Pick<Settled, "width" | "height" | "jointsX" | "jointsY">,
  overlap: number,
): readonly Cell[] {
  const columns = spansOf(plate.width, plate.jointsX, overlap);
  const rows = [...spansOf(plate.height, plate.jointsY, overlap)].reverse();
  return rows.flatMap(([minY, maxY], row) =>
    columns.map(([minX, maxX], column): Cell => ({ row, column, window: { minX, minY, maxX, maxY } })),
  );
}

/** What reaches less than this into a sheet is seen on its neighbour alone, mm: no sheet for a hair. */
const HAIR_MM = 0.01;

/** The outline as it lies on the plate: points to follow it by, and the box round them. */
type OnPlate = {
  readonly part: Part;
  readonly placed: Placed;
  readonly points: readonly Point[];
  readonly box: Box;
};

function onPlate(placed: Placed, parts: Parts): OnPlate {
  const part = parts.get(placed.piece)!;
  const points = part.trail.map((p) => placedPoint(p, placed.placement));
  return { part, placed, points, box: boxOnPlate(placed, part.bounds) };
}

function lies({ part, placed, points, box }: OnPlate, shown: Box): boolean {
  const window: Box = {
    minX: shown.minX + HAIR_MM,
    minY: shown.minY + HAIR_MM,
    maxX: shown.maxX - HAIR_MM,
    maxY: shown.maxY - HAIR_MM,
  };
  if (!boxesMeet(box, window)) return false;
  if (points.some((p, i) => touches(window, p, points[(i + 1) % points.length]!))) return true;
  // No edge comes here: all of the window is leather, or none of it.
  const middle: Point = [(window.minX + window.maxX) / 2, (window.minY + window.maxY) / 2];
  return containsPoint(laid(part.drawn, placed.placement), middle);
}

/** The places where something is drawn, each with the pieces that lie there. */
export function usedCells(plate: Settled, parts: Parts, overlap: number): readonly UsedCell[] {
  const outlines = plate.placed.map((p) => onPlate(p, parts));
  return gridOf(plate, overlap)
    .map((cell) => ({
      ...cell,
      pieces: outlines.filter((o) => lies(o, cell.window)).map((o) => o.placed.piece),
    }))
    .filter((cell) => cell.pieces.length > 0);
}
