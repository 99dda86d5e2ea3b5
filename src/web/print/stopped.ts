import { computed, type ReadonlySignal } from "@preact/signals";
import { answer, view } from "../state.ts";

// An error stops the printing, not the looking.

/** Why the order can't even be read; "" where it can. */
export const unread: ReadonlySignal<string> = computed(() => {
  const now = answer.value;
  if (!now) return "The order is being read.";
  return now.ok
    ? ""
    : "Something in the order is not right; the foreman’s notes at its foot say what. It prints again once that is mended.";
});

/** Why nothing may be cut by this order; "" where it may. */
export const stopped: ReadonlySignal<string> = computed(() => {
  if (unread.value !== "") return unread.value;
  const errors = view.value?.findings.filter((f) => f.severity === "error").length ?? 0;
  if (errors === 0) return "";
  const things = errors === 1 ? "One thing" : `${errors} things`;
  return `${things} in this order must not be cut; the foreman’s notes at its foot say what. An error stops the printing, not the looking.`;
});
