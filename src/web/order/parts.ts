import type { Sentence } from "../../job.ts";

// The engine has these too; taken from there they would bring the engine into the page's own script.

export type Part = { readonly words: string } | { readonly key: string };

const PLACE = /\{([a-z][a-z0-9.-]*)\}/;

/** A sentence's words and, between them, the keys of the values that stand there. */
export const partsOf = (text: string): readonly Part[] =>
  text
    .split(PLACE)
    .map((part, k) => (k % 2 === 0 ? { words: part } : { key: part }))
    .filter((part) => "key" in part || part.words !== "");

/** The keys of a sentence's values. */
export const keysOf = (sentence: Sentence): readonly string[] =>
  partsOf(sentence.text).flatMap((part) => ("key" in part ? [part.key] : []));

type Condition = NonNullable<Sentence["when"]>;

/** Whether a sentence is read aloud, by the values as they stand. */
export function isRead(sentence: Sentence, textOf: (key: string) => string | undefined): boolean {
  const holds = (c: Condition): boolean => c.is.some((value) => value === textOf(c.name));
  const { when, or, and } = sentence;
  const either = [when, or].filter((c) => c !== undefined);
  return (either.length === 0 || either.some(holds)) && (and === undefined || holds(and));
}
