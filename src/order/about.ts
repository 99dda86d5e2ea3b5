import { remembered } from "../geometry/remember.ts";
import {
  type AnyFormula,
  type Dimension,
  type DimensionTable,
  isFormula,
  isMeasured,
  type MeasuredDimension,
  orderKey,
  type Value,
} from "../model/dimension.ts";
import { lookInto, work } from "../model/known.ts";
import { type Bounds, saidBound } from "../model/limit.ts";
import type { Quantity } from "../model/quantity.ts";
import { oneOf } from "../model/words.ts";
import { measuredText, plainText } from "./value-text.ts";

// A dimension in words, for whoever writes an order.

/** A table, and the values of its section by name where there are any: formulas are worked with them. */
export type Known = {
  readonly table: DimensionTable;
  readonly values?: Readonly<Record<string, Value | undefined>> | undefined;
};

type Side = number | string | boolean | AnyFormula;

/** Works the formulas of a section; each once, though its words ask for it several times. */
const workerFor = remembered((values: NonNullable<Known["values"]>) => {
  const look = lookInto(new Map(Object.entries(values)), new Set());
  return remembered((formula: AnyFormula) => work(formula, look));
});

/** What a bound or a default comes to; undefined for a formula when there are no values. */
function worked(side: Side, { values }: Known): Value | number | undefined {
  if (!isFormula(side)) return side;
  return values && workerFor(values)(side);
}

/** The number that a bound comes to; undefined when it is not known, or there is no bound. */
export function boundOf(side: number | AnyFormula, known: Known): number | undefined {
  const value = worked(side, known);
  const n = typeof value === "object" ? value.value : value;
  return typeof n === "number" && Number.isFinite(n) ? n : undefined;
}

const spaced = (name: string): string => orderKey(name).replaceAll("-", " ");

/** A quantity's name as it stands in this section, or as other sections explain it. */
function nameOf(q: Quantity, { table, values = {} }: Known): string {
  const own = Object.keys(table).find((name) => !table[name]!.handed && values[name] === q);
  return own === undefined ? (q.name ?? "") : spaced(own);
}

/** Names of what decided a worked value; of a formula that can't be worked, what it looks at. */
function namesBehind(side: Side, known: Known): readonly string[] {
  if (!isFormula(side)) return [];
  const value = worked(side, known);
  if (typeof value !== "object") return side.inputs.map(spaced);
  return (value.name === undefined ? value.inputs : [value]).map((q) => nameOf(q, known)).filter(Boolean);
}

/** More names than this tell nobody anything. */
const MOST_NAMES = 4;

/** ", from width and holes" */
function from(sides: readonly Side[], known: Known): string {
  const names = [...new Set(sides.flatMap((s) => namesBehind(s, known)))];
  const shown = names.length > MOST_NAMES ? [...names.slice(0, MOST_NAMES - 1), "more"] : names;
  return shown.length === 0 ? "" : `, from ${oneOf(shown).replace(/ or (?=[^,]*$)/, " and ")}`;
}

/** A range in words; an end that follows from other values is worked out where there are values. */
function rangeWords(d: MeasuredDimension, known: Known): string {
  const [low, high] = [boundOf(d.least, known), boundOf(d.most, known)];
  const bounds: Bounds = { least: low ?? Number.NEGATIVE_INFINITY, most: high ?? Number.POSITIVE_INFINITY };
  const say = (side: keyof Bounds): string =>
    Number.isFinite(bounds[side]) ? saidBound(side, bounds, d.kind, "in") : "";
  const [least, most] = [say("least"), say("most")];
  const why = from([d.least, d.most], known);
  if (least !== "" && most !== "") return `${least} to ${most}${why}`;
  const alone = why.replace(", ", " ");
  if (least === "" && most === "") return why === "" ? "" : `a range${alone}`;
  if (most === "") return `at least ${least}${isFormula(d.most) ? `; the most${alone}` : ""}`;
  return `at most ${most}${isFormula(d.least) ? `; the least${alone}` : ""}`;
}

/** What may be written: a range, the choices. */
export function allowedWords(d: Dimension, known: Known): string {
  if (d.kind === "choice") return `one of ${oneOf(d.choices)}`;
  if (d.kind === "flag") return "yes or no";
  if (d.kind === "text") return d.default ? "" : `up to ${d.longest} letters`;
  return rangeWords(d, known);
}

/** With a capital letter and a full stop; nothing stays nothing. */
export function sentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return text === "" || /[.!?]$/.test(text) ? capital : `${capital}.`;
}

/** The text of a value, as an order has it; "" for what is no size. */
export function textOf(d: Dimension, value: Value | number, known: Known): string {
  if (typeof value === "string" || typeof value === "boolean") return plainText(value);
  const size = typeof value === "number" ? value : value.value;
  if (!isMeasured(d) || !Number.isFinite(size)) return "";
  return measuredText(size, d.kind, { least: boundOf(d.least, known), most: boundOf(d.most, known) });
}

/** What stands as the source of a default that has none; said once for all of them. */
export const PRACTICE = "common practice, no source";

/** The default and where it comes from; "" when there is none. */
export function defaultWords(d: Dimension, known: Known): string {
  if (d.default === undefined) return isMeasured(d) && d.optional ? "May be left out" : "";
  const value = worked(d.default, known);
  if (value === "") return "May be left blank";
  const shown = value === undefined ? "" : textOf(d, value, known);
  const why = from([d.default], known);
  const source = d.source === PRACTICE ? "" : ` (${d.source})`;
  return shown === "" ? `Default${why.replace(", ", " ")}${source}` : `Default ${shown}${why}${source}`;
}
