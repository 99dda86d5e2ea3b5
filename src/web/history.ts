/** The texts an order went through: what undo goes back to and redo forward. Newest last. */
export type History = {
  readonly past: readonly string[];
  readonly future: readonly string[];
};

/** A history on the bench: changes under the same step, one field's typing, are undone together. */
export type Steps = History & { readonly step?: string };

/** An order of the largest size allowed is some 100 kB: so many texts stay far below what a device keeps. */
const MOST_STEPS = 200;

export const NO_STEPS: Steps = { past: [], future: [] };

/** A change away from `before`, made under a step. */
export function stepped(steps: Steps, before: string, step: string): Steps {
  if (steps.step === step) return { past: steps.past, future: [], step };
  return { past: [...steps.past, before].slice(-MOST_STEPS), future: [], step };
}

/** The step is over: the next change is one of its own. */
export const ended = ({ past, future }: Steps): Steps => ({ past, future });

/** A text and the history that belongs to it. */
export type Went = { readonly text: string; readonly steps: Steps };

/** One step back from `now`; undefined where there is none. */
export function undone({ past, future }: Steps, now: string): Went | undefined {
  const text = past.at(-1);
  if (text === undefined) return undefined;
  return { text, steps: { past: past.slice(0, -1), future: [...future, now] } };
}

/** One step forward from `now`; undefined where there is none. */
export function redone({ past, future }: Steps, now: string): Went | undefined {
  const text = future.at(-1);
  if (text === undefined) return undefined;
  return { text, steps: { past: [...past, now], future: future.slice(0, -1) } };
}

/** The text as it was before the running step, which is forgotten; undefined when another step runs. */
export function dropped({ past, future, step }: Steps, asked: string): Went | undefined {
  const text = past.at(-1);
  if (step !== asked || text === undefined) return undefined;
  return { text, steps: { past: past.slice(0, -1), future } };
}
