// Blocks: what a page is stacked from. A block is set for a width; where it lies is decided later.
import { type Point, polyline, rectanglePath } from "../../geometry/path.ts";
import type { Item, LineType, Stroke, Words } from "../picture.ts";
import { DROP, RISE } from "../words.ts";
import { type Setting, wrapped } from "./wrap.ts";

/** Items as they lie when the block's upper left corner is at `corner`, and the height they take, mm. */
export type Block = { readonly height: number; readonly items: (corner: Point) => readonly Item[] };

/** From base line to base line, as a share of the font size. */
export const LEADING = 1.2;

export const words = (text: string, at: Point, size: number, more: Partial<Words> = {}): Words => ({
  kind: "words",
  layer: "text",
  at,
  size,
  text,
  align: "left",
  angle: 0,
  ...more,
});

const sheetStroke = (line: LineType, path: Stroke["path"], id?: string): Stroke => ({
  kind: "stroke",
  layer: "sheet",
  line,
  path,
  ...(id === undefined ? {} : { id }),
});

/** A level line from `left`, `width` long. */
export const rule = ([x, y]: Point, width: number, line: LineType = "01.1"): Stroke =>
  sheetStroke(
    line,
    polyline([
      [x, y],
      [x + width, y],
    ]),
  );

/** A box by its upper left corner. */
export const boxStroke = (
  [x, y]: Point,
  width: number,
  height: number,
  line: LineType = "01.1",
  id?: string,
): Stroke => sheetStroke(line, rectanglePath([x, y - height], width, height), id);

/** A text in lines, from its letters' tops to their lowest hangers. */
export function textBlock(text: string, setting: Setting): Block {
  const { size, bold = false } = setting;
  const lines = wrapped(text, setting);
  const height = lines.length === 0 ? 0 : (RISE + DROP + (lines.length - 1) * LEADING) * size;
  return {
    height,
    items: ([x, y]) =>
      lines.map((line, i) => words(line, [x, y - (RISE + i * LEADING) * size], size, { bold })),
  };
}

/** Blocks one below the other, with a gap between them. */
export function stacked(blocks: readonly Block[], gap: number): Block {
  const shown = blocks.filter(({ height }) => height > 0);
  const height = shown.reduce((sum, b) => sum + b.height, 0) + gap * Math.max(0, shown.length - 1);
  return {
    height,
    items: ([x, y]) => {
      let top = y;
      return shown.flatMap((block) => {
        const items = block.items([x, top]);
        top -= block.height + gap;
        return items;
      });
    },
  };
}

/** The block moved to the right. */
export const indented = (block: Block, by: number): Block => ({
  height: block.height,
  items: ([x, y]) => block.items([x + by, y]),
});

/** Blocks over one another, from the same corner. */
export const together = (...blocks: readonly Block[]): Block => ({
  height: Math.max(...blocks.map(({ height }) => height)),
  items: (corner) => blocks.flatMap((block) => block.items(corner)),
});
