import {
  asLength,
  greatest,
  leaf,
  minus,
  named,
  over,
  type Quantity,
  roundedDown,
  roundedNear,
  roundedUp,
  sine,
  sum,
  times,
} from "../model/quantity.ts";
import { type TongueReach, tongueReach, tongueSlotLength } from "./tongueSlot.ts";
import {
  type Developed,
  developRoundBar,
  type Legs,
  legGap,
  liftOffForSlope,
  neutralRadius,
} from "./turnBack.ts";

// A strap end folded round a buckle's bar, in the order from the bar: slot end, first fixing, keeper,
// the remaining fixings, the end of the back leg.

/** Room from the slot's end to the first stitch, mm; common practice, no source. */
const SLOT_TO_STITCH_MM = 2;
/** The slot is rounded up to its punch: half of that step may lie at each end, and half of its room. */
const SLOT_SPARE_MM = 1;
/** From the first fixing to the keeper's near edge, mm: the keeper must not sit on the stitch. */
const FIXING_TO_KEEPER_MM = 1;
/** Least stitches past the keeper; common practice, no source. */
const STITCHES_PAST_KEEPER = 3;

/** Steepest slope of the legs without a caution: 15°; common practice, no source. */
export const EASY_SLOPE = leaf("easy slope", Math.PI / 12, "angle", {
  kind: "fact",
  source: "common practice, no source",
});

/** What fixes the legs to each other. */
export type Fixing =
  | { readonly kind: "stitched"; readonly pitch: Quantity }
  | { readonly kind: "screws"; readonly hole: Quantity; readonly head: Quantity; readonly spacing: Quantity };

export type CaughtKeeper = {
  readonly breadth: Quantity;
  /** Thickness of its ends between the legs. */
  readonly caught: Quantity;
  /** It lies between the buckle and the first fixing, not past that. */
  readonly nextToBuckle: boolean;
};

export type BuckleEndInput = {
  readonly label: string;
  readonly bar: Quantity;
  readonly legs: Legs;
  readonly tongue: { readonly thickness: Quantity; readonly breadth: Quantity; readonly open: Quantity };
  /** How far the buckle's frame reaches over the strap beyond the bar. */
  readonly overhang: Quantity;
  readonly fixing: Fixing;
  readonly keeper?: CaughtKeeper;
  /** The back leg's last stretch, thinned to nothing, without holes. */
  readonly feather: Quantity;
  /** The turn-back's length on the flat, from the fold's centre to the end, when the order sets it. */
  readonly length?: Quantity;
};

/** All lengths in mm; those "from the bar" are along the folded strap, the others along the flat. */
export type BuckleEnd = {
  readonly developed: Developed;
  readonly reach: TongueReach;
  readonly slotLength: Quantity;
  /** Bar's centre to the first fixing. */
  readonly clamp: Quantity;
  /** Bar's centre to where the legs begin to part. */
  readonly liftOff: Quantity;
  /** Thickness between the legs from the lift-off on. */
  readonly caught: Legs["caught"];
  /** Near and far edge of the fixed keeper from the bar. */
  readonly keeperNear?: Quantity;
  readonly keeperFar?: Quantity;
  /** First to last fixing. */
  readonly run: Quantity;
  /** Stitches of the run; for screws 1, from the first to the second. */
  readonly stitches: Quantity;
  /** First back-leg hole to the end of the turn-back. */
  readonly beyond: Quantity;
  /** Fold's centre to the end of the back leg. */
  readonly length: Quantity;
  /** The least length that holds what the turn-back must. */
  readonly leastLength: Quantity;
  /** What must be added to a length from the bar to get a length from the fold's centre. */
  readonly takeUp: Quantity;
};

/** The slot's end from the bar, along the folded legs, at the steepest easy slope. */
const slotEnd = (radius: Quantity, reach: TongueReach): Quantity =>
  sum(reach.reach, reach.roundEnd, SLOT_SPARE_MM, times(radius, sine(EASY_SLOPE)));

/** Where the fixings and the keeper lie, from the bar. */
type Placed = Pick<BuckleEnd, "clamp" | "liftOff" | "keeperNear" | "keeperFar"> & { readonly legs: Legs };

/** The first fixing nearest the bar, a keeper past it: the fixing holds the legs, so nothing parts them there. */
function fixingFirst(i: BuckleEndInput, radius: Quantity, reach: TongueReach): Placed {
  const { fixing } = i;
  // A punched hole's edge lies its own diameter past the slot.
  const past = fixing.kind === "stitched" ? SLOT_TO_STITCH_MM : times(1.5, fixing.hole);
  const slope = liftOffForSlope(i.legs, radius, legGap(i.legs), EASY_SLOPE);
  const head =
    fixing.kind === "screws" ? [asLength(sum(over(i.bar, 2), i.legs.front, over(fixing.head, 2), 1))] : [];
  const nearest = greatest(asLength(sum(slotEnd(radius, reach), past)), slope, ...head);
  const clamp = named(`${i.label} clamp`, roundedUp(nearest, 0.5), {
    source: "room past the tongue's slot, and a slope of 15°",
    kind: "length",
  });
  if (!i.keeper) return { clamp, liftOff: clamp, legs: i.legs };
  // A screw's head is broader than its hole: the keeper begins past the head.
  const head2 = fixing.kind === "screws" ? [over(fixing.head, 2)] : [];
  const keeperNear = named(
    `${i.label} keeper's near edge`,
    greatest(sum(i.overhang, 2), sum(clamp, ...head2, FIXING_TO_KEEPER_MM)),
    { source: "common practice, no source" },
  );
  const keeperFar = named(`${i.label} keeper's far edge`, sum(keeperNear, i.keeper.breadth));
  return { clamp, liftOff: clamp, legs: i.legs, keeperNear, keeperFar };
}

/** The keeper next to the buckle: its ends part the legs from its near edge on. */
function keeperFirst(i: BuckleEndInput, keeper: CaughtKeeper, radius: Quantity, reach: TongueReach): Placed {
  const legs: Legs = { ...i.legs, caught: keeper.caught };
  const slope = liftOffForSlope(legs, radius, legGap(legs), EASY_SLOPE);
  const keeperNear = named(
    `${i.label} keeper's near edge`,
    roundedUp(
      greatest(
        sum(i.overhang, 2),
        asLength(sum(slotEnd(radius, reach), SLOT_TO_STITCH_MM)),
        slope,
        sum(over(i.bar, 2), 1),
      ),
      0.5,
    ),
    { source: "room past the tongue's slot, and a slope of 15°" },
  );
  const keeperFar = named(`${i.label} keeper's far edge`, sum(keeperNear, keeper.breadth));
  const head = i.fixing.kind === "screws" ? [over(i.fixing.head, 2)] : [];
  const clamp = named(`${i.label} clamp`, roundedUp(sum(keeperFar, ...head, FIXING_TO_KEEPER_MM), 0.5), {
    source: "the first fixing past the keeper",
    kind: "length",
  });
  return { clamp, liftOff: keeperNear, legs, keeperNear, keeperFar };
}

/** Works a buckle turn-back: where the slot, the fixings, the keeper and the end lie. */
export function buckleEnd(i: BuckleEndInput): BuckleEnd {
  const radius = neutralRadius(i.legs, i.bar);
  const { thickness, breadth, open } = i.tongue;
  const reach = tongueReach({ label: i.label, bar: i.bar, wrap: i.legs.wrap, thickness, breadth, open });
  const placed = i.keeper?.nextToBuckle
    ? keeperFirst(i, i.keeper, radius, reach)
    : fixingFirst(i, radius, reach);
  const { legs, ...places } = placed;
  const developed = developRoundBar(legs, i.bar, places.clamp, places.liftOff);
  const half = over(developed.holeToMate, 2);
  const takeUp = named(`${i.label} take-up`, minus(half, places.clamp), {
    source: "half of hole to mate, less the clamp",
    kind: "length",
  });
  const least = leastRun(i, places.clamp, i.keeper?.nextToBuckle ? undefined : places.keeperFar);
  const leastLength = named(`${i.label} least turn-back`, sum(half, least, tailOf(i)), { kind: "length" });
  const length = named(`${i.label} turn-back`, i.length ?? leastLength);
  const beyond = named(`${i.label} first hole to end`, minus(length, half), { kind: "length" });
  const run = i.length ? longestRun(i, beyond) : least;
  return {
    ...places,
    caught: legs.caught,
    developed,
    reach,
    slotLength: tongueSlotLength(i.label, developed.radius, developed.wrapAngle, reach),
    run,
    stitches: stitchesIn(i, run),
    beyond,
    length,
    leastLength,
    takeUp,
  };
}

/** Least distance from the first to the last fixing: whole stitches past the keeper, or screws astride it. */
function leastRun(i: BuckleEndInput, clamp: Quantity, keeperFar: Quantity | undefined): Quantity {
  const label = `${i.label} fixing run`;
  if (i.fixing.kind === "screws") {
    const astride = keeperFar
      ? sum(minus(keeperFar, clamp), over(i.fixing.head, 2), FIXING_TO_KEEPER_MM)
      : i.fixing.spacing;
    return named(label, greatest(i.fixing.spacing, { ...astride, kind: "length" }), {
      source: "screws on both sides of the keeper",
      kind: "length",
    });
  }
  const { pitch } = i.fixing;
  const past = sum(keeperFar ? minus(keeperFar, clamp) : times(2, pitch), times(STITCHES_PAST_KEEPER, pitch));
  return named(label, roundedUp({ ...past, kind: "length" }, pitch), {
    source: "at least 3 stitches past the keeper, whole stitches",
    kind: "length",
  });
}

/** What lies past the last fixing: the feathered end, or leather enough round the last screw. */
const tailOf = (i: BuckleEndInput): Quantity =>
  i.fixing.kind === "stitched"
    ? i.feather
    : greatest(sum(times(1.5, i.fixing.hole), 0.1), sum(over(i.fixing.head, 2), 2));

const ONE_GAP: Quantity = { value: 1, kind: "count", parts: ["1"], inputs: [] };

const stitchesIn = (i: BuckleEndInput, run: Quantity): Quantity =>
  i.fixing.kind === "screws"
    ? ONE_GAP
    : named(`${i.label} stitches`, roundedNear({ ...over(run, i.fixing.pitch), kind: "count" }, 1));

/** The longest run that an ordered turn-back has room for before its feathered end. */
function longestRun(i: BuckleEndInput, beyond: Quantity): Quantity {
  const room = minus(beyond, tailOf(i));
  const run =
    i.fixing.kind === "screws" ? room : times(roundedDown(over(room, i.fixing.pitch)), i.fixing.pitch);
  return named(`${i.label} fixing run`, { ...run, kind: "length" }, { kind: "length" });
}
