import { computed } from "@preact/signals";
import type { Field, PageFault, PageSize, PageView, Sentence } from "../../job.ts";
import { answer, type Picked, picked, view } from "../state.ts";
import { isRead, keysOf } from "./parts.ts";

// What the order pane shows: the last good view, with the values as they stand in a text that has faults.

/** A field with its value as it stands in the order's text, right or wrong. */
export type Shown = {
  readonly field: Field;
  readonly text: string;
  readonly given: boolean;
  readonly faults: readonly string[];
};

/** Fields, sentences and groups come from here: the last good view, unless the text names another article. */
export const current = computed((): PageView | undefined => {
  const got = answer.value;
  if (!got) return view.value;
  if (got.ok) return got.view;
  const good = view.value;
  return good && (got.view === undefined || got.view.slug === good.slug) ? good : got.view;
});

export const faults = computed((): readonly PageFault[] => {
  const got = answer.value;
  return got && !got.ok ? got.faults : [];
});

const NO_FAULTS: readonly string[] = [];

function shownOf(field: Field, texts: Readonly<Record<string, string>> | undefined): Shown {
  const own = faults.value.filter((f) => f.key === field.key).map((f) => f.says);
  const base = { field, faults: own.length === 0 ? NO_FAULTS : own };
  if (texts === undefined) return { ...base, text: field.text, given: field.given };
  const given = Object.hasOwn(texts, field.key);
  // Taken out since the last good view: what its default would be isn't known before the faults are mended.
  const silent = field.given ? "" : field.text;
  return { ...base, text: given ? texts[field.key]! : silent, given };
}

/** Every field by its key, as it stands. */
export const values = computed((): ReadonlyMap<string, Shown> => {
  const got = answer.value;
  const texts = got && !got.ok ? got.texts : undefined;
  const fields = current.value?.groups.flatMap((g) => g.fields) ?? [];
  return new Map(fields.map((field) => [field.key, shownOf(field, texts)]));
});

/** The sentences that are read aloud now. */
export const sentencesRead = computed((): readonly Sentence[] => {
  const textOf = (key: string): string | undefined => values.value.get(key)?.text;
  return (current.value?.sentences ?? []).filter((s) => isRead(s, textOf));
});

/** What is ordered is told by the heading and the first sentence. */
const ARTICLE = "article";

/** Values that were set, or are wrong, and that no sentence tells of: none may be hidden. */
export const besides = computed((): readonly Shown[] => {
  const told = new Set(sentencesRead.value.flatMap(keysOf));
  return [...values.value.values()].filter(
    ({ field: { key }, given, faults: wrong }) =>
      !told.has(key) && (wrong.length > 0 || (given && key !== ARTICLE)),
  );
});

/** The size that is pointed at; on a part, none. */
export const pickedSize = computed((): PageSize | undefined => {
  const what = picked.value;
  return what?.what === "size" ? sizeOf(what.piece, what.name) : undefined;
});

/** A size of a piece by the piece's id, "" for the whole. */
export function sizeOf(piece: string, name: string): PageSize | undefined {
  const now = current.value;
  const sizes = piece === "" ? now?.sizes : now?.pieces.find((p) => p.id === piece)?.sizes;
  return sizes?.find((s) => s.name === name);
}

/** Keys named in a text: what a finding's mend speaks of. */
export const keysNamedIn = (text: string): readonly string[] => {
  const words = new Set(text.split(/[^a-z0-9.-]+/).map((w) => w.replace(/[.]+$/, "")));
  return [...values.value.keys()].filter((key) => words.has(key));
};

/** The fields that a finding is about, the one to change first. */
export function keysOfFinding(index: number): readonly string[] {
  const finding = current.value?.findings[index];
  if (!finding) return [];
  const change = finding.change ? [finding.change.dimension] : [];
  const all = [...change, ...keysNamedIn(finding.mend), ...keysNamedIn(finding.place)];
  return [...new Set(all)].filter((key) => values.value.has(key));
}

function keysOfPicked(what: Picked | undefined): readonly string[] {
  if (what?.what === "size") return sizeOf(what.piece, what.name)?.from ?? [];
  if (what?.what === "part") return partOf(what.piece, what.id)?.from ?? [];
  if (what?.what === "finding") return keysOfFinding(what.index);
  return [];
}

/** What stands on a piece, with the values that made it where the engine knows them. */
export function partOf(piece: string, id: string): PartShown | undefined {
  return current.value?.pieces.find((p) => p.id === piece)?.parts.find((p) => p.id === id);
}

export type PartShown = {
  readonly id: string;
  readonly says: string;
  readonly from?: readonly string[];
  readonly chain?: readonly string[];
};

/** Keys of the fields that made what is pointed at: their sentences are marked. */
export const marked = computed((): ReadonlySet<string> => new Set(keysOfPicked(picked.value)));
