import { signal } from "@preact/signals";
import { dropStep, endStep, looked, say, setUnits, setValue } from "../actions.ts";
import { values } from "./shown.ts";

// What stands in a field while it is typed in, and until the order shows it: nothing typed is ever lost.

export type Draft = {
  readonly text: string;
  /** Still being typed: what is half said is not yet called wrong. */
  readonly typing: boolean;
  /** Why it can't be written into the order at all. */
  readonly problem?: string;
};

/** The key of the order's units. */
export const UNITS = "units";

export const drafts = signal<ReadonlyMap<string, Draft>>(new Map());

/** A pause this long ends a thought, ms. */
const PAUSE = 700;
let pausing: ReturnType<typeof setTimeout> | undefined;

function keep(key: string, draft: Draft | undefined): void {
  const next = new Map(drafts.value);
  if (draft) next.set(key, draft);
  else next.delete(key);
  drafts.value = next;
}

function pauseAfter(key: string): void {
  clearTimeout(pausing);
  pausing = setTimeout(() => {
    const now = drafts.value.get(key);
    if (now?.typing) keep(key, { ...now, typing: false });
  }, PAUSE);
}

type Units = Parameters<typeof setUnits>[0];

/** The units are switched, not just written: no value changes by it. */
const isUnits = (key: string, text: string | undefined): text is Units => key === UNITS && text !== undefined;

/** Writes a draft into the order; it stays in the field until the order shows it. */
async function write(key: string, text: string | undefined): Promise<void> {
  const said = await (isUnits(key, text) ? setUnits(text) : setValue(key, text));
  const now = drafts.value.get(key);
  if (now && now.text.trim() === (text ?? ""))
    keep(key, said.ok ? { text: now.text, typing: now.typing } : { ...now, problem: said.message });
  else if (!now && !said.ok) say(said.message);
}

/** A field was typed in. An emptied one waits until it is left: more may follow. */
export function typed(key: string, text: string): void {
  const was = drafts.value.get(key);
  keep(key, { ...was, text, typing: true });
  pauseAfter(key);
  const trimmed = text.trim();
  if (trimmed !== "" && trimmed !== was?.text.trim()) void write(key, trimmed);
}

/** A field is left, or Enter was pressed. */
export async function committed(key: string): Promise<void> {
  const draft = drafts.value.get(key);
  if (!draft) return;
  keep(key, { ...draft, typing: false });
  if (draft.text.trim() === "") await write(key, undefined);
  await endStep();
  await looked();
  const now = drafts.value.get(key);
  if (now && !now.typing && now.problem === undefined) keep(key, undefined);
}

/** A choice was made: at once, and undone by itself. Undefined takes it out. */
export async function chosen(key: string, text: string | undefined): Promise<void> {
  keep(key, text === undefined ? undefined : { text, typing: false });
  await endStep();
  await write(key, text);
  await committed(key);
  await endStep();
}

/** Escape: the field is as it was when it was entered. */
export async function restored(key: string): Promise<void> {
  if (!drafts.value.has(key)) return;
  keep(key, undefined);
  await dropStep(key);
}

/** Undo, redo and another order do away with what could not be written. */
export function forgetDrafts(): void {
  clearTimeout(pausing);
  if (drafts.value.size > 0) drafts.value = new Map();
}

/** Whether a field's faults are told: not in the middle of a word. */
export const faultsTold = (key: string): readonly string[] => {
  const draft = drafts.value.get(key);
  if (draft?.typing) return [];
  if (draft?.problem !== undefined) return [draft.problem];
  return values.value.get(key)?.faults ?? [];
};
