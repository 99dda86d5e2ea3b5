import { type ArticleDefinition, section } from "../../src/articles/definition.ts";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { DimensionTable, Values } from "../../src/model/dimension.ts";
import { from } from "../../src/model/dimension.ts";
import type { Piece } from "../../src/model/piece.ts";
import { greatest, minus, named, over, sum, times } from "../../src/model/quantity.ts";

// A made-up belt with a keeper: every kind of dimension that an article can have, and no more.

const PRACTICE = "common practice, no source";

const measures = {
  waist: {
    kind: "length",
    least: 400,
    most: 1600,
    means: "round the waist, where the belt lies",
    source: PRACTICE,
  },
  height: {
    kind: "hands",
    optional: true,
    least: 600,
    most: 2000,
    means: "height of the horse, for the label",
    source: PRACTICE,
  },
} as const satisfies DimensionTable;

const strapLeather = {
  thickness: {
    kind: "thickness",
    default: (9 * 25.4) / 64,
    least: 1,
    most: 6.5,
    means: "thickness of the strap's leather",
    source: PRACTICE,
  },
  skiveTo: {
    kind: "thickness",
    default: from(["thickness"], (k) => times(0.6, k.q("thickness"))),
    least: 0.8,
    most: from(["thickness"], (k) => k.q("thickness")),
    means: "thickness in the fold after skiving",
    source: PRACTICE,
  },
} as const satisfies DimensionTable;

const hardware = {
  fixing: {
    kind: "choice",
    choices: ["stitched", "binding screw"],
    default: "stitched",
    means: "what holds the turn-back",
    source: PRACTICE,
  },
} as const satisfies DimensionTable;

const buckle = {
  inside: {
    kind: "length",
    default: 25.4,
    least: 8,
    most: 60,
    means: "inside width of the buckle",
    source: PRACTICE,
  },
  bar: { kind: "length", default: 4, least: 2, most: 12, means: "diameter of the bar", source: PRACTICE },
  overhang: {
    kind: "length",
    optional: true,
    least: 0,
    most: 30,
    means: "how far the frame reaches past the bar",
    source: PRACTICE,
  },
} as const satisfies DimensionTable;

const stitching = {
  pitch: {
    kind: "pitch",
    default: 25.4 / 8,
    least: 1.5,
    most: 8,
    means: "distance from stitch to stitch",
    source: PRACTICE,
  },
  slant: {
    kind: "angle",
    default: Math.PI / 4,
    least: 0,
    most: Math.PI / 2,
    means: "slant of the awl's slit to the seam",
    source: PRACTICE,
  },
} as const satisfies DimensionTable;

const strap = {
  insideWidth: {
    kind: "length",
    handed: true,
    least: 8,
    most: 60,
    means: "inside width of the buckle",
    source: "hardware.buckle",
  },
  waist: {
    kind: "length",
    handed: true,
    least: 400,
    most: 1600,
    means: "round the waist",
    source: "measures",
  },
  width: {
    kind: "length",
    default: from(["insideWidth"], (k) => k.q("insideWidth")),
    least: from(["insideWidth"], (k) => minus(k.q("insideWidth"), 2)),
    most: from(["insideWidth"], (k) => sum(k.q("insideWidth"), 0.3)),
    means: "width of the strap",
    source: "as wide as the buckle is inside",
  },
  holes: { kind: "count", default: 5, least: 1, most: 15, means: "holes to buckle in", source: PRACTICE },
  holePitch: {
    kind: "length",
    default: from(["width"], (k) => sum(k.q("width"), 3.175)),
    least: 8,
    most: 60,
    means: "from hole to hole",
    source: "the next 1/8 in over the strap's width (H31)",
  },
  tip: {
    kind: "length",
    default: from(["width", "holes", "holePitch"], (k) =>
      greatest(times(3.3, k.q("width")), times(0.5, k.q("holes"), k.q("holePitch"))),
    ),
    least: from(["width"], (k) => times(1.5, k.q("width"))),
    most: 400,
    means: "from the first hole to the tip",
    source: "3.3 widths (H30)",
  },
  point: {
    kind: "choice",
    choices: ["english", "round", "spear"],
    default: "english",
    means: "shape of the strap's end",
    source: PRACTICE,
  },
  creased: { kind: "flag", default: true, means: "a line pressed along both edges", source: PRACTICE },
  stretch: {
    kind: "ratio",
    default: 0.01,
    least: 0,
    most: 0.05,
    means: "how much the leather gives in use",
    source: PRACTICE,
  },
  stamp: { kind: "text", default: "", longest: 20, means: "letters stamped inside", source: "left blank" },
} as const satisfies DimensionTable;

const keeper = {
  strapWidth: {
    kind: "length",
    handed: true,
    least: 5,
    most: 70,
    means: "width of the strap",
    source: "pieces.strap",
  },
  breadth: {
    kind: "length",
    default: from(["strapWidth"], (k) => greatest(8, times(0.45, k.q("strapWidth")))),
    least: 6,
    most: from(["strapWidth"], (k) => k.q("strapWidth")),
    means: "breadth of the keeper",
    source: "0.45 widths, at least 8 mm (H21)",
  },
} as const satisfies DimensionTable;

export const MEASURES = section({
  path: "measures",
  label: "",
  title: "What was measured.",
  table: measures,
});
export const STRAP_LEATHER = section({
  path: "leather.strap",
  label: "leather",
  title: "The strap's leather.",
  table: strapLeather,
});
export const HARDWARE = section({
  path: "hardware",
  label: "hardware",
  title: "Metal parts, measured with a caliper.",
  table: hardware,
});
export const BUCKLE = section({
  path: "hardware.buckle",
  label: "buckle",
  title: "The buckle.",
  table: buckle,
});
export const STITCHING = section({
  path: "stitching",
  label: "stitch",
  title: "How it is stitched.",
  table: stitching,
});
export const STRAP = section({
  path: "pieces.strap",
  label: "strap",
  title: "The strap.",
  table: strap,
  handOver: (done) => ({ insideWidth: done.of(BUCKLE).inside, waist: done.of(MEASURES).waist }),
});
export const KEEPER = section({
  path: "pieces.keeper",
  label: "keeper",
  title: "The keeper.",
  table: keeper,
  handOver: (done) => ({ strapWidth: done.of(STRAP).width }),
});

/** A plain rectangle: the order's room never looks at a piece's shape. */
const flat = (id: string, length: number, width: number, thickness: number): Piece => ({
  id,
  name: id,
  count: 1,
  hand: "same",
  leather: { kind: "bridle", thickness, thickest: thickness },
  outline: rectanglePath([0, 0], length, width),
  corners: [],
  cutouts: [],
  holes: [],
  seams: [],
  folds: [],
  turnBacks: [],
  zones: [],
  marks: [],
  grain: 0,
  straight: true,
  controls: [],
  sizes: [],
  sections: [],
  notes: [],
});

const strapPiece = (v: Values<typeof strap>, thickness: number): Piece => {
  const length = named(
    "strap cut length",
    sum(v.waist, times(over(minus(v.holes, 1), 2), v.holePitch), v.tip),
  );
  return flat("strap", length.value, v.width.value, thickness);
};

export const sampleArticle: ArticleDefinition = {
  name: "plain belt",
  slug: "plain-belt",
  means: "a belt with a buckle and one keeper",
  sections: [MEASURES, STRAP_LEATHER, HARDWARE, BUCKLE, STITCHING, STRAP, KEEPER],
  make: (done) => {
    const { thickness } = done.of(STRAP_LEATHER);
    const { strapWidth, breadth } = done.of(KEEPER);
    return {
      article: "plain belt",
      pieces: [
        strapPiece(done.of(STRAP), thickness.value),
        flat("keeper", 2.5 * strapWidth.value, breadth.value, thickness.value),
      ],
      joins: [],
      findings: [],
      sizes: [],
      cautions: [],
    };
  },
  measuring: [{ measure: "measures.waist", how: "Tape snug, over the clothes, twice." }],
  sample: { "measures.waist": "34 1/2 in", "leather.strap.thickness": "8-9 oz", for: "Wren, for the fair" },
  told: { sentences: [], rest: [] },
};

/** A second article, so that lists of articles have something to list. */
export const otherArticle: ArticleDefinition = {
  ...sampleArticle,
  name: "dog collar",
  slug: "dog-collar",
  sections: [MEASURES],
};
