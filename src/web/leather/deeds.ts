import { batch } from "@preact/signals";
import { pick } from "../actions.ts";
import { picked, view } from "../state.ts";
import { pan, seeing, toMm, toPx, zoom } from "./eye.ts";
import {
  bounds,
  type End,
  ends,
  eye,
  eyeNow,
  fitted,
  frame,
  labelsOn,
  measuring,
  shelves,
  shown,
  turned,
} from "./look.ts";
import { pointedAt } from "./marks.ts";
import type { Point } from "./shapes.ts";
import { cellAt, onBench, onPiece, partAt, snapped } from "./touch.ts";

// What hands do to the drawing.

/** A finger's reach: half of a target of 44 px. */
const REACH_PX = 22;
/** A rule's end is laid more carefully than a finger points. */
const SNAP_PX = 12;

const middleOfFrame = (): Point => [frame.value.width / 2, frame.value.height / 2];

/** Larger or smaller about a pixel, the frame's middle unless said; true when it changed anything. */
export function zoomBy(factor: number, at: Point = middleOfFrame()): boolean {
  const before = eyeNow.value;
  const after = zoom(before, frame.value, factor, at, fitted.value.scale);
  if (after.scale === before.scale) return false;
  eye.value = after;
  return true;
}

/** The leather pulled by so many pixels. */
export function panBy(by: Point): void {
  eye.value = pan(eyeNow.value, by, bounds.value);
}

/** All of it in the frame again. */
export function fitAll(): void {
  eye.value = undefined;
}

/** One end of a length. A third one, or one on another piece, begins anew. */
export function addEnd(end: End): void {
  const [first, second] = ends.value;
  ends.value = !first || second || first.piece !== end.piece ? [end] : [first, end];
}

/** A touch picks the part under it, or measures from it; on bare leather it lets go. */
export function tap(px: Point): void {
  const point = toMm(eyeNow.value, frame.value, px);
  const reach = REACH_PX / eyeNow.value.scale;
  const cell = cellAt(shelves.value.cells, turned.value, point, reach);
  const piece = shown.value.find(({ id }) => id === cell?.id);
  if (!cell || !piece) {
    if (!measuring.value) pick(undefined);
    return;
  }
  const here = onPiece(cell, turned.value, point);
  if (measuring.value) {
    addEnd({ piece: piece.id, at: snapped(piece, here, SNAP_PX / eyeNow.value.scale) });
    return;
  }
  const part = partAt(piece, here, reach);
  pick(part ? { what: "part", piece: piece.id, id: part.id } : undefined);
}

/** A part chosen from the list: picked, or taken as an end when measuring. */
export function choosePart(piece: string, id: string): void {
  const part = shown.value.find((p) => p.id === piece)?.parts.find((p) => p.id === id);
  if (measuring.value && part) addEnd({ piece, at: part.at });
  else pick({ what: "part", piece, id });
}

export function toggleMeasuring(): void {
  batch(() => {
    measuring.value = !measuring.value;
    ends.value = [];
  });
}

export function turnOver(): void {
  turned.value = !turned.value;
}

export function toggleLabels(): void {
  labelsOn.value = !labelsOn.value;
}

/** Brings what is picked into sight, when none of it is. */
export function showPicked(): void {
  const points = pointedAt(view.peek(), picked.peek()).marks.flatMap((mark): readonly Point[] => {
    const cell = shelves.peek().cells.find((c) => c.id === mark.piece);
    if (!cell) return [];
    const { minX, maxX, minY, maxY } = cell.box;
    return [onBench(cell, turned.peek(), mark.ring ?? [(minX + maxX) / 2, (minY + maxY) / 2])];
  });
  const [first] = points;
  const { width, height } = frame.peek();
  if (!first || width === 0) return;
  const seen = points.some((p) => {
    const [x, y] = toPx(eyeNow.peek(), frame.peek(), p);
    return x >= 0 && y >= 0 && x <= width && y <= height;
  });
  const next = seen && points.length > 1 ? eyeNow.peek() : seeing(eyeNow.peek(), frame.peek(), first);
  if (next !== eyeNow.peek()) eye.value = next;
}

/** An arrow key's pull, CSS px. */
const STEP_PX = 60;
/** One press of larger or smaller. */
export const ZOOM_STEP = 1.25;

const KEYS: Readonly<Record<string, () => unknown>> = {
  "+": () => zoomBy(ZOOM_STEP),
  "=": () => zoomBy(ZOOM_STEP),
  "-": () => zoomBy(1 / ZOOM_STEP),
  "0": fitAll,
  ArrowLeft: () => panBy([STEP_PX, 0]),
  ArrowRight: () => panBy([-STEP_PX, 0]),
  ArrowUp: () => panBy([0, STEP_PX]),
  ArrowDown: () => panBy([0, -STEP_PX]),
  Escape: () => pick(undefined),
};

/** What a key does while the drawing has the focus. */
export function key(e: KeyboardEvent): void {
  const deed = KEYS[e.key];
  if (!deed || e.ctrlKey || e.metaKey || e.altKey) return;
  e.preventDefault();
  deed();
}
