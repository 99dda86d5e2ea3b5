import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { greatest, leaf, least, minus, nextOdd, over, type Quantity, roundedDown, sum, times } from "../model/quantity.ts";
import { defaultCheek, defaultPitch } from "../trade/balance.ts";

// The measures of a one-ear headstall, and how its straps buckle and adjust.

const COMMON = "common practice, no source";

export const measuresTable = {
  overPoll: { kind: "length", least: 500, most: 1500, means: "from bit ring to bit ring over the poll, bit in, tape snug", source: "measured" },
  earBase: { kind: "length", least: 80, most: from(["overPoll"], (k) => times(0.3, k.q("overPoll"))), means: "round the base of the ear that goes through the loop", source: "measured" },
  measuredFrom: { kind: "choice", choices: ["bit ring", "mouth corner"], default: "bit ring", means: "where the tape began and ended", source: COMMON },
  rise: {
    kind: "length",
    optional: true,
    least: 0,
    most: from(["overPoll"], (k) => least(150, over(minus(k.q("overPoll"), 500), 2))),
    means: "mouth corner up to where the cheek bears on the ring, on each side",
    source: "measured on your bit",
  },
} as const satisfies DimensionTable;

/** Holes in each end when neither the order nor the sizes to cover say; common practice, no source. */
const USUAL_HOLES = leaf("usual count of holes", 5, "count", { kind: "default", source: COMMON });

export const strapsTable = {
  inside: { kind: "length", least: 9, most: 76.2, handed: true, means: "inside width of the cheek buckle", source: "hardware" },
  tongue: { kind: "length", least: 1, most: 8, handed: true, means: "thickness of its tongue", source: "hardware" },
  overPoll: { kind: "length", least: 500, most: 1500, handed: true, means: "measure over the poll", source: "measures" },
  width: {
    kind: "length",
    default: from(["inside"], (k) => k.q("inside")),
    least: from(["inside"], (k) => minus(k.q("inside"), 3)),
    most: from(["inside"], (k) => sum(k.q("inside"), 0.3)),
    means: "width of the crown and of the cheeks at their buckles",
    source: COMMON,
  },
  buckles: { kind: "choice", choices: ["both cheeks", "near side only"], default: "both cheeks", means: "where the headstall buckles", source: COMMON },
  holeSize: {
    kind: "length",
    default: from(["tongue", "width"], (k) => least(sum(k.q("tongue"), 1), over(k.q("width"), 3))),
    least: 2,
    most: from(["width"], (k) => least(10, over(k.q("width"), 2.5))),
    means: "diameter of the buckle holes",
    source: COMMON,
  },
  pitch: {
    kind: "length",
    default: from(["width"], (k) => defaultPitch(k.q("width"))),
    least: from(["holeSize"], (k) => times(2, k.q("holeSize"))),
    most: 90,
    means: "from hole to hole",
    source: "P. N. Hasluck, Harness Making (1904), p. 51: a little more than the strap's width",
  },
  coverFrom: {
    kind: "length",
    optional: true,
    least: from(["overPoll", "pitch", "buckles"], (k) => minus(k.q("overPoll"), mostReach(k))),
    most: from(["overPoll"], (k) => k.q("overPoll")),
    means: "shortest measure the holes must reach",
    source: COMMON,
  },
  coverTo: {
    kind: "length",
    optional: true,
    least: from(["overPoll"], (k) => k.q("overPoll")),
    most: from(["overPoll", "pitch", "buckles"], (k) => sum(k.q("overPoll"), mostReach(k))),
    means: "longest measure the holes must reach",
    source: COMMON,
  },
  runningKeepers: { kind: "flag", default: true, means: "a running keeper beside each fixed one", source: COMMON },
  holes: {
    kind: "count",
    default: from(["buckles", "pitch", "coverFrom", "coverTo", "overPoll", "width"], (k) => {
      const [a, b] = [k.maybe("coverFrom"), k.maybe("coverTo")];
      if (!a && !b) return least(USUAL_HOLES, holesBeside(k), mostHoles(k.q("overPoll"), k.q("pitch")));
      const reach = greatest(a ? minus(k.q("overPoll"), a) : 0, b ? minus(b, k.q("overPoll")) : 0);
      const each = k.choice("buckles") === "both cheeks" ? over(reach, k.q("pitch")) : over(times(2, reach), k.q("pitch"));
      return greatest(3, nextOdd({ ...sum(each, 0.5), kind: "count" }));
    }),
    least: 1,
    most: from(["overPoll", "pitch"], (k) => mostHoles(k.q("overPoll"), k.q("pitch"))),
    odd: true,
    means: "holes in each end of the crown, an odd number",
    source: COMMON,
  },
} as const satisfies DimensionTable;

/** The row of holes takes no more than this share of the measure over the poll; common practice, no source. */
const ROW_SHARE = 0.15;

/** A small head has room for few holes: an odd count, from 3. */
function mostHoles(overPoll: Quantity, pitch: Quantity): Quantity {
  return { ...greatest(3, least(15, sum(times(2, roundedDown(over(times(ROW_SHARE / 2, overPoll), pitch))), 1))), kind: "count" };
}

/** The tail takes no more than this share of a usual cheek; common practice, no source. */
const TAIL_SHARE = 0.56;
/** First hole to tip and a keeper, as a share of the strap's width, as far as is known here. */
const TIP_WIDTHS = 3.8;

/** Holes whose tail, buckled tightest, still leaves room on a usual cheek: an odd count, from 3. */
function holesBeside(k: Known): Quantity {
  const row = minus(times(TAIL_SHARE, defaultCheek(k.q("overPoll"))), times(TIP_WIDTHS, k.q("width")));
  const each = roundedDown(over(over(row, k.q("pitch")), 2));
  return { ...greatest(3, sum(times(2, each), 1)), kind: "count" };
}

/** How far the most holes reach from the measure, one way. */
function mostReach(k: Known): Quantity {
  const steps = minus(mostHoles(k.q("overPoll"), k.q("pitch")), 1);
  return times(k.choice("buckles") === "both cheeks" ? 1 : 0.5, steps, k.q("pitch"));
}
