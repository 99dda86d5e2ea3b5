import { boundsOf } from "../geometry/bounds.ts";
import { type Box, type Point, polyline } from "../geometry/path.ts";
import type { Hole, Piece } from "../model/piece.ts";
import type { Kept } from "../model/sheet.ts";
import { keptPoint } from "./draw.ts";

/** A place on a piece that a joint should not cross, and how much it matters. */
export type Feature = { readonly box: Box; readonly weight: number };

// One joint through a punched hole costs more than joints through a whole row of awl marks: a hole that
// is off by the thickness of the paper's edge doesn't meet its mate.
const HOLE = 24;
const FOLD = 12;
const AWL_MARK = 1;
/** Kept clear round a feature, mm: a hole's cross reaches 1.2 mm past it. */
const ROUND_MM = 2;
/** A piece that would fit on one sheet is not cut in two for the sake of one hole elsewhere. */
export const WHOLE_PIECE = 60;

const round = ([x, y]: Point, half: number): Box => ({
  minX: x - half,
  minY: y - half,
  maxX: x + half,
  maxY: y + half,
});
const grown = (b: Box, by: number): Box => ({
  minX: b.minX - by,
  minY: b.minY - by,
  maxX: b.maxX + by,
  maxY: b.maxY + by,
});
const weightOf = (hole: Hole): number => (hole.kind === "round" ? HOLE : AWL_MARK);

/** A box of the piece, where it is drawn when stretches are left out; undefined when it is left out. */
function drawnBox(box: Box, kept: readonly Kept[] | undefined): Box | undefined {
  const low = keptPoint([box.minX, box.minY], kept);
  const high = keptPoint([box.maxX, box.maxY], kept);
  return low && high && { minX: low[0], minY: low[1], maxX: high[0], maxY: high[1] };
}

/** Holes, cutouts and folds of a piece as it is drawn, in piece coordinates. */
export function featuresOf(piece: Piece, kept?: readonly Kept[]): readonly Feature[] {
  const found = [
    ...piece.holes.map((h) => ({ box: round(h.at, h.size / 2), weight: weightOf(h) })),
    ...piece.cutouts
      .filter((c) => c.use !== "opening")
      .map((c) => ({ box: boundsOf(c.outline), weight: HOLE })),
    ...piece.folds.map((f) => ({ box: boundsOf(polyline([f.from, f.to])), weight: FOLD })),
  ];
  return found.flatMap(({ box, weight }) => {
    const drawn = drawnBox(box, kept);
    return drawn ? [{ box: grown(drawn, ROUND_MM), weight }] : [];
  });
}
