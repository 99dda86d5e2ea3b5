import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { asLength, greatest, least, millimetres, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { MADE } from "./bagKinds.ts";
import { inwardFold, STEEPEST_TAPER } from "./gusset.ts";
import { handedLeather } from "./tables.ts";

// What may be set of what joins a bag's front and back: a strip, side gussets or end panels.

const COMMON = "common practice, no source";

const BASE = {
  ...handedLeather,
  made: { kind: "choice", choices: MADE, handed: true, means: "how front and back are joined", source: "bag" },
  bodyThickness: { kind: "thickness", least: 0.5, most: 8, handed: true, means: "thickness of the body's leather", source: "leather" },
  bodyNeutral: { kind: "ratio", least: 0.3, most: 0.7, handed: true, means: "neutral fibre of the body's leather", source: "leather" },
  depth: { kind: "length", least: 4, most: 400, handed: true, means: "between the inner faces of front and back, at the base", source: "measures" },
  height: { kind: "length", least: 10, most: 700, handed: true, means: "from the base's inner face to the top edge", source: "measures" },
  insideWidth: { kind: "length", least: 4, most: 900, handed: true, means: "inside width of the bag", source: "measures" },
  baseFold: { kind: "length", least: 0, most: 200, handed: true, means: "inner radius of a wrap-round body's folds at the base", source: "pieces.body" },
  inset: { kind: "length", least: 1.5, most: 20, handed: true, means: "stitch line from the finished edge; from the cut edge where it is turned", source: "stitching" },
  allowance: { kind: "length", least: 0, most: 20, handed: true, means: "from a turned seam to the cut edge", source: "bag" },
  flange: { kind: "length", least: 0, most: 30, handed: true, means: "from the finished edge to the gusset's web", source: "bag" },
  wetMoulded: { kind: "flag", default: false, handed: true, means: "the gusset is wet-moulded round the corners", source: "bag" },
  seamStart: { kind: "length", least: 0, most: 200, handed: true, means: "from the top edge to the first stitch", source: "pieces.body" },
  sideRun: { kind: "length", least: 0, most: 900, handed: true, means: "length of the seam's straight sides below the first stitch", source: "pieces.body" },
} as const satisfies DimensionTable;

const isFlanged = (k: Known): boolean => k.choice("made") === "flanged gusset" || k.choice("made") === "side gussets";
const twoThick = (k: Known): Quantity => asLength(times(2, k.q("thickness")));

/** A web narrower than this between its folds can't be folded, mm; a fold sharper than this cracks. Common practice, no source. */
const LEAST_WEB_MM = 2;
const LEAST_FOLD_MM = 0.1;
/** Flat leather between the stitches and the flange's fold, mm, and what a side gusset's end stitches keep from their notch. */
const BESIDE_FOLD_MM = 1;
const BESIDE_NOTCH_MM = 1.5;

const FOLD_INPUTS = ["made", "thickness", "flange", "inset", "depth", "baseFold"];

/** The widest fold that leaves the flange flat under its stitches, and a web between two folds. */
function mostFold(k: Known): Quantity {
  if (!isFlanged(k)) return twoThick(k);
  const inWeb = asLength(over(minus(k.q("depth"), twoThick(k), LEAST_WEB_MM), 2));
  const inFlange = minus(k.q("flange"), k.q("inset"), BESIDE_FOLD_MM);
  const inBend = k.choice("made") === "side gussets" ? [minus(k.q("baseFold"), asLength(times(1, k.q("thickness"))), BESIDE_NOTCH_MM)] : [];
  return greatest(least(twoThick(k), inWeb, inFlange, ...inBend), LEAST_FOLD_MM);
}

/** What the width changes by at most over the straight sides, on both edges. */
function mostTaper(k: Known): Quantity {
  const run = k.choice("made") === "side gussets" ? minus(k.q("height"), k.q("baseFold")) : sum(k.q("sideRun"), k.q("seamStart"));
  return asLength(times(2 * STEEPEST_TAPER, greatest(run, 0)));
}

/** Narrowest top of a turned gusset, mm; common practice, no source. */
const LEAST_TOP_MM = 6;

function leastTop(k: Known): Quantity {
  if (k.choice("made") === "end panels") return k.q("depth");
  const web = isFlanged(k) ? sum(twoThick(k), times(2, k.q("flangeFold")), LEAST_WEB_MM) : millimetres(LEAST_TOP_MM);
  return least(k.q("depth"), greatest(web, minus(k.q("depth"), mostTaper(k))));
}

const mostTop = (k: Known): Quantity => (k.choice("made") === "end panels" ? k.q("depth") : asLength(sum(k.q("depth"), mostTaper(k))));

/** What two folds leave between them in the shut bag, mm, half on each side; how steeply a fold may lean. Common practice, no source. */
const FOLDS_APART_MM = 3;
const STEEPEST_LEAN = 0.6;

/** True when a side gusset has room to fold in. */
function foldsIn(k: Known): boolean {
  const fold = inwardFold(k.q("topWidth"), sum(twoThick(k), 2)).value;
  return k.choice("made") === "side gussets" && fold <= k.q("insideWidth").value / 2 - FOLDS_APART_MM && fold <= STEEPEST_LEAN * k.q("height").value;
}

export const dimensions = {
  ...BASE,
  flangeFold: {
    kind: "length",
    default: from(FOLD_INPUTS, (k) => least(asLength(times(0.5, k.q("thickness"))), mostFold(k))),
    least: LEAST_FOLD_MM,
    most: from(FOLD_INPUTS, (k) => mostFold(k)),
    means: "inner radius of the fold between web and flange",
    source: COMMON,
  },
  topWidth: {
    kind: "length",
    default: from(["depth"], (k) => k.q("depth")),
    least: from(["made", "depth", "thickness", "flangeFold", "height", "baseFold", "sideRun", "seamStart"], (k) => leastTop(k)),
    most: from(["made", "depth", "height", "baseFold", "sideRun", "seamStart"], (k) => mostTop(k)),
    means: "width between the inner faces of front and back at the top; it tapers over the straight sides",
    source: COMMON,
  },
  trim: {
    kind: "length",
    default: 0,
    least: 0,
    most: from(["made"], (k) => (isFlanged(k) ? millimetres(6) : millimetres(0, "nothing: no flange to trim"))),
    means: "flanges are cut this much wider, and trimmed flush after stitching",
    source: COMMON,
  },
  glueWidth: {
    kind: "length",
    default: from(["made", "inset"], (k) => (isFlanged(k) ? minus(k.q("inset"), 1) : millimetres(0, "nothing: no flange to glue"))),
    least: 0,
    most: from(["made", "inset"], (k) => (isFlanged(k) ? k.q("inset") : millimetres(0, "nothing: no flange to glue"))),
    means: "width of the glue along a flange's edge; 0 for none",
    source: COMMON,
  },
  clipSpacing: { kind: "length", default: 8, least: 3, most: 15, means: "the clips in a turned allowance are this far apart at most; 15 degrees apart where that is less", source: COMMON },
  inwardFold: { kind: "flag", default: from(["made", "topWidth", "thickness", "insideWidth", "height"], (k) => foldsIn(k)), means: "side gussets fold inward in their middle when the bag is shut", source: COMMON },
} as const satisfies DimensionTable;
