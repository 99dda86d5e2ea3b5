import { batch, effect } from "@preact/signals";
import type { PagePicture } from "../../job.ts";
import { engine } from "../engine/client.ts";
import { type OpenOrder, order, view } from "../state.ts";
import { labelled, labelsOn, labelTrouble, shown } from "./look.ts";

/** Labels are asked for when the maker has paused this long. */
const PAUSE_MS = 400;

/** The labelled pictures of all these pieces; undefined when the order moved on meanwhile. */
async function pictures(now: OpenOrder, ids: readonly string[]): Promise<void> {
  const old = labelled.peek();
  const known = new Map(old?.text === now.text ? old.pictures : []);
  for (const id of ids) {
    if (known.has(id)) continue;
    const said = await engine.piece(now.text, now.file, id);
    if (order.peek()?.text !== now.text || !labelsOn.peek()) return;
    if (!said.ok) {
      labelTrouble.value = said.message;
      return;
    }
    known.set(id, said.value);
  }
  // All at once: each one that came would lay the pieces anew.
  keep(now.text, known);
}

function keep(text: string, known: ReadonlyMap<string, PagePicture>): void {
  batch(() => {
    labelTrouble.value = "";
    labelled.value = { text, pictures: known };
  });
}

const failed = (fault: unknown): void => {
  labelTrouble.value = fault instanceof Error ? fault.message : String(fault);
};

/** While labels are wanted, asks for those of the pieces shown, each time the order has rested. */
export function askForLabels(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    clearTimeout(timer);
    const now = order.value;
    const ids = shown.value.map(({ id }) => id);
    if (!labelsOn.value || !now || !view.value) return;
    timer = setTimeout(() => void pictures(now, ids).catch(failed), PAUSE_MS);
  });
  return () => {
    stop();
    clearTimeout(timer);
  };
}
