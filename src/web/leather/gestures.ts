import type { Point } from "./shapes.ts";

// Fingers, mouse and wheel on the drawing, as what they mean. Pixels of the frame.

export type Gestures = {
  readonly tap: (at: Point) => void;
  readonly drag: (by: Point) => void;
  /** True when something came of it: else the wheel is the page's. */
  readonly zoom: (factor: number, at: Point) => boolean;
};

/** A finger that moves less than this has not meant to drag, CSS px. */
const STILL_PX = 6;
/** One notch of a wheel, about 100 px, is a sixth larger or smaller. */
const WHEEL = 0.0016;
/** A wheel that counts in lines or pages, as CSS px. */
const WHEEL_UNITS = [1, 16, 400];

type Finger = { readonly at: Point; readonly from: Point };

/** Listens on `node`; gives back what ends the listening. */
export function listen(node: SVGElement, does: Gestures): () => void {
  const fingers = new Map<number, Finger>();
  let moved = false;
  const at = (e: MouseEvent): Point => {
    const box = node.getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const pinch = (before: Point, after: Point, other: Point): void => {
    const far = (p: Point): number => Math.max(1, Math.hypot(p[0] - other[0], p[1] - other[1]));
    does.zoom(far(after) / far(before), [(after[0] + other[0]) / 2, (after[1] + other[1]) / 2]);
    does.drag([(after[0] - before[0]) / 2, (after[1] - before[1]) / 2]);
  };
  const down = (e: PointerEvent): void => {
    if (e.pointerType === "mouse" && e.button !== 0) return;
    if (fingers.size === 0) moved = false;
    else moved = true;
    fingers.set(e.pointerId, { at: at(e), from: at(e) });
    node.setPointerCapture(e.pointerId);
  };
  const move = (e: PointerEvent): void => {
    const finger = fingers.get(e.pointerId);
    if (!finger) return;
    const here = at(e);
    moved ||= Math.hypot(here[0] - finger.from[0], here[1] - finger.from[1]) > STILL_PX;
    if (!moved) return;
    const other = [...fingers].find(([id]) => id !== e.pointerId)?.[1];
    if (other) pinch(finger.at, here, other.at);
    else does.drag([here[0] - finger.at[0], here[1] - finger.at[1]]);
    fingers.set(e.pointerId, { at: here, from: finger.from });
  };
  const up = (e: PointerEvent): void => {
    const finger = fingers.get(e.pointerId);
    fingers.delete(e.pointerId);
    if (finger && !moved && e.type === "pointerup") does.tap(at(e));
  };
  const wheel = (e: WheelEvent): void => {
    const by = e.deltaY * (WHEEL_UNITS[e.deltaMode] ?? 1);
    if (does.zoom(Math.exp(-by * WHEEL), at(e))) e.preventDefault();
  };
  const stop = new AbortController();
  const { signal } = stop;
  node.addEventListener("pointerdown", down, { signal });
  node.addEventListener("pointermove", move, { signal });
  node.addEventListener("pointerup", up, { signal });
  node.addEventListener("pointercancel", up, { signal });
  node.addEventListener("wheel", wheel, { signal, passive: false });
  return () => stop.abort();
}
