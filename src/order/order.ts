import type { ArticleDefinition, Resolved } from "../articles/definition.ts";
import type { ResolvedDimension } from "../model/resolve.ts";
import type { Units } from "../model/say.ts";
import type { Paper } from "../model/sheet.ts";

/** A reading worth telling, e.g. that a range of thickness was read as its middle. */
export type Remark = { readonly key: string; readonly text: string };

/** The dimensions of one section of an order; the top level's path is "". */
export type OrderSection = {
  readonly path: string;
  readonly title: string;
  readonly dimensions: readonly ResolvedDimension[];
};

/** An order that was read without a fault: every dimension has its value, given or not. */
export type Order = {
  /** The file's name, as messages and explanations show it. */
  readonly file: string;
  readonly text: string;
  readonly article: ArticleDefinition;
  /** Who it is for; "" when the order doesn't say. */
  readonly forWhom: string;
  /** The shop file it is priced by, as the order names it; "" for none. */
  readonly shop: string;
  readonly units: Units;
  readonly paper: Paper;
  /** White edge of the paper and overlap of neighbouring sheets, mm. */
  readonly margin: number;
  readonly overlap: number;
  /** Straight straps are printed as two ends and a break. */
  readonly endsOnly: boolean;
  /** The top level first, then the article's sections in their order. */
  readonly sections: readonly OrderSection[];
  /** The values of each section of the article, with their history. */
  readonly values: Resolved;
  readonly remarks: readonly Remark[];
};
