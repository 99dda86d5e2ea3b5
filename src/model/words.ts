import { distance } from "fastest-levenshtein";

/** A key further than this share of its length from every right one is not a misspelling of any. */
const NEAR_SHARE = 0.5;

/** So many letters tell which of a list was meant, when only one begins with them. */
const LEAST_BEGUN = 3;

/** The only one of `words` that begins with `word`, if so; else the nearest. */
export function wordMeant(word: string, words: readonly string[]): string | undefined {
  const begun = words.filter((w) => w.toLowerCase().startsWith(word.toLowerCase()));
  return word.length >= LEAST_BEGUN && begun.length === 1 ? begun[0] : nearestWord(word, words);
}

/** The word of `words` that `word` was most likely meant to be, if any. */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  const near = words
    .map((w) => ({ w, d: distance(word.toLowerCase(), w.toLowerCase()) }))
    .sort((a, b) => a.d - b.d || (a.w < b.w ? -1 : 1))[0];
  return near && near.d <= Math.max(1, Math.ceil(near.w.length * NEAR_SHARE)) ? near.w : undefined;
}

/** "a, b or c" */
export function oneOf(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}

/** "1 hole", "3 holes": how many of what. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** With a capital letter at its beginning. */
export const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);
