import type { Box, Point } from "../../geometry/path.ts";
import type { Layer, Words } from "../picture.ts";
import { DROP, RISE, textWidth } from "../words.ts";

// Blocks of words: a few lines, one under the other, as one box.

export type TextLine = { readonly text: string; readonly size: number; readonly bold?: boolean };
export type Block = readonly TextLine[];

/** Which way a block is read: along x, or with the head turned to the left or to the right. */
export type Reading = 0 | 90 | -90;

/** Height of a line of words, as a share of its size: letters rise and hang within it. */
const LINE = RISE + DROP;

export const radians = (reading: Reading): number => (reading * Math.PI) / 180;

const lineHeight = ({ size }: TextLine): number => size * LINE;

/** Width and height of a block as it is read. */
export function blockSize(block: Block): { readonly width: number; readonly height: number } {
  return {
    width: Math.max(...block.map((l) => textWidth(l.text, l.size, l.bold))),
    height: block.reduce((sum, l) => sum + lineHeight(l), 0),
  };
}

/** Width and height of the box that a block fills on the drawing. */
export function blockBox(
  block: Block,
  reading: Reading,
): { readonly width: number; readonly height: number } {
  const { width, height } = blockSize(block);
  return reading === 0 ? { width, height } : { width: height, height: width };
}

/** The block's words, filling the box; `align` within it. */
export function blockWords(
  block: Block,
  box: Box,
  reading: Reading = 0,
  { layer = "text", align = "left" }: { readonly layer?: Layer; readonly align?: Words["align"] } = {},
): readonly Words[] {
  const { width } = blockSize(block);
  const along = align === "left" ? 0 : align === "centre" ? width / 2 : width;
  let down = 0;
  return block.map((l): Words => {
    const base = down + l.size * RISE;
    down += lineHeight(l);
    return {
      kind: "words",
      layer,
      at: at(box, reading, along, base),
      size: l.size,
      text: l.text,
      align,
      angle: radians(reading),
      ...(l.bold ? { bold: true } : {}),
    };
  });
}

/** A place in the box, from the corner where reading begins: so far along the line, so far down. */
function at(box: Box, reading: Reading, along: number, down: number): Point {
  if (reading === 0) return [box.minX + along, box.maxY - down];
  return reading === 90 ? [box.minX + down, box.minY + along] : [box.maxX - down, box.maxY - along];
}

/** A word cut into parts that are no wider than `width`; every part holds at least one letter. */
function cutWord(word: string, size: number, width: number, bold: boolean): readonly string[] {
  if (textWidth(word, size, bold) <= width) return [word];
  const parts: string[] = [];
  for (const letter of word) {
    const last = parts.at(-1);
    if (last !== undefined && textWidth(last + letter, size, bold) <= width)
      parts[parts.length - 1] = last + letter;
    else parts.push(letter);
  }
  return parts;
}

/** Words broken into lines no wider than `width`; a word that is wider by itself is cut. */
export function wrapped(text: string, size: number, width: number, bold = false): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ").flatMap((w) => cutWord(w, size, width, bold))) {
    const last = lines.at(-1);
    const longer = `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size, bold) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

export const paragraph = (text: string, size: number, width: number, bold = false): Block =>
  wrapped(text, size, width, bold).map((line) => ({ text: line, size, ...(bold ? { bold } : {}) }));
