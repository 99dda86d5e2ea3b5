import type { Point } from "../geometry/path.ts";
import type { Finding } from "./finding.ts";
import type { Fitting } from "./fitting.ts";
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
  | SeamJoin
  | FixedJoin
  | Gather
  | Closure
  | Adjustment
  | InwardFold;

/**
 * One run of a seam: what is stitched to what. Hole i of one side meets hole i of every other. Where the
 * sides are bent when they are joined, `bend` says by how much they turn and each side's radius there.
 */
export type SeamJoin = {
  readonly kind: "seam";
  /** Name of the run, e.g. "front to gusset: edge"; what stands before the colon is the seam. */
  readonly name: string;
  readonly sides: readonly { readonly piece: string; readonly seam: string }[];
  readonly bend?: { readonly angle: number; readonly radii: readonly number[] };
  /** Thickness of all that the needle goes through, at the thickest. */
  readonly stack: number;
  readonly backStitches: readonly [start: number, end: number];
  /** What sets its length: e.g. "measures.height". */
  readonly dimension: string;
};

/** Rivets, screws or a closed row of stitches through holes that were made on the flat in each part. */
export type FixedJoin = {
  readonly kind: "fixed";
  readonly name: string;
  readonly by: "rivet" | "binding screw" | "stitch";
  /** Hole i of one side lies on hole i of every other. */
  readonly sides: readonly { readonly piece: string; readonly holes: readonly string[] }[];
  readonly stack: number;
  readonly dimension: string;
};

/** A straight strip bent round a body's curves: its web is gathered there. Lengths mm. */
export type Gather = {
  readonly kind: "gather";
  readonly gusset: string;
  readonly body: string;
  /** The seams of the body that it follows. */
  readonly seams: readonly string[];
  readonly inset: number;
  /** The web's outer face from the finished edge. */
  readonly fold: number;
  readonly thickness: number;
  readonly wetMoulded: boolean;
  readonly dimension: string;
};

/**
 * Two halves of a closure that must meet when the flap is folded over the filled bag. In section: the back's
 * inner face is the line u = 0, heights over the base line are v, the front faces the way of u.
 */
export type Closure = {
  readonly kind: "closure";
  readonly what: string;
  readonly flap: { readonly piece: string; readonly at: Point; readonly baseLine: number };
  readonly front: { readonly piece: string; readonly at: Point; readonly baseLine: number };
  /** From the back's inner face to the front's outer face where the closure lies, bag filled. */
  readonly reach: number;
  /** The same with the bag empty. */
  readonly reachEmpty: number;
  /** The flap's end, along the piece. */
  readonly flapEnd: number;
  readonly dimension: string;
};

/** What goes in, and how much. Lengths mm, volume mm³. */
export type Capacity = {
  readonly volume: Quantity;
  readonly inside: readonly [width: number, height: number, depth: number];
  /** Common things and whether they go in, with the source of their size. */
  readonly things: readonly {
    readonly name: string;
    readonly sizes: readonly [number, number, number];
    readonly goes: boolean;
    /** How much higher the bag must be for it, mm; 0 when it goes in, left out where that doesn't help. */
    readonly lacksHeight?: number;
    readonly source: string;
  }[];
  /** What the order says must go in. */
  readonly wanted?: string;
};

/** One step of putting together: what it joins, what it shuts in, what must still be open for it. */
export type AssemblyStep = {
  readonly name: string;
  readonly does: "stitch" | "rivet" | "glue" | "fix" | "turn" | "fold" | "slide" | "thread";
  /** Steps that must come before. */
  readonly after: readonly string[];
  /** Places that must still be reached by hand, e.g. "inside of the bag". */
  readonly reaches: readonly string[];
  /** Places that can't be reached any more once it is done. */
  readonly shuts: readonly string[];
};

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
  /** An end of its own, outside what the fit table tells. */
  readonly outsideFit?: true;
};

/** The web of a side gusset that folds inward when the bag is shut; the other side's does the same. Lengths mm. */
export type InwardFold = {
  readonly kind: "inward fold";
  readonly piece: string;
  /** Width of the web at the top, and its height. */
  readonly topWidth: number;
  readonly height: number;
  /** How near each other the web's edges come. */
  readonly apart: number;
  /** Inside width of the bag. */
  readonly insideWidth: number;
  readonly dimension: string;
};

/** A row of the fit table: which holes give which measure. An article with one billet has `near` alone. */
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
  /** Where the measure that is wanted comes from; "as measured" unless said. */
  readonly wantedIs?: "as ordered" | "as reckoned";
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
  readonly capacity?: Capacity;
  /** The order of putting together. */
  readonly assembly?: readonly AssemblyStep[];
  /** What is bought for it. */
  readonly fittings?: readonly Fitting[];
  /** Contradictions between measures, and things to know that no single piece shows. */
  readonly findings: readonly Finding[];
  /** Sizes of the whole, each with its history. */
  readonly sizes: readonly Quantity[];
  readonly cautions: readonly string[];
};
