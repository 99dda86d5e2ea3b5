// Tables that flow over sheets: narrow rules, a head that stands again wherever the table goes on.
import { polyline } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import { type Block, blockSize, blockWords, wrapped } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { textWidth } from "../words.ts";
import type { Sheeted } from "./sheeted.ts";

export type Column = {
  readonly title: string;
  /** Figures stand to the right, so that their points are under one another. */
  readonly figures?: boolean;
  /** Takes what width is left, its words folded; at most one column of a table. */
  readonly folds?: boolean;
};

export type Table = {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Rows in bold, by their number. */
  readonly bold?: readonly number[];
};

/** Size of a table's words, mm, and the least when it must be narrower. */
const TABLE_MM = 2.5;
const LEAST_MM = 1.8;
/** Beside a cell's words and above and below them, mm. */
const SIDE_MM = 1.4;
const PAD_MM = 0.45;
/** A column that folds is at least this wide, mm. */
const FOLD_MM = 40;

type Set = { readonly size: number; readonly widths: readonly number[] };

const bare = (size: number, text: string, bold: boolean): number => textWidth(text, size, bold) + 2 * SIDE_MM;

/** Widths of the columns by their longest words; of the one that folds, what is left or what it needs. */
function widthsAt({ columns, rows }: Table, size: number, width: number): readonly number[] {
  const needed = columns.map(({ title }, i) =>
    Math.max(bare(size, title, true), ...rows.map((row) => bare(size, row[i] ?? "", false))),
  );
  const others = needed.reduce((sum, w, i) => sum + (columns[i]!.folds ? 0 : w), 0);
  return needed.map((w, i) => (columns[i]!.folds ? Math.min(w, Math.max(FOLD_MM, width - others)) : w));
}

/** The largest size at which the table is no wider than asked. */
function setFor(table: Table, width: number): Set {
  for (let size = TABLE_MM; ; size -= 0.1) {
    const widths = widthsAt(table, size, width);
    if (widths.reduce((a, b) => a + b, 0) <= width || size <= LEAST_MM) return { size, widths };
  }
}

const blockOf = (text: string, size: number, width: number, bold: boolean): Block =>
  (text === "" ? [] : wrapped(text, size, width - 2 * SIDE_MM + 1e-6, bold)).map((line) => ({
    text: line,
    size,
    ...(bold ? { bold } : {}),
  }));

type Line = { readonly cells: readonly string[]; readonly bold: boolean; readonly head?: boolean };

function lineOf({ columns }: Table, { size, widths }: Set, { cells, bold, head }: Line): Sheeted {
  const blocks = columns.map((_, i) => blockOf(cells[i] ?? "", size, widths[i]!, bold));
  const heights = blocks.filter((b) => b.length > 0).map((b) => blockSize(b).height);
  const height = Math.max(0, ...heights) + 2 * PAD_MM;
  const draw = (left: number, top: number): readonly Item[] => {
    let x = left;
    const words = blocks.flatMap((block, i) => {
      const [from, to] = [x + SIDE_MM, x + widths[i]! - SIDE_MM];
      x += widths[i]!;
      if (block.length === 0) return [];
      const align = columns[i]!.figures ? "right" : "left";
      const { width } = blockSize(block);
      const start = align === "right" ? to - width : from;
      const box = { minX: start, maxX: start + width, minY: top - height, maxY: top - PAD_MM };
      return blockWords(block, box, 0, { align });
    });
    const rule = (y: number, wide: boolean): Item =>
      stroke(
        "sheet",
        wide ? "01.2" : "01.1",
        polyline([
          [left, y],
          [x, y],
        ]),
      );
    return [...words, rule(top - height, head ?? false), ...(head ? [rule(top, false)] : [])];
  };
  return { height, draw };
}

/** The table's lines for a column of a sheet, its head first. */
export function tableLines(table: Table, width: number): readonly Sheeted[] {
  if (table.rows.length === 0) return [];
  const set = setFor(table, width);
  const titles = table.columns.map(({ title }) => title);
  const head = lineOf(table, set, { cells: titles, bold: true, head: true });
  const lines = table.rows.map((cells, i) =>
    lineOf(table, set, { cells, bold: table.bold?.includes(i) ?? false }),
  );
  return [{ ...head, keep: true }, ...lines.map((line): Sheeted => ({ ...line, again: head }))];
}
