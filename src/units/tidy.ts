// One way of writing out of many: every prime, quote, dash, space and fraction character that a
// keyboard, a phone or a word processor puts in. Done by tables of our own, not by Unicode's
// compatibility forms, which would turn 41½ into 411⁄2.

import { shown } from "./quote.ts";

/** Marks a fraction that was written as one: ½, ¹⁄₂. A plain slash may also mean a range (8/9 oz). */
export const FRACTION_BAR = "⁄";

const VULGAR = new Map<string, string>([
  ["½", "1⁄2"],
  ["⅓", "1⁄3"],
  ["⅔", "2⁄3"],
  ["¼", "1⁄4"],
  ["¾", "3⁄4"],
  ["⅕", "1⁄5"],
  ["⅖", "2⁄5"],
  ["⅗", "3⁄5"],
  ["⅘", "4⁄5"],
  ["⅙", "1⁄6"],
  ["⅚", "5⁄6"],
  ["⅐", "1⁄7"],
  ["⅛", "1⁄8"],
  ["⅜", "3⁄8"],
  ["⅝", "5⁄8"],
  ["⅞", "7⁄8"],
  ["⅑", "1⁄9"],
  ["⅒", "1⁄10"],
  ["↉", "0⁄3"],
]);
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const LOWERED = "₀₁₂₃₄₅₆₇₈₉";

const digitsFrom = (row: string, text: string): string =>
  Array.from(text, (c) => String(row.indexOf(c))).join("");

/** ¹⁄₂ as one fraction, set apart from a whole number before it. */
const smallFractions = (text: string): string =>
  text.replace(
    /(\d?)([⁰¹²³⁴-⁹]+)[/⁄∕／]([₀-₉]+)/g,
    (_, before: string, top: string, bottom: string) =>
      `${before}${before && " "}${digitsFrom(RAISED, top)}${FRACTION_BAR}${digitsFrom(LOWERED, bottom)}`,
  );

/** ½ as 1⁄2, set apart from digits on either side: 41½ is 41 1⁄2 and never 411⁄2. */
const vulgarFractions = (text: string): string =>
  text
    .replace(/(\d?)⅟(?=\d)/g, (_, before: string) => `${before}${before && " "}1${FRACTION_BAR}`)
    .replace(
      /(\d?)([¼-¾⅐-⅞↉])(?=(\d?))/g,
      (_, before: string, char: string, after: string) =>
        `${before}${before && " "}${VULGAR.get(char) ?? char}${after && " "}`,
    );

/**
 * The same measure in plain characters: `-` for any dash or minus, `'` and `"` for any prime or
 * quote, `°` for its look-alikes, single spaces, fractions as `1/2` or, when the text had them as
 * one character, as `1⁄2`.
 */
export function tidy(text: string): string {
  const slashed = vulgarFractions(smallFractions(text.replace(/[⁄∕／]/g, "/")));
  return slashed
    .replace(/[‐‑‒–—―−﹣－]/g, "-")
    .replace(/[′’‘‛‵ʹʼ´`＇]/g, "'")
    .replace(/[″”“‟„ʺ˝〃＂]/g, '"')
    .replace(/''/g, '"')
    .replace(/[º˚]/g, "°")
    .replace(/\s+/g, " ")
    .trim();
}

/** Tidied text as a message offers it: in and ft in letters, so that it can stand in quotes. */
export const plain = (tidied: string): string =>
  shown(tidied)
    .replaceAll(FRACTION_BAR, "/")
    .replace(/ ?"/g, " in")
    .replace(/ ?'/g, " ft")
    .replace(/(in|ft)(?=\d)/g, "$1 ");
