import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { asLength, greatest, least, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { handedLeather } from "../trade/tables.ts";

// What may be set of a patch pocket. Where it may lie on its panel is handed over as a rectangle that is
// clear of seams, folds and hardware, with corners cut off at its base.

const COMMON = "common practice, no source";

/** Nothing smaller is a pocket, mm. */
const LEAST_SIDE_MM = 20;
/** No side's run of stitches is shorter, mm. */
const LEAST_RUN_MM = 10;
/** The hem's sides lie this far inside the seam, so that only two layers are stitched; mm, common practice, no source. */
export const HEM_CLEAR_MM = 2;

const isHemmed = (k: Known): boolean => k.choice("top") === "hemmed";

/** Width that the panel's corners leave at the pocket's base. */
const widest = (k: Known): Quantity => minus(k.q("roomWidth"), times(2, greatest(minus(k.q("roomCorner"), k.q("rise")), 0)));
const leastRise = (k: Known): Quantity => greatest(minus(k.q("roomCorner"), over({ ...minus(k.q("roomWidth"), LEAST_SIDE_MM), kind: "length" }, 2)), 0);
const highest = (k: Known): Quantity => minus(k.q("roomTop"), k.q("roomBase"), k.q("rise"));

/** A thickness beside lengths. */
/** From the fold's outside to the hem's end: it must clear its own bend, and the slant of its sides. */
const leastHem = (k: Known): Quantity => sum(k.q("inset"), times(2, asLength(sum(k.q("hemFold"), k.q("thickness")))), HEM_CLEAR_MM + 2);

/** A hem of the roundest fold covers no more than half of the pocket. */
const leastHeight = (k: Known): Quantity =>
  isHemmed(k) ? greatest(LEAST_SIDE_MM, times(2, sum(k.q("inset"), times(4, asLength(k.q("thickness"))), HEM_CLEAR_MM + 2))) : greatest(LEAST_SIDE_MM, sum(times(2, k.q("inset")), LEAST_RUN_MM));
/** As high as leaves room for the lowest pocket. */
const highestBase = (k: Known): Quantity => minus(k.q("roomTop"), k.q("roomBase"), leastHeight(k));
/** A hem must be clear of the seam where it begins. */
const firstStitch = (k: Known): Quantity => (isHemmed(k) ? sum(k.q("inset"), HEM_CLEAR_MM) : k.q("inset"));
const PLACE = ["roomWidth", "roomCorner", "roomBase", "roomTop", "top", "inset", "thickness"];

export const dimensions = {
  ...handedLeather,
  where: { kind: "choice", choices: ["outside", "inside"], handed: true, means: "outside on the grain side of its panel, or inside", source: "bag" },
  inset: { kind: "length", least: 1.5, most: 8, handed: true, means: "stitch line from the edge", source: "stitching" },
  roomWidth: { kind: "length", least: 0, most: 600, handed: true, means: "width on the panel between its seams and folds", source: "bag" },
  roomBase: { kind: "length", least: -600, most: 600, handed: true, means: "lowest line on the panel that the pocket's base may lie on", source: "bag" },
  roomTop: { kind: "length", least: -600, most: 1200, handed: true, means: "highest line on the panel that the pocket's top may lie on", source: "bag" },
  roomCorner: { kind: "length", least: 0, most: 300, handed: true, means: "what the panel's corners take of that room, from its base", source: "bag" },
  top: { kind: "choice", choices: ["plain", "hemmed"], default: "plain", means: "its top edge: cut plain, or folded back and glued", source: COMMON },
  rise: {
    kind: "length",
    default: from(PLACE, (k) => greatest(leastRise(k), least(over(k.q("roomCorner"), 2), highestBase(k)))),
    least: from(["roomWidth", "roomCorner"], (k) => leastRise(k)),
    most: from(PLACE, (k) => highestBase(k)),
    means: "the pocket's base over the lowest line it may lie on",
    source: COMMON,
  },
  width: {
    kind: "length",
    default: from(["roomWidth", "roomCorner", "rise"], (k) => greatest(LEAST_SIDE_MM, times(0.8, widest(k)))),
    least: LEAST_SIDE_MM,
    most: from(["roomWidth", "roomCorner", "rise"], (k) => widest(k)),
    means: "finished width of the pocket",
    source: COMMON,
  },
  height: {
    kind: "length",
    default: from(["roomBase", "roomTop", "rise", "top", "inset", "thickness"], (k) => greatest(leastHeight(k), times(0.8, highest(k)))),
    least: from(["top", "inset", "thickness"], (k) => leastHeight(k)),
    most: from(["roomBase", "roomTop", "rise"], (k) => highest(k)),
    means: "finished height of the pocket, base to top edge",
    source: COMMON,
  },
  cornerRadius: {
    kind: "length",
    default: from(["width", "height"], (k) => least(10, over(k.q("width"), 4), over(k.q("height"), 4))),
    least: 0,
    most: from(["width", "height"], (k) => minus(least(over(k.q("width"), 2), over(k.q("height"), 2)), 2)),
    means: "radius of its lower corners",
    source: COMMON,
  },
  hemFold: {
    kind: "length",
    default: from(["thickness"], (k) => asLength(over(k.q("thickness"), 2))),
    least: 0,
    most: from(["thickness"], (k) => asLength(k.q("thickness"))),
    means: "inner radius of the hem's fold",
    source: COMMON,
  },
  hem: {
    kind: "length",
    default: from(["inset", "hemFold", "thickness", "height"], (k) => greatest(leastHem(k), least(12, over(k.q("height"), 2)))),
    least: from(["inset", "hemFold", "thickness"], (k) => leastHem(k)),
    most: from(["inset", "hemFold", "thickness", "height"], (k) => greatest(leastHem(k), over(k.q("height"), 2))),
    means: "depth of the hem, finished",
    source: COMMON,
  },
  seamStart: {
    kind: "length",
    default: from(["top", "inset"], (k) => firstStitch(k)),
    least: from(["top", "inset"], (k) => firstStitch(k)),
    most: from(["top", "inset", "height", "cornerRadius"], (k) => greatest(firstStitch(k), least(over(k.q("height"), 2), minus(k.q("height"), greatest(k.q("cornerRadius"), k.q("inset")), LEAST_RUN_MM)))),
    means: "from its top edge to the first stitch",
    source: COMMON,
  },
} as const satisfies DimensionTable;

const anything = (value: number): Quantity => ({ value, kind: "length", parts: ["a bag without a pocket"], inputs: [] });

/** The room handed over where there is no pocket: its sizes then contradict nothing. */
export const NO_POCKET_ROOM = { roomWidth: anything(300), roomBase: anything(0), roomTop: anything(300), roomCorner: anything(0) } as const;
