import { type DimensionTable, from, type Known, type Values } from "../model/dimension.ts";
import { greatest, least, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { defaultPitch, defaultToTip } from "../trade/balance.ts";
import { type BitEnd, type BitEndInput, bitEnd } from "../trade/bitEnd.ts";
import { type BuckleEnd, type BuckleEndInput, buckleEnd } from "../trade/buckleEnd.ts";
import { type FixedEnd, type FixedEndInput, type FixedKind, fixedEnd } from "../trade/fixedEnd.ts";
import { type LoopEnd, type LoopEndInput, loopEnd, strapAsBar } from "../trade/loopEnd.ts";
import { POINTS, type PointKind, pointLength } from "../trade/points.ts";
import { handedBuckle, handedFixing, handedLeather, handedStitching } from "../trade/tables.ts";
import { defaultWrapThickness, type Legs } from "../trade/turnBack.ts";

// What may be set of a strap, and the ends that its bounds depend on.

const COMMON = "common practice, no source";

/** Ends of a strap by itself. */
export const STRAP_ENDS = ["billet", "buckle", "ring", "loop", "plain", "riveted"] as const;
/** And those that need another piece: a box of stitches goes through both. */
const ALL_ENDS = [...STRAP_ENDS, "stitched"] as const;

const BASE = {
  ...handedLeather,
  ...handedBuckle,
  ...handedFixing,
  ...handedStitching,
  ring: { kind: "length", least: 2, most: 20, handed: true, means: "diameter of the ring's wire", source: "hardware" },
  skiveTo: { kind: "thickness", optional: true, least: 0.8, most: 8, handed: true, means: "thickness left in a fold", source: "leather" },
  keeperBreadth: { kind: "length", optional: true, least: 5, most: 40, handed: true, means: "breadth of the fixed keeper", source: "pieces.keeper" },
  keeperCaught: { kind: "thickness", optional: true, least: 0, most: 10, handed: true, means: "thickness of the keeper's ends between the legs", source: "pieces.keeper" },
  width: { kind: "length", least: 6, most: 80, handed: true, means: "width of the strap", source: "strap" },
  leftEnd: { kind: "choice", choices: ALL_ENDS, handed: true, means: "the left end", source: "measures" },
  rightEnd: { kind: "choice", choices: ALL_ENDS, handed: true, means: "the right end", source: "measures" },
  feather: { kind: "length", default: 8, least: 3, most: 20, means: "length of a turn-back's thinned end", source: COMMON },
  around: { kind: "length", default: from(["width"], (k) => k.q("width")), least: 6, most: 120, means: "width of the strap that a loop goes round", source: COMMON },
  aroundThickness: {
    kind: "length",
    default: from(["thickness"], (k) => k.q("thickness")),
    least: 1,
    most: from(["around"], (k) => least(20, k.q("around"))),
    means: "thickness of the strap that a loop goes round",
    source: COMMON,
  },
} as const satisfies DimensionTable;

/** What may be set of an end that is fixed flat to another piece. */
const FIXED = {
  rivets: { kind: "count", default: 2, least: 1, most: 2, means: "rivets or screws in line at a riveted end", source: COMMON },
  boxLength: {
    kind: "length",
    default: from(["width", "pitch"], (k) => greatest(k.q("width"), lengthOf(times(3, k.q("pitch"))))),
    least: from(["pitch"], (k) => lengthOf(times(2, k.q("pitch")))),
    most: from(["width", "pitch"], (k) => greatest(times(2, k.q("width")), lengthOf(times(4, k.q("pitch"))))),
    means: "length of the box of stitches at a stitched end",
    source: COMMON,
  },
  endCorner: {
    kind: "length",
    default: from(["width", "inset", "leftEnd", "rightEnd"], (k) => least(3, mostCorner(k))),
    least: 0,
    most: from(["width", "inset", "leftEnd", "rightEnd"], (k) => mostCorner(k)),
    means: "radius of a fixed end's corners; 0 leaves them square",
    source: COMMON,
  },
  throughSlot: { kind: "flag", default: false, handed: true, means: "goes through a slot before it is fixed", source: "bag" },
} as const satisfies DimensionTable;

const lengthOf = (q: Quantity): Quantity => ({ ...q, kind: "length" });

/** A round that is larger than the seam's inset would come too near the corner of the box. */
const mostCorner = (k: Known): Quantity => ([k.choice("leftEnd"), k.choice("rightEnd")].includes("stitched") ? least(k.q("inset"), over(k.q("width"), 2)) : over(k.q("width"), 2));

const BASE_NAMES = Object.keys(BASE);
const FIXED_NAMES = Object.keys(FIXED);
type FixedValues = Values<typeof FIXED>;
/** The values that ends are worked from; a strap by itself has none of the fixed ends' own. */
type BaseValues = Values<typeof BASE> & { readonly [K in keyof FixedValues]?: FixedValues[K] };
const CHOICES = ["leftEnd", "rightEnd", "fixing"];

const fixedOf = (k: Known): Partial<FixedValues> => {
  const [rivets, boxLength] = [k.q("rivets"), k.q("boxLength")];
  return { rivets, boxLength, throughSlot: k.flag("throughSlot") };
};

const baseOf = (k: Known): BaseValues => Object.fromEntries(BASE_NAMES.map((n) => [n, CHOICES.includes(n) ? k.choice(n) : k.maybe(n)])) as unknown as BaseValues;

export type Side = "left" | "right";

function legsOf(d: BaseValues, side: Side, bar: Quantity): Legs {
  const wrap = named(`${side} fold thickness`, d.skiveTo ?? defaultWrapThickness(d.thickness, bar, d.neutral), { kind: "thickness" });
  return { label: `${side} end`, neutral: d.neutral, front: d.thickness, back: wrap, wrap, caught: 0 };
}

const buckleInput = (d: BaseValues, side: Side, length?: Quantity): BuckleEndInput => ({
  label: `${side} end`,
  bar: d.buckleBar,
  legs: legsOf(d, side, d.buckleBar),
  tongue: { thickness: d.tongue, breadth: d.tongueBreadth, open: d.tongueOpen },
  overhang: d.overhang,
  fixing: { kind: "stitched", pitch: d.pitch },
  ...(d.keeperBreadth && d.keeperCaught ? { keeper: { breadth: d.keeperBreadth, caught: d.keeperCaught, nextToBuckle: false } } : {}),
  feather: d.feather,
  ...(length ? { length } : {}),
});

const ringInput = (d: BaseValues, side: Side, length?: Quantity): BitEndInput => ({
  label: `${side} end`,
  ring: d.ring,
  legs: legsOf(d, side, d.ring),
  hole: d.fixingHole,
  head: d.head,
  spacing: d.fixingSpacing,
  ...(length ? { length } : {}),
});

function loopInput(d: BaseValues, side: Side, length?: Quantity): LoopEndInput {
  const legs = legsOf(d, side, d.aroundThickness);
  const around = strapAsBar(`${side} end`, d.around, d.aroundThickness, legs.wrap as Quantity);
  return { label: `${side} end`, around, legs, pitch: d.pitch, feather: d.feather, ...(length ? { length } : {}) };
}

const TWO: Quantity = { value: 2, kind: "count", parts: ["2"], inputs: [] };

const fixedInput = (d: BaseValues, side: Side, kind: FixedKind): FixedEndInput => ({
  label: `${side} end`,
  kind,
  width: d.width,
  thickness: d.thickness,
  hole: d.fixingHole,
  head: d.head,
  spacing: d.fixingSpacing,
  rivets: d.rivets ?? TWO,
  box: d.boxLength ?? d.width,
  inset: d.inset,
  pitch: d.pitch,
  ...(d.throughSlot ? { throughSlot: d.thickest } : {}),
});

/** An end as worked: what it adds beyond its fold, and how lengths are reckoned from it. */
export type WorkedEnd =
  | { readonly kind: "buckle"; readonly input: BuckleEndInput; readonly end: BuckleEnd }
  | { readonly kind: "ring"; readonly input: BitEndInput; readonly end: BitEnd }
  | { readonly kind: "loop"; readonly input: LoopEndInput; readonly end: LoopEnd }
  | { readonly kind: FixedKind; readonly input: FixedEndInput; readonly fixed: FixedEnd }
  | { readonly kind: "billet" | "plain" };

export function workEnd(d: BaseValues, side: Side, length?: Quantity): WorkedEnd {
  const kind = side === "left" ? d.leftEnd : d.rightEnd;
  if (kind === "buckle") return { kind, input: buckleInput(d, side, length), end: buckleEnd(buckleInput(d, side, length)) };
  if (kind === "ring") return { kind, input: ringInput(d, side, length), end: bitEnd(ringInput(d, side, length)) };
  if (kind === "loop") return { kind, input: loopInput(d, side, length), end: loopEnd(loopInput(d, side, length)) };
  if (kind === "riveted" || kind === "stitched") {
    const input = fixedInput(d, side, kind);
    return { kind, input, fixed: fixedEnd(input) };
  }
  return { kind };
}

/** Least length of a turn-back; an end that has none has no length to set. */
function leastTurnBack(k: Known, side: Side): Quantity {
  const e = workEnd(baseOf(k), side);
  return "end" in e ? e.end.leastLength : { value: 0, kind: "length", parts: [`the ${side} end has no turn-back`], inputs: [] };
}

const mostTurnBack = (k: Known, side: Side): Quantity => {
  const e = workEnd(baseOf(k), side);
  return "end" in e ? greatest(300, e.end.leastLength) : { value: 0, kind: "length", parts: [`the ${side} end has no turn-back`], inputs: [] };
};

export const dimensions = {
  ...BASE,
  reckoned: { kind: "choice", choices: ["in use", "fold to fold"], default: "in use", means: "the length is from bar or ring to the middle hole, or along the flat from fold or end to fold or end", source: COMMON },
  leftTurnBack: {
    kind: "length",
    optional: true,
    least: from(BASE_NAMES, (k) => leastTurnBack(k, "left")),
    most: from(BASE_NAMES, (k) => mostTurnBack(k, "left")),
    means: "length of the left turn-back on the flat, fold to end",
    source: COMMON,
  },
  rightTurnBack: {
    kind: "length",
    optional: true,
    least: from(BASE_NAMES, (k) => leastTurnBack(k, "right")),
    most: from(BASE_NAMES, (k) => mostTurnBack(k, "right")),
    means: "length of the right turn-back on the flat, fold to end",
    source: COMMON,
  },
  holes: { kind: "count", default: 5, least: 1, most: 25, means: "holes in a billet", source: COMMON },
  holePitch: {
    kind: "length",
    default: from(["width"], (k) => defaultPitch(k.q("width"))),
    least: from(["holeSize"], (k) => times(2, k.q("holeSize"))),
    most: 100,
    means: "from hole to hole",
    source: "P. N. Hasluck, Harness Making (1904), p. 51: a little more than the strap's width",
  },
  holeSize: {
    kind: "length",
    default: from(["tongue", "width"], (k) => least(sum(k.q("tongue"), 1), over(k.q("width"), 3))),
    least: 2,
    most: from(["width"], (k) => over(k.q("width"), 2.5)),
    means: "diameter of the buckle holes",
    source: COMMON,
  },
  point: { kind: "choice", choices: POINTS, default: "english", means: "shape of a billet's point", source: COMMON },
  keeperFar: { kind: "length", least: 0, most: 200, handed: true, means: "far edge of the last keeper from the bar", source: "pieces.keeper" },
  toTip: {
    kind: "length",
    default: from(["keeperFar", "point", "width"], (k) => defaultToTip(k.q("keeperFar"), pointLength(k.choice("point") as PointKind, k.q("width")), k.q("width"))),
    least: from(["point", "width", "holeSize"], (k) => sum(pointLength(k.choice("point") as PointKind, k.q("width")), times(1.5, k.q("holeSize")))),
    most: 400,
    means: "from the first hole to the tip",
    source: "P. N. Hasluck, Harness Making (1904), p. 51",
  },
  crease: { kind: "length", optional: true, least: 1, most: 8, means: "crease line from the edge; left out, none is drawn", source: "P. N. Hasluck, Harness Making (1904), p. 49: 1/8 in" },
  length: {
    kind: "length",
    least: from([...BASE_NAMES, "leftTurnBack", "rightTurnBack", "holes", "holePitch", "holeSize", "toTip", "reckoned"], (k) => leastStrap(k)),
    most: 4000,
    means: "length of the strap, reckoned as said",
    source: COMMON,
  },
} as const satisfies DimensionTable;

/** A strap that may be fixed flat to another piece. */
export const fixedDimensions = {
  ...dimensions,
  ...FIXED,
  length: { ...dimensions.length, least: from([...BASE_NAMES, ...FIXED_NAMES, "leftTurnBack", "rightTurnBack", "holes", "holePitch", "holeSize", "toTip", "reckoned"], (k) => leastStrap(k, fixedOf(k))) },
} as const satisfies DimensionTable;

/** Names that a bound on the length of a strap with fixed ends looks at. */
export const LENGTH_NAMES = fixedDimensions.length.least.inputs;

/** How far what an end holds reaches along the strap from its point of reckoning. */
function reachOf(e: WorkedEnd, holes: Quantity, pitch: Quantity, toTip: Quantity, inUse: boolean): Quantity {
  if ("end" in e) return { ...sum(e.end.length, 3), kind: "length" };
  if (e.kind === "plain") return { value: 0, kind: "length", parts: ["0"], inputs: [] };
  if ("fixed" in e) return inUse ? sum(e.fixed.past, 3) : sum(e.fixed.reach, e.fixed.past, 3);
  const row = times(minus(holes, 1), pitch);
  return { ...(inUse ? over(row, 2) : sum(row, toTip)), kind: "length" };
}

export function leastStrap(k: Known, fixed: Partial<FixedValues> = {}): Quantity {
  const d = { ...baseOf(k), ...fixed };
  const inUse = k.choice("reckoned") === "in use";
  const reach = (side: Side): Quantity => reachOf(workEnd(d, side, k.maybe(`${side}TurnBack`)), k.q("holes"), k.q("holePitch"), k.q("toTip"), inUse);
  return sum(reach("left"), reach("right"), greatest(10, times(2, k.q("holeSize"))));
}
