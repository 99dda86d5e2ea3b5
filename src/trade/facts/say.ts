import type { Units } from "../../model/say.ts";
import { type FactTable, sayCell } from "./table.ts";

/** A table as lines of text: columns side by side with the number of each row's source, then its note and the sources. */
export function sayFacts(table: FactTable, units: Units = "in"): readonly string[] {
  const head = [...table.columns.map((c) => c.title), "known from", ""];
  const rows = table.rows.map((r) => [
    ...r.cells.map((cell, i) => sayCell(cell, table.columns[i]!.kind, units)),
    r.standing,
    `[${table.sources.indexOf(r.source) + 1}]`,
  ]);
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i]!.length)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((c, i) => c.padEnd(widths[i]!))
      .join("  ")
      .trimEnd();
  const other = table.columns.flatMap((c) =>
    c.standing === undefined ? [] : [`"${c.title}": ${c.standing}`],
  );
  const remarks = [...other, ...(table.note === undefined ? [] : [table.note])];
  const note = remarks.length === 0 ? [] : ["", ...remarks];
  return [
    table.title,
    "",
    line(head),
    ...rows.map(line),
    ...note,
    "",
    "Sources:",
    ...table.sources.map((s, i) => `  [${i + 1}] ${s}`),
  ];
}
