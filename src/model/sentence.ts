/**
 * An order as it would stand in the order book: running text in which `{measures.over-poll}` stands for the
 * value of that name. Each settable name of an article stands in one sentence, or in its list of the rest.
 */
export type Sentence = {
  readonly text: string;
  /** Read aloud only while a choice, flag or text has one of these values; its names stay in the table. */
  readonly when?: { readonly name: string; readonly is: readonly string[] };
};

/** What an article's order says aloud, and the names that only the table shows. */
export type Told = { readonly sentences: readonly Sentence[]; readonly rest: readonly string[] };
