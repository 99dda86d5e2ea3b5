import { LENGTH_FORM, type Part, readPart, type Source } from "./length-part.ts";
import { printNumber } from "./number.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { plain } from "./tidy.ts";
import { pastTraps, unread, type Wanted } from "./traps.ts";
import { twoLengths } from "./two-lengths.ts";
import { type LengthUnit, toMm } from "./unit.ts";

export type { LengthUnit } from "./unit.ts";

const WANTED: Wanted = {
  what: "a length",
  how: 'write a number and its unit, as in "41 1/2 in", "1054 mm" or "105.4 cm"',
};

/** One part: its own unit, or the one that a bare number has. */
function oneLength(part: Part, { text, tidied }: Source, sign: number, bare?: LengthUnit): Reading<number> {
  if (part.unit) return read(sign * toMm(part.amount, part.unit) + 0);
  const shown = plain(tidied);
  if (!bare) {
    return misread(
      `got ${quote(text)}, a number without a unit`,
      `write "${shown} in", "${shown} mm" or "${shown} cm", whichever is meant`,
    );
  }
  const mm = sign * toMm(part.amount, bare) + 0; // adding 0 turns -0 into 0
  // Whoever writes a fraction is most likely holding an inch rule.
  if (bare === "in" || part.amount.bottom === 1) return read(mm);
  return read(mm, `${shown} read as ${printNumber(mm, 3)} mm; write "${shown} in" if inches are meant`);
}

/** Feet and inches: whole feet and fewer than 12 inches, or one of the two has a slip in it. */
function feetAndInches(feet: Part, inches: Part, source: Source, sign: number): Reading<number> {
  const bottom = inches.amount.bottom;
  const top = (feet.amount.top * 12 * bottom) / feet.amount.bottom + inches.amount.top;
  const inInches = `write "${printNumber((sign * top) / bottom, 4)} in" if that is meant`;
  if (feet.amount.bottom > 1 || !Number.isInteger(feet.amount.top)) {
    return misread(`got ${quote(source.text)}: feet with inches after them must be whole`, inInches);
  }
  if (inches.amount.top >= 12 * bottom) {
    return misread(`got ${quote(source.text)}: after feet there can only be fewer than 12 inches`, inInches);
  }
  return read(sign * toMm({ top, bottom }, "in") + 0);
}

/** Reads a length in mm for a reader that has its own words for what is wanted. */
export function lengthFor(wanted: Wanted, text: string, bare?: LengthUnit): Reading<number> {
  const clear = pastTraps(text, wanted);
  if (!clear.ok) return clear;
  const source: Source = { text, tidied: clear.value, wanted };
  const match = LENGTH_FORM.exec(clear.value);
  if (!match) return unread(text, wanted);
  const [, signText, written = "", word, between = "", written2, word2] = match;
  const sign = signText === "-" ? -1 : 1;
  const first = readPart(written, word, source);
  if (!first.ok) return first;
  if (written2 === undefined) return oneLength(first.value, source, sign, bare);
  // Something must stand between two amounts: "41.5.5" is no pair.
  if (between === "" && word === undefined) return unread(text, wanted);
  const second = readPart(written2, word2, source);
  if (!second.ok) return second;
  const feetFirst = first.value.unit === "ft" && (second.value.unit ?? "in") === "in" && !/to/i.test(between);
  return feetFirst
    ? feetAndInches(first.value, second.value, source, sign)
    : twoLengths(first.value, second.value, between, source);
}

/**
 * Reads a length as people write it, in mm: `41 1/2`, `41-1/2 in`, `41½"`, `5/8`, `3' 5 1/2"`,
 * `6 ft 4 in`, `1054mm`, `105.4 cm`, `1 m`.
 * - A bare number has the unit `bare`; without one it is a fault that asks for the unit. After feet it is inches.
 * - A fraction by itself may be 1 or more (`8/8`, `10/4`); after a whole number it may not.
 * - A negative length is a value, so that the range of what it is for can say what is allowed.
 * - A fraction that a bare number's unit makes millimetres is read so, with a note.
 */
export const readLength = (text: string, bare?: LengthUnit): Reading<number> => lengthFor(WANTED, text, bare);
