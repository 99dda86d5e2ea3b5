import type { Box } from "../geometry/path.ts";
import type { Layout, Paper, PrinterFactor, Sheet } from "../model/sheet.ts";
import type { UsedCell } from "./cells.ts";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** A, B … Z, AA, AB … */
export function rowLetters(row: number): string {
  const last = LETTERS[row % 26]!;
  return row < 26 ? last : rowLetters(Math.floor(row / 26) - 1) + last;
}

/**
 * A sheet's scale along its own x and y: the paper's short edge runs along x on an upright sheet and along
 * y on one that lies on its side. Page millimetres = leather millimetres ÷ this.
 */
export const sheetFactor = (factor: PrinterFactor, landscape: boolean): PrinterFactor =>
  landscape ? { x: factor.y, y: factor.x } : factor;

/** A page as it lies: a roll's page ends where its window does. */
function pageOf(paper: Paper, landscape: boolean, margin: number, needed: number): Sheet["page"] {
  if (paper.roll) return { width: paper.width, height: Math.min(paper.height, needed + 2 * margin) };
  return landscape
    ? { width: paper.height, height: paper.width }
    : { width: paper.width, height: paper.height };
}

type Frame = Pick<Layout, "paper" | "margin" | "factor">;
type NamedCell = {
  readonly cell: UsedCell;
  readonly row: number;
  readonly column: number;
  readonly name: string;
};

/** Names go on over all plates by rows; in a row they are counted without gaps. */
function namedCells(cells: readonly UsedCell[], firstRow: number): readonly NamedCell[] {
  const rows = [...new Set(cells.map((c) => c.row))];
  return cells.map((cell) => {
    const row = firstRow + rows.indexOf(cell.row);
    const column = cells.filter((c) => c.row === cell.row && c.column < cell.column).length;
    return { cell, row, column, name: `${rowLetters(row)}${column + 1}` };
  });
}

/** The names of a cell's neighbours, those that are printed. */
function joinsOf({ cell }: NamedCell, all: readonly NamedCell[]): Sheet["joins"] {
  const sides = { left: [0, -1], right: [0, 1], above: [-1, 0], below: [1, 0] } as const;
  const found = Object.entries(sides).flatMap(([side, [down, along]]) => {
    const other = all.find((n) => n.cell.row === cell.row + down && n.cell.column === cell.column + along);
    return other ? [[side, other.name] as const] : [];
  });
  return Object.fromEntries(found);
}

/** How a plate's sheets are printed; `foot` is kept free below a roll's window. */
export type PlatePrint = { readonly landscape: boolean; readonly firstRow: number; readonly foot: number };

/** The sheets of one plate, named from `firstRow` on. */
export function sheetsOf(
  plate: string,
  cells: readonly UsedCell[],
  { landscape, firstRow, foot }: PlatePrint,
  { paper, margin, factor }: Frame,
): readonly Sheet[] {
  const scale = sheetFactor(factor, landscape);
  const named = namedCells(cells, firstRow);
  return named.map((one): Sheet => {
    const { cell, row, column, name } = one;
    const { window, pieces } = cell;
    const height = (window.maxY - window.minY) / scale.y;
    const page = pageOf(paper, landscape, margin, height + foot);
    const origin = [margin, page.height - margin - height] as const;
    return { name, plate, row, column, window, landscape, page, origin, pieces, joins: joinsOf(one, named) };
  });
}

/** The part of a page that is printed, page mm. */
export const printableBox = (sheet: Sheet, margin: number): Box => ({
  minX: margin,
  minY: margin,
  maxX: sheet.page.width - margin,
  maxY: sheet.page.height - margin,
});
