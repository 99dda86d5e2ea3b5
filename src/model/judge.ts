import { type Dimension, type Formula, isFormula, isMeasured, type MeasuredDimension } from "./dimension.ts";
import type { Fault } from "./finding.ts";
import { type Look, work } from "./known.ts";
import { within } from "./limit.ts";
import type { Quantity } from "./quantity.ts";
import { type Bound, type Case, crossed, notWorked, type Range } from "./rangeFault.ts";

export type Judged = { readonly fault?: Fault; readonly least?: number; readonly most?: number };

const numberOf = (b: Bound): number => (typeof b === "number" ? b : b.value);

/** The range of a dimension; undefined while one of its inputs has a fault of its own. */
export function rangeOf(d: MeasuredDimension, look: Look): Range | undefined {
  const bound = (b: number | Formula): Bound | undefined =>
    isFormula(b) ? (work(b, look) as Quantity | undefined) : b;
  const [low, high] = [bound(d.least), bound(d.most)];
  if (low === undefined || high === undefined) return undefined;
  return { low, high, bounds: { least: numberOf(low), most: numberOf(high) } };
}

/** A value that can't be of its dimension was put there by a table or an article: our own fault. */
function mustFit(d: Dimension, c: Case): void {
  const kind = isMeasured(d) ? "object" : d.kind === "flag" ? "boolean" : "string";
  const fits = typeof c.value === kind && (d.kind !== "choice" || d.choices.includes(c.value as string));
  if (!fits) throw new Error(`${c.key}: ${String(c.value)} is not a value of its kind, ${d.kind}`);
}

/** An even number where one in the middle is needed. */
function notOdd(d: MeasuredDimension, c: Case, value: number, most: number): Fault {
  const next = value + 1 <= most ? value + 1 : value - 1;
  const name = c.key.split(".").at(-1)!;
  return {
    code: "range",
    key: c.key,
    ...(c.place ? { place: c.place } : {}),
    problem: `${d.means}: got ${value}`,
    allowed: "an odd number, so that one lies in the middle",
    mend: `write ${name}: ${next}`,
  };
}

/** Judges a value by its dimension's range. Throws when the table or the article that made it is at fault. */
export function judge(d: Dimension, c: Case, look: Look): Judged {
  if (c.value === undefined) return {};
  mustFit(d, c);
  if (!isMeasured(d)) return {};
  const value = c.value as Quantity;
  if (!Number.isFinite(value.value))
    return { fault: notWorked(d, c, "no size can be worked out", value.inputs) };
  const range = rangeOf(d, look);
  if (!range) return {};
  const { least, most } = range.bounds;
  if (Number.isNaN(least) || Number.isNaN(most)) {
    return { fault: notWorked(d, c, "what it may be can't be worked out", [range.low, range.high]) };
  }
  const ends = value.range ?? [value.value, value.value];
  if (!ends.every((end) => within(end, range.bounds))) return { fault: crossed(d, c, value, ends, range) };
  if (d.odd && Math.round(value.value) % 2 === 0) return { fault: notOdd(d, c, value.value, most) };
  return { ...(Number.isFinite(least) ? { least } : {}), ...(Number.isFinite(most) ? { most } : {}) };
}
