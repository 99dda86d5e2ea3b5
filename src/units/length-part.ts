import { AMOUNT, type Amount, readAmount, WORD } from "./amount.ts";
import { printThickness } from "./print.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import type { Wanted } from "./traps.ts";
import { toMm, type Unit, unitOf } from "./unit.ts";

/** The text being read: as it was got, tidied, and what it should have been. */
export type Source = { readonly text: string; readonly tidied: string; readonly wanted: Wanted };

/** An amount with its unit: `word` as it was written; both undefined when there was none. */
export type Part = {
  readonly amount: Amount;
  readonly written: string;
  readonly word: string | undefined;
  readonly unit: Unit | undefined;
};

/** Groups: sign, amount, word; then for a second amount: what stands between, amount, word. */
export const LENGTH_FORM = new RegExp(
  `^([+-]?)(${AMOUNT})(?: ?(${WORD}))?(?:( ?- ?| to | |)(${AMOUNT})(?: ?(${WORD}))?)?$`,
  "i",
);

/** An amount and its word, when the word is a unit of length or there is none. */
export function readPart(written: string, word: string | undefined, source: Source): Reading<Part> {
  const { text, tidied, wanted } = source;
  const amount = readAmount(written, text, tidied);
  if (!amount.ok) return amount;
  const unit = word === undefined ? undefined : unitOf(word);
  if (word === undefined || (unit && unit !== "oz" && unit !== "iron")) {
    return read({ amount: amount.value, written, word, unit });
  }
  if (unit) {
    const inMm = printThickness(toMm(amount.value, unit), "mm");
    const alone = tidied.replace(" ", "") === `${written}${word}`.replace(" ", "");
    const problem = `got ${quote(text)}: ${unit} is for the thickness of leather, not for ${wanted.what}`;
    return misread(problem, alone ? `write "${inMm}" if that is meant` : wanted.how);
  }
  const isHands = /^(?:h|hh|hands?)\.?$/i.test(word);
  const fault = isHands
    ? `hands are for the height of a horse, not for ${wanted.what}`
    : `the unit ${quote(word)} is not known here`;
  return misread(`got ${quote(text)}: ${fault}`, wanted.how);
}
