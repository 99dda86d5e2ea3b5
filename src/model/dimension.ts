import type { Reading } from "../units/index.ts";
import type { Quantity, QuantityKind } from "./quantity.ts";

// Every value that a person may set is declared once, in a table of dimensions. The resolver judges
// by it, the order's schema is made from it, and `begin` writes an order file from it.

export type Value = Quantity | string | boolean;

/** What a formula may look at: only the names it declared. */
export type Known = {
  /** The quantity of that name. */
  q(name: string): Quantity;
  /** The choice or text of that name. */
  choice(name: string): string;
  flag(name: string): boolean;
  /** The quantity of that name, or undefined when it is optional and was not given. */
  maybe(name: string): Quantity | undefined;
};

/** A default or a bound that follows from other dimensions of the same table. */
export type Formula<T extends Value = Quantity> = {
  readonly inputs: readonly string[];
  readonly of: (known: Known) => T;
};

/** Declares a formula and the names it looks at. */
export const from = <T extends Value = Quantity>(
  inputs: readonly string[],
  of: (known: Known) => T,
): Formula<T> => ({ inputs, of });

type About = {
  /** Its meaning in one line, for a person at a bench. */
  readonly means: string;
  /** Where the default comes from; "common practice, no source" where there is none. */
  readonly source: string;
  /** Set by the article, not by the order. */
  readonly handed?: true;
};

export type MeasuredDimension = About & {
  readonly kind: QuantityKind | "hands";
  /** Millimetres, radians, …; absent: must be given, unless optional. */
  readonly default?: number | Formula;
  readonly optional?: true;
  readonly least: number | Formula;
  readonly most: number | Formula;
  /** Set on counts that need a middle one. */
  readonly odd?: true;
};
export type ChoiceDimension = About & {
  readonly kind: "choice";
  readonly choices: readonly string[];
  readonly default?: string | Formula<string>;
};
export type FlagDimension = About & { readonly kind: "flag"; readonly default: boolean | Formula<boolean> };
export type TextDimension = About & {
  readonly kind: "text";
  readonly default?: string;
  readonly longest: number;
  /** How the text must be written; a text that can't be read is a fault. The default is not looked at. */
  readonly reads?: (text: string) => Reading<unknown>;
  /** A text that can be read, where not any can. */
  readonly example?: string;
};

export type Dimension = MeasuredDimension | ChoiceDimension | FlagDimension | TextDimension;
export type DimensionTable = Readonly<Record<string, Dimension>>;

type ValueOf<D> = D extends { readonly kind: "choice"; readonly choices: readonly (infer C)[] }
  ? C
  : D extends { readonly kind: "flag" }
    ? boolean
    : D extends { readonly kind: "text" }
      ? string
      : D extends { readonly optional: true }
        ? Quantity | undefined
        : Quantity;

/** The resolved values of a table, typed by it. */
export type Values<T extends DimensionTable> = { readonly [K in keyof T]: ValueOf<T[K]> };

/** Keys are camelCase in code and hyphenated in orders. */
export const orderKey = (name: string): string => name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

export const isMeasured = (d: Dimension): d is MeasuredDimension =>
  d.kind !== "choice" && d.kind !== "flag" && d.kind !== "text";

/** A formula of any result. */
export type AnyFormula = Formula<Value>;

/** Tells a formula from a plain default or bound. */
export const isFormula = (v: AnyFormula | Value | number | undefined): v is AnyFormula =>
  typeof v === "object" && "inputs" in v && "of" in v;

/** The inputs a dimension's default and bounds declare. */
export function declaredInputs(d: Dimension): readonly string[] {
  const bounds = isMeasured(d) ? [d.least, d.most] : [];
  const formulas = [d.default, ...bounds].filter((f) => isFormula(f));
  return [...new Set(formulas.flatMap((f) => f.inputs))];
}

/**
 * The order in which a table can be worked, inputs first; declared order otherwise.
 * Throws on a cycle or an unknown input: both are faults of the table, found by its test.
 */
export function workingOrder(table: DimensionTable): readonly string[] {
  const done: string[] = [];
  const open = new Set<string>();
  const visit = (name: string, by: string): void => {
    if (done.includes(name)) return;
    const d = table[name];
    if (!d) throw new Error(`dimension ${by} names ${name}, which its table lacks`);
    if (open.has(name)) throw new Error(`dimension ${name} depends on itself`);
    open.add(name);
    for (const input of declaredInputs(d)) visit(input, name);
    open.delete(name);
    done.push(name);
  };
  for (const name of Object.keys(table)) visit(name, name);
  return done;
}
