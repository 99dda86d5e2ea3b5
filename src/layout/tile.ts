import type { Paper, PrinterFactor } from "../model/sheet.ts";

/** Height of the strip at the foot of a sheet for its name and ruler, when that costs no sheet; mm. */
export const FOOT_MM = 15;

/** The most a sheet can show. */
export type Tile = {
  readonly landscape: boolean;
  /** Leather millimetres. */
  readonly width: number;
  readonly height: number;
};

/**
 * The most of a plate that one sheet can show, in leather millimetres.
 *
 * A length L of leather is sent to the printer as L ÷ factor, so the printable paper shows
 * printable × factor of it. A printer that enlarges (factor over 1) may push the far edge of the page off
 * the paper, so then no more than the printable paper itself is used: tile = printable × min(1, factor).
 * The paper's x is its short edge; on a sheet that lies on its side it runs up the page.
 */
export function tileOf(
  paper: Paper,
  margin: number,
  factor: PrinterFactor,
  landscape: boolean,
  foot: number,
): Tile {
  const short = (paper.width - 2 * margin) * Math.min(1, factor.x);
  const long = (paper.height - 2 * margin) * Math.min(1, factor.y);
  return landscape
    ? { landscape, width: long, height: short - foot }
    : { landscape, width: short, height: long - foot };
}

/** A sheet whose printable part is shorter than this in either way can't be joined to anything useful. */
export const LEAST_PRINTABLE_MM = 100;

/** An overlap narrower than this can't be glued. */
export const LEAST_OVERLAP_MM = 4;

export type PaperFault = {
  readonly of: "margin" | "overlap";
  readonly value: number;
  readonly least: number;
  readonly most: number;
};

/** What is wrong with a margin or an overlap on a paper, mm; undefined when they can be used. */
export function paperFault(paper: Paper, margin: number, overlap: number): PaperFault | undefined {
  const most = (paper.width - LEAST_PRINTABLE_MM) / 2;
  if (!(margin >= 0 && margin <= most)) return { of: "margin", value: margin, least: 0, most };
  const widest = (paper.width - 2 * margin) / 4;
  const fits = overlap >= LEAST_OVERLAP_MM && overlap <= widest;
  return fits ? undefined : { of: "overlap", value: overlap, least: LEAST_OVERLAP_MM, most: widest };
}

/** How many tiles of `tile` mm cover `length` when neighbours share `overlap`. */
export function tilesFor(length: number, tile: number, overlap: number): number {
  return Math.max(1, Math.ceil((length - overlap) / (tile - overlap) - TILE_SLACK));
}
/** A length that passes the last tile by less than this share of a tile still fits: rounding, no drawing. */
const TILE_SLACK = 1e-9;

/** The length that `count` tiles cover. */
export const covered = (count: number, tile: number, overlap: number): number =>
  count * tile - (count - 1) * overlap;
