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
  /** Takes what width is left, its words folded; several share it by what they need. */
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

/** Set tight it is this much smaller, and closer, mm. */
const TIGHT_MM = 2.3;
const TIGHT_PAD_MM = 0.2;
/** A table of no more rows than this is not parted; of a longer one no single row stands apart. */
const SHORT_ROWS = 6;

type Set = { readonly size: number; readonly widths: readonly number[]; readonly pad: number };

/** How a table is set: closer, where that saves a sheet; all its rows together, with what follows it. */
export type Setting = { readonly tight?: boolean; readonly whole?: boolean };

const bare = (size: number, text: string, bold: boolean): number => textWidth(text, size, bold) + 2 * SIDE_MM;

/** A width shared by those that need it: who needs less than an equal share keeps what it needs. */
function sharedOut(needed: readonly number[], width: number): readonly number[] {
  const order = needed.map((need, i) => ({ need, i })).sort((a, b) => a.need - b.need || a.i - b.i);
  const given: number[] = [];
  let left = width;
  order.forEach(({ need, i }, done) => {
    given[i] = Math.min(need, left / (order.length - done));
    left -= given[i]!;
  });
  return given;
}

/** Widths of the columns by their longest words; those that fold share what is left, each as much as it needs. */
function widthsAt({ columns, rows }: Table, size: number, width: number): readonly number[] {
  const needed = columns.map(({ title }, i) =>
    Math.max(bare(size, title, true), ...rows.map((row) => bare(size, row[i] ?? "", false))),
  );
  const folding = columns.flatMap(({ folds }, i) => (folds ? [i] : []));
  const others = needed.reduce((sum, w, i) => sum + (folding.includes(i) ? 0 : w), 0);
  const left = Math.max(FOLD_MM * folding.length, width - others);
  const shares = sharedOut(
    folding.map((i) => needed[i]!),
    left,
  );
  return needed.map((w, i) => (folding.includes(i) ? shares[folding.indexOf(i)]! : w));
}

/** The largest size at which the table is no wider than asked. */
function setFor(table: Table, width: number, tight: boolean): Set {
  const pad = tight ? TIGHT_PAD_MM : PAD_MM;
  for (let size = tight ? TIGHT_MM : TABLE_MM; ; size -= 0.1) {
    const widths = widthsAt(table, size, width);
    if (widths.reduce((a, b) => a + b, 0) <= width || size <= LEAST_MM) return { size, widths, pad };
  }
}

const blockOf = (text: string, size: number, width: number, bold: boolean): Block =>
  (text === "" ? [] : wrapped(text, size, width - 2 * SIDE_MM + 1e-6, bold)).map((line) => ({
    text: line,
    size,
    ...(bold ? { bold } : {}),
  }));

type Line = { readonly cells: readonly string[]; readonly bold: boolean; readonly head?: boolean };

function lineOf({ columns }: Table, { size, widths, pad }: Set, { cells, bold, head }: Line): Sheeted {
  const blocks = columns.map((_, i) => blockOf(cells[i] ?? "", size, widths[i]!, bold));
  const heights = blocks.filter((b) => b.length > 0).map((b) => blockSize(b).height);
  const height = Math.max(0, ...heights) + 2 * pad;
  const draw = (left: number, top: number): readonly Item[] => {
    let x = left;
    const words = blocks.flatMap((block, i) => {
      const [from, to] = [x + SIDE_MM, x + widths[i]! - SIDE_MM];
      x += widths[i]!;
      if (block.length === 0) return [];
      const align = columns[i]!.figures ? "right" : "left";
      const { width } = blockSize(block);
      const start = align === "right" ? to - width : from;
      const box = { minX: start, maxX: start + width, minY: top - height, maxY: top - pad };
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

/** Whether a row stays with the next one. */
function keeps(index: number, count: number, whole: boolean): boolean {
  if (index === count - 1) return whole;
  return whole || count <= SHORT_ROWS || index === 0 || index === count - 2;
}

/** The table's lines for a column of a sheet, its head first. */
export function tableLines(
  table: Table,
  width: number,
  { tight = false, whole = false }: Setting = {},
): readonly Sheeted[] {
  if (table.rows.length === 0) return [];
  const set = setFor(table, width, tight);
  const titles = table.columns.map(({ title }) => title);
  const head = lineOf(table, set, { cells: titles, bold: true, head: true });
  const lines = table.rows.map((cells, i) =>
    lineOf(table, set, { cells, bold: table.bold?.includes(i) ?? false }),
  );
  return [
    { ...head, keep: true },
    ...lines.map((line, i): Sheeted => ({ ...line, again: head, keep: keeps(i, lines.length, whole) })),
  ];
}
