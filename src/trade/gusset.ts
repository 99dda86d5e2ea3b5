import type { Bend } from "../model/piece.ts";
import {
  asLength,
  greatest,
  least,
  minus,
  named,
  type Operand,
  over,
  type Quantity,
  root,
  square,
  sum,
  times,
} from "../model/quantity.ts";

// What joins the front and the back of a bag: flat sizes of flanged, turned and folded gussets, mm.
// `neutral` is the neutral fibre's place as a fraction of the thickness, from the inner face of the bend
// in question, unless said otherwise.

const FLANGE = "a strip with both edges turned out: bend allowance on the neutral fibre";
const GATHER = "two arcs round one centre: geometry";
const TURNED = "a seam turned inside out: bend allowance on the neutral fibre";
const INWARD = "a web folded inward in its middle: geometry";

/** A strip with a flange turned out along each edge. */
export type Flanges = {
  /** From the finished edge to the web's outer face. */
  readonly flange: Operand;
  /** Inner radius of the flange's fold. */
  readonly fold: Operand;
  readonly thickness: Operand;
  readonly neutral: Operand;
};

/** What an order says of a flange. */
type FlangeValues = {
  readonly flange: Quantity;
  readonly flangeFold: Quantity;
  readonly thickness: Quantity;
  /** From the flesh side. */
  readonly neutral: Quantity;
};

/** A flange is turned out, its grain side inside the fold: the neutral fibre counts from there. */
export const flangesOf = (d: FlangeValues): Flanges => ({
  flange: d.flange,
  fold: d.flangeFold,
  thickness: d.thickness,
  neutral: named("gusset neutral fibre from the grain side", minus(1, d.neutral), { kind: "ratio" }),
});

/** The bend between a flange and the web. */
export const flangeBend = (d: FlangeValues): Bend => ({
  inner: d.flangeFold.value,
  angle: Math.PI / 2,
  thickness: d.thickness.value,
  neutral: d.neutral.value,
  inside: "grain",
});

/** Where the neutral fibre of a quarter bend lies, along it: (π/2) (ρ + k t). */
const quarter = (f: Flanges): Quantity =>
  asLength(times(Math.PI / 2, sum(f.fold, asLength(times(f.neutral, f.thickness)))));

/** Width across the flat strip, mm: 2 (f − ρ) + π (ρ + k t) + B − 2t − 2ρ, B between the bodies' inner faces. */
export function flangedWidth(label: string, f: Flanges, between: Operand): Quantity {
  const flats = asLength(times(2, minus(f.flange, f.fold)));
  const bends = asLength(times(Math.PI, sum(f.fold, asLength(times(f.neutral, f.thickness)))));
  const web = minus(between, times(2, f.thickness), times(2, f.fold));
  return named(label, asLength(sum(flats, bends, web)), { source: FLANGE, kind: "length" });
}

/** The middle of a flange's bend from its finished edge on the flat, mm: (f − ρ) + (π/4) (ρ + k t). */
export const foldFromEdge = (label: string, f: Flanges): Quantity =>
  named(label, asLength(sum(minus(f.flange, f.fold), over(quarter(f), 2))), {
    source: FLANGE,
    kind: "length",
  });

/** What a flange and its bend take on the flat, up to where the web begins, mm: (f − ρ) + (π/2) (ρ + k t). */
export const flangeTake = (label: string, f: Flanges): Quantity =>
  named(label, asLength(sum(minus(f.flange, f.fold), quarter(f))), { source: FLANGE, kind: "length" });

/** How far the web's middle lies inside the seam line, mm: f + t/2 − s. */
const webInside = (flange: Operand, thickness: Operand, inset: Operand): Quantity =>
  asLength(minus(sum(flange, asLength(over(thickness, 2))), inset));

/** Length that the web gathers at a corner of the body that turns by `turn`, mm: (f + t/2 − s) Θ. */
export const gatherLength = (flange: Operand, thickness: Operand, inset: Operand, turn: Operand): Quantity =>
  named("gathered length", asLength(times(webInside(flange, thickness, inset), turn)), { source: GATHER });

/** Strain of the gathered web at a corner of radius R: (f + t/2 − s) / (R − s). Infinite at R = s. */
export const gatherStrain = (
  flange: Operand,
  thickness: Operand,
  inset: Operand,
  radius: Operand,
): Quantity =>
  named("gathering strain", over(webInside(flange, thickness, inset), asLength(minus(radius, inset))), {
    source: GATHER,
    kind: "ratio",
  });

/** Least corner radius of the body, mm, that strains the web no more than ε: s + (f + t/2 − s) / ε. */
export const leastCornerRadius = (
  flange: Operand,
  thickness: Operand,
  inset: Operand,
  strain: Operand,
): Quantity =>
  named(
    "least corner radius",
    asLength(sum(inset, asLength(over(webInside(flange, thickness, inset), strain)))),
    {
      source: GATHER,
      kind: "length",
    },
  );

/** Strain of a gathered web that shows as pleats, dry and wet-moulded, and that can't be sewn; common practice, no source. */
export const GATHER_CAUTION = 0.1;
export const GATHER_CAUTION_WET = 0.2;
export const GATHER_ERROR = 0.3;

/**
 * How far a mate's grain side lies outside a piece's own rolled edge in a box-like turned seam, mm. Both turn
 * through 135° and their allowances lie grain to grain on the diagonal, so their bends' middles lie t_own +
 * t_mate apart across it: (1 + 1/√2) t_mate − (1 − 1/√2) t_own.
 */
export const grainBeyond = (label: string, own: Operand, mate: Operand): Quantity =>
  named(label, asLength(minus(times(1 + Math.SQRT1_2, mate), times(1 - Math.SQRT1_2, own))), {
    source: TURNED,
    kind: "length",
  });

/** What two pieces that meet in a box-like turned seam turn through, each, radians. */
export const BOX_TURN = (3 * Math.PI) / 4;

/**
 * How far inside its cut edge the finished edge of a piece lies that turns through `turn` at a seam stitched
 * inside out, mm: a + k t β − t, for β from a right angle up.
 */
export const turnedEdge = (
  label: string,
  allowance: Operand,
  thickness: Operand,
  neutral: Operand,
  turn: Operand = BOX_TURN,
): Quantity =>
  named(label, asLength(minus(sum(allowance, asLength(times(neutral, thickness, turn))), thickness)), {
    source: TURNED,
    kind: "length",
  });

/** How far in a web folds when its edges lie `apart`, mm: v = ½ √(W² − b²); nothing where it is narrower. */
export const inwardFold = (width: Operand, apart: Operand): Quantity =>
  named("inward fold", over(root(greatest(asLength(minus(asLength(square(width)), square(apart))), 0)), 2), {
    source: INWARD,
    kind: "length",
  });

/** How far the top of the fold drops when its foot stays flat, mm: Δ = H − √(H² − v²); H where v is over it. */
export const foldDrop = (height: Operand, fold: Operand): Quantity =>
  named(
    "inward fold's drop",
    minus(height, root(greatest(asLength(minus(asLength(square(height)), square(fold))), 0))),
    { source: INWARD, kind: "length" },
  );

/** Height over the foot in which an inward fold fades out, mm: half the foot's width. Common practice, no source. */
export const footFade = (footWidth: Operand): Quantity =>
  named("inward fold's fading", over(footWidth, 2), { source: "common practice, no source", kind: "length" });

/**
 * How much longer the seam of a body boxed round an end panel is than the panel's, stitched through its edge
 * at the inset s, mm: π (s + k t), t the body's thickness.
 */
export const endPanelDifference = (inset: Operand, thickness: Operand, neutral: Operand): Quantity =>
  named(
    "end panel's seam difference",
    asLength(times(Math.PI, asLength(sum(inset, asLength(times(neutral, thickness)))))),
    { source: GATHER, kind: "length" },
  );

/**
 * The same for a gusset flanged inside a boxed body, mm: π (k t + (1 − k) t_g). Both fractions from the inner
 * face of the bend.
 */
export const flangedDifference = (
  body: { readonly thickness: Operand; readonly neutral: Operand },
  gusset: { readonly thickness: Operand; readonly neutral: Operand },
): Quantity => {
  const outside = asLength(times(body.neutral, body.thickness));
  const inside = asLength(times(minus(1, gusset.neutral), gusset.thickness));
  return named("flanged gusset's seam difference", asLength(times(Math.PI, asLength(sum(outside, inside)))), {
    source: GATHER,
    kind: "length",
  });
};

/** The last stitch of a run keeps this from the notch cut in a corner of the foot, mm; under it, it pulls through. */
const NOTCH_KEEPS_MM = 1.5;

/**
 * How far the flanges of a side gusset reach past the ends of its runs, into the body's bend of inner radius ρ_b,
 * mm: as far as the inset, but no further than where foot and side flange meet, flat (ρ_b − t − ρ) or bent
 * (π/4 (ρ_b − t/2)).
 */
export const flangeReach = (inset: Operand, bodyFold: Operand, thickness: Operand, fold: Operand): Quantity =>
  named(
    "flange past its run",
    asLength(
      least(
        inset,
        minus(bodyFold, thickness, fold),
        asLength(times(Math.PI / 4, minus(bodyFold, asLength(over(thickness, 2))))),
      ),
    ),
    { source: "two flanges in one bend: geometry", kind: "length" },
  );

/**
 * Inner radii of a wrap-round body's folds that a side gusset can be flanged into, mm: the least that leaves 1.5
 * past the last stitch, and one that leaves the whole inset; with flange folds of half a thickness.
 */
export const leastFootFold = (thickness: Operand): Quantity =>
  asLength(sum(asLength(times(1.5, thickness)), NOTCH_KEEPS_MM));
export const easyFootFold = (thickness: Operand, inset: Operand): Quantity =>
  asLength(
    greatest(
      sum(inset, asLength(times(1.5, thickness))),
      asLength(sum(asLength(times(4 / Math.PI, inset)), asLength(over(thickness, 2)))),
    ),
  );
/** Inner radius of a wrap-round body's folds that an end panel's seam can be stitched round, mm: its inset and 1. */
export const leastEndFold = (inset: Operand): Quantity => asLength(sum(inset, 1));

/** Length along x of a seam of length r that slopes by h over it, mm: √(r² − h²). */
export const slopedRun = (run: Operand, rise: Operand): Quantity =>
  asLength(root(asLength(minus(asLength(square(run)), square(rise)))));

/** Steepest slope of a tapering edge, as a share of its length; steeper flanges don't lie flat. Common practice, no source. */
export const STEEPEST_TAPER = 0.3;
