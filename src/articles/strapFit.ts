import type { Fit } from "../model/article.ts";
import * as strap from "../pieces/strap.ts";

// Which hole of a strap gives which length.

/**
 * The lengths from the buckle's bar to each hole of a strap with a buckle at one end and a billet at the other, mm;
 * undefined for any other. From the cut length come off the turn-back, what the fold takes round the bar, and what
 * lies from the hole to the tip: so it holds however the ordered length was reckoned.
 */
export function strapFit(d: strap.StrapValues): Fit | undefined {
  const { left, right } = strap.strapEnds(d);
  const buckle = [left, right].find((e) => e.kind === "buckle");
  const billet = [left, right].some((e) => e.kind === "billet");
  if (buckle?.kind !== "buckle" || !billet) return undefined;
  const { end } = buckle;
  const toTip = strap.strapCut(d, { left, right }).value - end.length.value - end.takeUp.value;
  const holes = Math.round(d.holes.value);
  const measures = Array.from({ length: holes }, (_, i) => toTip - d.toTip.value - i * d.holePitch.value);
  const middle = Math.floor((holes - 1) / 2);
  return {
    name: "from the buckle's bar to the hole in use",
    // Of an even number the length ordered lies between two holes, and no row is marked.
    wanted: holes % 2 === 1 ? measures[middle]! : (measures[middle]! + measures[middle + 1]!) / 2,
    wantedIs: d.reckoned === "in use" ? "as ordered" : "as reckoned",
    shortest: measures.at(-1)!,
    longest: measures[0]!,
    rows: measures.map((measure, i) => ({ near: i + 1, off: undefined, measure, even: true, sizes: [] })),
    sizesNote: "measured along the strap, from the middle of the bar to the middle of the hole",
  };
}
