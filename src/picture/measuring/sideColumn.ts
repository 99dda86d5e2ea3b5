// Beside the drawing: what to know before one begins, and a square to see whether the paper was scaled.
import { type Block, boxStroke, indented, stacked, textBlock, together } from "./block.ts";

/** The square's side: 50 mm, as on every sheet that is printed to be true. */
export const SQUARE_MM = 50;
/** The column is as wide as the square. */
export const SIDE_WIDTH_MM = SQUARE_MM;

const HEAD_MM = 4;
const NOTE_MM = 3.3;
const DASH_MM = 3;

const note = (text: string): Block =>
  together(
    textBlock("–", { size: NOTE_MM, width: DASH_MM }),
    indented(textBlock(text, { size: NOTE_MM, width: SIDE_WIDTH_MM - DASH_MM }), DASH_MM),
  );

const INSIDE_MM = SQUARE_MM - 8;

const squareWords = stacked(
  [
    textBlock("Measure me: 50 mm", { size: 4, width: INSIDE_MM, bold: true }),
    textBlock("both ways, between the middles of my lines.", { size: NOTE_MM, width: INSIDE_MM }),
    textBlock("Print at 100 %, do not scale.", { size: NOTE_MM, width: INSIDE_MM, bold: true }),
    textBlock("If I am not 50 mm, set your printer to actual size.", { size: NOTE_MM, width: INSIDE_MM }),
  ],
  2.4,
);

/** The square, its words in its middle. */
const square: Block = {
  height: SQUARE_MM,
  items: ([x, y]) => [
    boxStroke([x, y], SQUARE_MM, SQUARE_MM, "01.1", "check-square"),
    ...squareWords.items([x + (SQUARE_MM - INSIDE_MM) / 2, y - (SQUARE_MM - squareWords.height) / 2]),
  ],
};

/** Least gap between the notes and the square, mm. */
const GAP_MM = 2.4;

const notesBlock = (notes: readonly string[]): Block =>
  stacked(
    [
      textBlock("Before you begin", { size: HEAD_MM, width: SIDE_WIDTH_MM, bold: true }),
      stacked(notes.map(note), 1),
    ],
    2,
  );

/** The least height of the column, mm. */
export const sideHeight = (notes: readonly string[]): number => notesBlock(notes).height + GAP_MM + SQUARE_MM;

/** Notes at the top of the column, the square at its foot. */
export function sideColumn(notes: readonly string[], height: number): Block {
  const above = notesBlock(notes);
  return {
    height,
    items: ([x, y]) => [...above.items([x, y]), ...square.items([x, y - height + SQUARE_MM])],
  };
}
