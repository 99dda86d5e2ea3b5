import { drawable } from "../words.ts";

// Which spaces of a text a line may end at.

/** Holds two words on one line; drawn as a space. */
const BOUND = "\u00a0";

/** Between a number and its fraction or unit, and round the × of two sizes. */
const BINDS =
  /(?<=\d) (?=(?:\d+\/\d+|mm|cm|dm|in|oz|m|yd|min|h|%)(?![\p{L}\d]))|(?<=\d) (?=× \d)|(?<=\d ×) (?=\d)/gu;

/**
 * The text as it is drawn, with one space between words. A line may end at each space; a number and its unit are
 * held together by another character, which `unbound` makes a space again.
 */
export const foldable = (text: string): string =>
  drawable(text).text.replace(/\s+/gu, " ").trim().replace(BINDS, BOUND);

export const unbound = (line: string): string => line.replaceAll(BOUND, " ");
