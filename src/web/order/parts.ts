import { isSaid, namesIn, type Sentence, sentenceParts } from "../../model/sentence.ts";

/** What the page draws of a sentence: its words, and the keys of the values between them. */
export type Part = { readonly words: string } | { readonly key: string };

/** A sentence's words and, between them, the keys of the values that stand there. */
export const partsOf = (text: string): readonly Part[] =>
  sentenceParts(text).map((part) => (typeof part === "string" ? { words: part } : { key: part.name }));

/** The keys of a sentence's values. */
export const keysOf = (sentence: Sentence): readonly string[] => namesIn(sentence);

/** Whether a sentence is read aloud, by the values as they stand. */
export const isRead = isSaid;
