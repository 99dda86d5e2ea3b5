import { signal } from "@preact/signals";
import type { PageFault } from "../../job.ts";
import { keysOf } from "./parts.ts";
import { besides, sentencesRead, values } from "./shown.ts";

// How the order is read, and how to get to a value in it.

export const READINGS = ["sentences", "table"] as const;
export type Reading = (typeof READINGS)[number];

export const reading = signal<Reading>("sentences");
/** Only rows with these words are shown in the table. */
export const sought = signal("");
/** Whether the order's own text is shown. */
export const textOpen = signal(false);

export const valueId = (key: string): string => `value-${key}`;
export const noteId = (key: string): string => `note-${key}`;
export const TEXT_ID = "order-text";

/** A signal's change is on the page a frame later; on a busy one some more. */
const FRAMES = 30;

/** Does something with an element as soon as it is on the page. */
function whenThere(id: string, act: (element: HTMLElement) => void, frames = FRAMES): void {
  const element = document.getElementById(id);
  if (element) act(element);
  else if (frames > 0) requestAnimationFrame(() => whenThere(id, act, frames - 1));
}

const inSentences = (key: string): boolean =>
  sentencesRead.value.some((s) => keysOf(s).includes(key)) || besides.value.some((v) => v.field.key === key);

/** Leads to a value: into its field, in the table where no sentence tells of it. */
export function goTo(key: string): void {
  if (!values.value.has(key)) return;
  if (reading.value === "sentences" && !inSentences(key)) reading.value = "table";
  sought.value = "";
  whenThere(valueId(key), (element) => {
    element.focus({ preventScroll: true });
    element.scrollIntoView({ block: "center" });
  });
}

/** Leads to a line of the order's text. */
export function goToLine(place: PageFault["place"]): void {
  textOpen.value = true;
  whenThere(TEXT_ID, (element) => {
    if (!(element instanceof HTMLTextAreaElement)) return;
    element.focus();
    if (!place) return;
    const lines = element.value.split("\n");
    const from = lines.slice(0, place.line - 1).reduce((sum, line) => sum + line.length + 1, 0);
    element.setSelectionRange(from, from + (lines[place.line - 1] ?? "").length);
  });
}

/** Steps from a value into the note about it; says whether there is one. */
export function stepIntoNote(key: string): boolean {
  const note = document.getElementById(noteId(key));
  note?.focus();
  return note !== null;
}
