import { section } from "../../src/articles/definition.ts";
import type { DimensionTable, Value, Values } from "../../src/model/dimension.ts";
import { type Resolution, resolve } from "../../src/model/resolve.ts";
import { anyOrder } from "./anyOrder.ts";

// One table resolved by itself, from given texts or from any values within its bounds.

type Handed = Readonly<Record<string, Value>>;

export const resolved = <T extends DimensionTable>(
  table: T,
  texts: Readonly<Record<string, string>>,
  handed: Handed,
): Resolution<T> =>
  resolve({
    table,
    section: "any",
    label: "any",
    given: Object.fromEntries(
      Object.entries(texts).map(([k, text]) => [k, { text, place: { line: 1, column: 1 } }]),
    ),
    handed,
    units: "mm",
    file: "any.yaml",
  });

/** The values of a table; throws with the first fault. */
export function valuesOf<T extends DimensionTable>(
  table: T,
  texts: Readonly<Record<string, string>>,
  handed: Handed,
): Values<T> {
  const { values, faults } = resolved(table, texts, handed);
  if (!values) throw new Error(`${faults[0]?.key}: ${faults[0]?.problem} ${faults[0]?.allowed}`);
  return values;
}

/** Any values within the table's bounds; undefined where the bounds leave none. */
export function anyValues<T extends DimensionTable>(
  table: T,
  handed: Handed,
  random: () => number,
): Values<T> | undefined {
  const only = section({ path: "any", label: "any", title: "any", table, handOver: () => handed });
  const order = anyOrder(
    {
      name: "any",
      slug: "any",
      means: "any",
      sections: [only],
      make: () => {
        throw new Error("not made");
      },
      measuring: [],
      sample: {},
      told: { sentences: [], rest: [] },
    },
    random,
  );
  const texts = Object.fromEntries(Object.entries(order.given).map(([k, v]) => [k.slice("any.".length), v]));
  return resolved(table, texts, handed).values;
}
