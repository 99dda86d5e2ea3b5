import { type Entry, under } from "../order/entry.ts";
import type { Tree } from "../order/tree.ts";

/** Every value that stands in an order's text, by key; of one that can't be read, its line from there on. */
export function textsIn(tree: Tree, text: string): Readonly<Record<string, string>> {
  const lines = text.split(/\r?\n/);
  const found = new Map<string, string>();
  const visit = (entries: readonly Entry[], path: string): void => {
    for (const { key, value, place } of entries) {
      const own = under(path, key);
      if (value.kind === "map") visit(value.entries, own);
      else if (value.kind === "text") found.set(own, value.text);
      else if (value.kind === "empty") found.set(own, "");
      else
        found.set(own, (lines[place.line - 1] ?? "").slice(place.column - 1, place.column + LONGEST_SHOWN));
    }
  };
  visit(tree.entries ?? [], "");
  return Object.fromEntries(found);
}

/** As much as is shown of a value that can't be read. */
const LONGEST_SHOWN = 400;
