import type { Path, Point } from "../geometry/path.ts";

/** What a feature of a piece is to a die maker. */
export type FeatureKind =
  | "outline"
  | "slot"
  | "opening"
  | "round hole"
  | "staple hole"
  | "stitch holes"
  | "awl holes"
  | "crease"
  | "notch"
  | "clip"
  | "skive"
  | "tooling"
  | "glue"
  | "trim"
  | "fold";

/** One thing on a piece, and who makes it. Lengths mm, in the piece's own frame. */
export type DieFeature = {
  /** The piece's own name for it: "outline", "near.3", "seam left". */
  readonly id: string;
  readonly kind: FeatureKind;
  readonly made: "in the die" | "by hand afterwards";
  /** Why, in words. */
  readonly why: string;
  /** Holes, slots and notches in the die: a letter for each kind and size, and a number: "A1". */
  readonly letter?: string;
  /** The middle. */
  readonly at: Point;
  /** Round holes: the diameter. Slots and openings: over all. Notches in the die: a slit, without width. */
  readonly size?: { readonly diameter: number } | { readonly length: number; readonly width: number };
  /** Direction of a slot's long side, or of a notch, radians from x. */
  readonly angle?: number;
  /** What is drawn: closed for an outline, a slot or a hole. */
  readonly paths: readonly Path[];
  /** Holes and cutouts of the piece that it stands for, by their ids. */
  readonly holes: readonly string[];
};
