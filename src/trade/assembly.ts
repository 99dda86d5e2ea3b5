import type { AssemblyStep } from "../model/article.ts";
import { dependOrder } from "./dependOrder.ts";

/** True when `first` must come before `then`: it is named so, or needs a place that `then` shuts. */
export const mustPrecede = (first: AssemblyStep, then: AssemblyStep): boolean =>
  then.after.includes(first.name) || first.reaches.some((place) => then.shuts.includes(place));

/**
 * The steps in an order in which each can be done: after what it names, and before anything shuts a place it
 * must reach. Where that leaves a choice the given order is kept. Steps that wait for one another in a
 * circle come last, as given; the rule "assembly-order" reports them.
 */
export function inOrder(steps: readonly AssemblyStep[]): AssemblyStep[] {
  const { done, left } = dependOrder(steps, mustPrecede);
  return [...done, ...left];
}
