import type { TextPlace } from "../model/finding.ts";
import { readTree } from "./tree.ts";

/** Where the value of that path stands in an order's text, e.g. "die.revision"; undefined when it isn't given. */
export function placeOf(text: string, path: string): TextPlace | undefined {
  let entries = readTree(text).entries;
  let place: TextPlace | undefined;
  for (const name of path.split(".")) {
    const entry = entries?.find(({ key }) => key === name);
    if (!entry) return undefined;
    place = entry.place;
    entries = entry.value.kind === "map" ? entry.value.entries : undefined;
  }
  return place;
}
