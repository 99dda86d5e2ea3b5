import { type LengthUnit, printNumber, readLength } from "../units/index.ts";
import { isFormula, type MeasuredDimension, type Value } from "./dimension.ts";
import type { Fault, TextPlace } from "./finding.ts";
import { type Bounds, saidBound, within, writtenBound } from "./limit.ts";
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
  /** What the order has for it. */
  readonly text?: string;
  readonly origin: "given" | "default" | "article";
  readonly place?: TextPlace;
  readonly units: Units;
};

export type Bound = Quantity | number;
export type Range = { readonly low: Bound; readonly high: Bound; readonly bounds: Bounds };

type Say = (n: number) => string;
type SayBound = (side: keyof Bounds) => string;

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
  const bound: SayBound = (end) => saidBound(end, r.bounds, d.kind, c.units);
  const end = side === "least" ? ends[0] : ends[1];
  const say = sayer(
    d,
    c,
    end,
    impossible
      ? [r.bounds[side]]
      : [r.bounds[side], bound(side), writtenBound(side, r.bounds, d.kind, c.units)],
  );
  return {
    code: impossible || follows || isFormula(d[side]) ? "contradiction" : "range",
    ...at(c),
    problem: `${d.means}: got ${[...new Set(ends)].map(say).join(" to ")}${whose(d, c, value)}`,
    allowed: allowed(r, impossible ? (end) => say(r.bounds[end]) : bound),
    mend: impossible ? noneFits(d, c, value, r) : mend(d, c, value, side, r.bounds),
  };
}

/** Says values; to the last figure where a value and the bound that it crosses would read alike. */
function sayer(d: MeasuredDimension, c: Case, value: number, bound: readonly (number | string)[]): Say {
  const say: Say = (n) => sayValue(n, d.kind, c.units);
  const said = say(value);
  const alike = (b: string): boolean => said === b || said.startsWith(`${b} (`);
  if (!bound.some((b) => alike(typeof b === "number" ? say(b) : b))) return say;
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

function allowed({ low, high, bounds }: Range, say: SayBound): string {
  const [openBelow, openAbove] = [
    bounds.least === Number.NEGATIVE_INFINITY,
    bounds.most === Number.POSITIVE_INFINITY,
  ];
  const least = openBelow ? "" : say("least") + from(namesBehind(low));
  const most = openAbove ? "" : say("most") + from(namesBehind(high));
  if (!within(bounds.least, { least: Number.NEGATIVE_INFINITY, most: bounds.most }))
    return `nothing: at least ${least}, but at most ${most}`;
  if (openAbove) return `at least ${least}`;
  return openBelow ? `at most ${most}` : `${least} to ${most}`;
}

/** What a dimension may be, in words: each end as it can be written, and what it follows from. */
export const sayAllowed = (d: MeasuredDimension, range: Range, units: Units): string =>
  allowed(range, (side) =>
    range.bounds.least > range.bounds.most
      ? sayValue(range.bounds[side], d.kind, units)
      : saidBound(side, range.bounds, d.kind, units),
  );

/** The number of a text that has one number, perhaps with a fraction, and perhaps a unit. */
const ONE_NUMBER = /^([\d.]+(?:[ -]\d+)?(?:\/\d+)?)\s*(?:[a-z]+\.?|["″”])?$/i;
const LENGTH_UNITS: readonly LengthUnit[] = ["in", "mm", "cm"];

/** The same number in other units, where it lies in the range. */
function otherUnits(d: MeasuredDimension, c: Case, bounds: Bounds): readonly string[] {
  const number = ONE_NUMBER.exec(c.text ?? "")?.[1];
  const fixed = !isFormula(d.least) && !isFormula(d.most);
  if (d.kind !== "length" || !fixed || number === undefined) return [];
  // Nobody measures in fractions of a centimetre.
  const units = number.includes("/") ? LENGTH_UNITS.slice(0, 1) : LENGTH_UNITS;
  const texts = units.map((unit) => `${number} ${unit}`);
  return texts.filter((text) => {
    const read = readLength(text);
    return read.ok && within(read.value, bounds);
  });
}

/** What to change so that the value fits: the line itself, or what the value follows from. */
function mend(d: MeasuredDimension, c: Case, value: Quantity, side: keyof Bounds, bounds: Bounds): string {
  const limit = `at ${side} ${writtenBound(side, bounds, d.kind, c.units)}`;
  if (!d.handed && c.origin !== "given") return `give ${c.orderKey}, ${limit}`;
  if (!d.handed) {
    if (value.value < 0 && within(-value.value, bounds)) return "take the minus away";
    const meant = [...otherUnits(d, c, bounds), ...hundredths(d, value.value, bounds)];
    const or = meant.length === 0 ? "" : `, or did you mean ${oneOf(meant)}?`;
    return `${side === "least" ? "raise" : "lower"} ${c.orderKey} to ${limit}${or}`;
  }
  const roots = rootsOf(value);
  return `change ${roots.length === 0 ? "what it follows from" : oneOf([...new Set(roots)])}: it must come to ${limit}`;
}

/** A share that was written as its hundredths: `25` for 25 %. */
const hundredths = (d: MeasuredDimension, value: number, bounds: Bounds): readonly string[] =>
  d.kind === "ratio" && value > 1 && within(value / 100, bounds)
    ? [`${printNumber(value, 6)} % (${printNumber(value / 100, 8)})`]
    : [];

function noneFits(d: MeasuredDimension, c: Case, value: Quantity, { low, high }: Range): string {
  const roots = rootsOfAll(d.handed ? [value, low, high] : [low, high]);
  return `no ${c.orderKey} fits; change ${oneOf(roots)}`;
}
