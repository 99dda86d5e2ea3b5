import { useLayoutEffect, useRef } from "preact/hooks";
import { picked } from "../state.ts";
import { MovedSizes } from "./MovedSizes.tsx";
import { Note } from "./Note.tsx";

/** Keeps the note level with what it is about, whatever grows or shrinks above; about nothing, it stays. */
function level(margin: HTMLElement, whole: HTMLElement): void {
  const noted = whole.querySelector(".noted");
  if (!noted) return;
  const down = noted.getBoundingClientRect().top - whole.getBoundingClientRect().top;
  margin.style.setProperty("--level", `${Math.round(down)}px`);
}

/**
 * Beside the order where there is room; under it, always in sight, where there is not: nothing that is read
 * or typed in jumps when a note comes or goes.
 */
export function Margin() {
  const at = useRef<HTMLDivElement>(null);
  const what = picked.value;
  useLayoutEffect(() => {
    const margin = at.current;
    const whole = margin?.parentElement;
    if (!margin || !whole) return undefined;
    level(margin, whole);
    const watch = new ResizeObserver(() => level(margin, whole));
    watch.observe(whole);
    return () => watch.disconnect();
  }, [what]);
  return (
    <div class="margin" ref={at}>
      <MovedSizes />
      <Note />
    </div>
  );
}
