const lengthOf = (text: string): number => Array.from(text).length;

/** Rows of words under each other in columns, two blanks between them, `indent` before each. */
export function inColumns(rows: readonly (readonly string[])[], indent = ""): readonly string[] {
  const count = Math.max(0, ...rows.map((r) => r.length));
  const widths = Array.from({ length: count }, (_, i) => Math.max(...rows.map((r) => lengthOf(r[i] ?? ""))));
  const padded = (cell: string, i: number): string => cell + " ".repeat(widths[i]! - lengthOf(cell));
  return rows.map((r) => `${indent}${r.map(padded).join("  ")}`.trimEnd());
}
