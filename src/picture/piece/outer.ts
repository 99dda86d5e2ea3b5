import type { Box, Point } from "../../geometry/path.ts";
import { printLength } from "../../units/index.ts";
import { blockBox, blockWords, type Reading } from "./block.ts";
import { chordsOfItems } from "./chords.ts";
import { type Dimension, dimensionStrokes } from "./dimension.ts";
import { type Draft, type Ground, withItems, withWords } from "./draft.ts";
import { taken } from "./space.ts";
import { LARGE_MM } from "./title.ts";

/** Outside the piece's room, mm: the dimension line, then its words. */
const LINE_MM = 4;
const WORDS_MM = 5;

function withDimension(
  draft: Draft,
  dimension: Dimension,
  text: string,
  low: Point,
  reading: Reading,
): Draft {
  const strokes = dimensionStrokes("mark", dimension);
  const lined = withItems(draft, strokes, taken(draft.space, { chords: chordsOfItems(strokes) }));
  const block = [{ text, size: LARGE_MM }];
  const size = blockBox(block, reading);
  const [x, y] =
    reading === 0
      ? [low[0] - size.width / 2, low[1] - size.height]
      : [low[0] - size.width, low[1] - size.height / 2];
  const box: Box = { minX: x, minY: y, maxX: x + size.width, maxY: y + size.height };
  return withWords(lined, blockWords(block, box, reading));
}

/** The length and the width over all, outside the piece's room: below it and to its left. */
export function withOuterDimensions(draft: Draft, { bounds, room, units }: Ground): Draft {
  const below = room.minY - LINE_MM;
  const left = room.minX - LINE_MM;
  const length: Dimension = {
    from: [bounds.minX, bounds.minY],
    to: [bounds.maxX, bounds.minY],
    lineFrom: [bounds.minX, below],
    lineTo: [bounds.maxX, below],
  };
  const width: Dimension = {
    from: [bounds.minX, bounds.minY],
    to: [bounds.minX, bounds.maxY],
    lineFrom: [left, bounds.minY],
    lineTo: [left, bounds.maxY],
  };
  const across = withDimension(
    draft,
    length,
    printLength(bounds.maxX - bounds.minX, units),
    [(bounds.minX + bounds.maxX) / 2, room.minY - WORDS_MM],
    0,
  );
  return withDimension(
    across,
    width,
    printLength(bounds.maxY - bounds.minY, units),
    [room.minX - WORDS_MM, (bounds.minY + bounds.maxY) / 2],
    90,
  );
}
