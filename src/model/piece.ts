import type { Path, Point } from "../geometry/path.ts";
import type { Quantity } from "./quantity.ts";

/** Flat parts, grain side up, in mm. A strap lies along x, its centre line on y = 0. */
export type HoleKind = "round" | "awl" | "staple";
export type Hole = {
  readonly id: string;
  readonly kind: HoleKind;
  readonly at: Point;
  /** Round and staple holes: the diameter. Awl marks: the slit's length. */
  readonly size: number;
  /** Slant of an awl slit from x; 0 for round holes. */
  readonly angle: number;
  /** What it is for: "buckle", "screw", "rivet", "stitch", "staple", "nail". */
  readonly use: string;
};

export type Cutout = {
  readonly id: string;
  /** "tongue slot", "strap slot", "opening". */
  readonly use: string;
  readonly outline: Path;
  /** A slot's sizes over all; an opening has none. */
  readonly length?: number;
  readonly width?: number;
};

/**
 * One side of a seam before its holes are laid: an open path in the direction of the seam, the same on all
 * its mates. `breaks` are lengths along it where a run must end, by name: two mates' breaks of one name meet.
 */
export type SeamEdge = {
  readonly piece: string;
  readonly id: string;
  readonly path: Path;
  readonly inset: number;
  readonly breaks: readonly { readonly at: number; readonly name: string }[];
};

/** A line of stitches; its holes are the piece's awl holes named `holes`, in order. */
export type SeamLine = {
  readonly id: string;
  readonly path: Path;
  readonly pitchAsked: number;
  readonly pitch: number;
  readonly stitches: number;
  readonly inset: number;
  readonly holes: readonly string[];
  /** The turn-back whose legs it joins: its awl marks stand on the front leg alone. */
  readonly turnBack?: string;
  /** Number of its first hole, where it is one run of a longer seam; 1 unless said. */
  readonly numberFrom?: number;
  /** The seam of the article that it is one side of, e.g. "front to gusset: edge". */
  readonly joins?: string;
  /** A continuous groove or pricked line is drawn and its holes are not, but for every tenth. */
  readonly groove?: true;
  readonly note?: string;
};

/** A line the leather is bent along, across the piece. */
export type Fold = {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  /** Words for the drawing: "fold round the buckle bar". */
  readonly label: string;
  /** How it is bent, where it is a bend of known radius; from–to is the middle of the bend on the flat. */
  readonly bend?: Bend;
};

/**
 * A bend of the flat piece: the radius of its inner face, how far it turns, and on which face its inside is.
 * On the flat it takes angle × (inner + k′ thickness), k′ the neutral fibre from the inner face.
 */
export type Bend = {
  readonly inner: number;
  /** Radians that the leather turns through. */
  readonly angle: number;
  readonly thickness: number;
  /** Neutral fibre as a fraction of the thickness, from the flesh side. */
  readonly neutral: number;
  readonly inside: "flesh" | "grain";
};

/** The shape of what a turn-back goes round. */
export type Bar =
  | { readonly kind: "round"; readonly diameter: number }
  | { readonly kind: "flat"; readonly along: number; readonly through: number; readonly corner: number };

/**
 * Everything a turn-back was developed from, so that a check can fold it again by itself.
 * `direction` is +1 when the front leg lies at greater x than the fold.
 */
export type TurnBack = {
  readonly id: string;
  readonly fold: string;
  /** x of the fold's centre on the flat piece. */
  readonly centre: number;
  readonly direction: 1 | -1;
  readonly bar: Bar;
  readonly neutral: number;
  readonly frontThickness: number;
  readonly backThickness: number;
  readonly wrapThickness: number;
  /** Thickness of the layers caught between the legs at the clamp. */
  readonly caught: number;
  /** Bar's centre to the first hole, folded. */
  readonly clamp: number;
  /** Bar's centre to where the legs begin to part. */
  readonly liftOff: number;
  /** Holes that meet when folded: front leg, back leg. */
  readonly mates: readonly (readonly [front: string, back: string])[];
  /** Ends of the wrap on the flat piece, from the fold's centre. */
  readonly wrapHalf: number;
};

export type ZoneKind = "skive" | "tooling" | "keeper" | "overlap" | "glue" | "trim";
export type Zone = {
  readonly id: string;
  readonly kind: ZoneKind;
  readonly outline: Path;
  /** Skive: thickness at the start and at the end of the zone, mm; `feathered` ends at nothing. */
  readonly from?: number;
  readonly to?: number;
  readonly label: string;
};

/** Lines and notches that are pressed, not cut: creases, centre lines, places of other pieces. */
export type Mark = {
  readonly id: string;
  /** A notch is a short cut in the edge to match two pieces by; a clip relieves an allowance that is bent. */
  readonly kind: "crease" | "centre" | "place" | "notch" | "clip";
  readonly path: Path;
  readonly label: string;
};

/** A length to measure on the joined paper before cutting. */
export type ControlLength = { readonly from: Point; readonly to: Point; readonly words: string };

/** A cross-section whose strength is compared; see trade/strength. */
export type Section = { readonly name: string; readonly estimate: Quantity };

export type Piece = {
  readonly id: string;
  readonly name: string;
  /** How many are cut. */
  readonly count: number;
  /** "pair": half of them cut with the template turned over. */
  readonly hand: "same" | "pair";
  readonly leather: { readonly kind: string; readonly thickness: number; readonly thickest: number };
  readonly outline: Path;
  /** Names of the outline's corners that are meant to be corners, in order along it. */
  readonly corners: readonly { readonly name: string; readonly at: Point }[];
  readonly cutouts: readonly Cutout[];
  readonly holes: readonly Hole[];
  readonly seams: readonly SeamLine[];
  readonly folds: readonly Fold[];
  readonly turnBacks: readonly TurnBack[];
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  /** Direction of the hide's backbone on the piece, radians from x. */
  readonly grain: number;
  /** True for a plain strap with parallel edges between its ends: it may be printed ends only. */
  readonly straight: boolean;
  readonly controls: readonly ControlLength[];
  /** The sizes that a maker asks about, each with its history; the cut size first. */
  readonly sizes: readonly Quantity[];
  readonly sections: readonly Section[];
  /** Width that finishing takes off both edges together, mm; the outline is cut that much wider. */
  readonly edgeLoss?: number;
  /** Where to cut roughly first, outside the outline, when the order asks for a margin. */
  readonly rough?: Path;
  /** Words to print on the template: cut size, count, leather, what to do. */
  readonly notes: readonly string[];
};
