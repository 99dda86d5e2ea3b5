// The title block: the data fields of ISO 7200 (legal owner, number, revision, date, sheet, title, creator,
// approval, document type; from memory), and what a die is ordered by.
import { type Box, polyline, rectanglePath } from "../../geometry/path.ts";
import type { Item, Words } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { CAPITAL, DROP, RISE, textWidth } from "../words.ts";

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
/** No smaller than this; what is longer still is cut off, with a sign that it is. */
const LEAST_MM = 1.9;
const SIDE_MM = 1;
/** What is made to fit exactly may come out so much wider by rounding, mm. */
const HAIR_MM = 1e-6;
export const ROW_MM = 8;
const LARGE_ROW_MM = 10;

const rowHeight = (row: FieldRow): number => (row.some(({ large }) => large) ? LARGE_ROW_MM : ROW_MM);

export const blockHeight = (rows: readonly FieldRow[]): number =>
  rows.reduce((sum, row) => sum + rowHeight(row), 0);

const words = (text: string, at: Words["at"], size: number, bold = false): Words => ({
  kind: "words",
  layer: "text",
  at,
  size,
  text,
  align: "left",
  angle: 0,
  ...(bold ? { bold } : {}),
});

/** As much of a text as fits a width, with a sign that something is left out: the facts' list has it all. */
function fitting(text: string, size: number, width: number): string {
  const fits = (t: string): boolean => textWidth(t, size, true) <= width + HAIR_MM;
  if (fits(text)) return text;
  const letters = Array.from(text);
  for (let n = letters.length - 1; n > 0; n--) {
    const shorter = `${letters.slice(0, n).join("").trimEnd()}…`;
    if (fits(shorter)) return shorter;
  }
  return "";
}

function fieldItems({ name, says, large = false }: Field, box: Box): readonly Item[] {
  const width = box.maxX - box.minX - 2 * SIDE_MM;
  const [x, top] = [box.minX + SIDE_MM, box.maxY - 0.5];
  const wished = large ? LARGE_MM : SAYS_MM;
  const size = Math.max(LEAST_MM, Math.min(wished, (wished * width) / textWidth(says, wished, true)));
  const room = top - NAME_MM * (RISE + DROP) - box.minY - 0.4;
  const base = box.minY + 0.4 + Math.max(DROP * size, (room - CAPITAL * size) / 2);
  return [
    stroke("sheet", "01.1", rectanglePath([box.minX, box.minY], box.maxX - box.minX, box.maxY - box.minY)),
    words(fitting(name, NAME_MM, width), [x, top - NAME_MM * RISE], NAME_MM),
    ...(says === "" ? [] : [words(fitting(says, size, width), [x, base], size, large)]),
  ];
}

/** The block, its lower right corner at the given place; as wide as asked for. */
export function titleBlock(
  rows: readonly FieldRow[],
  right: number,
  bottom: number,
  width: number,
): readonly Item[] {
  let top = bottom + blockHeight(rows);
  const items = rows.flatMap((row): readonly Item[] => {
    const [high, low] = [top, top - rowHeight(row)];
    top = low;
    const whole = row.reduce((sum, { share }) => sum + share, 0);
    let left = right - width;
    return row.flatMap((field) => {
      const wide = (width * field.share) / whole;
      const box = { minX: left, maxX: left + wide, minY: low, maxY: high };
      left += wide;
      return fieldItems(field, box);
    });
  });
  const [high, left] = [bottom + blockHeight(rows), right - width];
  const frame = polyline([
    [left, bottom],
    [left, high],
    [right, high],
  ]);
  return [...items, stroke("sheet", "01.2", frame)];
}
