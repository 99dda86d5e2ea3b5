import type { TextPlace } from "../model/finding.ts";

// An order's text as names and texts with their places: what is left of YAML when anchors, tags,
// lists and its own reading of numbers are gone.

export type EntryValue =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "map"; readonly entries: readonly Entry[] }
  | { readonly kind: "list" }
  | { readonly kind: "empty" }
  /** It has a fault that is told already. */
  | { readonly kind: "faulty" };

export const FAULTY: EntryValue = { kind: "faulty" };

export type Entry = {
  readonly key: string;
  readonly keyPlace: TextPlace;
  readonly value: EntryValue;
  /** Of the value; of the key when there is none. */
  readonly place: TextPlace;
};

/** The path of a name inside a section; the top level's path is "". */
export const under = (path: string, key: string): string => (path === "" ? key : `${path}.${key}`);
