import type { AnyFormula, Known, Value } from "./dimension.ts";
import type { Quantity } from "./quantity.ts";

// What a formula of a dimension table sees: the values that it declared, and no others.

/** Gives a formula its view, by the names that it declared. */
export type Look = (declared: readonly string[]) => Known;

/** Thrown out of a formula that asks for a value with a fault of its own; `work` catches it. */
const BROKEN = Symbol("broken");

const isQuantity = (v: Value | undefined): v is Quantity => typeof v === "object";

/**
 * Looks at the values found so far. A formula that looks at a name it didn't declare, or at a value of
 * another kind, is a fault of its table: that throws.
 */
export function lookInto(values: ReadonlyMap<string, Value | undefined>, broken: ReadonlySet<string>): Look {
  return (declared) => {
    const get = <T extends Value>(name: string, kind: string, is: (v: Value | undefined) => v is T): T => {
      const value = seen(name);
      if (!is(value)) throw new Error(`a formula looks at ${name} as a ${kind}, which it is not`);
      return value;
    };
    const seen = (name: string): Value | undefined => {
      if (!declared.includes(name)) throw new Error(`a formula looks at ${name} without declaring it`);
      if (broken.has(name)) throw BROKEN;
      return values.get(name);
    };
    return {
      q: (name) => get(name, "quantity", isQuantity),
      maybe: (name) => (seen(name) === undefined ? undefined : get(name, "quantity", isQuantity)),
      choice: (name) => get(name, "choice", (v): v is string => typeof v === "string"),
      flag: (name) => get(name, "flag", (v): v is boolean => typeof v === "boolean"),
    };
  };
}

/** Works a formula; undefined when one of its inputs has a fault. */
export function work(formula: AnyFormula, look: Look): Value | undefined {
  try {
    return formula.of(look(formula.inputs));
  } catch (e) {
    if (e === BROKEN) return undefined;
    throw e;
  }
}
