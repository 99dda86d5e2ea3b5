import {
  arcCosine,
  arcTangent,
  asLength,
  minus,
  named,
  type Operand,
  over,
  type Quantity,
  root,
  square,
  sum,
  times,
} from "../model/quantity.ts";

// A strap over the shoulder, or a handle over the hand: a taut line over a round, its two ends level and
// apart. Lengths run along the leather's neutral fibre.

const SOURCE = "taut line over a round: geometry";

export type OverRound = {
  /** What the steps' names begin with, e.g. "shoulder strap". */
  readonly label: string;
  /** Its two ends, from one to the other. */
  readonly apart: Quantity;
  /** From the top of the round down to the ends. */
  readonly drop: Quantity;
  /** Radius of the round it lies on. */
  readonly radius: Quantity;
  readonly thickness: Operand;
  /** Where the neutral fibre lies, as a fraction of the thickness from the flesh side. */
  readonly neutral: Operand;
};

/**
 * Length from end to end, mm: L = 2 √(c² + h² − r²) + r θ, with r = R + k t, c = y − R, h = A / 2 and
 * θ = 2π − 2 (atan2(h, c) + acos(r / √(c² + h²))). NaN where the ends lie inside the round.
 */
export function overRound(i: OverRound): Quantity {
  const { label } = i;
  const step = (name: string, q: Quantity, kind: "length" | "angle" = "length"): Quantity =>
    named(`${label} ${name}`, { ...q, kind }, { source: SOURCE, kind });
  const r = step("neutral radius", sum(i.radius, asLength(times(i.neutral, i.thickness))));
  const c = step("ends below the round's middle", minus(i.drop, i.radius));
  const h = step("half apart", over(i.apart, 2));
  const reach = step("ends from the round's middle", root(sum(square(c), square(h))));
  const straight = step("straight part", root(minus(square(reach), square(r))));
  const contact = step("contact angle", sum(arcTangent(h, c), arcCosine(over(r, reach))), "angle");
  const turn = step("angle on the round", minus(2 * Math.PI, times(2, contact)), "angle");
  return named(`${label} length`, asLength(sum(times(2, straight), asLength(times(r, turn)))), {
    source: SOURCE,
    kind: "length",
  });
}

/** A shoulder strap in two parts: from its ends to the buckle's bar, and to the billet's middle hole. */
export type StrapParts = { readonly buckle: Quantity; readonly billet: Quantity };

/**
 * Both parts of a strap `length` long. `buckle` is the buckle part's; a hole in use lies `holeOffset` beyond
 * the buckle's bar, so the billet part is that much shorter.
 */
export const strapParts = (
  label: string,
  length: Quantity,
  buckle: Quantity,
  holeOffset: Quantity,
): StrapParts => ({
  buckle,
  billet: named(`${label} end to the billet's middle hole`, minus(length, buckle, holeOffset), {
    source: "the rest of the length",
    kind: "length",
  }),
});

/** Shortest and longest setting of two parts that overlap by n holes, mm: L ± (n − 1) p / 2. */
export function strapRange(
  label: string,
  length: Quantity,
  holes: Quantity,
  pitch: Quantity,
): { readonly shortest: Quantity; readonly longest: Quantity } {
  const half = named(`${label} adjustment each way`, over(times(minus(holes, 1), pitch), 2), {
    source: "a row of holes, half of it each way",
    kind: "length",
  });
  return {
    shortest: named(`${label} shortest`, minus(length, half), { kind: "length" }),
    longest: named(`${label} longest`, sum(length, half), { kind: "length" }),
  };
}
