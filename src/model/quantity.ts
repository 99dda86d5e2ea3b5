// A quantity is a number that remembers how it came about. Formulas are written with the functions
// below, so the text that explains a size is the computation itself and can't drift from it.

import * as trig from "../units/trigonometry.ts";

/** What a number counts; it decides how the number is printed, never how it is computed. */
export type QuantityKind =
  | "length"
  | "thickness"
  | "pitch"
  | "angle"
  | "ratio"
  | "count"
  | "area"
  | "force"
  | "stress"
  | "number";

/** Where a value that was not computed comes from. */
export type Origin =
  | { readonly kind: "given"; readonly where: string }
  | { readonly kind: "default"; readonly source: string }
  | { readonly kind: "article"; readonly source: string }
  | { readonly kind: "fact"; readonly source: string };

/** A piece of an expression: text between values, or a named quantity. */
export type Part = string | Quantity;

export type Quantity = {
  /** Millimetres, radians, newtons, mm², or a bare number. */
  readonly value: number;
  readonly kind: QuantityKind;
  /** The name it goes by in an explanation; an unnamed quantity is part of a longer expression. */
  readonly name?: string;
  /** The formula's source, where the value was computed by a named step. */
  readonly source?: string;
  /** Set on values that were not computed. */
  readonly origin?: Origin;
  /** The expression that gave the value: text and named quantities in reading order. */
  readonly parts: readonly Part[];
  /**
   * The named quantities the value changes with. Of a greatest or least, only the ones that decided it;
   * the others stand in `parts` alone.
   */
  readonly inputs: readonly Quantity[];
  /** True when the expression needs brackets inside a product. */
  readonly loose?: boolean;
  /** For leather sold as a range: its thin and thick ends. */
  readonly range?: readonly [thinnest: number, thickest: number];
};

export type Operand = Quantity | number;

/** A value that came from outside a formula. */
export function leaf(name: string, value: number, kind: QuantityKind, origin: Origin): Quantity {
  return { value, kind, name, origin, parts: [], inputs: [] };
}

const isQuantity = (o: Operand): o is Quantity => typeof o !== "number";
const numberIn = (o: Operand): number => (isQuantity(o) ? o.value : o);

/** Numbers written in formulas are short; more than 4 places are a constant like π, shown rounded. */
const figure = (n: number): string => (n === Math.PI ? "π" : String(Math.round(n * 1e4) / 1e4));

const isLong = (kind: QuantityKind): boolean => kind === "length" || kind === "thickness" || kind === "pitch";

/** `beside`: the kind of what it is added to or compared with; a bare number beside lengths is millimetres. */
function partsOf(o: Operand, tight: boolean, beside: QuantityKind = "number"): readonly Part[] {
  if (!isQuantity(o)) return [isLong(beside) && o !== 0 && o !== Math.PI ? `${figure(o)} mm` : figure(o)];
  if (o.name !== undefined) return [o];
  return tight && o.loose ? ["(", ...o.parts, ")"] : o.parts;
}

function inputsOf(operands: readonly Operand[]): readonly Quantity[] {
  const found: Quantity[] = [];
  for (const o of operands) {
    if (!isQuantity(o)) continue;
    for (const q of o.name !== undefined ? [o] : o.inputs) if (!found.includes(q)) found.push(q);
  }
  return found;
}

/** A sum or difference keeps its operands' kind; a product keeps the one kind that is not a bare factor. */
function kindOf(operands: readonly Operand[]): QuantityKind {
  const kinds = operands.filter(isQuantity).map((q) => q.kind);
  const measured = kinds.filter((k) => k !== "ratio" && k !== "count" && k !== "number" && k !== "angle");
  return measured[0] ?? kinds[0] ?? "number";
}

const joined = (
  operands: readonly Operand[],
  between: string,
  tight: boolean,
  beside?: QuantityKind,
): readonly Part[] =>
  operands.flatMap((o, i) => (i === 0 ? partsOf(o, tight, beside) : [between, ...partsOf(o, tight, beside)]));

/** A thickness or a pitch that counts as a length, to stand beside lengths. */
export const asLength = (q: Quantity): Quantity => ({ ...q, kind: "length" });

/** A length of a formula's own, mm; `words` stand for it in an explanation. */
export const millimetres = (value: number, words = `${value} mm`): Quantity => ({
  value,
  kind: "length",
  parts: [words],
  inputs: [],
});

/** a + b + … */
export function sum(...operands: readonly Operand[]): Quantity {
  const value = operands.reduce<number>((total, o) => total + numberIn(o), 0);
  const kind = kindOf(operands);
  return {
    value,
    kind,
    parts: joined(operands, " + ", false, kind),
    inputs: inputsOf(operands),
    loose: true,
  };
}

/** a − b − c … */
export function minus(first: Operand, ...rest: readonly Operand[]): Quantity {
  const value = rest.reduce<number>((left, o) => left - numberIn(o), numberIn(first));
  const kind = kindOf([first, ...rest]);
  const parts = [...partsOf(first, false, kind), ...rest.flatMap((o) => [" − ", ...partsOf(o, true, kind)])];
  return { value, kind, parts, inputs: inputsOf([first, ...rest]), loose: true };
}

/** a × b × … */
export function times(...operands: readonly Operand[]): Quantity {
  const value = operands.reduce<number>((product, o) => product * numberIn(o), 1);
  return { value, kind: kindOf(operands), parts: joined(operands, " × ", true), inputs: inputsOf(operands) };
}

/** a ÷ b */
export function over(a: Operand, b: Operand): Quantity {
  // Read from left to right, a ÷ b × c is not a ÷ (b × c).
  const product = isQuantity(b) && b.name === undefined && !b.loose && b.parts.includes(" × ");
  const divisor = product ? ["(", ...b.parts, ")"] : partsOf(b, true);
  const parts = [...partsOf(a, true), " ÷ ", ...divisor];
  const sameKind = isQuantity(a) && isQuantity(b) && a.kind === b.kind && a.kind !== "count";
  const kind = sameKind ? "ratio" : kindOf([a]);
  return { value: numberIn(a) / numberIn(b), kind, parts, inputs: inputsOf([a, b]), loose: true };
}

function call(word: string, value: number, kind: QuantityKind, operands: readonly Operand[]): Quantity {
  const parts = [`${word}(`, ...joined(operands, ", ", false), ")"];
  return { value, kind, parts, inputs: inputsOf(operands) };
}

/** √a; the root of an area is a length. */
export const root = (a: Operand): Quantity => call("√", Math.sqrt(numberIn(a)), kindOf([a]), [a]);
export function square(a: Operand): Quantity {
  const parts = [...(isQuantity(a) && a.name === undefined ? ["(", ...a.parts, ")"] : partsOf(a, true)), "²"];
  return { value: numberIn(a) ** 2, kind: kindOf([a]), parts, inputs: inputsOf([a]) };
}
export const sine = (a: Operand): Quantity => call("sin", trig.sin(numberIn(a)), "number", [a]);
export const cosine = (a: Operand): Quantity => call("cos", trig.cos(numberIn(a)), "number", [a]);
export const tangent = (a: Operand): Quantity => call("tan", trig.tan(numberIn(a)), "number", [a]);
export const arcCosine = (a: Operand): Quantity => call("acos", trig.acos(numberIn(a)), "angle", [a]);
/** The angle whose tangent is y ÷ x, in the right quadrant. */
export const arcTangent = (y: Operand, x: Operand): Quantity =>
  call("atan2", trig.atan2(numberIn(y), numberIn(x)), "angle", [y, x]);

function chosen(
  word: string,
  operands: readonly Operand[],
  better: (a: number, b: number) => boolean,
): Quantity {
  let winner = operands[0]!;
  for (const o of operands) if (better(numberIn(o), numberIn(winner))) winner = o;
  const kind = kindOf(operands);
  const parts = [`${word} (`, ...joined(operands, "; ", false, kind), ")"];
  return { value: numberIn(winner), kind, parts, inputs: inputsOf([winner]) };
}

/** The greatest of the operands; the first of equals decides. */
export const greatest = (...operands: readonly Operand[]): Quantity =>
  chosen("the greatest of", operands, (a, b) => a > b);
/** The least of the operands; the first of equals decides. */
export const least = (...operands: readonly Operand[]): Quantity =>
  chosen("the least of", operands, (a, b) => a < b);

/** Sums of fractions that should be whole come out a hair off; less than this is no step up. */
const STEP_SLACK = 1e-6;

/** Rounded up to a whole number of steps. */
export function roundedUp(a: Operand, step: Operand): Quantity {
  const s = numberIn(step);
  const value = Math.ceil(numberIn(a) / s - STEP_SLACK) * s;
  const parts = [...partsOf(a, true), " rounded up to a whole ", ...partsOf(step, true, kindOf([a]))];
  return { value, kind: kindOf([a]), parts, inputs: inputsOf([a, step]), loose: true };
}

/** The greatest whole number that is not above `a`. */
export function roundedDown(a: Operand): Quantity {
  const value = Math.floor(numberIn(a) + STEP_SLACK);
  return {
    value,
    kind: "count",
    parts: [...partsOf(a, true), " rounded down"],
    inputs: inputsOf([a]),
    loose: true,
  };
}

/** Rounded to the nearest whole number of steps, halves upward. */
export function roundedNear(a: Operand, step: Operand): Quantity {
  const s = numberIn(step);
  const value = Math.floor(numberIn(a) / s + 0.5 + STEP_SLACK) * s;
  const parts = [...partsOf(a, true), " rounded to the nearest ", ...partsOf(step, true, kindOf([a]))];
  return { value, kind: kindOf([a]), parts, inputs: inputsOf([a, step]), loose: true };
}

/** The least odd whole number that is not below `a`. */
export function nextOdd(a: Operand): Quantity {
  const whole = Math.ceil(numberIn(a) - STEP_SLACK);
  const value = whole % 2 === 0 ? whole + 1 : whole;
  return {
    value,
    kind: "count",
    parts: ["the next odd number from ", ...partsOf(a, true)],
    inputs: inputsOf([a]),
  };
}

/** A named step: what the explanation prints as one line. */
export function named(
  name: string,
  q: Quantity,
  about: { readonly source?: string; readonly kind?: QuantityKind } = {},
): Quantity {
  // A name given to a quantity that has one already is a line of its own that repeats it.
  const parts = q.name === undefined ? q.parts : [q];
  const inputs = q.name === undefined ? q.inputs : [q];
  const kind = about.kind ?? q.kind;
  const source = about.source === undefined ? {} : { source: about.source };
  return { value: q.value, kind, name, parts, inputs, ...source, ...(q.range ? { range: q.range } : {}) };
}
