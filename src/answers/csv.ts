import { stringify } from "csv-stringify/browser/esm/sync";

/**
 * A table as CSV, its titles first. A text that a spreadsheet would take for a formula gets an apostrophe
 * before it: names of customers and files are anybody's words.
 */
export const csvOf = (titles: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  stringify([[...titles], ...rows.map((r) => [...r])], { escape_formulas: true });
