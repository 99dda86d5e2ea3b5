import { quote } from "../units/quote.ts";
import { type DimensionTable, orderKey } from "./dimension.ts";
import type { Fault, TextPlace } from "./finding.ts";
import { nearestWord, oneOf } from "./words.ts";

type Given = Readonly<Record<string, { readonly place: TextPlace }>>;

export type Unknown = {
  readonly faults: readonly Fault[];
  /** Keys that were most likely meant: that they are missing is told already. */
  readonly meant: readonly string[];
};

/** Keys of a section that its table lacks, each with the one that was most likely meant. */
export function unknownKeys(table: DimensionTable, given: Given, path: (key: string) => string): Unknown {
  const names = Object.keys(table);
  const settable = names.filter((n) => !table[n]!.handed).map(orderKey);
  const handed = names.filter((n) => table[n]!.handed).map(orderKey);
  const unknown = Object.entries(given)
    .filter(([key]) => !settable.includes(key))
    .map(([key, { place }]) => ({
      key,
      place,
      near: handed.includes(key) ? undefined : nearestWord(key, settable),
    }));
  const faults = unknown.map(({ key, place, near }): Fault => {
    const follows = handed.includes(key);
    return {
      code: "unknown-key",
      key: path(key),
      place,
      problem: `${quote(key)} ${follows ? "follows from other parts of the order and can't be set here" : "is not known here"}`,
      ...(settable.length === 0 ? {} : { allowed: oneOf(settable) }),
      mend: mend(near, given),
    };
  });
  return { faults, meant: unknown.flatMap(({ near }) => near ?? []) };
}

function mend(near: string | undefined, given: Given): string {
  if (near === undefined) return "take the line out";
  return Object.hasOwn(given, near) ? `take the line out; ${near} is given already` : `write ${near}`;
}
