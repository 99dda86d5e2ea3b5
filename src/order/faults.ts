import type { Fault } from "../model/finding.ts";

/** More faults than this are of no use to anybody: the file is no order. */
export const MOST_FAULTS = 60;

/**
 * Exit status of an order with faults: 1 when it was read and its values contradict each other, 2 when
 * anything in it was not understood; 0 without faults.
 */
export function faultStatus(faults: readonly Fault[]): 0 | 1 | 2 {
  if (faults.length === 0) return 0;
  return faults.every((f) => f.code === "contradiction") ? 1 : 2;
}

const LAST = Number.POSITIVE_INFINITY;

/** In the order of the file; what has no place comes last. */
function byPlace(a: Fault, b: Fault): number {
  const [lineA, lineB] = [a.place?.line ?? LAST, b.place?.line ?? LAST];
  if (lineA !== lineB) return lineA - lineB;
  return (a.place?.column ?? 0) - (b.place?.column ?? 0);
}

/** All the faults of a file in reading order, the first of them when there are too many. */
export function together(faults: readonly Fault[]): readonly Fault[] {
  const sorted = [...faults].sort(byPlace);
  if (sorted.length <= MOST_FAULTS) return sorted;
  const rest = sorted.length - MOST_FAULTS;
  const place = sorted[MOST_FAULTS]?.place;
  const more: Fault = {
    code: "more-faults",
    key: "",
    ...(place ? { place } : {}),
    problem: `there are ${rest} more faults from here on`,
    mend: "mend these first, then check again",
  };
  return [...sorted.slice(0, MOST_FAULTS), more];
}
