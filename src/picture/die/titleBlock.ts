// The title block: the data fields of ISO 7200 (legal owner, number, revision, date, sheet, title, creator,
// approval, document type; from memory), and what a die is ordered by.
import { type Box, polyline, rectanglePath } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import { type Block, blockSize, blockWords, wrapped } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { DROP, RISE, textWidth } from "../words.ts";

/** A field: its name in small letters, what it says below it, and its share of the block's width. */
export type Field = {
  readonly name: string;
  readonly says: string;
  readonly share: number;
  /** Larger and bold. */
  readonly large?: boolean;
};

export type FieldRow = readonly Field[];

/** ISO 7200 has the block 180 mm wide (from memory); a narrower sheet has a narrower one. */
export const BLOCK_MM = 180;
const NAME_MM = 1.9;
const SAYS_MM = 2.7;
const LARGE_MM = 4.4;
/** On one line words are no smaller than this share of their size, mm; what is longer is folded. */
const LEAST_SHARE = 0.72;
const LEAST_MM = 1.9;
/** Names of fields are short; on a narrow block they are smaller still rather than cut. */
const LEAST_NAME_MM = 1;
/** Beside the words, and above and below them, mm. */
const SIDE_MM = 1.3;
const PAD_MM = 0.5;
/** What is made to fit exactly may come out so much wider by rounding, mm. */
const HAIR_MM = 1e-6;
export const ROW_MM = 8;
const LARGE_ROW_MM = 10;
const LINE = RISE + DROP;

const nameRoom = PAD_MM + NAME_MM * LINE;

const widthsOf = (row: FieldRow, width: number): readonly number[] => {
  const whole = row.reduce((sum, { share }) => sum + share, 0);
  return row.map(({ share }) => (width * share) / whole);
};

/** Words folded at spaces, else behind the hyphens of a number; only what has neither is cut into parts. */
function folded(text: string, size: number, width: number, bold: boolean): readonly string[] {
  const fits = (line: string): boolean => textWidth(line, size, bold) <= width + HAIR_MM;
  const lines: string[] = [];
  for (const part of text.split(/(?<=[ -])/)) {
    const longer = (lines.at(-1) ?? "") + part;
    if (lines.length > 0 && fits(longer.trimEnd())) lines[lines.length - 1] = longer;
    else if (fits(part.trimEnd())) lines.push(part);
    else lines.push(...wrapped(part, size, width, bold));
  }
  return lines.map((line) => line.trimEnd());
}

/** A field's words in the largest size that suits: on one line, else folded into as many as it takes. Nothing is cut. */
function saysOf({ says, large = false }: Field, wide: number): Block {
  if (says === "") return [];
  const width = wide - 2 * SIDE_MM;
  const wished = large ? LARGE_MM : SAYS_MM;
  const least = Math.max(LEAST_MM, wished * LEAST_SHARE);
  const fitting = (wished * width) / textWidth(says, wished, true);
  const bold = large ? { bold: true } : {};
  if (fitting >= least) return [{ text: says, size: Math.min(wished, fitting), ...bold }];
  return folded(says, least, width, true).map((text) => ({ text, size: least, ...bold }));
}

/** As high as its fullest field asks for. */
function rowHeight(row: FieldRow, width: number): number {
  const usual = row.some(({ large }) => large) ? LARGE_ROW_MM : ROW_MM;
  const widths = widthsOf(row, width);
  const needed = row.map((field, i) => {
    const block = saysOf(field, widths[i]!);
    return block.length === 0 ? 0 : nameRoom + blockSize(block).height + PAD_MM;
  });
  return Math.max(usual, ...needed);
}

/** The block's height when it is `width` wide. */
export const blockHeight = (rows: readonly FieldRow[], width: number = BLOCK_MM): number =>
  rows.reduce((sum, row) => sum + rowHeight(row, width), 0);

function fieldItems(field: Field, box: Box): readonly Item[] {
  const wide = box.maxX - box.minX;
  const [x, top] = [box.minX + SIDE_MM, box.maxY - PAD_MM];
  const room = textWidth(field.name, NAME_MM);
  const size = Math.max(LEAST_NAME_MM, Math.min(NAME_MM, (NAME_MM * (wide - 2 * SIDE_MM)) / room));
  const name: Item = {
    kind: "words",
    layer: "text",
    at: [x, top - NAME_MM * RISE],
    size,
    text: field.name,
    align: "left",
    angle: 0,
  };
  const block = saysOf(field, wide);
  const frame = stroke("sheet", "01.1", rectanglePath([box.minX, box.minY], wide, box.maxY - box.minY));
  if (block.length === 0) return [frame, name];
  const { width, height } = blockSize(block);
  const spare = Math.max(0, box.maxY - nameRoom - box.minY - height) / 2;
  const low = box.minY + spare;
  return [frame, name, ...blockWords(block, { minX: x, maxX: x + width, minY: low, maxY: low + height })];
}

/** The block, its lower right corner at the given place; as wide as asked for. */
export function titleBlock(
  rows: readonly FieldRow[],
  right: number,
  bottom: number,
  width: number,
): readonly Item[] {
  let top = bottom + blockHeight(rows, width);
  const items = rows.flatMap((row): readonly Item[] => {
    const [high, low] = [top, top - rowHeight(row, width)];
    top = low;
    const widths = widthsOf(row, width);
    let left = right - width;
    return row.flatMap((field, i) => {
      const box = { minX: left, maxX: left + widths[i]!, minY: low, maxY: high };
      left += widths[i]!;
      return fieldItems(field, box);
    });
  });
  const [high, left] = [bottom + blockHeight(rows, width), right - width];
  const frame = polyline([
    [left, bottom],
    [left, high],
    [right, high],
  ]);
  return [...items, stroke("sheet", "01.2", frame)];
}
