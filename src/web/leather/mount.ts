import { effect } from "@preact/signals";
import { SVG, type Svg } from "@svgdotjs/svg.js";
import { moved, order, picked, view } from "../state.ts";
import { key, panBy, showPicked, tap, zoomBy } from "./deeds.ts";
import { draw } from "./draw.ts";
import { viewBox } from "./eye.ts";
import { listen } from "./gestures.ts";
import { watchGhosts } from "./ghosts.ts";
import { askForLabels } from "./labelling.ts";
import * as look from "./look.ts";
import { pointedAt } from "./marks.ts";
import { sayLength } from "./sayLength.ts";
import { lengthOf, sceneSpecs } from "./scene.ts";

// Ties the drawing to the page: signals in, elements out, at most once a frame.

/** What the drawing is called, and where the same stands in words. */
function drawingLabel(): string {
  const now = view.value;
  const pieces = look.shown.value.map(({ name }) => name).join(", ");
  const side = look.turned.value ? "flesh side, mirrored" : "grain side";
  return now
    ? `${now.article}: ${pieces}; ${side}. All sizes stand in the table of sizes below.`
    : "No pieces yet.";
}

function redraw(svg: Svg): void {
  const length = lengthOf(look.ends.value, look.shown.value);
  draw(
    svg,
    sceneSpecs({
      pieces: look.shown.value,
      shelves: look.shelves.value,
      turned: look.turned.value,
      labelsOf: look.labelsOf,
      marks: pointedAt(view.value, picked.value).marks,
      ends: look.ends.value,
      distance: length === undefined ? "" : sayLength(length, view.value?.units ?? "mm"),
      ghosts: look.ghosts.value,
      moved: moved.value,
      names: true,
    }),
  );
  svg.node.setAttribute("aria-label", drawingLabel());
}

/** The frame, and the size of a screen's pixel in it, for lines and words that keep their size. */
function lookAgain(svg: Svg): void {
  const [eye, frame] = [look.eyeNow.value, look.frame.value];
  if (frame.width === 0 || frame.height === 0) return;
  svg.attr("viewBox", viewBox(eye, frame));
  svg.node.style.setProperty("--px", `${1 / eye.scale}px`);
  // Shown whole, the drawing lets a finger scroll the page past it.
  svg.node.classList.toggle("whole", look.eye.value === undefined);
}

/** Runs `work` when its signals change, at most once a frame; a fault goes to the pane's own boundary. */
function eachFrame(work: () => void): () => void {
  const guarded = (): void => {
    try {
      work();
    } catch (fault) {
      look.trouble.value = fault;
    }
  };
  let asked: number | undefined;
  let stop: (() => void) | undefined;
  const start = (): void => {
    asked = undefined;
    stop?.();
    let first = true;
    stop = effect(() => {
      if (first) {
        first = false;
        guarded();
        return;
      }
      asked ??= requestAnimationFrame(start);
    });
  };
  start();
  return () => {
    stop?.();
    if (asked !== undefined) cancelAnimationFrame(asked);
  };
}

function watchFrame(host: HTMLElement): () => void {
  const measure = (): void => {
    const { clientWidth: width, clientHeight: height } = host;
    const before = look.frame.peek();
    if (width !== before.width || height !== before.height) look.frame.value = { width, height };
  };
  const watcher = new ResizeObserver(measure);
  watcher.observe(host);
  measure();
  return () => watcher.disconnect();
}

/** Another order, or another choice of pieces, is looked at as a whole. */
function watchShown(): () => void {
  let [id, alone] = [order.peek()?.id, look.alone.peek()?.id];
  return effect(() => {
    const [nextId, nextAlone] = [order.value?.id, look.alone.value?.id];
    if (id === nextId && alone === nextAlone) return;
    [id, alone] = [nextId, nextAlone];
    look.eye.value = undefined;
    look.ends.value = [];
  });
}

function watchPicked(): () => void {
  return effect(() => {
    if (picked.value) queueMicrotask(showPicked);
  });
}

/** Draws into `host` until the function it gives back is called. */
export function mount(host: HTMLElement, described: string): () => void {
  const svg = SVG().addTo(host);
  svg.attr({ role: "img", tabindex: "0", class: "drawing", "aria-describedby": described });
  svg.node.addEventListener("keydown", key);
  const ends = [
    watchFrame(host),
    watchShown(),
    watchGhosts(),
    askForLabels(),
    eachFrame(() => redraw(svg)),
    eachFrame(() => lookAgain(svg)),
    watchPicked(),
    listen(svg.node, { tap, drag: panBy, zoom: zoomBy }),
  ];
  return () => {
    for (const end of ends) end();
    svg.remove();
  };
}
