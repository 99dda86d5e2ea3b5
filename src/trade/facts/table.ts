import type { QuantityKind } from "../../model/quantity.ts";
import { sayValue, type Units } from "../../model/say.ts";

/** How a figure came here, in words that are printed beside it. */
export type Standing =
  | "read at its source"
  | "worked out from figures read"
  | "from memory"
  | "common practice, no source";

/** A length is kept in mm and printed in the maker's units; a "number" has its unit in the title. */
export type FactKind = QuantityKind | "words";

export type FactColumn = {
  readonly title: string;
  readonly kind: FactKind;
  /** Set where a whole column came here in another way than the rest of its rows. */
  readonly standing?: Standing;
};

/** A figure, words, or nothing where the source says nothing. */
export type FactCell = string | number | undefined;

export type FactRow = {
  readonly cells: readonly FactCell[];
  readonly standing: Standing;
  /** Title, author or body, year, page or section, several parted by "; "; the standing where there is none. */
  readonly source: string;
};

/** A built-in table as `facts` prints it: plain data, a source on each row. */
export type FactTable = {
  /** One word to ask for it by. */
  readonly name: string;
  readonly title: string;
  readonly columns: readonly FactColumn[];
  readonly rows: readonly FactRow[];
  /** The sources of the rows, each once, in the rows' order. */
  readonly sources: readonly string[];
  readonly note?: string;
};

/** Puts a table together: gathers its sources. Throws when a row hasn't a cell for each column: our own fault. */
export function factTable(table: Omit<FactTable, "sources">): FactTable {
  for (const row of table.rows) {
    if (row.cells.length === table.columns.length) continue;
    throw new Error(`facts ${table.name}: ${row.cells.length} cells in ${table.columns.length} columns`);
  }
  return { ...table, sources: [...new Set(table.rows.flatMap((r) => r.source.split("; ")))] };
}

/** Words for a row that has no source but the workshop's habit. */
export const habit = (...cells: readonly FactCell[]): FactRow => ({
  cells,
  standing: "common practice, no source",
  source: "common practice, no source",
});

/** Rows whose cells were all read in one place. */
export const readAt = (source: string, rows: readonly (readonly FactCell[])[]): readonly FactRow[] =>
  rows.map((cells) => ({ cells, standing: "read at its source", source }));

/** How the figure in a cell came here. */
export const standingOf = (row: FactRow, column: FactColumn): Standing => column.standing ?? row.standing;

/** A cell in words; "–" where nothing is known. */
export function sayCell(cell: FactCell, kind: FactKind, units: Units): string {
  if (cell === undefined) return "–";
  if (typeof cell === "string" || kind === "words") return String(cell);
  return sayValue(cell, kind, units);
}
