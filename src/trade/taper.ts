import { minus, named, over, type Quantity } from "../model/quantity.ts";

// A strip that is wider at the base than at the top, or the other way: its edges lean over the straight sides.

/** The rise is found in so many rounds: each is nearer by the lean's square. */
const ROUNDS = 12;
/** No taper leans so far; bounds keep it well under. */
const STEEPEST_LEAN = 0.9;

export type Taper = {
  /** Between the bodies at the base and at the top. */
  readonly depth: Quantity;
  readonly topWidth: Quantity;
  /** The straight sides below the first stitch, and what lies above it. */
  readonly sideRun: Quantity;
  readonly seamStart: Quantity;
};

/**
 * How much lower the seam line lies at the top than over the base, mm: half the taper. A flange is measured
 * across the fold, which leans by θ: what the seam lies past the body's face stands out by past × (1/cos θ − 1)
 * more, which the rise makes up for. Without `past` (turned) it is half the taper.
 */
export function leaningRise(name: string, t: Taper, past: Quantity | undefined): Quantity {
  const half: Quantity = { ...over(minus(t.depth, t.topWidth), 2), kind: "length" };
  if (!past || half.value === 0) return named(name, half);
  const slope = t.sideRun.value + t.seamStart.value;
  let value = half.value;
  for (let i = 0; i < ROUNDS; i++) {
    const lean = Math.min(Math.abs(value) / slope, STEEPEST_LEAN);
    value = half.value - past.value * (1 / Math.sqrt(1 - lean ** 2) - 1);
  }
  const parts = [
    "half of ",
    t.depth,
    " − ",
    t.topWidth,
    ", less what ",
    past,
    " stands out where the fold leans over ",
    t.sideRun,
    " + ",
    t.seamStart,
  ];
  const inputs = [t.depth, t.topWidth, past, t.sideRun, t.seamStart];
  return named(name, { value, kind: "length", parts, inputs });
}
