import { effect } from "@preact/signals";
import { order, view } from "../state.ts";
import { pathData } from "./curves.ts";
import { ghosts } from "./look.ts";
import { outlineOf } from "./shapes.ts";

/** As long as the style sheet's fading, and a little. */
const MOMENT_MS = 1600;

const stillness = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

function outlines(): ReadonlyMap<string, string> {
  return new Map(
    (view.value?.pieces ?? []).flatMap((piece): readonly [string, string][] => {
      const outline = outlineOf(piece.lines);
      return outline ? [[piece.id, pathData(outline.path)]] : [];
    }),
  );
}

/** After a change, the outlines that it moved are shown for a moment as they were; not to those who want no motion. */
export function watchGhosts(): () => void {
  let before: ReadonlyMap<string, string> = new Map();
  let id: string | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const now = outlines();
    const was = [...before].filter(([piece, d]) => now.has(piece) && now.get(piece) !== d);
    const sameOrder = id === order.peek()?.id;
    before = now;
    id = order.peek()?.id;
    if (was.length === 0 || !sameOrder || stillness()) return;
    clearTimeout(timer);
    ghosts.value = new Map(was);
    timer = setTimeout(() => {
      ghosts.value = new Map();
    }, MOMENT_MS);
  });
  return () => {
    stop();
    clearTimeout(timer);
    ghosts.value = new Map();
  };
}
