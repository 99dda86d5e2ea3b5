import type { CutRow, StripRow } from "../../model/bench.ts";
import { sayValue, type Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import { saySizes } from "../piece/say.ts";
import { type DocumentBlock, left, right, tableUnder } from "./document.ts";
import { sayLeather } from "./words.ts";

// What is cut: piece by piece, and the strips that straps are cut from.

/** `to 1.8 mm at the start`: like the templates, in mm whatever the units. */
const saySkived = (skived: CutRow["skived"]): string =>
  skived.length === 0
    ? "–"
    : skived
        .map(({ to, where }) => `${to === 0 ? "to nothing" : `to ${printNumber(to, 1)} mm`} ${where}`)
        .join("; ");

const PLAIN_HANDS: readonly string[] = ["all alike", "as drawn"];

/** `2`, `2 (1 as drawn, 1 turned over)` */
const sayCut = ({ count, hand }: CutRow): string =>
  PLAIN_HANDS.includes(hand) ? `${count}` : `${count} (${hand})`;

/** The cut list. */
export const cutSection = (rows: readonly CutRow[], units: Units): readonly DocumentBlock[] =>
  tableUnder("Cut", {
    columns: [
      left("Piece"),
      left("Cut"),
      left("Leather"),
      left("Size"),
      left("Skive"),
      left("Backbone"),
      left("With"),
    ],
    rows: rows.map((r) => [
      r.name,
      sayCut(r),
      sayLeather(r.leather, r.thickness, units),
      saySizes(Math.max(r.length, r.width), Math.min(r.length, r.width), units),
      saySkived(r.skived),
      r.grain,
      r.cutBy,
    ]),
    note: "As drawn, unless said otherwise. Size: as cut, the longer side first, as on the template. Backbone: which way it lies. Thickness: before skiving.",
  });

const sayStraps = ({ straps }: StripRow, units: Units): string =>
  straps.map((s) => `${s.name}: ${s.count} × ${sayValue(s.length, "length", units)}`).join("; ");

/** Straps of one leather and width together. */
export const stripSection = (rows: readonly StripRow[], units: Units): readonly DocumentBlock[] =>
  tableUnder("Strips to cut first", {
    columns: [
      left("Leather"),
      right("Width"),
      left("Straps"),
      right("Together"),
      right("Allowance"),
      right("Strip in all"),
    ],
    rows: rows.map((r) => [
      sayLeather(r.leather, r.thickness, units),
      sayValue(r.width, "length", units),
      sayStraps(r, units),
      ...[r.sum, r.allowance, r.total].map((mm) => sayValue(mm, "length", units)),
    ]),
  });
