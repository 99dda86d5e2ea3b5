import type { QuantityKind } from "../model/quantity.ts";
import { sayHands, sayValue, type Units } from "../model/say.ts";
import { printMoney } from "../units/money.ts";
import { shown } from "../units/quote.ts";
import type { Change } from "./change.ts";
import { inColumns } from "./columns.ts";
import { type Comparison, nothingDiffers, type PieceChange, type PriceChange } from "./compare.ts";
import type { HardwareChange } from "./compareHardware.ts";

// A comparison in words: before → after, and by how much.

type Row = readonly string[];

const NONE = "–";

function sayOne(value: Change["before"], kind: string, units: Units): string {
  if (value === undefined) return NONE;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value === "" ? "nothing" : shown(value);
  return kind === "hands" ? sayHands(value) : sayValue(value, kind as QuantityKind, units);
}

const signed = (n: number, text: string): string => `${n < 0 ? "−" : "+"} ${text}`;

function sayDifference(c: Change, units: Units): string {
  if (c.difference === undefined) return "";
  // A horse's height differs by a length.
  const kind = (c.kind === "hands" ? "length" : c.kind) as QuantityKind;
  return signed(c.difference, sayValue(Math.abs(c.difference), kind, units));
}

const rowOf = (c: Change, units: Units): Row => [
  c.what,
  sayOne(c.before, c.kind, units),
  "→",
  sayOne(c.after, c.kind, units),
  sayDifference(c, units),
];

const group = (title: string, rows: readonly Row[]): readonly string[] =>
  rows.length === 0 ? [] : ["", title, ...inColumns(rows, "  ")];

const sideOf = (c: Comparison, only: "before" | "after"): string => c[only].name;

function pieceLines(c: Comparison, p: PieceChange): readonly string[] {
  const head = `  ${p.name}`;
  if (p.only !== undefined) return [`${head}: only in ${sideOf(c, p.only)}`];
  return [
    head,
    ...inColumns(
      p.changes.map((change) => rowOf(change, c.units)),
      "    ",
    ),
  ];
}

function hardwareLines(c: Comparison, h: HardwareChange): readonly string[] {
  const head = `  ${h.kind}${h.name === h.kind ? "" : ` (${h.name})`}`;
  if (h.only !== undefined) {
    const { only } = h;
    const words = h.changes.map(({ what, kind, [only]: value }) => `${what} ${sayOne(value, kind, c.units)}`);
    return [`${head}: only in ${sideOf(c, only)}; ${words.join(", ")}`];
  }
  return [
    head,
    ...inColumns(
      h.changes.map((change) => rowOf(change, c.units)),
      "    ",
    ),
  ];
}

function priceRow(p: PriceChange, { currencies }: Comparison): Row {
  const amount = (minor: number | undefined, side: "before" | "after"): string => {
    const currency = currencies[side];
    return minor === undefined || !currency ? NONE : `${printMoney(minor, currency)} ${currency.code}`;
  };
  const { after } = currencies;
  const more =
    p.difference === undefined || !after
      ? ""
      : p.difference === 0
        ? "the same"
        : signed(p.difference, printMoney(Math.abs(p.difference), after));
  return [p.what, amount(p.before, "before"), "→", amount(p.after, "after"), more];
}

const titled = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ["", title, ...lines];

function unpriced({ currencies, price, after, before }: Comparison): readonly string[] {
  if (price.length === 0 || (currencies.before && currencies.after)) return [];
  return [`  ${currencies.before ? after.name : before.name} has no price.`];
}

/** The comparison as lines for a person, grouped; "nothing differs" where nothing does. */
export function sayComparison(c: Comparison): readonly string[] {
  const rows = (changes: readonly Change[]): readonly Row[] =>
    changes.map((change) => rowOf(change, c.units));
  const versions =
    c.before.engine === c.after.engine ? "" : ` (version ${c.before.engine} → ${c.after.engine})`;
  const lines = [
    `${c.before.name} → ${c.after.name}${versions}`,
    ...(nothingDiffers(c) ? ["  nothing differs"] : []),
    ...group("The order", rows(c.order)),
    ...group("Measures and all that is given", rows(c.given)),
    ...group("What follows by default", rows(c.byDefault)),
    ...titled(
      "Cut sizes",
      c.pieces.flatMap((p) => pieceLines(c, p)),
    ),
    ...titled(
      "Hardware",
      c.hardware.flatMap((h) => hardwareLines(c, h)),
    ),
    ...group(
      "Price",
      c.price.map((p) => priceRow(p, c)),
    ),
    ...unpriced(c),
    ...titled(
      "Why the price changed",
      c.whyPrice.map((line) => `  ${line}`),
    ),
    ...titled(
      "Why sizes changed",
      c.why.flatMap(({ because, sizes }) => [`  ${because}`, `    changes ${sizes.join("; ")}`]),
    ),
    ...titled(
      "Not compared",
      c.notCompared.map((n) => `  ${n}`),
    ),
    ...titled(
      "To know",
      c.notes.map((n) => `  ${n}`),
    ),
  ];
  // A job.json is anybody's text: nothing in it may reach a terminal unseen.
  return lines.map(shown);
}
