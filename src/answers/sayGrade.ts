import type { QuantityKind } from "../model/quantity.ts";
import { sayFigure, type Units } from "../model/say.ts";
import { HORSE_SIZES_TAKEN } from "../trade/horseSizes.ts";
import { MM_PER_INCH, printLengthShort, roundTo } from "../units/index.ts";
import { printMoney } from "../units/money.ts";
import { shown } from "../units/quote.ts";
import { inColumns } from "./columns.ts";
import { csvOf } from "./csv.ts";
import type { Grade, GradeColumn, GradeRow, Reach } from "./grade.ts";

// The size table in words and as CSV.

const NONE = "–";
const WHOLE = "the whole article";

/** Shorter things are said in mm where a 32nd of an inch is too coarse for them. */
const SHORT_MM = MM_PER_INCH;

/** The unit of a row, the same in all its columns. */
function unitOf({ values, kind }: Pick<GradeRow, "values" | "kind">, units: Units): Units {
  if (kind !== "length" || units !== "in") return units;
  const exact = (mm: number): boolean => mm >= SHORT_MM || sayFigure(mm, kind, units).endsWith(" in");
  return values.every((v) => v === undefined || exact(v)) ? units : "mm";
}

/** A row's values in words, all in one unit. */
function sayRow(r: GradeRow, units: Units): readonly string[] {
  const unit = unitOf(r, units);
  return r.values.map((v) => {
    if (v === undefined) return NONE;
    return r.kind === "length" ? printLengthShort(v, unit) : sayFigure(v, r.kind as QuantityKind, units);
  });
}

const pieceOf = (r: GradeRow): string => (r.piece === "" ? WHOLE : r.piece);

/** What doesn't change, piece by piece in one line. */
function saySame({ same, units }: Grade): readonly string[] {
  if (same.length === 0) return [];
  const pieces = [...new Set(same.map(pieceOf))].map((piece) => {
    const sizes = same.filter((r) => pieceOf(r) === piece);
    const words = sizes.map((r) => `${r.name} ${sayRow(r, units).find((v) => v !== NONE) ?? NONE}`);
    return `${piece}: ${words.join(", ")}`;
  });
  return ["", `The same in all: ${pieces.join("; ")}.`];
}

/** How each size is measured, under its name. */
const wayRow = ({ columns }: Grade): readonly (readonly string[])[] =>
  columns.every((c) => c.measured === undefined)
    ? []
    : [["", "measured from", ...columns.map((c) => c.measured ?? "")]];

const isMeasure = (key: string): boolean => !key.includes(".");

/** What each size costs, in the shop's currency; "from" where something has no rate yet. */
function priceRow({ columns }: Grade): readonly (readonly string[])[] {
  const first = columns.find((c) => c.price)?.price;
  if (!first) return [];
  const { currency, quantity } = first;
  const say = ({ price }: GradeColumn): string =>
    price ? `${price.incomplete ? "from " : ""}${printMoney(price.total, currency)}` : NONE;
  return [[quantity === 1 ? "price" : `price of ${quantity}`, currency.code, ...columns.map(say)]];
}

/** The measures that any size sets, as the table's first rows; other settings by their path. */
function measureRows({ columns }: Grade): readonly (readonly string[])[] {
  const keys = [...new Set(columns.flatMap((c) => Object.keys(c.measures)))];
  // How it is measured stands in the head.
  const told = columns.some((c) => c.measured !== undefined)
    ? keys.filter((k) => k !== "measured-from")
    : keys;
  return told.map((key) => [
    isMeasure(key) ? "measures" : "order",
    key,
    ...columns.map((c) => c.measures[key] ?? "as ordered"),
  ]);
}

/** "made" needs no word. */
const stateRow = ({ columns }: Grade): readonly (readonly string[])[] =>
  columns.every((c) => c.state === "made")
    ? []
    : [["", "", ...columns.map((c) => (c.state === "made" ? "" : c.state))]];

/** A range's end is reached when the holes come this near, mm; nobody measures a horse finer. */
const REACHED_MM = 1;

function sayReach({ size }: GradeColumn, { shortest, longest, from, to }: Reach, units: Units): string {
  const length = (mm: number): string => printLengthShort(mm, units);
  const lacks = [
    ...(shortest > from + REACHED_MM ? ["its shortest"] : []),
    ...(longest < to - REACHED_MM ? ["its longest"] : []),
  ];
  const covered = lacks.length === 0 ? "all of it" : `all but ${lacks.join(" and ")}`;
  return `  ${size}: sold as ${length(from)} to ${length(to)}; the holes reach ${length(shortest)} to ${length(longest)}: ${covered}`;
}

const titled = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ["", title, ...lines];

/** What to know before a table of sizes is trusted. */
function remarks(g: Grade): readonly string[] {
  return [
    ...g.kept.map(({ measure, sizes }) => `  ${measure} stays as the order has it in ${sizes.join(", ")}`),
    ...(g.fixed.length === 0
      ? []
      : [
          `  What the order gives for its pieces stays in every size: ${g.fixed.join(", ")}. Take it out of the order to have it follow the size`,
        ]),
    ...(g.columns.some((c) => c.reach)
      ? [`  Sizes read at a source differ between makers, and are taken ${HORSE_SIZES_TAKEN}`]
      : []),
    ...(g.riseUnknown
      ? [
          "  The order doesn't say measures.rise, so those are made as if taken from ring to ring, and may come out long",
        ]
      : []),
  ];
}

/** The size table as lines for a person. */
export function sayGrade(g: Grade): readonly string[] {
  const head = ["piece", "size", ...g.columns.map((c) => c.size)];
  const rows = g.rows.map((r) => [pieceOf(r), r.name, ...sayRow(r, g.units)]);
  const failed = g.columns.flatMap((c) => c.reasons.map((reason) => `  ${c.size}: ${shown(reason)}`));
  return [
    `${g.article}, ${g.file}`,
    "",
    ...inColumns([head, ...wayRow(g), ...stateRow(g), ...measureRows(g), ...rows, ...priceRow(g)]),
    ...saySame(g),
    ...titled("Wrong", failed),
    ...titled(
      "Sizes",
      g.columns.map((c) => `  ${c.size}: ${c.from}`),
    ),
    ...titled(
      "What the holes reach",
      g.columns.flatMap((c) => (c.reach ? [sayReach(c, c.reach, g.units)] : [])),
    ),
    ...titled("To know", remarks(g)),
  ];
}

const UNITS: Readonly<Record<string, string>> = {
  length: "mm",
  thickness: "mm",
  pitch: "mm",
  angle: "degrees",
  area: "mm2",
};
const CSV_DECIMALS = 3;

function figure(value: number | undefined, kind: string): number | string {
  if (value === undefined) return "";
  return roundTo(kind === "angle" ? (value * 180) / Math.PI : value, CSV_DECIMALS);
}

/** The size table as CSV, those that don't change after those that do; lengths in mm. */
export const gradeCsv = (g: Grade): string =>
  csvOf(
    ["piece", "size", "unit", ...g.columns.map((c) => c.size)],
    [
      ...[...g.rows, ...g.same].map((r) => [
        r.piece,
        r.name,
        UNITS[r.kind] ?? "",
        ...r.values.map((v) => figure(v, r.kind)),
      ]),
      ...csvPrice(g),
    ],
  );

/** Prices that are complete; one that isn't is left empty. */
function csvPrice({ columns }: Grade): readonly (readonly string[])[] {
  const currency = columns.find((c) => c.price)?.price?.currency;
  if (!currency) return [];
  const amount = ({ price }: GradeColumn): string =>
    price && !price.incomplete ? printMoney(price.total, currency) : "";
  return [["", "price", currency.code, ...columns.map(amount)]];
}
