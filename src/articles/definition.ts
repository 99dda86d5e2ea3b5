import type { Made } from "../model/article.ts";
import type { DimensionTable, Value, Values } from "../model/dimension.ts";
import type { Told } from "../model/sentence.ts";

// An article is one thing that can be ordered. Its definition lists the sections of its order file,
// each with a dimension table, and makes the pieces from the resolved values.

/** Resolved values by section path; a section that was not reached throws. */
export type Resolved = {
  of<T extends DimensionTable>(section: Section<T>): Values<T>;
};

export type Section<T extends DimensionTable = DimensionTable> = {
  /** Path in the order, e.g. "measures", "hardware.cheek-buckle", "pieces.crown". */
  readonly path: string;
  /** What its values' names begin with in explanations, e.g. "crown". */
  readonly label: string;
  /** One line over the section in an order file. */
  readonly title: string;
  readonly table: T;
  /** What the article hands to this section, from the sections before it. */
  readonly handOver?: (done: Resolved) => Readonly<Record<string, Value | undefined>>;
};

/** How one measure is taken, for the measuring sheet. */
export type Measuring = { readonly measure: string; readonly how: string };

export type ArticleDefinition = {
  /** As written in an order, e.g. "one-ear headstall". */
  readonly name: string;
  /** As written on the command line, e.g. "one-ear-headstall". */
  readonly slug: string;
  readonly means: string;
  /** In the order they are resolved; a section may look at those before it. */
  readonly sections: readonly Section[];
  readonly make: (done: Resolved) => Made;
  readonly measuring: readonly Measuring[];
  /** Dimensions that `begin` writes out uncommented, with a sample value: "measures.over-poll" → "41 1/2 in". */
  readonly sample: Readonly<Record<string, string>>;
  /** Its order in sentences; each settable name stands in one of them or in the rest. */
  readonly told: Told;
};

/** Keeps a section's table type. */
export const section = <T extends DimensionTable>(s: Section<T>): Section<T> => s;
