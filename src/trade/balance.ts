import { greatest, minus, named, over, type Quantity, roundedNear, sum, times } from "../model/quantity.ts";

// The balance of a headstall: what lies between the two bit rings, over the poll. See the words of
// the trade in docs: ring contact, bar centre, a hole in use.

const SOURCE = "balance of lengths round the head";

export type BothSides = {
  /** Ring contact to ring contact over the poll. */
  readonly overPoll: Quantity;
  /** Ring contact to bar centre, near and off. */
  readonly cheek: Quantity;
  /** A hole in use lies this far from the bar's centre. */
  readonly holeOffset: Quantity;
  readonly holes: Quantity;
  readonly pitch: Quantity;
  readonly toTip: Quantity;
};

/** Middle hole to middle hole, mm: K₀ = M − 2C − 2o. */
export const effectiveCrown = (b: BothSides): Quantity =>
  named("crown between middle holes", minus(b.overPoll, times(2, b.cheek), times(2, b.holeOffset)), {
    source: SOURCE,
  });

/** Outermost hole to innermost: (n − 1) p. */
export const holeRow = (holes: Quantity, pitch: Quantity): Quantity =>
  named("row of holes", times(minus(holes, 1), pitch), { kind: "length" });

/** Crown's cut length with a buckle on both cheeks: K₀ + (n − 1) p + 2 x_tip. */
export const crownCutBothSides = (effective: Quantity, row: Quantity, toTip: Quantity): Quantity =>
  named("crown cut length", sum(effective, row, times(2, toTip)), { source: SOURCE });

/** Crown and off cheek in one strap: bar's centre to ring's contact, M − C − o. */
export const effectiveOneSide = (overPoll: Quantity, cheek: Quantity, holeOffset: Quantity): Quantity =>
  named("crown from middle hole to off ring", minus(overPoll, cheek, holeOffset), { source: SOURCE });

/** First hole to tip, mm: past the last keeper by 10 and the point's length, and at least 3.3 widths. */
export function defaultToTip(keeperFar: Quantity, pointLength: Quantity, width: Quantity): Quantity {
  // 3.3: a first hole 5 in from the point of a 1 1/2 in strap (P. N. Hasluck, Harness Making, 1904, p. 51).
  return greatest(sum(keeperFar, 10, pointLength), times(3.3, width));
}

/** Makers cut cheeks to the eighth of an inch. */
const EIGHTH_MM = 25.4 / 8;

/**
 * Ring to buckle bar when the order doesn't say, mm: 0.24 of the measure over the poll; on small heads, whose
 * buckles and bits are not smaller in the same measure, 0.075 of it and 105. Common practice, no source.
 */
export const defaultCheek = (overPoll: Quantity): Quantity =>
  roundedNear(greatest(times(0.24, overPoll), sum(times(0.075, overPoll), 105)), EIGHTH_MM);

/** Hole pitch by the handbook: a little more than the strap's width, here the next 1/8 in over it. */
export function defaultPitch(width: Quantity): Quantity {
  const eighth = 25.4 / 8;
  const value = (Math.floor(width.value / eighth + 1e-6) + 1) * eighth;
  return { value, kind: "length", parts: ["the next 1/8 in over ", width], inputs: [width] };
}

/** Half the adjustment, mm: both sides (n − 1) p, one side (n − 1) p ÷ 2. */
export const adjustmentHalf = (row: Quantity, bothSides: boolean): Quantity =>
  named("adjustment each way", bothSides ? row : over(row, 2), { kind: "length" });
