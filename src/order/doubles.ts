import type { Fault } from "../model/finding.ts";
import { type Entry, type EntryValue, FAULTY, under } from "./entry.ts";

/** A name may stand once. Doubled sections are read as one, of doubled values none is believed. */
export function withoutDoubles(entries: readonly Entry[], path: string, faults: Fault[]): readonly Entry[] {
  const byKey = new Map<string, Entry>();
  for (const entry of entries) {
    const first = byKey.get(entry.key);
    if (!first) {
      byKey.set(entry.key, entry);
      continue;
    }
    const key = under(path, entry.key);
    faults.push({
      code: "twice",
      key,
      place: entry.keyPlace,
      problem: `it stands here a second time; the first is on line ${first.keyPlace.line}`,
      mend: first.value.kind === "map" ? "put the lines under the first one" : "take one of them out",
    });
    byKey.set(entry.key, { ...first, value: joined(first.value, entry.value, key, faults) });
  }
  return [...byKey.values()];
}

function joined(a: EntryValue, b: EntryValue, path: string, faults: Fault[]): EntryValue {
  if (a.kind !== "map" || b.kind !== "map") return FAULTY;
  return { kind: "map", entries: withoutDoubles([...a.entries, ...b.entries], path, faults) };
}
