import { boundsOf } from "../geometry/bounds.ts";
import type { Path, Segment } from "../geometry/path.ts";
import { endPoint } from "../geometry/path.ts";
import { turned } from "../geometry/transform.ts";
import type { Piece } from "../model/piece.ts";

// What is cut of a piece: its size along and across the hide's backbone, and whether it is a strip.

/** A size that the piece tells and one that is measured on its outline are the same, mm: the arithmetic's tolerance. */
const SAME_MM = 1e-6;

export type CutSize = { readonly length: number; readonly width: number };

/** The outline's box along (length) and across (width) the backbone, mm; a size that the piece tells, where it is one. */
export function cutSize(piece: Piece): CutSize {
  const box = boundsOf(alongGrain(piece));
  const told = (mm: number): number =>
    piece.sizes.find((q) => q.kind === "length" && Math.abs(q.value - mm) < SAME_MM)?.value ?? mm;
  return { length: told(box.maxX - box.minX), width: told(box.maxY - box.minY) };
}

/** The outline turned so that the backbone lies along x. */
const alongGrain = (piece: Piece): Path =>
  piece.grain === 0 ? piece.outline : turned(piece.outline, -piece.grain);

/** A strap cutter opens about 4 in; from memory. */
const WIDEST_STRIP_MM = 101.6;
/** Leather that is thinner folds in a strap cutter; common practice, no source. */
const THINNEST_STRIP_MM = 1;
/** A strip is so many times longer than wide; shorter, it is cut from the sheet. Common practice, no source. */
const LEAST_SLENDER = 4;
/** Share of the length along which both edges run straight and parallel; the rest is for the ends. */
const LEAST_PARALLEL = 0.75;

/**
 * True for what a strap cutter can cut: plain straps, and other pieces that are long strips along the backbone,
 * straight on both sides but for their ends, no wider than the cutter opens.
 */
export function isStrip(piece: Piece): boolean {
  if (piece.straight) return true;
  const { length, width } = cutSize(piece);
  const fits =
    width <= WIDEST_STRIP_MM &&
    length >= LEAST_SLENDER * width &&
    piece.leather.thickness >= THINNEST_STRIP_MM;
  if (!fits) return false;
  const path = alongGrain(piece);
  const box = boundsOf(path);
  return [box.minY, box.maxY].every((y) => straightAt(path, y) >= LEAST_PARALLEL * length);
}

/** Length of the outline's lines that lie along x at height y, mm. */
function straightAt(path: Path, y: number): number {
  let at = path.start;
  let length = 0;
  for (const s of path.segments as readonly Segment[]) {
    const level = Math.abs(at[1] - y) < SAME_MM && Math.abs(s.to[1] - y) < SAME_MM;
    if (s.kind === "line" && level) length += Math.abs(s.to[0] - at[0]);
    at = s.to;
  }
  // An outline that isn't closed by a segment of its own is closed by a line.
  const end = endPoint(path);
  const closing = Math.abs(end[1] - y) < SAME_MM && Math.abs(path.start[1] - y) < SAME_MM;
  return closing ? length + Math.abs(path.start[0] - end[0]) : length;
}
