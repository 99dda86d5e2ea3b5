import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { asLength, greatest, least, minus, over, type Quantity, roundedUp, sum, times } from "../model/quantity.ts";
import { fixedDimensions as F, LENGTH_NAMES } from "../pieces/strap.ts";
import { defaultPitch } from "../trade/balance.ts";
import { FIXED_ENDS } from "../trade/fixedEnd.ts";
import { overRound } from "../trade/shoulderStrap.ts";
import { buckleTable, fixingTable } from "../trade/tables.ts";

// What may be set of a bag's straps, tabs and handles.

const COMMON = "common practice, no source";
const NARROWEST_MM = 9;

const HANDED_LENGTH = { kind: "length", least: 0, most: 5000, handed: true, source: "measures" } as const;

/** Not to be set on this piece: it has none, or it follows from the others. */
function hidden<T extends DimensionTable>(table: T, names: readonly (keyof T & string)[]): T {
  return { ...table, ...Object.fromEntries(names.map((n) => [n, { ...table[n]!, handed: true }])) };
}

/** Widest strap that lies flat where it is fixed, or goes through a slot there with leather round its ends. */
const widest = (k: Known): Quantity => greatest(NARROWEST_MM, least(50, k.flag("slots") ? minus(k.q("room"), asLength(sum(times(3, k.q("thickest")), 3))) : k.q("room")));
const WIDEST = ["room", "slots", "thickest"];

const mostBelow = (k: Known): Quantity => greatest(12, over(k.q("bagHeight"), 5));
const mostRadius = (k: Known): Quantity => least(120, times(0.45, k.q("drop")));

/** The seam keeps this near a strap's edge, and a box is at least a third of the strap wide. */
const mostInset = (k: Known): Quantity => least(k.q("inset"), over(k.q("width"), 3));

export const strapsTable = {
  bagWidth: { ...HANDED_LENGTH, means: "width of the bag" },
  bagHeight: { ...HANDED_LENGTH, means: "height of the bag" },
  sideTakes: { ...HANDED_LENGTH, means: "what a seam takes beside a strap on the back" },
  onBack: { kind: "flag", default: false, handed: true, means: "straps are fixed to the sides of the back", source: "bag" },
  drop: { ...HANDED_LENGTH, means: "shoulder drop" },
  room: { ...HANDED_LENGTH, least: -100, means: "flat width of the gusset where straps are fixed" },
  slots: { kind: "flag", default: false, handed: true, means: "straps go through slots", source: "bag" },
  thickest: { kind: "thickness", least: 1, most: 8, handed: true, means: "the strap leather's thickest place", source: "leather" },
  pitch: { kind: "pitch", least: 1.5, most: 6.5, handed: true, means: "stitch pitch", source: "stitching" },
  inset: { kind: "length", least: 1.5, most: 8, handed: true, means: "stitch line from the edge", source: "stitching" },
  width: { kind: "length", default: from(WIDEST, (k) => least(25.4, widest(k))), least: NARROWEST_MM, most: from(WIDEST, (k) => widest(k)), means: "width of straps, tabs and handles", source: COMMON },
  ringsApart: {
    kind: "length",
    default: from(["bagWidth", "sideTakes", "onBack", "width"], (k) => {
      const [all, quarter] = [k.q("bagWidth"), over(k.q("bagWidth"), 4)];
      return k.flag("onBack") ? greatest(quarter, minus(all, times(2, k.q("sideTakes")), k.q("width"))) : all;
    }),
    least: from(["bagWidth"], (k) => over(k.q("bagWidth"), 4)),
    most: from(["bagWidth"], (k) => times(1.25, k.q("bagWidth"))),
    means: "between the two places where the shoulder strap meets the bag",
    source: COMMON,
  },
  shoulderRadius: {
    kind: "length",
    default: from(["drop"], (k) => least(60, mostRadius(k))),
    least: 30,
    most: from(["drop"], (k) => mostRadius(k)),
    means: "radius of the round that the strap lies on, over the shoulder",
    source: COMMON,
  },
  fixedBelow: {
    kind: "length",
    default: from(["bagHeight"], (k) => least(25, mostBelow(k))),
    least: 12,
    most: from(["bagHeight"], (k) => mostBelow(k)),
    means: "from the gusset's top edge down to where a strap or tab is fixed first, or goes in",
    source: COMMON,
  },
  keeper: { kind: "flag", default: true, means: "a fixed keeper in the buckle's turn-back", source: COMMON },
  runningKeeper: { kind: "flag", default: true, means: "a running keeper too", source: COMMON },
  rivets: F.rivets,
  boxLength: F.boxLength,
  endCorner: { ...F.endCorner, default: from(["inset", "width"], (k) => least(3, mostInset(k))), most: from(["inset", "width"], (k) => mostInset(k)) },
} as const satisfies DimensionTable;

const strapWidth = { ...HANDED_LENGTH, means: "width of the strap", source: "straps" } as const;
const OF_WIDTH = {
  default: from(["strapWidth"], (k) => k.q("strapWidth")),
  least: from(["strapWidth"], (k) => greatest(NARROWEST_MM, minus(k.q("strapWidth"), 0.3))),
  most: from(["strapWidth"], (k) => sum(k.q("strapWidth"), 3)),
} as const;

/** A strap narrower than its buckle still keeps 3 mm of leather on both sides of the tongue's slot. */
const BESIDE_TONGUE_MM = 8;
const mostTongue = (k: Known): Quantity => minus(least(k.q("inside"), k.q("strapWidth")), BESIDE_TONGUE_MM - 0.3);
const TONGUE = ["inside", "strapWidth"];

export const strapBuckleTable = {
  ...buckleTable,
  strapWidth,
  inside: { ...buckleTable.inside, ...OF_WIDTH },
  tongue: { ...buckleTable.tongue, default: from(TONGUE, (k) => least(3, mostTongue(k))), most: from(TONGUE, (k) => least(8, mostTongue(k))) },
  tongueBreadth: { ...buckleTable.tongueBreadth, most: from(TONGUE, (k) => sum(mostTongue(k), 0.5)) },
} as const satisfies DimensionTable;

export const ringTable = {
  strapWidth,
  inside: { kind: "length", ...OF_WIDTH, means: "inside width of the ring", source: COMMON },
  height: {
    kind: "length",
    default: from(["inside"], (k) => times(0.75, k.q("inside"))),
    least: 4,
    most: from(["inside"], (k) => times(1.2, k.q("inside"))),
    means: "inside height of the ring, from where the tab bears to where the strap bears",
    source: COMMON,
  },
  bar: { kind: "length", default: 4, least: 2, most: 10, means: "diameter of the ring's wire", source: COMMON },
} as const satisfies DimensionTable;

const mostHead = (k: Known): Quantity => greatest(k.q("barrel"), least(16, minus(k.q("strapWidth"), 1)));
export const bagFixingTable = {
  ...fixingTable,
  kind: { ...fixingTable.kind, default: "rivet", means: "what holds turn-backs at rings, tabs, straps and handles" },
  head: { ...fixingTable.head, most: from(["barrel", "strapWidth"], (k) => mostHead(k)) },
  spacing: { ...fixingTable.spacing, most: from(["head"], (k) => greatest(25, sum(k.q("head"), 10))) },
} as const satisfies DimensionTable;

/** What no part of a bag's straps sets for itself: loops, how lengths are reckoned, and what `straps` says once for all. */
const NEVER = ["around", "aroundThickness", "reckoned", "rivets", "boxLength", "endCorner"] as const;
const BILLET = ["holes", "holePitch", "holeSize", "point", "toTip"] as const;
const NO_KEEPER = { keeperFar: { ...F.keeperFar, default: 0 } } as const;

const leastLength = (k: Known): Quantity => F.length.least.of(k);

/** A turn-back may take up no more than its share of the strap. */
const turnBack = (side: "left" | "right", most: (k: Known) => Quantity, names: readonly string[]) => {
  const d = side === "left" ? F.leftTurnBack : F.rightTurnBack;
  return { ...d, most: from([...d.least.inputs, ...names], (k) => greatest(d.least.of(k), least(d.most.of(k), most(k)))) };
};

/** Of the whole shoulder strap, the part that carries the buckle; common practice, no source. */
const BUCKLE_SHARE = 0.3;
const MOST_SHARE = 0.55;
const quarterOfPart = (k: Known): Quantity => asLength(minus(times(0.4 * BUCKLE_SHARE, k.q("whole")), 15));

export const buckleStrapTable = hidden(
  {
    ...F,
    ...NO_KEEPER,
    whole: { ...HANDED_LENGTH, means: "length of the whole shoulder strap" },
    leftTurnBack: turnBack("left", quarterOfPart, ["whole"]),
    rightTurnBack: turnBack("right", quarterOfPart, ["whole"]),
    length: {
      kind: "length",
      default: from([...LENGTH_NAMES, "whole"], (k) => greatest(times(BUCKLE_SHARE, k.q("whole")), leastLength(k))),
      least: F.length.least,
      most: from([...LENGTH_NAMES, "whole"], (k) => greatest(times(MOST_SHARE, k.q("whole")), leastLength(k))),
      means: "from where it meets the bag to the buckle's bar: this sets where the buckle lies",
      source: COMMON,
    },
  } as const satisfies DimensionTable,
  [...NEVER, ...BILLET],
);

const mostPitch = (k: Known): Quantity => greatest(asLength(times(2, k.q("holeSize"))), asLength(over(times(0.4, k.q("part")), greatest(1, minus(k.q("holes"), 1)))));
const PITCH = ["holeSize", "part", "holes"];
const NO_STRAP: Quantity = { value: 0, kind: "length", parts: ["no shoulder strap"], inputs: [] };

export const billetStrapTable = hidden(
  {
    ...F,
    part: { ...HANDED_LENGTH, least: -5000, means: "what the buckle part leaves of the shoulder strap" },
    used: { kind: "flag", default: true, handed: true, means: "the bag has a shoulder strap", source: "bag" },
    leftTurnBack: turnBack("left", (k) => asLength(times(0.25, k.q("part"))), ["part"]),
    holes: { ...F.holes, default: 7, most: 15, odd: true },
    holePitch: { ...F.holePitch, default: from(["width", ...PITCH], (k) => least(defaultPitch(k.q("width")), mostPitch(k))), most: from(PITCH, (k) => mostPitch(k)) },
    toTip: {
      ...F.toTip,
      least: from(["point", "width", "holeSize", "keeperFar"], (k) => greatest(F.toTip.least.of(k), sum(k.q("keeperFar"), 1))),
      most: from(["point", "width", "keeperFar"], (k) => sum(F.toTip.default.of(k), 150)),
    },
    length: { ...F.length, handed: true, default: from(["part"], (k) => k.q("part")), least: from([...LENGTH_NAMES, "used"], (k) => (k.flag("used") ? leastLength(k) : NO_STRAP)) },
  } as const satisfies DimensionTable,
  [...NEVER, "feather", "rightTurnBack"],
);

const fixed = { kind: "choice", choices: FIXED_ENDS, default: "riveted", means: "how it is fixed to the bag", source: COMMON } as const;
const byFixed = { default: from<string>(["fixed"], (k) => k.choice("fixed")) } as const;

export const strapTabTable = hidden(
  {
    ...F,
    ...NO_KEEPER,
    fixed,
    leftEnd: { ...F.leftEnd, default: "ring" },
    rightEnd: { ...F.rightEnd, ...byFixed },
    leftTurnBack: turnBack("left", (k) => sum(F.leftTurnBack.least.of(k), 40), []),
    length: {
      kind: "length",
      default: from(LENGTH_NAMES, (k) => roundedUp(leastLength(k), 0.5)),
      least: F.length.least,
      most: from(LENGTH_NAMES, (k) => sum(leastLength(k), 80)),
      means: "from the ring to where the tab is fixed first",
      source: COMMON,
    },
  } as const satisfies DimensionTable,
  [...NEVER, ...BILLET, "feather", "rightTurnBack"],
);

const leastApart = (k: Known): Quantity => sum(k.q("width"), 10);
const handleRadius = (k: Known): Quantity => least(60, times(0.45, k.q("handDrop")));
const OVER_HAND = ["apart", "handDrop", "fixedBelow", "gripRadius", "thickness", "neutral"];

/** Over the hand, from where it is fixed on one side to the other. */
const handleLength = (k: Known): Quantity =>
  overRound({ label: "handle", apart: k.q("apart"), drop: sum(k.q("handDrop"), k.q("fixedBelow")), radius: k.q("gripRadius"), thickness: k.q("thickness"), neutral: k.q("neutral") });

export const handleTable = hidden(
  {
    ...F,
    ...NO_KEEPER,
    fixed,
    leftEnd: { ...F.leftEnd, ...byFixed },
    rightEnd: { ...F.rightEnd, ...byFixed },
    bagWidth: { ...HANDED_LENGTH, means: "width of the bag" },
    bagHeight: { ...HANDED_LENGTH, means: "height of the bag" },
    handDrop: { ...HANDED_LENGTH, means: "hand drop" },
    apart: {
      kind: "length",
      default: from(["bagWidth", "width"], (k) => greatest(times(0.4, k.q("bagWidth")), leastApart(k))),
      least: from(["width"], (k) => leastApart(k)),
      most: from(["bagWidth", "width"], (k) => greatest(times(0.7, k.q("bagWidth")), leastApart(k))),
      means: "between the middles of a handle's two ends",
      source: COMMON,
    },
    fixedBelow: {
      kind: "length",
      default: from(["bagHeight"], (k) => least(20, mostBelow(k))),
      least: 12,
      most: from(["bagHeight"], (k) => mostBelow(k)),
      means: "from the bag's top edge down to where a handle is fixed first",
      source: COMMON,
    },
    gripRadius: {
      kind: "length",
      default: from(["handDrop"], (k) => least(20, handleRadius(k))),
      least: 10,
      most: from(["handDrop"], (k) => handleRadius(k)),
      means: "radius of the round that a handle lies on, over the hand",
      source: COMMON,
    },
    length: { ...F.length, default: from(OVER_HAND, (k) => handleLength(k)) },
  } as const satisfies DimensionTable,
  [...NEVER, ...BILLET, "feather", "leftTurnBack", "rightTurnBack", "length"],
);
