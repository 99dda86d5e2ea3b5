import type { Box } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";

// Text that flows: blocks one under the other, in columns, over as many pages as it needs.

/** Something with a height, drawn below `top` from `left`; mm. */
export type Flowing = {
  readonly height: number;
  /** Kept together with the one that follows, like a heading. */
  readonly keep?: boolean;
  readonly draw: (left: number, top: number) => readonly Item[];
};

/** Sizes of the first sheet's words, mm. */
export const BODY_MM = 2.9;
export const HEADING_MM = 3.6;
const GAP_MM = 1.4;
const ABOVE_HEADING_MM = 3;

function flowingBlock(block: Block, above: number, indent = 0): Flowing {
  const { width, height } = blockSize(block);
  return {
    height: height + above,
    draw: (left, top) =>
      blockWords(block, {
        minX: left + indent,
        maxX: left + indent + width,
        minY: top - above - height,
        maxY: top - above,
      }),
  };
}

export const heading = (text: string): Flowing => ({
  ...flowingBlock([{ text, size: HEADING_MM, bold: true }], ABOVE_HEADING_MM),
  keep: true,
});

/** Running text of a width; a bold beginning stands on a line of its own. */
export const text = (words: string, width: number, bold = false): Flowing =>
  flowingBlock(paragraph(words, BODY_MM, width, bold), GAP_MM);

/** Running text set in by `indent`. */
export const inset = (words: string, width: number, indent: number): Flowing =>
  flowingBlock(paragraph(words, BODY_MM, width - indent), 0.3, indent);

/** A numbered step. */
export function step(number: number, words: string, width: number): Flowing {
  const indent = 5;
  const body = text(words, width - indent);
  return {
    height: body.height,
    draw: (left, top) => [
      ...flowingBlock([{ text: `${number}`, size: BODY_MM, bold: true }], GAP_MM).draw(left, top),
      ...body.draw(left + indent, top),
    ],
  };
}

/** Several, kept together. */
export function together(parts: readonly Flowing[]): Flowing {
  return {
    height: parts.reduce((sum, p) => sum + p.height, 0),
    draw: (left, top) => {
      let down = top;
      return parts.flatMap((p) => {
        const items = p.draw(left, down);
        down -= p.height;
        return items;
      });
    },
  };
}

/** One thing drawn beside words, both from the same top. */
export function beside(drawing: Flowing, indent: number, words: string, width: number): Flowing {
  const body = text(words, width - indent);
  return {
    height: Math.max(drawing.height, body.height),
    draw: (left, top) => [...drawing.draw(left, top), ...body.draw(left + indent, top)],
  };
}

export type Flowed = {
  readonly items: readonly Item[];
  /** What found no room. */
  readonly rest: readonly Flowing[];
  /** Something taller than a whole column passes its foot. */
  readonly overflow: boolean;
};

/** Fills columns in order. */
export function flowInto(all: readonly Flowing[], columns: readonly Box[]): Flowed {
  const items: Item[] = [];
  let rest = all;
  let overflow = false;
  for (const column of columns) {
    let top = column.maxY;
    while (rest.length > 0) {
      const [first, second] = rest;
      const needed = first!.height + (first!.keep && second ? second.height : 0);
      const empty = top === column.maxY;
      // What is taller than a whole column is drawn all the same: nothing is dropped.
      if (top - needed < column.minY && !empty) break;
      items.push(...first!.draw(column.minX, top));
      top -= first!.height;
      overflow ||= top < column.minY;
      rest = rest.slice(1);
    }
  }
  return { items, rest, overflow };
}

/** Heights are tried this far apart when columns are evened out, mm. */
const EVEN_STEP_MM = 4;

/** The same columns, as short as still hold everything, so that they end alike; whole when they don't. */
export function evened(all: readonly Flowing[], columns: readonly Box[]): readonly Box[] {
  const height = columns[0]!.maxY - columns[0]!.minY;
  for (let h = EVEN_STEP_MM; h < height; h += EVEN_STEP_MM) {
    const shorter = columns.map((c) => ({ ...c, minY: c.maxY - h }));
    const { rest, overflow } = flowInto(all, shorter);
    if (rest.length === 0 && !overflow) return shorter;
  }
  return columns;
}
