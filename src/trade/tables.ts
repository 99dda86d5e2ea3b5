import type { DimensionTable } from "../model/dimension.ts";
import { from, type Known } from "../model/dimension.ts";
import { greatest, least, millimetres, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { marksFor, neutralFromTrial } from "./trialFold.ts";

// Dimensions that several tables share, declared once.

const COMMON = "common practice, no source";

/** One kind of leather in an order. */
export const leatherTable = (defaultThickness: number, most = 8, least = 1) =>
  ({
    thickness: { kind: "thickness", default: defaultThickness, least, most, means: "thickness as bought (say oz, iron or mm)", source: COMMON },
    skiveTo: { kind: "thickness", optional: true, least: 0.8, most: from(["thickness"], (k) => k.q("thickness")), means: "thickness left where it is folded; left out, each fold gets its own", source: COMMON },
    trialBar: { kind: "length", optional: true, least: 1.5, most: 20, means: "a trial fold of this leather, unskived: diameter of the bar", source: "measured" },
    trialHeldAt: { kind: "length", optional: true, least: from(["thickness", "trialBar"], (k) => heldFrom(k)), most: 80, means: "the trial's two marks from the bar's centre, where they meet", source: "measured" },
    trialMarks: {
      kind: "length",
      optional: true,
      least: from(TRIAL, (k) => trialMarks(k, LEAST_NEUTRAL, 5)),
      most: from(TRIAL, (k) => trialMarks(k, MOST_NEUTRAL, 200)),
      means: "the trial's two marks, apart on the flat",
      source: "measured",
    },
    neutral: {
      kind: "ratio",
      default: from(["thickness", "trialBar", "trialMarks", "trialHeldAt"], (k) => neutralOf(k)),
      least: LEAST_NEUTRAL,
      most: MOST_NEUTRAL,
      means: "where the leather neither stretches nor shrinks in a fold, from the flesh side",
      source: `${COMMON}; a trial fold measures your own`,
    },
  }) as const satisfies DimensionTable;

/** Where a neutral fibre may lie; beyond these a trial was misread. Common practice, no source. */
const LEAST_NEUTRAL = 0.3;
const MOST_NEUTRAL = 0.7;

const TRIAL = ["thickness", "trialBar", "trialHeldAt"];

/** The legs of a trial close well clear of its bar. */
function heldFrom(k: Known): Quantity {
  const bar = k.maybe("trialBar");
  return bar ? { ...sum(over(bar, 2), times(3, k.q("thickness"))), kind: "length" } : millimetres(5);
}

/** The marks of a trial whose leather bends at `neutral`; `otherwise` until the trial is known. */
function trialMarks(k: Known, neutral: number, otherwise: number): Quantity {
  const [bar, clamp] = [k.maybe("trialBar"), k.maybe("trialHeldAt")];
  return bar && clamp ? marksFor({ thickness: k.q("thickness"), bar, clamp }, neutral) : millimetres(otherwise);
}

/** The middle of the leather, unless a trial fold was measured. */
function neutralOf(k: Known): Quantity {
  const [bar, marks, clamp] = [k.maybe("trialBar"), k.maybe("trialMarks"), k.maybe("trialHeldAt")];
  if (bar && marks && clamp) return neutralFromTrial({ thickness: k.q("thickness"), bar, marks, clamp });
  return { value: 0.5, kind: "ratio", parts: ["0.5, the middle"], inputs: [] };
}

/** A strap as wide as the buckle keeps 3 mm of leather on both sides of the tongue's slot; mm. */
const BESIDE_TONGUE_MM = 8;

/** A buckle with one bar and one tongue. */
export const buckleTable = {
  inside: { kind: "length", default: 25.4 * 0.625, least: 9, most: 76.2, means: "inside width, which names the buckle", source: COMMON },
  bar: { kind: "length", default: 4, least: 1.5, most: 10, means: "diameter of the bar the strap folds round", source: COMMON },
  tongue: {
    kind: "length",
    default: from(["inside"], (k) => least(3, minus(k.q("inside"), BESIDE_TONGUE_MM))),
    least: 1,
    most: from(["inside"], (k) => least(8, minus(k.q("inside"), BESIDE_TONGUE_MM))),
    means: "thickness of the tongue",
    source: COMMON,
  },
  tongueBreadth: {
    kind: "length",
    default: from(["tongue"], (k) => sum(k.q("tongue"), 0.5)),
    least: 1,
    most: from(["inside"], (k) => minus(k.q("inside"), BESIDE_TONGUE_MM - 0.5)),
    means: "breadth of the tongue's eye along the bar",
    source: COMMON,
  },
  overhang: { kind: "length", default: 3, least: 0, most: 40, means: "how far the frame reaches over the strap beyond the bar", source: COMMON },
  holeOffset: { kind: "length", default: 0, least: -10, most: 10, means: "where a hole in use lies beyond the bar's centre, measured on your buckle", source: COMMON },
  open: { kind: "angle", default: Math.PI / 3, least: Math.PI / 9, most: Math.PI / 2, means: "angle left between the opened tongue and the strap", source: COMMON },
} as const satisfies DimensionTable;

/** The hole for a fixing, mm: its barrel and 0.2; common practice, no source. */
export const FIXING_ROOM_MM = 0.2;

/** No strap is narrower, mm. */
const NARROWEST_MM = 6;

/** Least width of a strap; three holes of the fixings, where those go through it. */
export const widthForFixings = (through: boolean, hole: Quantity): Quantity => (through ? greatest(NARROWEST_MM, times(3, hole)) : { value: NARROWEST_MM, kind: "length", parts: [`${NARROWEST_MM} mm`], inputs: [] });

/** Screws or rivets that hold; a strap is three holes wide where they go through a turn-back. */
export const fixingTable = {
  strapWidth: { kind: "length", least: 6, most: 90, handed: true, means: "width of the strap they go through", source: "hardware" },
  kind: { kind: "choice", choices: ["binding screw", "rivet"], default: "binding screw", means: "what goes through both legs", source: COMMON },
  barrel: {
    kind: "length",
    default: from(["strapWidth"], (k) => least(5, minus(over(k.q("strapWidth"), 3), FIXING_ROOM_MM))),
    least: 2,
    most: from(["strapWidth"], (k) => least(8, minus(over(k.q("strapWidth"), 3), FIXING_ROOM_MM))),
    means: "diameter of the screw's barrel or the rivet's shank",
    source: "from memory: a binding post's barrel is about 3/16 in",
  },
  head: { kind: "length", default: from(["barrel"], (k) => times(1.8, k.q("barrel"))), least: from(["barrel"], (k) => k.q("barrel")), most: 20, means: "diameter of the head", source: COMMON },
  spacing: { kind: "length", default: from(["head"], (k) => greatest(14, sum(k.q("head"), 4))), least: from(["head"], (k) => sum(k.q("head"), 4)), most: 40, means: "from one to the next", source: COMMON },
} as const satisfies DimensionTable;

export const stitchingTable = {
  pitch: {
    kind: "pitch",
    default: 25.4 / 8,
    least: 1.5,
    most: 6.5,
    means: "from hole to hole; say stitches per inch or mm",
    source: "P. N. Hasluck, Harness Making (1904), pp. 50, 68: 8 to the inch on small straps and bridles",
  },
  inset: { kind: "length", optional: true, least: 1.5, most: 8, means: "from the edge to the line of stitches", source: "P. N. Hasluck, Harness Making (1904), pp. 49, 54" },
} as const satisfies DimensionTable;

/** Leather that is glued on and not bent by itself, as for linings. */
export const thinLeatherTable = { thickness: { kind: "thickness", default: 1, least: 0.4, most: 3, means: "thickness as bought (say oz, iron or mm)", source: COMMON } } as const satisfies DimensionTable;

const STITCH_MODES = ["spread", "iron"] as const;
const STITCH_MARKS = ["awl slits", "round holes", "groove"] as const;

/** Stitching of a bag's seams. */
export const bagStitchingTable = {
  pitch: { kind: "pitch", default: 25.4 / 7, least: 1.5, most: 6.5, means: "from hole to hole; say stitches per inch or mm", source: COMMON },
  inset: { kind: "length", optional: true, least: 2, most: 6, means: "from the edge to the line of stitches; left out, it follows the leather", source: COMMON },
  mode: {
    kind: "choice",
    choices: STITCH_MODES,
    default: "spread",
    means: "spread: an awl's or wheel's pitch is shared evenly over each run; iron: the iron's pitch is kept and the left-over taken up before a corner",
    source: COMMON,
  },
  marks: { kind: "choice", choices: STITCH_MARKS, default: "awl slits", means: "how the stitches are marked", source: COMMON },
  holeSize: {
    kind: "length",
    default: from(["pitch"], (k) => least(1.2, times(0.4, { ...k.q("pitch"), kind: "length" }))),
    least: 0.6,
    most: from(["pitch"], (k) => over({ ...k.q("pitch"), kind: "length" }, 2)),
    means: "diameter of round stitch holes",
    source: COMMON,
  },
  backStitches: { kind: "count", default: 2, least: 0, most: 5, means: "stitches sewn back at each end of a seam", source: COMMON },
} as const satisfies DimensionTable;

export const allowancesTable = {
  stretch: { kind: "ratio", default: 0, least: 0, most: 0.06, means: "how much longer the straps grow in use", source: COMMON },
  casingShrinkage: { kind: "ratio", default: 0, least: 0, most: 0.06, means: "how much shorter the leather dries after casing", source: COMMON },
  edgeFinishing: { kind: "length", default: 0, least: 0, most: 2, means: "width lost in finishing both edges", source: COMMON },
  roughCut: { kind: "length", default: 0, least: 0, most: 15, means: "margin of the dashed rough-cut line round each piece", source: COMMON },
} as const satisfies DimensionTable;

/** What the leather of a piece hands to it. */
export const handedLeather = {
  thickness: { kind: "thickness", least: 0.8, most: 8, handed: true, means: "thickness of the leather", source: "leather" },
  thickest: { kind: "thickness", least: 0.8, most: 8, handed: true, means: "its thickest place", source: "leather" },
  neutral: { kind: "ratio", least: 0.3, most: 0.7, handed: true, means: "neutral fibre", source: "leather" },
} as const satisfies DimensionTable;

/** What a buckle hands to a strap end. */
export const handedBuckle = {
  buckleBar: { kind: "length", least: 1.5, most: 10, handed: true, means: "the buckle's bar", source: "hardware" },
  tongue: { kind: "length", least: 1, most: 8, handed: true, means: "thickness of the tongue", source: "hardware" },
  tongueBreadth: { kind: "length", least: 1, most: 80, handed: true, means: "breadth of the tongue", source: "hardware" },
  tongueOpen: { kind: "angle", least: Math.PI / 9, most: Math.PI / 2, handed: true, means: "angle of the opened tongue", source: "hardware" },
  overhang: { kind: "length", least: 0, most: 40, handed: true, means: "overhang of the buckle's frame", source: "hardware" },
} as const satisfies DimensionTable;

/** What the fixings of a turn-back hand to it. */
export const handedFixing = {
  fixing: { kind: "choice", choices: ["binding screw", "rivet"], handed: true, means: "screws or rivets", source: "hardware" },
  fixingHole: { kind: "length", least: 2, most: 8.2, handed: true, means: "hole for the fixing", source: "hardware" },
  head: { kind: "length", least: 2, most: 20, handed: true, means: "diameter of the fixing's head", source: "hardware" },
  fixingSpacing: { kind: "length", least: 6, most: 40, handed: true, means: "from one fixing to the next", source: "hardware" },
} as const satisfies DimensionTable;

export const handedStitching = {
  pitch: { kind: "pitch", least: 1.5, most: 6.5, handed: true, means: "stitch pitch", source: "stitching" },
  inset: { kind: "length", least: 1.5, most: 8, handed: true, means: "stitch line from the edge", source: "stitching" },
} as const satisfies DimensionTable;
