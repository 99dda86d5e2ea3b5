import type { Frame } from "./eye.ts";
import type { Box, Point } from "./shapes.ts";

// Where each piece lies in the overview: rows from the top, in the article's order, left edges first.

/** What is to be laid: its own box, mm, and how many letters the name above it has. */
export type Laying = { readonly id: string; readonly box: Box; readonly letters: number };
/** A piece's place: what is added to its own coordinates. Its name stands above its box. */
export type Cell = { readonly id: string; readonly box: Box; readonly move: Point };
export type Shelves = { readonly cells: readonly Cell[]; readonly bounds: Box };

/** On the screen, whatever the scale, CSS px: between neighbours, a name's height, a letter's usual width. */
const GAP_PX = 18;
const NAME_PX = 26;
const LETTER_PX = 8.2;
/** Widths of row that are tried for the one that shows the pieces largest. */
const TRIES = 24;
/** A row that is full to the last bit of a sum is not too full. */
const FULL = 1 + 1e-9;

const widthOf = ({ minX, maxX }: Box): number => maxX - minX;
const heightOf = ({ minY, maxY }: Box): number => maxY - minY;

/** Rows no wider than `rowWidth`, each piece as wide as its name at `px` mm to the pixel. */
function rowsOf(list: readonly Laying[], rowWidth: number, px: number): readonly (readonly Laying[])[] {
  const rows: Laying[][] = [];
  let taken = 0;
  for (const laying of list) {
    const row = rows.at(-1);
    const width = takenBy(laying, px);
    if (row && taken + GAP_PX * px + width <= rowWidth * FULL) {
      row.push(laying);
      taken += GAP_PX * px + width;
    } else {
      rows.push([laying]);
      taken = width;
    }
  }
  return rows;
}

const takenBy = ({ box, letters }: Laying, px: number): number =>
  Math.max(widthOf(box), letters * LETTER_PX * px);

function layRows(list: readonly Laying[], rowWidth: number, px: number): Shelves {
  const cells: Cell[] = [];
  let top = 0;
  let right = 0;
  for (const row of rowsOf(list, rowWidth, px)) {
    top -= NAME_PX * px;
    let x = 0;
    for (const laying of row) {
      const { id, box } = laying;
      cells.push({ id, box, move: [x - box.minX, top - box.maxY] });
      x += takenBy(laying, px) + GAP_PX * px;
    }
    right = Math.max(right, x - GAP_PX * px);
    top -= Math.max(...row.map(({ box }) => heightOf(box))) + GAP_PX * px;
  }
  return { cells, bounds: { minX: 0, maxX: right, minY: top + GAP_PX * px, maxY: 0 } };
}

/** Pixels to the millimetre at which a box fills a frame. */
const scaleIn = (bounds: Box, { width, height }: Frame): number =>
  Math.min(width / widthOf(bounds), height / heightOf(bounds));

/** Names take room by the scale, and the scale follows from the room: a second laying is near enough. */
function layTwice(list: readonly Laying[], rowWidth: number, frame: Frame): Shelves {
  const first = layRows(list, rowWidth, rowWidth / frame.width);
  return layRows(list, rowWidth, 1 / scaleIn(first.bounds, frame));
}

/**
 * Lays the pieces in rows, so wide that they show as large as may be in a frame of that size. Millimetres,
 * y up, the upper left corner at the origin; an empty list has an empty box of 1 mm.
 */
export function layShelves(list: readonly Laying[], frame: Frame): Shelves {
  if (list.length === 0) return { cells: [], bounds: { minX: 0, maxX: 1, minY: -1, maxY: 0 } };
  const widest = Math.max(1, ...list.map(({ box }) => widthOf(box)));
  const all = 2 * list.reduce((sum, { box }) => sum + widthOf(box), 0);
  const tried = Array.from({ length: TRIES }, (_, i) =>
    layTwice(list, widest + ((all - widest) * i) / (TRIES - 1), frame),
  );
  return tried.reduce((best, next) =>
    scaleIn(next.bounds, frame) > scaleIn(best.bounds, frame) * FULL ? next : best,
  );
}
