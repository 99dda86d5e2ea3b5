import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { asLength, greatest, least, minus, over, type Quantity, roundedUp, sum, times } from "../model/quantity.ts";
import { fixedDimensions as F, LENGTH_NAMES } from "../pieces/strap.ts";
import { defaultPitch } from "../trade/balance.ts";
import { type PointKind, pointLength } from "../trade/points.ts";
import { billetStrapTable, strapBuckleTable, strapTabTable } from "./bagStrapTables.ts";

// What may be set of the buckle that shuts a bag, of the tab that holds it and of the billet on the flap.

const COMMON = "common practice, no source";
const HANDED = { kind: "length", least: 0, most: 1000, handed: true, source: "measures" } as const;

/** Width of the closure's straps where there is room, and the least of any strap, mm. */
const USUAL_WIDTH_MM = 19;
const NARROWEST_MM = 9;
/** Leather on both sides of a rivet's head together, mm; common practice, no source. */
const BESIDE_HEAD_MM = 1;

/** Three holes wide, so that a hole keeps its distance from both edges, and wider than a head. */
const narrowest = (k: Known): Quantity => greatest(NARROWEST_MM, times(3, k.q("fixingHole")), sum(k.q("head"), BESIDE_HEAD_MM));
const WIDTH = ["fixingHole", "head"];

export const closureBuckleTable = {
  ...strapBuckleTable,
  bagWidth: { ...HANDED, means: "width of the bag" },
  // A thinner bar cracks leather that is skived as far as it may be.
  bar: { ...strapBuckleTable.bar, least: 2 },
  fixingHole: F.fixingHole,
  head: F.head,
  strapWidth: {
    kind: "length",
    default: from(WIDTH, (k) => greatest(USUAL_WIDTH_MM, narrowest(k))),
    least: from(WIDTH, (k) => narrowest(k)),
    most: from([...WIDTH, "bagWidth"], (k) => greatest(USUAL_WIDTH_MM, narrowest(k), least(50, over(k.q("bagWidth"), 3)))),
    means: "width of the tab and of the billet that shut the bag",
    source: COMMON,
  },
  frameLength: {
    kind: "length",
    default: from(["inside"], (k) => times(1, k.q("inside"))),
    least: from(["inside"], (k) => over(k.q("inside"), 3)),
    most: from(["inside"], (k) => times(1.5, k.q("inside"))),
    means: "from the bar's centre to the far side of the frame, which the flap stays clear of",
    source: COMMON,
  },
} as const satisfies DimensionTable;

const leastLength = (k: Known): Quantity => F.length.least.of(k);
const bagHeight = { ...HANDED, means: "height of the bag" } as const;

const { fixed: _, ...TAB } = strapTabTable;
/** A tab may always be so much longer than it must, mm. */
const TAB_ROOM_MM = 10;
const shortestTab = (k: Known): Quantity => roundedUp(leastLength(k), 0.5);

export const closureTabTable = {
  ...TAB,
  bagHeight,
  leftEnd: { ...F.leftEnd, default: "buckle" },
  rightEnd: { ...F.rightEnd, default: "riveted" },
  feather: F.feather,
  leftTurnBack: { ...F.leftTurnBack, most: from(F.leftTurnBack.least.inputs, (k) => sum(F.leftTurnBack.least.of(k), TAB_ROOM_MM)) },
  length: {
    kind: "length",
    default: from(LENGTH_NAMES, (k) => shortestTab(k)),
    least: F.length.least,
    most: from([...LENGTH_NAMES, "bagHeight"], (k) => greatest(sum(shortestTab(k), TAB_ROOM_MM), over(k.q("bagHeight"), 4))),
    means: "from the buckle's bar to the nearer rivet of the tab",
    source: COMMON,
  },
} as const satisfies DimensionTable;

const { part: _part, used: _used, ...BILLET } = billetStrapTable;

/** Free leather between the flap's end and the buckle's frame, mm; common practice, no source. */
export const FRAME_CLEAR_MM = 3;
/** From the rivet to the middle hole where there is room, mm; common practice, no source. */
const USUAL_BILLET_MM = 38;
/** What stands out beyond the buckle in the first hole, besides the point, mm; common practice, no source. */
const TAIL_MM = 10;

/** The flap's end stays over the buckle's frame. */
const pastFlap = (k: Known): Quantity => asLength(sum(minus(sum(k.q("flapRoom"), k.q("frameLength")), over(k.q("fixingSpacing"), 2), k.q("holeOffset")), FRAME_CLEAR_MM));
const shortestBillet = (k: Known): Quantity => greatest(leastLength(k), pastFlap(k));
const usualBillet = (k: Known): Quantity => roundedUp(greatest(shortestBillet(k), least(USUAL_BILLET_MM, over(k.q("bagHeight"), 4))), 0.5);
const BILLET_NAMES = [...LENGTH_NAMES, "flapRoom", "frameLength", "holeOffset"];

/** The row of holes takes a quarter of the bag's height at most. */
const mostPitch = (k: Known): Quantity => greatest(asLength(times(2, k.q("holeSize"))), asLength(over(over(k.q("bagHeight"), 4), greatest(1, minus(k.q("holes"), 1)))));
const PITCH = ["holeSize", "bagHeight", "holes"];

const shortestTail = (k: Known): Quantity => greatest(F.toTip.least.of(k), sum(k.q("keeperFar"), 1));
const usualTail = (k: Known): Quantity => greatest(shortestTail(k), sum(k.q("keeperFar"), TAIL_MM, pointLength(k.choice("point") as PointKind, k.q("width"))));
const TAIL = ["point", "width", "holeSize", "keeperFar"];

export const closureBilletTable = {
  ...BILLET,
  bagHeight,
  flapRoom: { ...HANDED, means: "from the middle of the flap's rivets to its end" },
  frameLength: { ...HANDED, means: "from the buckle's bar to the far side of its frame" },
  holeOffset: { ...HANDED, least: -10, most: 10, means: "where a hole in use lies beyond the bar's centre" },
  leftEnd: { ...F.leftEnd, default: "riveted" },
  rightEnd: { ...F.rightEnd, default: "billet" },
  leftTurnBack: { ...F.leftTurnBack, handed: true },
  holes: { ...F.holes, default: 3, most: 7, odd: true },
  holePitch: { ...F.holePitch, default: from(["width", ...PITCH], (k) => least(defaultPitch(k.q("width")), mostPitch(k))), most: from(PITCH, (k) => mostPitch(k)) },
  toTip: {
    ...F.toTip,
    default: from(TAIL, (k) => usualTail(k)),
    least: from(TAIL, (k) => shortestTail(k)),
    most: from([...TAIL, "bagHeight"], (k) => greatest(usualTail(k), sum(shortestTail(k), over(k.q("bagHeight"), 6)))),
    source: COMMON,
  },
  length: {
    kind: "length",
    default: from([...BILLET_NAMES, "bagHeight"], (k) => usualBillet(k)),
    least: from(BILLET_NAMES, (k) => shortestBillet(k)),
    most: from([...BILLET_NAMES, "bagHeight"], (k) => greatest(usualBillet(k), over(k.q("bagHeight"), 3))),
    means: "from the billet's lower rivet on the flap to its middle hole",
    source: COMMON,
  },
} as const satisfies DimensionTable;
