import { type DimensionTable, from, type Known, type Values } from "../model/dimension.ts";
import { greatest, least, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { defaultCheek } from "../trade/balance.ts";
import { type BitEnd, type BitEndInput, bitEnd } from "../trade/bitEnd.ts";
import { BODIES } from "../trade/body.ts";
import { type BuckleEnd, type BuckleEndInput, buckleEnd } from "../trade/buckleEnd.ts";
import { handedBuckle, handedFixing, handedLeather, handedStitching, widthForFixings } from "../trade/tables.ts";
import { defaultWrapThickness, type Legs, thickestFold } from "../trade/turnBack.ts";

// What may be set of a cheek, and the ends that its bounds depend on.

const COMMON = "common practice, no source";

const ENDS = {
  width: {
    kind: "length",
    least: from(["topFixing", "fixingHole"], (k) => widthForFixings(k.choice("topFixing") !== "stitched", k.q("fixingHole"))),
    most: 90,
    handed: true,
    means: "width of the strap at the buckle; three holes where screws hold it",
    source: "straps",
  },
  ...handedLeather,
  ...handedBuckle,
  ...handedFixing,
  ...handedStitching,
  ring: { kind: "length", least: 3, most: 20, handed: true, means: "diameter of the bit ring's wire", source: "hardware" },
  keeperBreadth: { kind: "length", least: 5, most: 40, handed: true, means: "breadth of the fixed keeper", source: "pieces.keeper" },
  skiveTo: { kind: "thickness", optional: true, least: 0.8, most: 8, handed: true, means: "thickness left in a fold", source: "leather" },
  keeperCaught: { kind: "thickness", least: 0, most: 10, handed: true, means: "thickness of the keeper's ends between the legs", source: "pieces.keeper" },
  keeperPlace: { kind: "choice", choices: ["after the first fixing", "next to the buckle"], default: "after the first fixing", means: "where the fixed keeper lies", source: COMMON },
  topFixing: { kind: "choice", choices: ["stitched", "screws"], default: "stitched", means: "how the buckle's turn-back is held", source: COMMON },
  skiveAtBuckle: {
    kind: "thickness",
    default: from(["thickness", "buckleBar", "skiveTo", "neutral"], (k) => k.maybe("skiveTo") ?? defaultWrapThickness(k.q("thickness"), k.q("buckleBar"), k.q("neutral"))),
    least: 0.8,
    most: from(["thickness", "buckleBar", "neutral"], (k) => least(k.q("thickness"), thickestFold(k.q("buckleBar"), k.q("neutral")))),
    means: "thickness left round the buckle's bar",
    source: COMMON,
  },
  skiveAtBit: {
    kind: "thickness",
    default: from(["thickness", "ring", "skiveTo", "neutral"], (k) => k.maybe("skiveTo") ?? defaultWrapThickness(k.q("thickness"), k.q("ring"), k.q("neutral"))),
    least: 0.8,
    most: from(["thickness", "ring", "neutral"], (k) => least(k.q("thickness"), thickestFold(k.q("ring"), k.q("neutral")))),
    means: "thickness left round the bit ring",
    source: COMMON,
  },
  feather: { kind: "length", default: 8, least: 3, most: 20, means: "length of the back leg's thinned end", source: COMMON },
} as const satisfies DimensionTable;

const END_NAMES = Object.keys(ENDS);

export type EndValues = Values<typeof ENDS>;

/** Reads the values of the ends for a formula of the same table. */
const END_CHOICES = ["topFixing", "fixing", "keeperPlace"];

const endsOf = (k: Known): EndValues =>
  ({
    ...Object.fromEntries(END_NAMES.filter((n) => !END_CHOICES.includes(n)).map((n) => [n, k.maybe(n)])),
    keeperPlace: k.choice("keeperPlace"),
    topFixing: k.choice("topFixing"),
    fixing: k.choice("fixing"),
  }) as unknown as EndValues;

const legsAt = (label: string, d: EndValues, wrap: Quantity): Legs => ({ label, neutral: d.neutral, front: d.thickness, back: wrap, wrap, caught: 0 });

/** What the buckle's turn-back is worked from. `length`: as ordered, if it was. */
export function topInput(d: EndValues, length?: Quantity): BuckleEndInput {
  return {
    label: "buckle end",
    bar: d.buckleBar,
    legs: legsAt("buckle end", d, d.skiveAtBuckle),
    tongue: { thickness: d.tongue, breadth: d.tongueBreadth, open: d.tongueOpen },
    overhang: d.overhang,
    fixing: d.topFixing === "stitched" ? { kind: "stitched", pitch: d.pitch } : { kind: "screws", hole: d.fixingHole, head: d.head, spacing: d.fixingSpacing },
    keeper: { breadth: d.keeperBreadth, caught: d.keeperCaught, nextToBuckle: d.keeperPlace === "next to the buckle" },
    feather: d.feather,
    ...(length ? { length } : {}),
  };
}

export function bitInput(d: EndValues, length?: Quantity): BitEndInput {
  return { label: "bit end", ring: d.ring, legs: legsAt("bit end", d, d.skiveAtBit), hole: d.fixingHole, head: d.head, spacing: d.fixingSpacing, ...(length ? { length } : {}) };
}

/** Where the shaped part may begin and end, from the buckle's bar. */
const topReach = (top: BuckleEnd): Quantity => sum(top.clamp, top.beyond, 3);
const bodyEnd = (c: Quantity, ring: Quantity, bit: BitEnd): Quantity => minus(c, times(0.5, ring), bit.clamp, bit.beyond, 3);

/** A cheek shorter than this between its turn-backs has no body, mm; common practice, no source. */
const LEAST_BODY_MM = 12;

const SHAPE_NAMES = [...END_NAMES, "buckleTurnBack", "bitTurnBack"];

export type Room = { readonly top: BuckleEnd; readonly bit: BitEnd };
const roomOf = (k: Known): Room => {
  const d = endsOf(k);
  return { top: buckleEnd(topInput(d, k.maybe("buckleTurnBack"))), bit: bitEnd(bitInput(d, k.maybe("bitTurnBack"))) };
};

export const dimensions = {
  ...ENDS,
  overPoll: { kind: "length", least: from(SHAPE_NAMES, (k) => greatest(500, over(leastCheek(k), LARGEST_CHEEK_SHARE))), most: 1500, handed: true, means: "bit ring to bit ring over the poll", source: "measures" },
  measure: { kind: "length", least: 500, most: 1500, handed: true, means: "the measure over the poll, which sets how long a turn-back may be", source: "measures" },
  pair: { kind: "flag", default: true, handed: true, means: "a cheek on both sides", source: "straps" },
  tail: { kind: "length", least: 0, most: 1000, handed: true, means: "about where the crown's tail ends at its tightest hole", source: "straps" },
  lengthFactor: { kind: "ratio", least: 0.9, most: 1.1, handed: true, means: "allowance for stretch and shrinkage", source: "allowances" },
  buckleTurnBack: {
    kind: "length",
    optional: true,
    least: from(END_NAMES, (k) => buckleEnd(topInput(endsOf(k))).leastLength),
    most: from([...END_NAMES, "measure"], (k) => longestTurnBack(k, buckleEnd(topInput(endsOf(k))).leastLength)),
    means: "length of the buckle's turn-back on the flat, fold to end",
    source: COMMON,
  },
  bitTurnBack: {
    kind: "length",
    optional: true,
    least: from(END_NAMES, (k) => bitEnd(bitInput(endsOf(k))).leastLength),
    most: from([...END_NAMES, "measure"], (k) => longestTurnBack(k, bitEnd(bitInput(endsOf(k))).leastLength)),
    means: "length of the bit's turn-back on the flat, fold to end",
    source: COMMON,
  },
  effectiveLength: {
    kind: "length",
    default: from([...SHAPE_NAMES, "overPoll"], (k) => greatest(defaultCheek(k.q("overPoll")), leastCheek(k))),
    least: from(SHAPE_NAMES, (k) => leastCheek(k)),
    most: from([...SHAPE_NAMES, "overPoll"], (k) => greatest(times(0.3, k.q("overPoll")), leastCheek(k))),
    means: "from the ring to the buckle's bar",
    source: `${COMMON}: 0.24 of the measure over the poll, more on small heads`,
  },
  bitWidth: {
    kind: "length",
    default: from(["width", "body", "fixingHole"], (k) => (k.choice("body") === "tapered" ? greatest(times(0.8, k.q("width")), leastAtHole(k)) : greatest(k.q("width"), leastAtHole(k)))),
    least: from(["width", "body", "fixingHole"], (k) => (k.choice("body") === "straight" ? greatest(k.q("width"), leastAtHole(k)) : leastAtHole(k))),
    most: from(["width", "body", "fixingHole"], (k) => (k.choice("body") === "straight" ? greatest(k.q("width"), leastAtHole(k)) : times(2, greatest(k.q("width"), leastAtHole(k))))),
    means: "width at the bit's turn-back; at least three holes wide",
    source: COMMON,
  },
  body: { kind: "choice", choices: BODIES, default: from([...SHAPE_NAMES, "effectiveLength", "tail", "pair"], (k) => usualBody(k)), means: "shape between the turn-backs", source: COMMON },
  swellFrom: {
    kind: "length",
    default: from([...SHAPE_NAMES, "effectiveLength", "tail"], (k) => defaultSwell(k)),
    least: from(SHAPE_NAMES, (k) => topReach(roomOf(k).top)),
    most: from([...SHAPE_NAMES, "effectiveLength"], (k) => minus(bodyEnd(k.q("effectiveLength"), k.q("ring"), roomOf(k).bit), LEAST_BODY_MM - 0.001)),
    means: "from the buckle's bar to where the shape begins",
    source: `${COMMON}: past the crown's tail, where there is room`,
  },
  scallops: { kind: "count", default: 3, least: 1, most: 9, means: "how many scallops, for a scalloped body", source: COMMON },
  widest: {
    kind: "length",
    default: from([...SHAPE_NAMES, "effectiveLength", "swellFrom", "body", "bitWidth", "scallops"], (k) => least(greatest(times(2, k.q("width")), k.q("bitWidth")), widestRoom(k))),
    least: from(["width", "bitWidth"], (k) => greatest(k.q("width"), k.q("bitWidth"))),
    most: from([...SHAPE_NAMES, "effectiveLength", "swellFrom", "body", "bitWidth", "scallops"], (k) => widestRoom(k)),
    means: "width at the widest of a swelled or scalloped body",
    source: COMMON,
  },
  widestAt: { kind: "ratio", default: 0.5, least: 0.25, most: 0.75, means: "where a swelled body is widest: 0.5 is the middle of the shape", source: COMMON },
  crease: { kind: "length", optional: true, least: 1, most: 8, means: "crease line from the edge; left out, none is drawn", source: "P. N. Hasluck, Harness Making (1904), p. 49: 1/8 in" },
  tooling: { kind: "flag", default: false, means: "a zone for stamping or carving on the body", source: COMMON },
  toolingBorder: { kind: "length", default: 4, least: 1, most: 15, means: "from the edge to the tooling zone", source: COMMON },
  stamp: { kind: "length", optional: true, least: 2, most: 40, means: "length of one stamp along the cheek, to count repeats", source: COMMON },
  backHoles: { kind: "choice", choices: ["punched flat", "after folding"], default: "punched flat", means: "when the back leg's holes are punched", source: COMMON },
} as const satisfies DimensionTable;

/** Turn-backs take no more than this share of the measure each, where less would hold; common practice, no source. */
const TURN_BACK_SHARE = 0.09;
const longestTurnBack = (k: Known, leastLength: Quantity): Quantity => greatest(times(TURN_BACK_SHARE, k.q("measure")), leastLength);

/** Cheeks longer than this share of the measure leave too little for the crown; common practice, no source. */
const LARGEST_CHEEK_SHARE = 0.32;

const leastAtHole = (k: Known): Quantity => times(3, k.q("fixingHole"));

/** The shortest cheek that holds both turn-backs and a body. */
function leastCheek(k: Known): Quantity {
  const { top, bit } = roomOf(k);
  return sum(topReach(top), bit.clamp, bit.beyond, 3 + LEAST_BODY_MM, times(0.5, k.q("ring")));
}

/** Past the crown's tail, but leaving at least 0.45 of the room to the shape. */
function defaultSwell(k: Known): Quantity {
  const { top, bit } = roomOf(k);
  const start = topReach(top);
  const end = bodyEnd(k.q("effectiveLength"), k.q("ring"), bit);
  return greatest(start, least(sum(k.q("tail"), 3), minus(end, greatest(times(0.45, minus(end, start)), LEAST_BODY_MM))));
}

/** A swell shorter than this many widths is a knob; common practice, no source. */
const SHORTEST_SWELL = 1.5;

/** Swelled where a pair has room for it past the crown's tail, else straight. */
function usualBody(k: Known): "swelled" | "straight" {
  const { top, bit } = roomOf(k);
  const start = greatest(topReach(top), sum(k.q("tail"), 3));
  const room = minus(bodyEnd(k.q("effectiveLength"), k.q("ring"), bit), start);
  return k.flag("pair") && room.value >= SHORTEST_SWELL * k.q("width").value ? "swelled" : "straight";
}

/** The widest that the body's length lets its edges reach at a fair slope. */
function widestRoom(k: Known): Quantity {
  const wide = greatest(k.q("width"), k.q("bitWidth"));
  const length = minus(bodyEnd(k.q("effectiveLength"), k.q("ring"), roomOf(k).bit), k.q("swellFrom"));
  if (k.choice("body") === "scalloped") return sum(wide, over(times(0.5, length), k.q("scallops")));
  return k.choice("body") === "swelled" ? sum(wide, times(0.5, length)) : wide;
}
