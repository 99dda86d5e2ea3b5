import type { AssemblyStep } from "../model/article.ts";

/** True when `first` must come before `then`: it is named so, or needs a place that `then` shuts. */
const mustPrecede = (first: AssemblyStep, then: AssemblyStep): boolean =>
  then.after.includes(first.name) || first.reaches.some((place) => then.shuts.includes(place));

/**
 * The steps in an order in which each can be done: after what it names, and before anything shuts a place it
 * must reach. Where that leaves a choice the given order is kept. Steps that wait for one another in a
 * circle come last, as given; the rule "assembly-order" reports them.
 */
export function inOrder(steps: readonly AssemblyStep[]): AssemblyStep[] {
  const done: AssemblyStep[] = [];
  let left = [...steps];
  while (left.length > 0) {
    const next = left.find((s) => left.every((other) => other === s || !mustPrecede(other, s)));
    if (!next) return [...done, ...left];
    done.push(next);
    left = left.filter((s) => s !== next);
  }
  return done;
}
