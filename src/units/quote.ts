/** A person needs no more than this to know their own text again. */
const LONGEST_QUOTE = 40;

/** Control characters, invisible ones and those that turn the reading direction: none may reach a terminal. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

const named = (char: string): string =>
  `[U+${(char.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}]`;

/** The text with every unseen character shown by its number: `[U+200B]`. */
export const shown = (text: string): string => text.replace(UNSEEN, named);

/** The text in quotes, as a message shows it: cut short when long, unseen characters by their number. */
export function quote(text: string): string {
  const chars = Array.from(text.trim().slice(0, 4 * LONGEST_QUOTE)); // a whole book may have been given
  const kept = chars.length > LONGEST_QUOTE ? [...chars.slice(0, LONGEST_QUOTE), "…"] : chars;
  return `"${shown(kept.join(""))}"`;
}
