import type { Entry } from "../order/entry.ts";
import { readTree } from "../order/tree.ts";

/** The text of the value at a path of an order, "measures.over-poll"; undefined when it isn't given. Never throws. */
export function valueAt(text: string, path: string): string | undefined {
  const names = path.split(".");
  let entries: readonly Entry[] | undefined = readTree(text).entries;
  for (const name of names.slice(0, -1)) {
    const value = entries?.find(({ key }) => key === name)?.value;
    entries = value?.kind === "map" ? value.entries : undefined;
  }
  const value = entries?.find(({ key }) => key === names.at(-1))?.value;
  return value?.kind === "text" ? value.text : undefined;
}
