import type { Fault } from "../model/finding.ts";
import { type FileWords, ORDER_WORDS } from "./fileWords.ts";
import { type PlaceAt, placesIn } from "./place.ts";

// What is refused before a text is looked at as YAML.

/** No order is longer; a longer file was named by mistake, or means harm. */
export const LARGEST_BYTES = 1_000_000;

const BYTE_ORDER_MARK = "\uFEFF";
/** What a decoder puts where the bytes were no UTF-8. */
const REPLACEMENT = "\uFFFD";
/** Nothing that a keyboard types into a line; a carriage return only counts before a line feed. */
const UNTYPED = /(?![\t\r\n])\p{Cc}|\p{Cs}|\r(?!\n)/u;

const tooLarge = ({ one }: FileWords): Fault => ({
  code: "too-large",
  key: "",
  problem: "the file is larger than 1 MB",
  allowed: "up to 1 MB",
  mend: `name ${one}; even a long one is a hundred times smaller`,
});

/** U+0007 for a character that can't be shown. */
export const codePoint = (char: string): string =>
  `U+${(char.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;

function notText(text: string, place: PlaceAt, { noun }: FileWords): Fault | undefined {
  const wrong = text.indexOf(REPLACEMENT);
  const nul = text.indexOf("\0");
  if (nul !== -1 || wrong !== -1) {
    return {
      code: "not-text",
      key: "",
      place: place(nul !== -1 ? nul : wrong),
      problem: "this is not a text file in UTF-8",
      mend: `save the ${noun} as plain text, with the encoding "UTF-8"`,
    };
  }
  const found = UNTYPED.exec(text);
  if (!found) return undefined;
  return {
    code: "control-character",
    key: "",
    place: place(found.index),
    problem: `a character stands here that can't be seen (${codePoint(found[0])})`,
    mend: "take it out, or write the line anew",
  };
}

/** The fault that keeps a text from being read at all, if there is one. */
export function guardText(text: string, words: FileWords = ORDER_WORDS): Fault | undefined {
  // The length is looked at first: a text of 50 MB is not even counted in bytes.
  if (text.length > LARGEST_BYTES || new TextEncoder().encode(text).length > LARGEST_BYTES)
    return tooLarge(words);
  if (text.startsWith(BYTE_ORDER_MARK)) {
    return {
      code: "byte-order-mark",
      key: "",
      place: { line: 1, column: 1 },
      problem: "the file begins with a mark that can't be seen (a byte order mark)",
      mend: `save the ${words.noun} as "UTF-8", not as "UTF-8 with BOM"`,
    };
  }
  return notText(text, placesIn(text), words);
}
