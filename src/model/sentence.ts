/**
 * An order as it would stand in the order book: running text in which `{measures.over-poll}` stands for the
 * value of that name. Each settable name of an article stands in one sentence, or in its list of the rest.
 */
export type Sentence = {
  readonly text: string;
  /** Read aloud only while a choice, flag or text has one of these values; its names stay in the table. */
  readonly when?: Condition;
  /** Read aloud also while this holds, though `when` doesn't: a strap has a buckle at either end. */
  readonly or?: Condition;
  /** Must hold besides: ring tabs are told of only where there is a shoulder strap. */
  readonly and?: Condition;
};

/** One name's values, as an order writes them; a flag's are "yes" and "no". */
export type Condition = { readonly name: string; readonly is: readonly string[] };

/** What an article's order says aloud, and the names that only the table shows. */
export type Told = { readonly sentences: readonly Sentence[]; readonly rest: readonly string[] };

/** A name in a sentence, where its value stands. */
export type NamedPart = { readonly name: string };

const PLACE = /\{([a-z][a-z0-9.-]*)\}/;

/**
 * A sentence's text parted into its words and the names whose values stand between them, in their order;
 * no part is empty. A brace that opens no name is left in the words.
 */
export function sentenceParts(text: string): readonly (string | NamedPart)[] {
  // Parted by a pattern with one group, every second part is what the group caught.
  return text
    .split(PLACE)
    .map((part, k) => (k % 2 === 0 ? part : { name: part }))
    .filter((part) => part !== "");
}

/** The names whose values a sentence sets. */
export const namesIn = (sentence: Sentence): readonly string[] =>
  sentenceParts(sentence.text).flatMap((part) => (typeof part === "string" ? [] : [part.name]));

/** Every condition of a sentence. */
export const conditionsOf = (sentence: Sentence): readonly Condition[] =>
  [sentence.when, sentence.or, sentence.and].filter((c) => c !== undefined);

/**
 * Whether a sentence is read aloud. `textOf` gives a name's value as an order writes it,
 * the default where the order is silent.
 */
export function isSaid(sentence: Sentence, textOf: (name: string) => string | undefined): boolean {
  const holds = (c: Condition): boolean => {
    const value = textOf(c.name);
    return value !== undefined && c.is.includes(value);
  };
  const { when, or, and } = sentence;
  const either = [when, or].filter((c) => c !== undefined);
  return (either.length === 0 || either.some(holds)) && (and === undefined || holds(and));
}

/** One telling after another. */
export const tellTogether = (...told: readonly Told[]): Told => ({
  sentences: told.flatMap((t) => t.sentences),
  rest: told.flatMap((t) => t.rest),
});
