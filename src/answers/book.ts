import type { Job } from "../model/job.ts";
import { sayFigure } from "../model/say.ts";
import { counted } from "../model/words.ts";
import { sayFault } from "../order/say.ts";
import { printMoney } from "../units/money.ts";
import { shown } from "../units/quote.ts";
import { inColumns } from "./columns.ts";
import { csvOf } from "./csv.ts";
import { fileKind } from "./fileKind.ts";
import type { JobResult } from "./jobResult.ts";

// A folder of orders as one list. The files are the record; nothing else is kept.

export type BookRow = {
  /** Its path from the folder, with forward slashes. */
  readonly file: string;
  readonly forWhom: string;
  readonly article: string;
  /** The day the file was last changed: "2026-03-14". */
  readonly changed: string;
  readonly sizes: readonly { readonly name: string; readonly says: string }[];
  readonly checks: {
    readonly state: "sound" | "cautions" | "has errors" | "contradicts itself" | "can't be read";
    readonly errors: number;
    readonly cautions: number;
    /** Why it can't be read, or what contradicts: the first fault. */
    readonly reason?: string;
  };
  /** How many are ordered; 0 where the order can't be read. */
  readonly quantity: number;
  /** What the customer pays, tax included: "214.00", and the currency's code. */
  readonly price?: { readonly total: string; readonly currency: string };
  /** Something has no rate yet, so there is no price. */
  readonly unpriced?: true;
};

/** An order's file as it was found; `problem` when its text can't be had. */
export type BookFile = { readonly file: string; readonly changed: string } & (
  | { readonly text: string }
  | { readonly problem: string }
);

/** So many sizes tell orders apart. */
const MOST_SIZES = 3;

/** The measures that the order gives, in its units; where it gives none, the sizes of the whole. */
function mainSizes(job: Job): BookRow["sizes"] {
  const { units } = job.order;
  const given = job.dimensions.flatMap((d) => {
    if (!d.key.startsWith("measures.") || d.origin !== "given" || d.kind !== "length") return [];
    return typeof d.value === "number" ? [{ name: d.key.slice("measures.".length), value: d.value }] : [];
  });
  const whole = job.made.sizes.filter((q) => q.kind === "length");
  const sizes = given.length > 0 ? given : whole.map((q) => ({ name: q.name ?? "", value: q.value }));
  return sizes
    .slice(0, MOST_SIZES)
    .map(({ name, value }) => ({ name, says: sayFigure(value, "length", units) }));
}

function checksOf({ findings }: Job): BookRow["checks"] {
  const errors = findings.filter((f) => f.severity === "error").length;
  const cautions = findings.filter((f) => f.severity === "caution").length;
  return { state: errors > 0 ? "has errors" : cautions > 0 ? "cautions" : "sound", errors, cautions };
}

function priceOf({ bench }: Job): Pick<BookRow, "price" | "unpriced"> {
  if (!bench.price) return {};
  if (bench.price.incomplete) return { unpriced: true };
  const { total, currency } = bench.price;
  return { price: { total: printMoney(total, currency), currency: currency.code } };
}

const unread = (state: "contradicts itself" | "can't be read", reason: string): BookRow["checks"] => ({
  state,
  errors: 1,
  cautions: 0,
  reason,
});

/** One file's row; undefined for a shop file, which is no order. `make` makes an order's text. */
export function bookRow(found: BookFile, make: (text: string) => JobResult): BookRow | undefined {
  const { file, changed } = found;
  const none = { file, forWhom: "", article: "", changed, sizes: [], quantity: 0 };
  if (!("text" in found)) return { ...none, checks: unread("can't be read", found.problem) };
  const kind = fileKind(found.text);
  if (kind.kind === "shop") return undefined;
  const { article, forWhom } = kind;
  const result = make(found.text);
  if (!result.made) {
    const [fault] = result.faults;
    const state = result.status === 1 ? "contradicts itself" : "can't be read";
    return { ...none, article, forWhom, checks: unread(state, fault ? sayFault(fault, file) : "") };
  }
  const { job } = result;
  return {
    ...none,
    article: job.order.article,
    forWhom: job.order.forWhom,
    sizes: mainSizes(job),
    quantity: job.quantity,
    checks: checksOf(job),
    ...priceOf(job),
  };
}

/** Capitals and accents don't count when words are looked for. */
const folded = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

function sayChecks({ state, errors, cautions }: BookRow["checks"]): string {
  if (state === "can't be read" || state === "contradicts itself") return state;
  const words = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(cautions > 0 ? [counted(cautions, "caution")] : []),
  ];
  return words.length > 0 ? words.join(", ") : state;
}

/** The rows that hold every word: in whom it is for, the article, the file's name or the state of its checks. */
export function bookRowsWith(rows: readonly BookRow[], words: readonly string[]): readonly BookRow[] {
  const wanted = words.map(folded);
  return rows.filter((r) => {
    const { state, reason = "" } = r.checks;
    const text = folded([r.forWhom, r.article, r.file, state, sayChecks(r.checks), reason].join("\n"));
    return wanted.every((word) => text.includes(word));
  });
}

const NONE = "–";
const word = (text: string): string => (text === "" ? NONE : shown(text));
const saySizes = (r: BookRow): string => r.sizes.map((s) => `${s.name} ${s.says}`).join(", ");

/** Letters of a name that a table has room for. */
const WIDEST = 44;
function short(text: string): string {
  const chars = Array.from(text);
  return chars.length > WIDEST ? `${chars.slice(0, WIDEST - 1).join("")}…` : text;
}

/** The book as a table for a person; reasons stand under it. */
export function sayBook(rows: readonly BookRow[]): readonly string[] {
  if (rows.length === 0) return ["No orders."];
  const table = rows.map((r) => [
    shown(r.file),
    short(word(r.forWhom)),
    word(r.article),
    r.changed,
    word(saySizes(r)),
    sayChecks(r.checks),
    r.quantity === 0 ? NONE : String(r.quantity),
    r.price ? `${r.price.total} ${r.price.currency}` : r.unpriced ? "rates are missing" : NONE,
  ]);
  const reasons = rows.flatMap((r) =>
    r.checks.reason === undefined ? [] : [`  ${shown(r.file)} ${r.checks.state}: ${shown(r.checks.reason)}`],
  );
  return [
    ...inColumns([
      ["file", "for", "article", "changed", "measures", "checks", "how many", "price"],
      ...table,
    ]),
    ...(reasons.length === 0 ? [] : ["", ...reasons]),
  ];
}

const TITLES = [
  "file",
  "for",
  "article",
  "changed",
  "measures",
  "checks",
  "errors",
  "cautions",
  "reason",
  "how many",
  "price",
  "currency",
];

/** The book as CSV, one row for each order. */
export const bookCsv = (rows: readonly BookRow[]): string =>
  csvOf(
    TITLES,
    rows.map((r) => [
      r.file,
      r.forWhom,
      r.article,
      r.changed,
      saySizes(r),
      r.checks.state,
      r.checks.errors,
      r.checks.cautions,
      r.checks.reason ?? "",
      r.quantity,
      r.price?.total ?? "",
      r.price?.currency ?? "",
    ]),
  );
