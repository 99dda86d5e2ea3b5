import type { Fault } from "../model/finding.ts";
import type { Tree } from "./tree.ts";

/**
 * Past the first line that yaml had to guess at, nothing is certain but that. Faults of what is missing
 * and of what contradicts itself look at the whole, so they wait as well.
 */
export function surely(fault: Fault, tree: Tree): boolean {
  if (tree.guessedFrom === Number.POSITIVE_INFINITY) return true;
  const whole = fault.code === "missing" || fault.code === "contradiction";
  return !whole && (fault.place?.line ?? 0) < tree.guessedFrom;
}
