import type { Finding } from "./finding.ts";
import type { Piece } from "./piece.ts";
import type { Quantity } from "./quantity.ts";

/** What two parts ask of each other; checks compare the drawn pieces with these. */
export type Join =
  | {
      readonly kind: "strap in buckle";
      readonly piece: string;
      readonly strapWidth: number;
      readonly inside: number;
      readonly buckle: string;
      readonly dimension: string;
    }
  | {
      readonly kind: "tongue in slot";
      readonly piece: string;
      readonly cutout: string;
      readonly turnBack: string;
      readonly tongueThickness: number;
      readonly tongueBreadth: number;
      readonly openAngle: number;
      readonly dimension: string;
    }
  | {
      readonly kind: "strap in slot";
      readonly piece: string;
      readonly cutout: string;
      readonly strapWidth: number;
      readonly strapThickness: number;
      /** The slope at which the strap weaves through, where it doesn't go straight, and the leather it goes through. */
      readonly weave?: { readonly angle: number; readonly through: number };
      readonly dimension: string;
    }
  | {
      readonly kind: "keeper round stack";
      readonly piece: string;
      readonly cut: number;
      readonly lap: number;
      readonly width: number;
      readonly height: number;
      readonly thickness: number;
      readonly neutral: number;
      readonly dimension: string;
    }
  | Adjustment;

/**
 * One adjustable end: a billet through a buckle. Lengths from the buckle's bar, along the strap, mm.
 * `holes` are the billet's holes from the tip, as distances from the tip.
 */
export type Adjustment = {
  readonly kind: "adjustment";
  readonly side: string;
  readonly piece: string;
  readonly holes: readonly number[];
  /** Far edge of the last keeper from the bar. */
  readonly keeperFar: number;
  /** Length of the point, where a keeper can't hold it. */
  readonly point: number;
  /** Where the cheek grows wider than the keeper lets pass, from the bar; Infinity when it never does. */
  readonly swellAt: number;
  /** What lies there: the swell of its body, or the fixings at the bit. */
  readonly swellIs: "the cheek's swell" | "the cheek's fixings at the bit";
  readonly dimension: string;
  /** The dimensions that set the first hole's distance from the tip, and the cheek's body. */
  readonly tipDimension: string;
  readonly bodySection: string;
};

/** A row of the fit table: which holes give which measure. */
export type FitRow = {
  readonly near: number | undefined;
  readonly off: number | undefined;
  readonly measure: number;
  readonly even: boolean;
  readonly sizes: readonly string[];
};
export type Fit = {
  readonly name: string;
  readonly wanted: number;
  readonly shortest: number;
  readonly longest: number;
  readonly rows: readonly FitRow[];
  /** Why no sizes are compared, where none are. */
  readonly sizesNote?: string;
};

/** An article made: its pieces, how they meet, and what the article itself has to say. */
export type Made = {
  readonly article: string;
  readonly pieces: readonly Piece[];
  readonly joins: readonly Join[];
  readonly fit?: Fit;
  /** Contradictions between measures, and things to know that no single piece shows. */
  readonly findings: readonly Finding[];
  /** Sizes of the whole, each with its history. */
  readonly sizes: readonly Quantity[];
  readonly cautions: readonly string[];
};
