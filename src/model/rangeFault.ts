import { printNumber } from "../units/index.ts";
import { isFormula, type MeasuredDimension, type Value } from "./dimension.ts";
import type { Fault, TextPlace } from "./finding.ts";
import { type Bounds, within, writtenBound } from "./limit.ts";
import type { Quantity } from "./quantity.ts";
import { sayValue, type Units } from "./say.ts";
import { oneOf } from "./words.ts";

// Faults of values outside their range, in words. A bound or a value that follows from others makes the
// crossing a contradiction of the order in itself, and not a slip in one line.

/** A dimension's value, and what a message about it needs. */
export type Case = {
  /** Path in the order, e.g. "pieces.crown.width", and its last part as the order has it. */
  readonly key: string;
  readonly orderKey: string;
  readonly value: Value | undefined;
  readonly origin: "given" | "default" | "article";
  readonly place?: TextPlace;
  readonly units: Units;
};

export type Bound = Quantity | number;
export type Range = { readonly low: Bound; readonly high: Bound; readonly bounds: Bounds };

type Say = (n: number) => string;

/** The nearest names behind a value or a bound: its own, or those of its expression. */
const namesBehind = (b: Bound): readonly string[] =>
  typeof b === "number" ? [] : (b.name === undefined ? b.inputs : [b]).map((q) => q.name ?? "");

/** The names of the values at the root of it: those that a person can change. */
function rootsOf(b: Bound): readonly string[] {
  if (typeof b === "number") return [];
  if (b.origin) return b.origin.kind === "fact" || b.name === undefined ? [] : [b.name];
  return b.inputs.flatMap(rootsOf);
}
const rootsOfAll = (bounds: readonly Bound[]): readonly string[] => [...new Set(bounds.flatMap(rootsOf))];

const from = (names: readonly string[], before = ""): string =>
  names.length === 0 ? "" : ` (${before}from ${names.join(", ")})`;

const at = (c: Case): Pick<Fault, "key" | "place"> => ({
  key: c.key,
  ...(c.place ? { place: c.place } : {}),
});

/** Measures so far from each other that the arithmetic has no answer. */
export function notWorked(d: MeasuredDimension, c: Case, what: string, behind: readonly Bound[]): Fault {
  const names = [...new Set(behind.flatMap(namesBehind))];
  const roots = rootsOfAll(behind);
  const ways = [
    ...(roots.length === 0 ? [] : [`change ${oneOf(roots)}`]),
    ...(d.handed ? [] : [`give ${c.orderKey}`]),
  ];
  return {
    code: "contradiction",
    ...at(c),
    problem: `${d.means}: ${what}${names.length === 0 ? "" : ` from ${names.join(", ")}`}`,
    mend: ways.join(", or "),
  };
}

/** The fault of a value, or of the ends of its range, outside what is allowed. */
export function crossed(
  d: MeasuredDimension,
  c: Case,
  value: Quantity,
  ends: readonly [number, number],
  r: Range,
): Fault {
  const { least, most } = r.bounds;
  const side = within(ends[0], { least, most: Number.POSITIVE_INFINITY }) ? "most" : "least";
  const impossible = !within(least, { least: Number.NEGATIVE_INFINITY, most });
  if (impossible && rootsOfAll([r.low, r.high]).length === 0)
    throw new Error(`${c.key}: its least is over its most`);
  const follows = c.origin === "article" || (c.origin === "default" && isFormula(d.default));
  const say = sayer(d, c, side === "least" ? ends[0] : ends[1], r.bounds[side]);
  return {
    code: impossible || follows || isFormula(d[side]) ? "contradiction" : "range",
    ...at(c),
    problem: `${d.means}: got ${[...new Set(ends)].map(say).join(" to ")}${whose(d, c, value)}`,
    allowed: allowed(r, impossible, say),
    mend: impossible ? noneFits(d, c, value, r) : mend(d, c, value, side, r.bounds),
  };
}

/** Says values; to the last figure where a value and the bound that it crosses would read alike. */
function sayer(d: MeasuredDimension, c: Case, value: number, bound: number): Say {
  const say: Say = (n) => sayValue(n, d.kind, c.units);
  if (say(value) !== say(bound)) return say;
  if (d.kind === "length" || d.kind === "thickness" || d.kind === "pitch")
    return (n) => `${printNumber(n, 6)} mm`;
  if (d.kind === "angle") return (n) => `${printNumber((n * 180) / Math.PI, 6)}°`;
  return (n) => printNumber(n, 6);
}

/** Whose value it is, when the order doesn't have it. */
function whose(d: MeasuredDimension, c: Case, value: Quantity): string {
  if (c.origin === "given") return "";
  if (c.origin === "article") return from(namesBehind(value)) || " (from the article)";
  const inputs = isFormula(d.default) ? value.inputs.flatMap(namesBehind) : [];
  return from(inputs, "by default, ") || " (by default)";
}

function allowed({ low, high, bounds }: Range, impossible: boolean, say: Say): string {
  const [openBelow, openAbove] = [
    bounds.least === Number.NEGATIVE_INFINITY,
    bounds.most === Number.POSITIVE_INFINITY,
  ];
  const least = openBelow ? "" : say(bounds.least) + from(namesBehind(low));
  const most = openAbove ? "" : say(bounds.most) + from(namesBehind(high));
  if (impossible) return `nothing: at least ${least}, but at most ${most}`;
  if (openAbove) return `at least ${least}`;
  return openBelow ? `at most ${most}` : `${least} to ${most}`;
}

/** What to change so that the value fits: the line itself, or what the value follows from. */
function mend(d: MeasuredDimension, c: Case, value: Quantity, side: keyof Bounds, bounds: Bounds): string {
  const limit = `at ${side} ${writtenBound(side, bounds, d.kind, c.units)}`;
  if (!d.handed && c.origin !== "given") return `give ${c.orderKey}, ${limit}`;
  if (!d.handed) return `${side === "least" ? "raise" : "lower"} ${c.orderKey} to ${limit}`;
  const roots = rootsOf(value);
  return `change ${roots.length === 0 ? "what it follows from" : oneOf([...new Set(roots)])}: it must come to ${limit}`;
}

function noneFits(d: MeasuredDimension, c: Case, value: Quantity, { low, high }: Range): string {
  const roots = rootsOfAll(d.handed ? [value, low, high] : [low, high]);
  return `no ${c.orderKey} fits; change ${oneOf(roots)}`;
}
