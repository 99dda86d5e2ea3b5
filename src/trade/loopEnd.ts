import {
  greatest,
  least,
  minus,
  named,
  over,
  type Quantity,
  roundedDown,
  roundedUp,
  sum,
  times,
} from "../model/quantity.ts";
import { type Developed, developFlatBar, type FlatBar, type Legs } from "./turnBack.ts";

// A strap end folded round another strap and stitched to itself, so that the other strap slides in it.

export type LoopEndInput = {
  readonly label: string;
  readonly around: FlatBar;
  readonly legs: Legs;
  readonly pitch: Quantity;
  readonly feather: Quantity;
  readonly length?: Quantity;
};

export type LoopEnd = {
  readonly developed: Developed;
  readonly clamp: Quantity;
  readonly run: Quantity;
  readonly stitches: Quantity;
  readonly beyond: Quantity;
  readonly length: Quantity;
  readonly leastLength: Quantity;
  readonly takeUp: Quantity;
};

/** The legs close at about one in three past the strap they hold; common practice, no source. */
const CLOSING = 1.5;
/** Least stitches of a loop; common practice, no source. */
const LEAST_STITCHES = 5;

/** Works a loop round a flat strap: first stitch clear of it, whole stitches to the feathered end. */
export function loopEnd(i: LoopEndInput): LoopEnd {
  const past = sum(over(i.around.along, 2), times(CLOSING, sum(i.around.through, i.legs.front)), 1);
  const clamp = named(`${i.label} clamp`, roundedUp({ ...past, kind: "length" }, 0.5), {
    source: "common practice, no source",
    kind: "length",
  });
  const developed = developFlatBar(i.legs, i.around, clamp);
  const half = over(developed.holeToMate, 2);
  const run = times(LEAST_STITCHES, i.pitch);
  const leastLength = named(
    `${i.label} least turn-back`,
    { ...sum(half, run, i.feather), kind: "length" },
    { kind: "length" },
  );
  const length = named(`${i.label} turn-back`, i.length ?? leastLength);
  const beyond = named(`${i.label} first hole to end`, minus(length, half), { kind: "length" });
  const stitches = named(`${i.label} stitches`, roundedDown(over(minus(beyond, i.feather), i.pitch)), {
    kind: "count",
  });
  return {
    developed,
    clamp,
    run: named(`${i.label} run`, { ...times(stitches, i.pitch), kind: "length" }, { kind: "length" }),
    stitches,
    beyond,
    length,
    leastLength,
    takeUp: named(`${i.label} take-up`, minus(half, clamp), { kind: "length" }),
  };
}

/** A loop is at least this many of its own thicknesses high inside, or its grain cracks; common practice, no source. */
const LEAST_HEIGHT = 2.4;

/** A strap as the bar of a loop: a loop that slides lies round its edges, not into their corners. */
export function strapAsBar(label: string, width: Quantity, thickness: Quantity, wrap: Quantity): FlatBar {
  const high = greatest(thickness, times(LEAST_HEIGHT, wrap));
  const through = named(
    `${label} height inside`,
    { ...high, kind: "length" },
    { source: "common practice, no source", kind: "length" },
  );
  const corner = named(`${label} rounding`, over(least(through, width), 2), {
    source: "common practice, no source",
  });
  return { along: width, through, corner };
}
