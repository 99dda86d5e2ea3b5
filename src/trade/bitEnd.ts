import { greatest, minus, named, over, type Quantity, roundedUp, sum, times } from "../model/quantity.ts";
import { EASY_SLOPE } from "./buckleEnd.ts";
import {
  type Developed,
  developRoundBar,
  type Legs,
  legGap,
  liftOffForSlope,
  neutralRadius,
} from "./turnBack.ts";

// A strap end folded round a bit ring and held by two screws or rivets through both legs.

export type BitEndInput = {
  readonly label: string;
  readonly ring: Quantity;
  readonly legs: Legs;
  /** Hole for the screw's barrel or the rivet's shank. */
  readonly hole: Quantity;
  readonly head: Quantity;
  /** First to second fixing; at least a head and 4 mm. */
  readonly spacing: Quantity;
  /** The turn-back's length on the flat, when the order sets it. */
  readonly length?: Quantity;
};

export type BitEnd = {
  readonly developed: Developed;
  readonly clamp: Quantity;
  readonly spacing: Quantity;
  /** First back-leg hole to the end. */
  readonly beyond: Quantity;
  /** Last hole to the end. */
  readonly toEnd: Quantity;
  readonly length: Quantity;
  readonly leastLength: Quantity;
  readonly takeUp: Quantity;
  /** Ring's centre to where the fixings end, along the folded strap. */
  readonly reach: Quantity;
};

/** Works a bit end: c₁ clear of the ring and the head, pairs D₁ and D₁ + 2g apart, 1.5 holes beyond. */
export function bitEnd(i: BitEndInput): BitEnd {
  const radius = neutralRadius(i.legs, i.ring);
  const clear = sum(
    over(i.ring, 2),
    greatest(quantity(i.legs.front), quantity(i.legs.back)),
    over(i.head, 2),
    1,
  );
  const slope = liftOffForSlope(i.legs, radius, legGap(i.legs), EASY_SLOPE);
  const clamp = named(`${i.label} clamp`, roundedUp(greatest({ ...clear, kind: "length" }, slope), 0.5), {
    source: "the screw's head clears the ring, and a slope of 15°",
    kind: "length",
  });
  const developed = developRoundBar(i.legs, i.ring, clamp);
  const half = over(developed.holeToMate, 2);
  const past = greatest(times(1.5, i.hole), sum(over(i.head, 2), 2));
  const leastLength = named(`${i.label} least turn-back`, roundedUp(sum(half, i.spacing, past), 0.5), {
    source: "the end lies 1.5 holes past the last fixing",
    kind: "length",
  });
  const length = named(`${i.label} turn-back`, i.length ?? leastLength);
  const beyond = named(`${i.label} first hole to end`, minus(length, half), { kind: "length" });
  return {
    developed,
    clamp,
    spacing: i.spacing,
    beyond,
    toEnd: named(`${i.label} last hole to end`, minus(beyond, i.spacing), { kind: "length" }),
    length,
    leastLength,
    takeUp: named(`${i.label} take-up`, minus(half, clamp), { kind: "length" }),
    reach: named(`${i.label} reach`, sum(clamp, i.spacing, over(i.head, 2)), { kind: "length" }),
  };
}

const quantity = (o: Quantity | number): Quantity =>
  typeof o === "number" ? { value: o, kind: "length", parts: [String(o)], inputs: [] } : o;
