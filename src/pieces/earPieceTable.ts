import { type DimensionTable, from, type Known, type Values } from "../model/dimension.ts";
import { cosine, greatest, least, minus, named, over, type Quantity, root, sine, square, sum, times } from "../model/quantity.ts";
import { bandChord, bandRadius, defaultEase, openingPerimeter, ovalHalfWidth } from "../trade/earLoop.ts";
import { slotLength, weavingSlotWidth } from "../trade/slot.ts";
import { handedLeather } from "../trade/tables.ts";

// What may be set of an ear piece, and where its opening, slots and tabs lie.

const COMMON = "common practice, no source";

/** A slot's round end keeps its own width of leather beyond it: 1.5 diameters from its centre to an edge. */
export const EDGE_DIAMETERS = 1.5;
/** A hair over the rule, so that rounding can't undercut it, mm. */
const EDGE_SPARE_MM = 0.1;

/** Least distance between the ear piece and the crown's innermost hole, mm; common practice, no source. */
export const HOLE_CLEAR_MM = 10;

/** What places the opening, the slots and the tabs. */
const FRAME_NAMES = ["thickness", "crownThickness", "crownWidth", "earBase", "ease", "shape", "spread", "slenderness", "weave"] as const;

export const dimensions = {
  ...handedLeather,
  earBase: { kind: "length", least: 80, most: 450, handed: true, means: "round the base of the ear", source: "measures" },
  overPoll: { kind: "length", least: 500, most: 1500, handed: true, means: "bit ring to bit ring over the poll", source: "measures" },
  crownWidth: { kind: "length", least: 6, most: 90, handed: true, means: "width of the crown", source: "straps" },
  crownThickness: { kind: "thickness", least: 1, most: 8, handed: true, means: "thickest place of the crown", source: "leather" },
  shape: { kind: "choice", choices: ["band", "oval"], default: "band", means: "a band closed by the crown, or a closed oval", source: COMMON },
  ease: { kind: "length", default: from(["earBase"], (k) => defaultEase(k.q("earBase"))), least: 15, most: 120, means: "room added to the ear's girth", source: COMMON },
  spread: { kind: "angle", default: (240 * Math.PI) / 180, least: (200 * Math.PI) / 180, most: (280 * Math.PI) / 180, means: "how far round the band goes", source: COMMON },
  slenderness: { kind: "ratio", default: 1.4, least: 1, most: 2.5, means: "length of an oval over its width", source: COMMON },
  band: { kind: "length", default: 18, least: 12, most: 25, means: "width of the band round the ear", source: COMMON },
  ear: { kind: "choice", choices: ["right", "left"], default: "right", means: "the horse's right or left ear", source: COMMON },
  innermost: { kind: "length", least: 0, most: 800, handed: true, means: "the crown's innermost hole from the poll", source: "straps" },
  offset: {
    kind: "length",
    default: from([...FRAME_NAMES, "overPoll", "innermost"], (k) => greatest(0, least(times(0.06, k.q("overPoll")), farthestOffset(k)))),
    least: 0,
    most: from([...FRAME_NAMES, "innermost"], (k) => greatest(0, farthestOffset(k))),
    means: "from the poll's middle to the middle of the ear",
    source: "half of 121 mm between the ears of a horse of ordinary size (Darehshori horses, n = 20)",
  },
  weave: { kind: "angle", default: Math.PI / 4, least: Math.PI / 6, most: Math.PI / 3, means: "slope at which the crown weaves through the slots", source: COMMON },
} as const satisfies DimensionTable;

export type EarValues = Values<typeof dimensions>;
type FrameValues = Pick<EarValues, (typeof FRAME_NAMES)[number]>;

/** The furthest that the ear piece may lie from the poll, clear of the crown's holes. */
function farthestOffset(k: Known): Quantity {
  const d = Object.fromEntries(FRAME_NAMES.map((n) => [n, n === "shape" ? k.choice(n) : k.q(n)])) as unknown as FrameValues;
  return minus(k.q("innermost"), HOLE_CLEAR_MM, frameOf(d).out);
}

export type Frame = {
  readonly slotWidth: Quantity;
  readonly slotLength: Quantity;
  /** Half of the opening where it meets the crown's edge. */
  readonly half: number;
  /** Slots' middles, the tabs' outer ends and their half height. */
  readonly slotAt: Quantity;
  readonly out: Quantity;
  readonly tabHalf: number;
  /** Centre of the opening's round and its radius. */
  readonly centreY: number;
  readonly radius: number;
  readonly sizes: readonly Quantity[];
};

/** Works out where the opening, the slots and the tabs lie. */
export function frameOf(d: FrameValues): Frame {
  const perimeter = openingPerimeter(d.earBase, d.ease);
  const width = weavingSlotWidth("ear piece", d.crownThickness, d.thickness, d.weave);
  // The slot cuts the sloping crown across more than its thickness.
  const across = { ...over(d.crownThickness, sine(d.weave)), kind: "length" as const };
  const length = slotLength("ear piece", d.crownWidth, across, width);
  const edge = named("ear piece edge", sum(times(EDGE_DIAMETERS, width), EDGE_SPARE_MM), { source: "1.5 widths from a slot's end to an edge; common practice, no source" });
  const opening = d.shape === "band" ? bandOpening(d, perimeter) : ovalOpening(d, perimeter);
  const end = over(minus(length, width), 2);
  // The slot's upper end must clear the opening's round as well as the tab's inner edge.
  const rise = minus(opening.centreY, end);
  const clear = root(greatest(0, minus(square(sum(opening.radius, edge)), square(rise))));
  // The oval's slots lie below its sides, so that the foot is as wide as what it carries.
  const beside = d.shape === "band" ? sum(opening.half, edge) : opening.radius;
  const slotAt = named("ear piece slot from the middle", { ...(rise.value > 0 ? greatest(beside, clear) : beside), kind: "length" }, { kind: "length" });
  const out = named("ear piece half length", sum(slotAt, edge));
  return {
    slotWidth: width,
    slotLength: length,
    half: opening.half.value,
    slotAt,
    out,
    tabHalf: end.value + edge.value,
    centreY: opening.centreY.value,
    radius: opening.radius.value,
    sizes: [perimeter, ...opening.sizes, length, width, slotAt],
  };
}

type Opening = { readonly half: Quantity; readonly centreY: Quantity; readonly radius: Quantity; readonly sizes: readonly Quantity[] };

function bandOpening(d: FrameValues, perimeter: Quantity): Opening {
  const radius = bandRadius(perimeter, d.spread);
  const chord = bandChord(radius, d.spread);
  const centreY = minus(over(d.crownWidth, 2), times(radius, cosine(over(d.spread, 2))));
  return { half: over(chord, 2), radius, centreY: { ...centreY, kind: "length" }, sizes: [radius, chord] };
}

function ovalOpening(d: FrameValues, perimeter: Quantity): Opening {
  const radius = ovalHalfWidth(perimeter, d.slenderness);
  const length = named("ear opening length", times(2, d.slenderness, radius), { kind: "length" });
  return { half: times(0, radius), radius, centreY: sum(over(d.crownWidth, 2), radius), sizes: [radius, length] };
}
