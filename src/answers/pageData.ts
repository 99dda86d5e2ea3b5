import type { Finding, TextPlace } from "../model/finding.ts";
import type { Units } from "../model/say.ts";
import type { Sentence } from "../model/sentence.ts";
import type { FlatItem } from "../picture/flat.ts";

// What the page shows of an order: plain data, made in the worker for every keystroke.

/** A value that may be set: an input of the page. */
export type Field = {
  /** Its path in the order, "measures.over-poll". */
  readonly key: string;
  /** Read by a screen reader: "over poll, inches". */
  readonly label: string;
  readonly kind: "text" | "choice" | "flag" | "measured";
  /** As it stands in the order, or as its default would be written; "" for an optional value left out. */
  readonly text: string;
  readonly given: boolean;
  readonly optional: boolean;
  readonly choices: readonly string[];
  readonly means: string;
  /** "20 in (508 mm) to 60 in (1524 mm)"; "" where anything goes. */
  readonly allowed: string;
  /** Where the default came from, in words; "" when there is none. */
  readonly origin: string;
  /** Keys of the fields, and names of the sizes, that move with it. */
  readonly feeds: readonly string[];
};

export type FieldGroup = { readonly path: string; readonly title: string; readonly fields: readonly Field[] };

/** Something wrong with the order's text. */
export type PageFault = {
  readonly key: string;
  readonly place?: TextPlace;
  /** The whole of it in words, with how to mend it. */
  readonly says: string;
};

export type PageSize = {
  readonly name: string;
  /** In the order's units, millimetres beside. */
  readonly says: string;
  readonly value: number;
  /** Keys of the fields it came from: touching it marks their sentences. */
  readonly from: readonly string[];
  /** How it came about, line by line. */
  readonly chain: readonly string[];
};

export type PagePiece = {
  readonly id: string;
  readonly name: string;
  /** "2: 1 as drawn, 1 turned over". */
  readonly count: string;
  readonly leather: string;
  readonly box: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
  /** Lines without labels, mm, y up, grain side up: quick to make. */
  readonly lines: readonly FlatItem[];
  readonly sizes: readonly PageSize[];
  /** What stands on it, each with a name to be touched: "hole near.3", "buckle fold". */
  readonly parts: readonly {
    readonly id: string;
    readonly says: string;
    readonly at: readonly [number, number];
  }[];
};

/** A picture on the page: lines and words, mm, y up. */
export type PagePicture = {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly items: readonly FlatItem[];
  /** The same in words, for whoever can't see it. */
  readonly says: string;
};

/** Made on each keystroke. */
export type PageView = {
  readonly article: string;
  readonly slug: string;
  readonly forWhom: string;
  readonly units: Units;
  readonly groups: readonly FieldGroup[];
  readonly sentences: readonly Sentence[];
  readonly pieces: readonly PagePiece[];
  /** Sizes of the whole. */
  readonly sizes: readonly PageSize[];
  /** What is known at once; what the checks find comes with the engine's `findings`, which gives all of them. */
  readonly findings: readonly Finding[];
  /** The fit table or the capacity, in lines. */
  readonly fit: readonly string[];
};

/** The answer to a text: a view, or what is wrong with it; the page keeps showing the last good view. */
export type PageAnswer =
  | { readonly ok: true; readonly view: PageView }
  | {
      readonly ok: false;
      readonly faults: readonly PageFault[];
      /** The article that the text names, as far as it can be known: its fields are then those of a new order. */
      readonly view?: PageView;
      /** Every value that stands in the text, by key, faulty or not. */
      readonly texts: Readonly<Record<string, string>>;
    };
