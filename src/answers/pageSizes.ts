import { remembered } from "../geometry/remember.ts";
import type { Made } from "../model/article.ts";
import { behind, stepOf } from "../model/derivation.ts";
import { sayStep } from "../model/explain.ts";
import type { Quantity } from "../model/quantity.ts";
import { sayValue, type Units } from "../model/say.ts";
import type { PageSize } from "./pageData.ts";
import type { History } from "./pageHistory.ts";

/** How sizes of one order are told; a step that many sizes share is put into words once. */
export type Telling = {
  readonly history: History;
  readonly units: Units;
  readonly step: (q: Quantity) => readonly string[];
};

export const telling = (history: History, units: Units): Telling => ({
  history,
  units,
  step: remembered((q: Quantity) => sayStep(stepOf(q), units)),
});

/** A size, where it came from, and how. */
export function pageSize(q: Quantity, { history, units, step }: Telling): PageSize {
  return {
    name: q.name ?? "",
    says: sayValue(q.value, q.kind, units),
    value: q.value,
    from: history.keysOf(q),
    chain: behind(q).flatMap(step),
  };
}

/** Names of the sizes, of the whole and of pieces, that move with each key. */
export function sizesByKey(made: Made, history: History): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, Set<string>>();
  for (const q of [...made.sizes, ...made.pieces.flatMap((p) => p.sizes)])
    for (const key of history.keysOf(q)) {
      const names = found.get(key) ?? new Set();
      names.add(q.name ?? "");
      found.set(key, names);
    }
  return new Map([...found].map(([key, names]) => [key, [...names]]));
}
