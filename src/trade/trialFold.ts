import { named, type Quantity } from "../model/quantity.ts";
import { developRoundBar } from "./turnBack.ts";

// A trial fold measures where a leather's neutral fibre lies: two marks on a strip, folded round a bar and
// clamped so that they meet; the distance from the bar to the marks tells.

export type TrialFold = {
  readonly thickness: Quantity;
  /** Diameter of the bar it was folded round. */
  readonly bar: Quantity;
  /** Between the marks on the flat. */
  readonly marks: Quantity;
  /** From the bar's centre to the marks when they meet. */
  readonly clamp: Quantity;
};

/** Nobody's leather bends outside these. */
const LEAST = 0;
const MOST = 1;
const HALVINGS = 50;

/** How far apart two marks lie on the flat that meet at the clamp when the neutral fibre lies at k, mm; it grows with k. */
export function marksFor(t: Omit<TrialFold, "marks">, k: number): Quantity {
  const at: Quantity = { value: k, kind: "ratio", parts: [String(k)], inputs: [] };
  const legs = {
    label: "trial",
    neutral: at,
    front: t.thickness,
    back: t.thickness,
    wrap: t.thickness,
    caught: 0,
  };
  return developRoundBar(legs, t.bar, t.clamp).holeToMate;
}

/**
 * The neutral fibre that a trial fold shows, as a fraction of the thickness from the flesh side: solves
 * D(k) = L₀ by halving. Outside 0 to 1 the nearer end comes back, which the range of the dimension refuses.
 */
export function neutralFromTrial(t: TrialFold): Quantity {
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (marksFor(t, middle).value < t.marks.value) low = middle;
    else high = middle;
  }
  const { thickness, bar, marks, clamp } = t;
  const parts = [
    "the fibre that makes a fold of ",
    thickness,
    " round ",
    bar,
    ", held at ",
    clamp,
    ", ",
    marks,
    " long",
  ];
  return named(
    "neutral fibre by trial fold",
    { value: low, kind: "ratio", parts, inputs: [thickness, bar, clamp, marks] },
    { source: "a trial fold, solved", kind: "ratio" },
  );
}
