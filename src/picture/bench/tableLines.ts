// Ruled tables that flow over pages; the head stands again where a table goes on.
import { polyline } from "../../geometry/path.ts";
import type { Sheeted } from "../die/sheeted.ts";
import type { Item } from "../picture.ts";
import { blockSize, blockWords, type TextLine } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { textWidth } from "../words.ts";
import type { TableBlock } from "./document.ts";
import { foldable } from "./foldable.ts";
import { flowingLines, gap, inParts, kept, linesOf, type Setting, TOGETHER } from "./lines.ts";

/** Beside a cell's words, and above and below them, mm. */
const SIDE_MM = 1.2;
const PAD_MM = 0.7;
/** No column needs to be wider than this for one long word, mm: the word is parted. */
const LONGEST_WORD_MM = 34;
/** Lengths that differ by less are equal, mm: the arithmetic's tolerance. */
const SLACK_MM = 1e-6;

/** Widths of a column: for its longest word, its longest cell, and its title on one line as well. */
type Span = { readonly least: number; readonly liked: number; readonly titled: number };

const sumOf = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);

function spanOf(cells: readonly string[], title: string, foot: string, size: number): Span {
  const wide = (text: string, bold: boolean): number => textWidth(text, size, bold);
  const words = (text: string): readonly string[] => foldable(text).split(" ");
  const all = [...cells.map((c) => [c, false] as const), [title, true] as const, [foot, true] as const];
  const longest = Math.max(...all.flatMap(([c, bold]) => words(c).map((w) => wide(w, bold))));
  // Titles are parted between words before anything else is.
  const liked = Math.max(longest, ...cells.map((c) => wide(c, false)), wide(foot, true));
  const around = 2 * SIDE_MM + SLACK_MM;
  return {
    least: Math.min(longest, LONGEST_WORD_MM) + around,
    liked: liked + around,
    titled: Math.max(liked, wide(title, true)) + around,
  };
}

/**
 * Parts of a whole that is less than all that is asked: in proportion to the square roots of what is asked, and
 * no more than that. Who asks little gets it all, and who asks much gets more than others.
 */
function sharedOut(asked: readonly number[], whole: number): readonly number[] {
  const order = asked.map((ask, i) => ({ ask, i })).sort((a, b) => a.ask - b.ask || a.i - b.i);
  const given: number[] = [];
  let rest = whole;
  order.forEach(({ ask, i }, done) => {
    const roots = sumOf(order.slice(done).map((o) => Math.sqrt(o.ask)));
    given[i] = roots === 0 ? 0 : Math.min(ask, (rest * Math.sqrt(ask)) / roots);
    rest -= given[i]!;
  });
  return given;
}

/** Widths between less and more that are together as wide as asked; undefined when more is not enough. */
function between(
  less: readonly number[],
  more: readonly number[],
  width: number,
): readonly number[] | undefined {
  if (sumOf(more) <= width) return undefined;
  const shares = sharedOut(
    more.map((m, i) => m - less[i]!),
    width - sumOf(less),
  );
  return less.map((l, i) => l + shares[i]!);
}

/**
 * The columns' widths, mm, together as wide as asked: wide enough for the longest words, then for whole cells,
 * then for titles on one line. What is left goes to the last column that holds words.
 */
export function columnWidths(table: TableBlock, { width, size }: Setting): readonly number[] {
  const spans = table.columns.map(({ title }, i) =>
    spanOf(
      table.rows.map((r) => r[i] ?? ""),
      title,
      table.foot?.[i] ?? "",
      size,
    ),
  );
  const [least, liked, titled] = [
    spans.map((s) => s.least),
    spans.map((s) => s.liked),
    spans.map((s) => s.titled),
  ];
  if (sumOf(least) >= width) return least.map((l) => (l * width) / sumOf(least));
  const widths = between(least, liked, width) ?? between(liked, titled, width);
  if (widths) return widths;
  const widest = Math.max(
    0,
    table.columns.findLastIndex((c) => c.align === "left"),
  );
  return titled.map((t, i) => (i === widest ? t + width - sumOf(titled) : t));
}

type Line = {
  readonly cells: readonly string[];
  readonly bold: boolean;
  readonly rules: "head" | "row" | "foot";
};
type Look = { readonly table: TableBlock; readonly widths: readonly number[]; readonly size: number };

/** Words of one cell: so many of its lines, from its own left edge. */
type CellLines = readonly (readonly TextLine[])[];

function cellItems({ table, widths }: Look, cells: CellLines, left: number, top: number): readonly Item[] {
  let x = left;
  return cells.flatMap((lines, i) => {
    const [from, to] = [x + SIDE_MM, x + widths[i]! - SIDE_MM];
    x += widths[i]!;
    if (lines.length === 0) return [];
    const { align } = table.columns[i]!;
    const { width, height } = blockSize(lines);
    const start = align === "right" ? to - width : from;
    const box = { minX: start, maxX: start + width, minY: top - PAD_MM - height, maxY: top - PAD_MM };
    return blockWords(lines, box, 0, { align });
  });
}

/** One line of the table, in as many parts as it takes; a rule below the last, and above a head or foot. */
function lineParts(look: Look, { cells, bold, rules }: Line): readonly Sheeted[] {
  const width = sumOf(look.widths);
  const all = look.widths.map((w, i) =>
    linesOf(cells[i] ?? "", { width: w - 2 * SIDE_MM, size: look.size, bold }),
  );
  const parts = Math.max(1, ...all.map((lines) => Math.ceil(lines.length / TOGETHER)));
  const rule = (left: number, y: number, thick: boolean): Item =>
    stroke(
      "sheet",
      thick ? "01.2" : "01.1",
      polyline([
        [left, y],
        [left + width, y],
      ]),
    );
  const split = all.map((lines) => inParts(lines, TOGETHER));
  return Array.from({ length: parts }, (_, k): Sheeted => {
    const some = split.map((p) => p[k] ?? []);
    const heights = some.filter((lines) => lines.length > 0).map((lines) => blockSize(lines).height);
    const height = Math.max(look.size, ...heights) + 2 * PAD_MM;
    return {
      height,
      draw: (left, top) => [
        ...cellItems(look, some, left, top),
        ...(k === 0 && rules === "head" ? [rule(left, top, false)] : []),
        ...(k === parts - 1 ? [rule(left, top - height, rules !== "row")] : []),
      ],
    };
  });
}

/** The rows, the last kept together with the foot and the note; `again` is drawn where they begin a page. */
function bodyParts(look: Look): readonly Sheeted[] {
  const { rows, foot, note } = look.table;
  const body = rows.flatMap((cells, i) => {
    const parts = lineParts(look, { cells, bold: false, rules: "row" });
    const last = i === rows.length - 1;
    return last && (foot || note !== undefined) ? kept(parts) : parts;
  });
  if (!foot) return body;
  const sums = lineParts(look, { cells: foot, bold: true, rules: "foot" });
  return [...body, ...(note === undefined ? sums : kept(sums))];
}

/** So many rows are read together: a table with no more stands on one page, where it takes no more than half of it. */
const WHOLE_ROWS = 12;
const WHOLE_SHARE = 0.5;

/** The lines kept on one page, where the table is short. */
function onOnePage(lines: readonly Sheeted[], rows: number, room: number | undefined): readonly Sheeted[] {
  const height = sumOf(lines.map((l) => l.height));
  if (rows > WHOLE_ROWS || room === undefined || height > room * WHOLE_SHARE) return lines;
  return [...kept(lines.slice(0, -1)), ...lines.slice(-1)];
}

/** A table over the whole width with its note below it, `above` mm below what comes before. */
export function tableLines(table: TableBlock, setting: Setting, above: number): readonly Sheeted[] {
  const look: Look = { table, widths: columnWidths(table, setting), size: setting.size };
  const titles = table.columns.map((c) => c.title);
  const untitled = titles.every((t) => t === "");
  const head = untitled ? [] : lineParts(look, { cells: titles, bold: true, rules: "head" });
  const again = head.length === 1 ? { again: head[0]! } : {};
  const note = table.note === undefined ? [] : flowingLines(linesOf(table.note, setting), PAD_MM);
  const lines = [
    ...kept([gap(above), ...head]),
    ...bodyParts(look).map((line): Sheeted => ({ ...line, ...again })),
    ...note,
  ];
  return onOnePage(lines, table.rows.length, setting.height);
}
