import { type DimensionTable, from } from "../model/dimension.ts";
import { sum, times } from "../model/quantity.ts";
import { defaultToTip } from "../trade/balance.ts";
import { POINTS, type PointKind, pointLength } from "../trade/points.ts";
import { handedFixing, handedLeather, widthForFixings } from "../trade/tables.ts";

// What may be set of a crown.

const COMMON = "common practice, no source";

export const dimensions = {
  ...handedLeather,
  ...handedFixing,
  width: {
    kind: "length",
    least: from(["buckles", "fixingHole"], (k) => widthForFixings(k.choice("buckles") !== "both cheeks", k.q("fixingHole"))),
    most: 90,
    handed: true,
    means: "width of the strap; three holes of the fixings where it goes round the bit",
    source: "straps",
  },
  buckles: { kind: "choice", choices: ["both cheeks", "near side only"], handed: true, means: "where it buckles", source: "straps" },
  holes: { kind: "count", least: 1, most: 25, handed: true, means: "holes in each end", source: "straps" },
  holePitch: { kind: "length", least: 4, most: 90, handed: true, means: "from hole to hole", source: "straps" },
  holeSize: { kind: "length", least: 2, most: 10, handed: true, means: "diameter of the buckle holes", source: "straps" },
  overPoll: { kind: "length", least: 500, most: 1500, handed: true, means: "bit ring to bit ring over the poll", source: "measures" },
  cheek: { kind: "length", least: 40, most: 700, handed: true, means: "ring to buckle bar", source: "pieces.cheek" },
  holeOffset: { kind: "length", least: -10, most: 10, handed: true, means: "hole in use beyond the bar", source: "hardware" },
  keeperFar: { kind: "length", least: 0, most: 150, handed: true, means: "far edge of the last keeper from the bar", source: "pieces.keeper" },
  lengthFactor: { kind: "ratio", least: 0.9, most: 1.1, handed: true, means: "allowance for stretch and shrinkage", source: "allowances" },
  ring: { kind: "length", least: 3, most: 20, handed: true, means: "diameter of the bit ring's wire", source: "hardware" },
  skiveTo: { kind: "thickness", optional: true, least: 0.8, most: 8, handed: true, means: "thickness left in a fold", source: "leather" },
  earFrom: { kind: "length", optional: true, least: -800, most: 800, handed: true, means: "near edge of the ear piece from the poll", source: "pieces.ear-piece" },
  earTo: { kind: "length", optional: true, least: -800, most: 800, handed: true, means: "off edge of the ear piece from the poll", source: "pieces.ear-piece" },
  point: { kind: "choice", choices: POINTS, default: "english", means: "shape of the points", source: COMMON },
  pointLength: {
    kind: "length",
    default: from(["point", "width"], (k) => pointLength(k.choice("point") as PointKind, k.q("width"))),
    least: from(["point", "width"], (k) => (fixedPoint(k.choice("point")) ? pointLength(k.choice("point") as PointKind, k.q("width")) : times(0.55, k.q("width")))),
    most: from(["point", "width"], (k) => (fixedPoint(k.choice("point")) ? pointLength(k.choice("point") as PointKind, k.q("width")) : times(3, k.q("width")))),
    means: "length of the points",
    source: COMMON,
  },
  toTip: {
    kind: "length",
    default: from(["keeperFar", "pointLength", "width"], (k) => defaultToTip(k.q("keeperFar"), k.q("pointLength"), k.q("width"))),
    least: from(["keeperFar", "pointLength"], (k) => sum(k.q("keeperFar"), k.q("pointLength"))),
    most: 300,
    means: "from the first hole to the tip",
    source: "P. N. Hasluck, Harness Making (1904), p. 51",
  },
  tip: { kind: "flag", default: false, means: "a metal tip with a nail through its middle", source: COMMON },
  tipNail: { kind: "length", default: 1.5, least: 1, most: 2.4, means: "hole for the tip's nail", source: COMMON },
  crease: { kind: "length", optional: true, least: 1, most: 8, means: "crease line from the edge; left out, none is drawn", source: "P. N. Hasluck, Harness Making (1904), p. 49" },
} as const satisfies DimensionTable;

/** Points whose length follows from the width alone. */
const fixedPoint = (kind: string): boolean => kind === "round" || kind === "clipped";
