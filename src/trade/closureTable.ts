import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { greatest, least, minus, over, type Quantity, root, square, sum, times } from "../model/quantity.ts";
import { handedFixing } from "./tables.ts";

// What may be set of a bag's closure. Each kind uses its own sizes and leaves the rest alone.

const COMMON = "common practice, no source";

export const CLOSURES = ["none", "press stud", "magnetic snap", "turn lock", "strap and buckle", "tuck-in tongue"] as const;
export type ClosureKind = (typeof CLOSURES)[number];

/** A prong's slit is wider than the prong by this, mm; common practice, no source. */
const PRONG_ROOM_MM = 0.5;
/** A narrower slit can't be drawn and cut as a shape of its own, mm; washer, disc and plate cover it. */
const NARROWEST_SLIT_MM = 1.4;

/** Width of the slit that a prong goes through. */
export const prongSlotWidth = (prongThickness: Quantity): Quantity => greatest(NARROWEST_SLIT_MM, { ...sum(prongThickness, PRONG_ROOM_MM), kind: "length" });

/** Holes of a stud grow with its cap: 3.6 mm for line 20, 4.3 mm for line 24; between the sizes of punches for them, from memory. */
const HOLE_SHARE = 0.285;
const STUD_HOLES = "from memory: a hole of 1/8 to 5/32 in for line 20, 5/32 to 3/16 in for line 24";
const SNAP = "from memory: discs of 14 and 18 mm with two prongs";
const LOCK = "from memory: an oblong plate of about 35 by 18 mm with prongs at its ends";

/** An opening's end to the middle of a prong's slit, and on to the plate's end: each one and a half slit widths at least. */
const plateAdds = (k: Known): Quantity => times(6, prongSlotWidth(k.q("prongThickness")));

const isLock = (k: Known): boolean => k.choice("closure") === "turn lock";

export const closureTable = {
  ...handedFixing,
  closure: { kind: "choice", choices: CLOSURES, handed: true, means: "what holds the flap shut", source: "bag" },
  cap: {
    kind: "length",
    default: 12.7,
    least: 7.5,
    most: 26,
    means: "press stud: diameter of its cap; a stud's line is its cap, 40 lines to the inch",
    source: "sizes.com, Buttons: line 20 is 1/2 in; hammeranddye.com, How to set snaps: line 20 for 1 to 2.5 mm",
  },
  capHole: {
    kind: "length",
    default: from(["cap"], (k) => times(HOLE_SHARE, k.q("cap"))),
    least: 2,
    most: from(["cap"], (k) => over(k.q("cap"), 2)),
    means: "press stud: hole in the flap, for cap and socket",
    source: STUD_HOLES,
  },
  studHole: {
    kind: "length",
    default: from(["cap"], (k) => times(HOLE_SHARE, k.q("cap"))),
    least: 2,
    most: from(["cap"], (k) => over(k.q("cap"), 2)),
    means: "press stud: hole in the front, for the stud",
    source: STUD_HOLES,
  },
  disc: { kind: "length", default: 18, least: 10, most: 30, means: "magnetic snap: diameter of its discs", source: SNAP },
  prongThickness: { kind: "length", default: 0.6, least: 0.3, most: 1.5, means: "magnetic snap, turn lock: thickness of a prong", source: COMMON },
  openingLength: { kind: "length", default: 22, least: 8, most: 60, means: "turn lock: length of the opening in the flap, across the bag", source: LOCK },
  openingWidth: {
    kind: "length",
    default: from(["openingLength"], (k) => times(0.4, k.q("openingLength"))),
    least: 3,
    most: from(["openingLength"], (k) => minus(k.q("openingLength"), 2)),
    means: "turn lock: width of the opening",
    source: LOCK,
  },
  plateLength: {
    kind: "length",
    default: from(["openingLength", "prongThickness"], (k) => sum(k.q("openingLength"), greatest(12, plateAdds(k)))),
    least: from(["openingLength", "prongThickness"], (k) => sum(k.q("openingLength"), plateAdds(k))),
    most: 90,
    means: "turn lock: length of the plate round the opening; its prongs are half way to its ends",
    source: LOCK,
  },
  plateWidth: {
    kind: "length",
    default: from(["openingWidth"], (k) => sum(k.q("openingWidth"), 10)),
    least: from(["openingWidth"], (k) => sum(k.q("openingWidth"), 3)),
    most: 80,
    means: "turn lock: width of the plate",
    source: LOCK,
  },
  baseLength: { kind: "length", default: from(["plateLength"], (k) => k.q("plateLength")), least: 10, most: 90, means: "turn lock: length of the button's base on the front", source: LOCK },
  baseWidth: { kind: "length", default: from(["plateWidth"], (k) => k.q("plateWidth")), least: 5, most: 80, means: "turn lock: width of the button's base", source: LOCK },
  prongSpacing: {
    kind: "length",
    default: from(["closure", "disc", "baseLength"], (k) => (isLock(k) ? times(0.6, k.q("baseLength")) : over(k.q("disc"), 2))),
    least: from(["prongThickness"], (k) => times(2.5, prongSlotWidth(k.q("prongThickness")))),
    most: from(["closure", "disc", "baseLength"], (k) => minus(isLock(k) ? k.q("baseLength") : k.q("disc"), 4)),
    means: "magnetic snap, turn lock's button: from prong to prong, across the bag",
    source: SNAP,
  },
  prongBreadth: {
    kind: "length",
    default: from(["closure", "disc", "prongSpacing", "prongThickness", "baseWidth", "plateWidth"], (k) => least(4, widestProng(k))),
    least: 3,
    most: from(["closure", "disc", "prongSpacing", "prongThickness", "baseWidth", "plateWidth"], (k) => widestProng(k)),
    means: "magnetic snap, turn lock: breadth of a prong",
    source: SNAP,
  },
  slotRoom: { kind: "length", default: 1, least: 0, most: 8, means: "tuck-in tongue: further room in the length of its slot", source: COMMON },
  tuck: { kind: "length", default: 25, least: 12, most: 60, means: "tuck-in tongue: how much of the tongue goes through the slot", source: COMMON },
} as const satisfies DimensionTable;

/** A slit is longer than its prong is broad by at most this, mm: its room and its round ends. */
const SLIT_ADDS_MM = 1.2;

/** Slits lie wholly under the disc, or under plate and base. */
function widestProng(k: Known): Quantity {
  if (isLock(k)) return minus(least(k.q("baseWidth"), k.q("plateWidth")), SLIT_ADDS_MM);
  const over = { ...sum(k.q("prongSpacing"), prongSlotWidth(k.q("prongThickness"))), kind: "length" } as const;
  return minus({ ...root(minus(square(k.q("disc")), square(over))), kind: "length" }, SLIT_ADDS_MM);
}
