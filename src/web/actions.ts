import { batch } from "@preact/signals";
import type { Finding, PageAnswer, PageView } from "../job.ts";
import { engine } from "./engine/client.ts";
import type { Said } from "./engine/engine.ts";
import {
  dropped,
  ended,
  type History,
  NO_STEPS,
  redone,
  type Steps,
  stepped,
  undone,
  type Went,
} from "./history.ts";
import { movedSizes } from "./moves.ts";
import { save } from "./saving.ts";
import {
  answer,
  canRedo,
  canUndo,
  moved,
  notice,
  type OpenOrder,
  order,
  type Picked,
  picked,
  shownPiece,
  view,
  type Way,
  way,
} from "./state.ts";

// All that a person can do to the page. Only this file writes the signals of state.ts.

/** A saved order as it is opened again: it keeps its place on the device, and its history. */
export type Kept = { readonly id: string; readonly history: History };

let steps: Steps = NO_STEPS;
/** The view when the running step began: what moved is told against it, not against half a number. */
let stepBegan: PageView | undefined;
/** Changes are made one after another, each to the text that the one before left. */
let turn: Promise<unknown> = Promise.resolve();

function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const mine = turn.then(work);
  turn = mine.catch(() => undefined);
  return mine;
}

function keepSteps(next: Steps): void {
  steps = next;
  canUndo.value = next.past.length > 0;
  canRedo.value = next.future.length > 0;
}

/** Puts an order and its history on the bench, looks at it and saves it. */
function put(next: OpenOrder, history: Steps): Promise<void> {
  batch(() => {
    order.value = next;
    keepSteps(history);
  });
  void save(next, history);
  looking = look();
  return looking;
}

let looking: Promise<void> = Promise.resolve();

/** Resolves when the order as it stands has been looked at. */
export async function looked(): Promise<void> {
  let seen: Promise<void> | undefined;
  while (seen !== looking) {
    seen = looking;
    await seen;
  }
}

/** Looks at the order as it stands; a later look overtakes this one. */
async function look(): Promise<void> {
  const asked = order.value;
  if (!asked) return;
  try {
    const got = await engine.look(asked.text, asked.file, asked.shop);
    if (!got || order.value?.id !== asked.id) return;
    show(got);
    if (got.ok) void lookCloser(asked, got.view.findings);
  } catch (e) {
    notice.value = e instanceof Error ? e.message : String(e);
  }
}

function show(got: PageAnswer): void {
  batch(() => {
    if (!got.ok) {
      answer.value = got;
      return;
    }
    const old = view.value?.slug === got.view.slug ? view.value : undefined;
    // What the checks found before stands until they have looked again: notes that come and go are no help.
    const next = { ...got.view, findings: old?.findings ?? got.view.findings };
    answer.value = { ok: true, view: next };
    view.value = next;
    moved.value = stepBegan ? movedSizes(stepBegan, next) : [];
    stepBegan ??= next;
    if (!next.pieces.some((p) => p.id === shownPiece.value)) shownPiece.value = undefined;
  });
}

/** What the checks find takes longer than a keystroke; where they can't look, what is known at once stands. */
async function lookCloser(asked: OpenOrder, known: readonly Finding[]): Promise<void> {
  const said = await engine.findings(asked.text, asked.file, asked.shop);
  const now = view.value;
  if (order.value !== asked || !now) return;
  const findings = said.ok ? said.value : known;
  batch(() => {
    if (picked.value?.what === "finding")
      picked.value = foundAgain(now.findings[picked.value.index], findings);
    const next = { ...now, findings };
    if (answer.value?.ok) answer.value = { ok: true, view: next };
    view.value = next;
  });
}

function foundAgain(old: Finding | undefined, findings: readonly Finding[]): Picked | undefined {
  const index = findings.findIndex(
    (f) => f.rule === old?.rule && f.piece === old.piece && f.place === old.place,
  );
  return index < 0 ? undefined : { what: "finding", index };
}

/** Opens an order: a new one, or one that the device kept. */
export function openOrder(file: string, text: string, shop?: string, kept?: Kept): Promise<void> {
  batch(() => {
    answer.value = undefined;
    view.value = undefined;
    picked.value = undefined;
    shownPiece.value = undefined;
    moved.value = [];
    way.value = "flat";
  });
  stepBegan = undefined;
  const id = kept?.id ?? crypto.randomUUID();
  return put({ id, file, text, ...(shop === undefined ? {} : { shop }) }, kept?.history ?? NO_STEPS);
}

/** Back to the first page; the order stays on the device. */
export function closeOrder(): void {
  batch(() => {
    order.value = undefined;
    answer.value = undefined;
    view.value = undefined;
    picked.value = undefined;
    shownPiece.value = undefined;
    moved.value = [];
    notice.value = "";
    keepSteps(NO_STEPS);
  });
}

const NO_ORDER: Said<string> = { ok: false, message: "There is no order open." };

type Edit = { readonly key: string; text: string | undefined; readonly done: Promise<Said<string>> };
let waitingEdit: Edit | undefined;

/**
 * Sets one value, or takes it out: everything else in the text stays. Answers with the order's text, or why
 * the value can't be written; the order is then as it was. Typing in one field is one step of undo.
 */
export function setValue(key: string, text: string | undefined): Promise<Said<string>> {
  // What is typed faster than it can be written only counts as it ends.
  if (waitingEdit?.key === key) {
    waitingEdit.text = text;
    return waitingEdit.done;
  }
  const edit: Edit = {
    key,
    text,
    done: inTurn(() => {
      if (waitingEdit === edit) waitingEdit = undefined;
      return makeEdit(key, (from) => engine.edit(from, key, edit.text));
    }),
  };
  waitingEdit = edit;
  return edit.done;
}

/** Changes the text by an answer of the engine; where the text moved on meanwhile, it is asked again. */
async function makeEdit(step: string, ask: (from: string) => Promise<Said<string>>): Promise<Said<string>> {
  for (;;) {
    const from = order.value;
    if (!from) return NO_ORDER;
    const said = await ask(from.text);
    if (order.value?.id !== from.id) return NO_ORDER;
    if (order.value.text !== from.text) continue;
    if (said.ok && said.value !== from.text) changeTo(said.value, step);
    return said;
  }
}

function changeTo(text: string, step: string): void {
  const now = order.value;
  if (!now || now.text === text) return;
  if (steps.step !== step) stepBegan = view.value;
  void put({ ...now, text }, stepped(steps, now.text, step));
}

/** Reads and writes the order in other units; no value changes. */
export function setUnits(units: PageView["units"]): Promise<Said<string>> {
  return inTurn(async () => {
    keepSteps(ended(steps));
    const said = await makeEdit("units", (from) => engine.units(from, units));
    keepSteps(ended(steps));
    if (!said.ok) notice.value = said.message;
    return said;
  });
}

/** What a change to the text itself is called among the steps; no value is called so. */
const WHOLE_TEXT = "the text";

/** Replaces the order's whole text. Typing in it is one step of undo. */
export function setText(text: string): void {
  changeTo(text, WHOLE_TEXT);
}

/** A field or the text is left: what is typed next is undone by itself. */
export function endStep(): Promise<void> {
  return inTurn(async () => keepSteps(ended(steps)));
}

function go(to: (steps: Steps, now: string) => Went | undefined): Promise<void> {
  return inTurn(async () => {
    const now = order.value;
    const went = now && to(steps, now.text);
    if (!went) return;
    stepBegan = view.value;
    void put({ ...now, text: went.text }, went.steps);
  });
}

export const undo = (): Promise<void> => go(undone);
export const redo = (): Promise<void> => go(redone);
/** Takes back what was typed into a field since it was entered. */
export const dropStep = (key: string): Promise<void> => go((s) => dropped(s, key));

/** The shop file that prices are taken from; undefined: none. */
export function setShop(text: string | undefined): Promise<void> {
  const now = order.value;
  if (!now) return Promise.resolve();
  const { shop: _, ...rest } = now;
  return put(text === undefined ? rest : { ...rest, shop: text }, steps);
}

/** Points at something, so that both halves of the page mark it. */
export function pick(what: Picked | undefined): void {
  batch(() => {
    picked.value = what;
    const piece = what && "piece" in what ? what.piece : "";
    // A piece shown alone makes room for the one that is pointed at.
    if (piece !== "" && shownPiece.value !== undefined) shownPiece.value = piece;
  });
}

export function showWay(next: Way): void {
  way.value = next;
}

/** Shows one piece alone; undefined shows all. */
export function showPiece(id: string | undefined): void {
  shownPiece.value = id;
}

/** What moved has been seen. */
export function forgetMoved(): void {
  moved.value = [];
}

/** Says something at the foot of the page, and aloud to a screen reader. */
export function say(text: string): void {
  notice.value = text;
}
