import type { Made } from "../../model/article.ts";
import type { LeatherRow } from "../../model/bench.ts";
import type { Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import { type DocumentBlock, left, right, tableUnder } from "./document.ts";
import { namesIn, sayLeather, sayShare, squareDecimetres, squareFeet } from "./words.ts";

// How much leather is bought.

/** Leathers whose yield comes from one place are named together. */
function yieldNote(rows: readonly LeatherRow[]): string {
  const sources = [...new Set(rows.map((r) => r.yieldFrom))];
  const of = (source: string): string =>
    [...new Set(rows.filter((r) => r.yieldFrom === source).map((r) => r.leather))].join(", ");
  const from = sources.map((s) => (sources.length === 1 ? s : `${of(s)}: ${s}`)).join("; ");
  return `Net: area of the pieces. Yield: the share of the leather that ends up in pieces (${from}). Buy: net over yield. Sides: how many sides that is.`;
}

/** The leather list: areas in square feet and in square decimetres. */
export const leatherSection = (
  rows: readonly LeatherRow[],
  made: Pick<Made, "pieces">,
  units: Units,
): readonly DocumentBlock[] =>
  tableUnder("Leather", {
    columns: [
      left("Leather"),
      left("Pieces"),
      ...["Net, ft²", "Net, dm²", "Yield", "Buy, ft²", "Buy, dm²", "Sides"].map(right),
    ],
    rows: rows.map((r) => [
      sayLeather(r.leather, r.thickness, units),
      namesIn(made)(r.pieces),
      squareFeet(r.net),
      squareDecimetres(r.net),
      sayShare(r.yield),
      squareFeet(r.needed),
      squareDecimetres(r.needed),
      r.ofSide === undefined ? "–" : printNumber(r.ofSide, 3),
    ]),
    note: yieldNote(rows),
  });
