import { type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { PageAnswer, PageView } from "../job.ts";

// What the whole page looks at. Each part of the page reads these signals; only actions.ts writes them.

/** An order on the bench. */
export type OpenOrder = {
  /** Of the device's store; never shown. */
  readonly id: string;
  /** Its file's name, "juniper.yaml": files that come of it are named by it. */
  readonly file: string;
  readonly text: string;
  /** The text of the shop file it is priced by, where one was opened. */
  readonly shop?: string;
};

/** What is pointed at, so that both halves of the page can mark it. */
export type Picked =
  | { readonly what: "field"; readonly key: string }
  | { readonly what: "size"; readonly piece: string; readonly name: string }
  | { readonly what: "part"; readonly piece: string; readonly id: string }
  | { readonly what: "finding"; readonly index: number };

export const WAYS = ["flat", "folded", "on paper", "life size"] as const;
export type Way = (typeof WAYS)[number];

/** A size that a change moved: before → after, shown for a moment. */
export type Moved = {
  readonly piece: string;
  readonly name: string;
  readonly before: string;
  readonly after: string;
};

/** The order being worked on; undefined on the first page, where one is chosen. */
export const order: Signal<OpenOrder | undefined> = signal(undefined);
export const answer: Signal<PageAnswer | undefined> = signal(undefined);
/** The last good view: an order with a fault keeps showing it. */
export const view: Signal<PageView | undefined> = signal(undefined);
export const picked: Signal<Picked | undefined> = signal(undefined);
export const way: Signal<Way> = signal<Way>("flat");
/** The piece shown alone; undefined shows all. */
export const shownPiece: Signal<string | undefined> = signal(undefined);
export const moved: Signal<readonly Moved[]> = signal([]);
/** Said aloud to a screen reader, and shown at the foot: "saved", "can't be saved: …". */
export const notice: Signal<string> = signal("");
export const canUndo: Signal<boolean> = signal(false);
export const canRedo: Signal<boolean> = signal(false);

export type { ReadonlySignal };
