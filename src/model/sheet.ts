import type { Box, Point } from "../geometry/path.ts";
import type { Placement } from "../geometry/transform.ts";

/**
 * A paper size as it lies in the printer, upright; mm. A roll's height is the longest page printed on
 * it; its pages are cut where the drawing ends.
 */
export type Paper = {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly source: string;
  readonly roll?: true;
};

/**
 * How the printer strays: what a bar measured ÷ what it should measure, along the paper's short edge
 * (x) and its long edge (y), whichever way a sheet is drawn; 1 = true.
 */
export type PrinterFactor = { readonly x: number; readonly y: number };

/**
 * A stretch of a piece's x that is drawn when the rest is left out, and how far towards lower x it is
 * drawn from where it lies on the piece.
 */
export type Kept = readonly [from: number, to: number, moved: number];

/** A piece lying on a plate; with `kept`, only these stretches of its x are drawn ("ends only"). */
export type Placed = {
  readonly piece: string;
  readonly placement: Placement;
  readonly kept?: readonly Kept[];
};

/**
 * A plate is one large drawing, true size in leather millimetres, that is cut into sheets.
 * Its joints are the middles of the overlaps, along x and along y.
 */
export type Plate = {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly placed: readonly Placed[];
  readonly jointsX: readonly number[];
  readonly jointsY: readonly number[];
};

/** One printed sheet. */
export type Sheet = {
  /** "A1": row letter, and its number in the row. */
  readonly name: string;
  readonly plate: string;
  /** Counted from 0 over all plates; the letter of the name. */
  readonly row: number;
  /** Counted from 0 over the sheets of the row; a place where nothing is drawn gets no sheet. */
  readonly column: number;
  /** The part of the plate that this sheet shows, in plate millimetres. */
  readonly window: Box;
  /** True when the paper lies on its side. */
  readonly landscape: boolean;
  /** The page as this sheet is drawn, mm: width and height are swapped when it lies on its side. */
  readonly page: { readonly width: number; readonly height: number };
  /** Where the window's lower left corner lies on the page, in page millimetres as sent to the printer. */
  readonly origin: Point;
  readonly pieces: readonly string[];
  /** Edges glued to a neighbour: its name. */
  readonly joins: {
    readonly left?: string;
    readonly right?: string;
    readonly above?: string;
    readonly below?: string;
  };
};

export type Layout = {
  readonly paper: Paper;
  readonly margin: number;
  readonly overlap: number;
  readonly factor: PrinterFactor;
  readonly plates: readonly Plate[];
  readonly sheets: readonly Sheet[];
};
