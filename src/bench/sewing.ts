import { pathLength } from "../geometry/length.ts";
import type { SeamLine } from "../model/piece.ts";

// Something that is sewn with two needles, and how its stitches are counted.

/** A stretch that is sewn without a break, and its back-stitches at both its ends together. */
export type Stretch = { readonly stitches: number; readonly backStitches: number };

export type LineName = { readonly piece: string; readonly line: string };

/** Something that is sewn, as often as it is for one article. Lengths mm. */
export type Sewing = {
  readonly name: string;
  /** The lines of stitches that it goes through, on all pieces. */
  readonly lines: readonly LineName[];
  readonly times: number;
  /** Of one time. */
  readonly stretches: readonly Stretch[];
  /** From hole to hole, on the side where that is longest; the mean of a seam's runs. */
  readonly pitch: number;
  /** Leather that the needle goes through, at the thickest. */
  readonly stack: number;
};

/** Stitches sewn back at each end where the order says nothing; common practice, no source. */
export const BACK_STITCHES = 2;

/** Length of the longest side of each run over all their stitches, mm. */
export function meanPitch(runs: readonly (readonly SeamLine[])[]): number {
  const length = runs.reduce((sum, sides) => sum + Math.max(0, ...sides.map((s) => pathLength(s.path))), 0);
  const stitches = runs.reduce((sum, sides) => sum + (sides[0]?.stitches ?? 0), 0);
  return stitches > 0 ? length / stitches : 0;
}

/** One text for a line, to find it by. */
export const keyOf = ({ piece, line }: LineName): string => JSON.stringify([piece, line]);
