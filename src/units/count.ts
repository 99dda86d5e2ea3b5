import { AMOUNT, readAmount } from "./amount.ts";
import { printNumber } from "./number.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { pastTraps, unread, type Wanted } from "./traps.ts";

const COUNT: Wanted = { what: "a count", how: 'write a whole number, as in "7"', whole: true };
const PLAIN: Wanted = { what: "a number", how: 'write a number alone, as in "0.5"' };
const RATIO: Wanted = { what: "a ratio", how: 'write a number or a percentage, as in "0.5" or "12 %"' };
const ANGLE: Wanted = { what: "an angle", how: 'write degrees, as in "240" or "240 deg"' };

/** A sign, an amount, and whatever word or sign follows it. */
const FORM = new RegExp(`^([+-]?)(${AMOUNT}) ?([^\\d\\s].*)?$`);

type Signed = { readonly value: number; readonly word: string };

/** A signed number and what follows it, in small letters without its full stop. */
function signed(text: string, wanted: Wanted): Reading<Signed> {
  const clear = pastTraps(text, wanted);
  if (!clear.ok) return clear;
  const match = FORM.exec(clear.value);
  if (!match) return unread(text, wanted);
  const [, sign, written = "", word = ""] = match;
  const amount = readAmount(written, text, clear.value);
  if (!amount.ok) return amount;
  const size = amount.value.top / amount.value.bottom;
  return read({ value: (sign === "-" ? -size : size) + 0, word: word.toLowerCase().replace(/\.$/, "") });
}

/** Reads a whole number, negative ones too, so that a range can say what is allowed: `7`. */
export function readCount(text: string): Reading<number> {
  const number = signed(text, COUNT);
  if (!number.ok) return number;
  const { value, word } = number.value;
  if (!Number.isInteger(value)) {
    const ways = `write "${Math.floor(value)}" or "${Math.ceil(value)}"`;
    return misread(`got ${quote(text)}: a count is a whole number`, ways);
  }
  if (word !== "")
    return misread(`got ${quote(text)}: a count has no unit`, `write "${printNumber(value, 0)}"`);
  return read(value);
}

/** Reads a number that has no unit: `0.5`, `12`, `1/4`. */
export function readPlainNumber(text: string): Reading<number> {
  const number = signed(text, PLAIN);
  if (!number.ok) return number;
  const { value, word } = number.value;
  return word === ""
    ? read(value)
    : misread(`got ${quote(text)}: this number has no unit`, `write "${printNumber(value, 6)}"`);
}

/** Reads a ratio: `0.5`, `1/2`, or hundredths, `12 %`, which is 0.12. A bare number is never hundredths. */
export function readRatio(text: string): Reading<number> {
  const number = signed(text, RATIO);
  if (!number.ok) return number;
  const { value, word } = number.value;
  if (word === "") return read(value);
  if (/^(?:%|percent|per cent|pct)$/.test(word)) return read(value / 100);
  return misread(`got ${quote(text)}: a ratio has no unit but %`, RATIO.how);
}

/** Reads an angle in degrees, in radians: `240`, `240 deg`, `240°`. A bare number is degrees. */
export function readAngle(text: string): Reading<number> {
  const number = signed(text, ANGLE);
  if (!number.ok) return number;
  const { value, word } = number.value;
  if (/^(?:|°|degs?|degrees?)$/.test(word)) return read((value * Math.PI) / 180);
  const radians = /^(?:rad|rads|radians?)$/.test(word);
  const mend = radians ? `write "${printNumber((value * 180) / Math.PI, 1)} deg"` : ANGLE.how;
  return misread(`got ${quote(text)}: an angle is written in degrees`, mend);
}
