import { spreadStitches } from "./seam.ts";

/** The last stitches before a corner may share out a left-over, at most this share of the pitch each. */
const MOST_SHARED = 0.1;
const SLACK = 1e-9;

/** How the stitches of a run lie: `shares` are the places of its n + 1 holes as shares of its length, 0 to 1. */
export type Spacing = {
  readonly stitches: number;
  readonly shares: readonly number[];
  /** The pitch of most of its stitches as a share of the run's length. */
  readonly pitchShare: number;
  /** Iron: what the run is longer than whole pitches, mm, negative when it is shorter, and over how many stitches that is shared. */
  readonly leftOver?: { readonly mm: number; readonly over: number };
};

/** Stitches of one length: the whole number whose pitch is nearest to the one asked. Lengths mm. */
export function spreadSpacing(length: number, asked: number): Spacing {
  return evenSpacing(spreadStitches(length, asked));
}

const evenSpacing = (stitches: number): Spacing => ({
  stitches,
  shares: Array.from({ length: stitches + 1 }, (_, k) => k / stitches),
  pitchShare: 1 / stitches,
});

/** Stitches nearer than this share of what was asked crowd; to spare them a mate's may lie this much further apart. */
const CROWDED = 0.5;
const FURTHER = 1.25;

/**
 * Stitches of a run that is bent when it is joined, where one side is longer than the other: the longer
 * side's pitch is nearest to the one asked, unless the shorter side's stitches would crowd; then there are
 * fewer, up to a quarter further apart on the longer side. Common practice, no source. Lengths mm.
 */
export function bentSpacing(longest: number, shortest: number, asked: number): Spacing {
  const most = Math.floor(shortest / (CROWDED * asked) + SLACK);
  const least = Math.ceil(longest / (FURTHER * asked) - SLACK);
  const stitches = Math.min(spreadStitches(longest, asked), Math.max(1, most, least));
  return evenSpacing(stitches);
}

/**
 * Stitches as an iron pricks them: its pitch from the start on, the left-over shared over as many of the
 * last stitches as keep it to 10 % each. A run too short for that is spread evenly. Lengths mm.
 */
export function ironSpacing(length: number, pitch: number): Spacing {
  const even = spreadSpacing(length, pitch);
  const n = even.stitches;
  const mm = length - n * pitch;
  const over = Math.ceil(Math.abs(mm) / (MOST_SHARED * pitch) - SLACK);
  if (over > n) return { ...even, leftOver: { mm, over: n } };
  const at = (k: number): number => k * pitch + (over === 0 ? 0 : (Math.max(0, k - (n - over)) * mm) / over);
  const shares = Array.from({ length: n + 1 }, (_, k) => (k === n ? 1 : at(k) / length));
  return { stitches: n, shares, pitchShare: pitch / length, leftOver: { mm, over } };
}
