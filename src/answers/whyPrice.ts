import { type Currency, printMoney } from "../units/money.ts";
import type { SummaryPrice } from "./summary.ts";

// Why one price is dearer than another: the lines that differ, and whether their rate or their amount does.

type Line = SummaryPrice["materials"][number];

/** `2.35 square feet at 14.50`: how much, and the price of one. A share has none. */
function partsOf(how: string): { readonly amount: string; readonly rate: string } {
  const at = how.lastIndexOf(" at ");
  // After the comma of a share stands what it is a share of, which other lines tell.
  return at < 0
    ? { amount: "", rate: how.split(",")[0]! }
    : { amount: how.slice(0, at), rate: how.slice(at + " at ".length) };
}

const linesOf = (p: SummaryPrice): readonly Line[] => [
  ...p.materials,
  ...p.labour,
  ...[p.overhead, p.margin, p.tax].map((l) => ({ ...l, how: partsOf(l.how ?? "").rate })),
];

const byItself = (l: Line): boolean => l.what !== undefined && l.how !== undefined;

/** The lines that have a name and tell how they came about, by it. */
const named = (p: SummaryPrice): ReadonlyMap<string, Line> =>
  new Map(
    linesOf(p)
      .filter(byItself)
      .map((l) => [l.what!, l]),
  );

const more = (minor: number, currency: Currency): string =>
  minor === 0 ? "" : ` (${minor < 0 ? "−" : "+"} ${printMoney(Math.abs(minor), currency)})`;

function changed(a: Line, b: Line, currency: Currency): readonly string[] {
  const [x, y] = [partsOf(a.how!), partsOf(b.how!)];
  const what = [
    ...(x.rate === y.rate ? [] : [`the rate was ${x.rate}, is now ${y.rate}`]),
    ...(x.amount === y.amount ? [] : [`the amount was ${x.amount}, is now ${y.amount}`]),
  ];
  return what.length === 0 ? [] : [`${b.what}: ${what.join("; ")}${more(b.minor - a.minor, currency)}`];
}

/**
 * The lines of two prices in one currency whose rate or amount differs, or that one of them lacks, in the order of
 * the second; none where either job.json tells no lines.
 */
export function whyPrice(
  before: SummaryPrice | undefined,
  after: SummaryPrice | undefined,
): readonly string[] {
  if (!before || !after || before.currency.code !== after.currency.code) return [];
  const [as, bs] = [named(before), named(after)];
  const { currency } = after;
  const now = [...bs].flatMap(([what, b]) => {
    const a = as.get(what);
    return a ? changed(a, b, currency) : [`${what}: not there before, ${b.how}${more(b.minor, currency)}`];
  });
  const gone = [...as].flatMap(([what, a]) =>
    bs.has(what) ? [] : [`${what}: no longer there, ${a.how}${more(-a.minor, currency)}`],
  );
  return as.size === 0 || bs.size === 0 ? [] : [...now, ...gone];
}
