import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { plain } from "./tidy.ts";

/** A number as it was written, over a whole number: 41 1/2 is 83 over 2. The sign stands elsewhere. */
export type Amount = { readonly top: number; readonly bottom: number };

/** Matches an amount in tidied text: `41 1/2`, `41-1/2`, `5/8`, `41.5`, `.5` or `41`; groups nothing. */
export const AMOUNT = String.raw`(?:\d+[ -]\d+[/⁄]\d+|\d+[/⁄]\d+|\d*\.\d+|\d+)`;

/** Matches the word or sign of a unit in tidied text, with its full stop; "to" is for ranges. */
export const WORD = String.raw`(?:(?!to(?![a-z]))[^\d\s.,/⁄+-]+\.?)`;

const FRACTION = /^(?:(\d+)[ -])?(\d+)[/⁄](\d+)$/;

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** 43 1/2 for 87 over 2. */
function asMixed(top: number, bottom: number): string {
  const whole = Math.floor(top / bottom);
  const divisor = commonDivisor(top % bottom, bottom);
  const rest = (top % bottom) / divisor;
  return rest === 0 ? `${whole}` : `${whole} ${rest}/${bottom / divisor}`;
}

/**
 * Reads what AMOUNT matched. `5/8`, `8/8` and `10/4` are all good by themselves, for a rule is
 * read in eighths; after a whole number a fraction is less than 1, or a digit has slipped in.
 * @param written the matched part
 * @param text the whole text as it was got, for the message
 * @param tidied the whole text tidied, for the mend
 */
export function readAmount(written: string, text: string, tidied: string): Reading<Amount> {
  const fraction = FRACTION.exec(written);
  if (!fraction) return read({ top: Number(written), bottom: 1 });
  const whole = fraction[1] === undefined ? undefined : Number(fraction[1]);
  const top = Number(fraction[2]);
  const bottom = Number(fraction[3]);
  if (bottom === 0) {
    return misread(
      `got ${quote(text)}: nothing can be divided by 0`,
      'put a number other than 0 under the fraction, as in "1/2"',
    );
  }
  if (whole === undefined) return read({ top, bottom });
  if (top >= bottom) {
    const sum = asMixed(whole * bottom + top, bottom);
    return misread(
      `got ${quote(text)}: after a whole number the fraction must be less than 1`,
      `write "${plain(tidied.replace(written, sum))}" if that is meant`,
    );
  }
  return read({ top: whole * bottom + top, bottom });
}
