import type { Fit, FitRow } from "../model/article.ts";
import { sizesFor } from "../trade/horseSizes.ts";
import type { Resolved } from "./definition.ts";
import { measures, overPollOf, straps } from "./headstallSections.ts";

/**
 * What must be added to a measure from bit ring to bit ring to compare it with published sizes, which were
 * taken from mouth corner to mouth corner; undefined when the bit's rise isn't known.
 */
function toMouthCorners(done: Resolved): number | undefined {
  const m = done.of(measures);
  if (m.rise) return 2 * m.rise.value;
  return m.measuredFrom === "mouth corner" ? 0 : undefined;
}

/** Which holes give which measure, from the shortest to the longest, and the sizes that suits. */
export function fitOf(done: Resolved): Fit {
  const s = done.of(straps);
  const both = s.buckles === "both cheeks";
  const wanted = overPollOf(done).value;
  const more = toMouthCorners(done);
  const m = (Math.round(s.holes.value) - 1) / 2;
  const p = s.pitch.value;
  const row = (steps: number): FitRow => {
    const measure = wanted + steps * p;
    // Hole 1 is nearest the tip: the loosest setting.
    const near = both ? m - Math.ceil(steps / 2) + 1 : m - steps + 1;
    const off = both ? m - Math.floor(steps / 2) + 1 : undefined;
    const sizes = more === undefined ? [] : sizesFor(measure + more);
    return { near, off, measure, even: !both || steps % 2 === 0, sizes };
  };
  const reach = both ? 2 * m : m;
  const rows = Array.from({ length: 2 * reach + 1 }, (_, i) => row(i - reach));
  return {
    name: "over the poll, bit ring to bit ring",
    wanted,
    shortest: wanted - reach * p,
    longest: wanted + reach * p,
    rows,
    ...(more === undefined
      ? {
          sizesNote:
            "Published sizes are taken from mouth corner to mouth corner: give measures.rise to compare.",
        }
      : {}),
  };
}
