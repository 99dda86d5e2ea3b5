import { computed, signal } from "@preact/signals";
import type { PagePicture, PagePiece } from "../../job.ts";
import { order, shownPiece, view } from "../state.ts";
import { type Eye, type Frame, fitTo } from "./eye.ts";
import { boxOnPiece } from "./labels.ts";
import type { Point } from "./shapes.ts";
import { type Laying, layShelves } from "./shelves.ts";

// How this half of the page looks at the leather: nothing of it is part of the order.

/** One end of a measured length, in a piece's own coordinates: it stays there when the piece is moved. */
export type End = { readonly piece: string; readonly at: Point };
/** Pieces with their labels, for one text of the order alone. */
export type Labelled = { readonly text: string; readonly pictures: ReadonlyMap<string, PagePicture> };

/** Undefined: everything shown fits the frame. */
export const eye = signal<Eye | undefined>(undefined);
export const frame = signal<Frame>({ width: 0, height: 0 });
/** True: the flesh side is seen. */
export const turned = signal(false);
export const labelsOn = signal(false);
export const labelled = signal<Labelled | undefined>(undefined);
/** Why the labels could not be had; "" when they could. */
export const labelTrouble = signal("");
export const measuring = signal(false);
export const ends = signal<readonly End[]>([]);
/** Outlines as they were before the last change, for a moment. */
export const ghosts = signal<ReadonlyMap<string, string>>(new Map());
/** A fault of ours outside Preact's rendering; the pane's own boundary shows it. */
export const trouble = signal<unknown>(undefined);

/** The piece shown alone; undefined when all are, also when the one asked for is gone. */
export const alone = computed(() => view.value?.pieces.find(({ id }) => id === shownPiece.value));

export const shown = computed((): readonly PagePiece[] => {
  const one = alone.value;
  return one ? [one] : (view.value?.pieces ?? []);
});

/** The labelled picture of a piece, while it is that of the order as it stands. */
export const labelsOf = (id: string): PagePicture | undefined =>
  labelsOn.value && labelled.value?.text === order.value?.text ? labelled.value?.pictures.get(id) : undefined;

/** A frame's size in steps, so that a bar that comes and goes does not lay all pieces anew; CSS px. */
const STEP_PX = 80;
const stepped = (px: number): number => Math.max(1, Math.round(px / STEP_PX)) * STEP_PX;
const steppedWidth = computed(() => stepped(frame.value.width));
const steppedHeight = computed(() => stepped(frame.value.height));

export const shelves = computed(() => {
  const list = shown.value.map((piece): Laying => {
    const picture = labelsOf(piece.id);
    const box = picture ? boxOnPiece(picture, piece) : piece.box;
    return { id: piece.id, box, letters: piece.name.length };
  });
  return layShelves(list, { width: steppedWidth.value, height: steppedHeight.value });
});

/** All that is shown: the names stand below its upper edge. */
export const bounds = computed(() => shelves.value.bounds);

export const fitted = computed(() => fitTo(bounds.value, frame.value));
export const eyeNow = computed(() => eye.value ?? fitted.value);
