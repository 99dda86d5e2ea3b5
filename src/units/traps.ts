// Faults that every kind of measure shares: computer notations, decimal commas, nothing, too much.
import { printNumber } from "./number.ts";
import { quote } from "./quote.ts";
import { type Fault, misread, type Reading, read } from "./reading.ts";
import { plain, tidy } from "./tidy.ts";
import { offer } from "./words.ts";

/** What a reader is looking for, in words: "a length", and how one is written; `whole` when decimals have no sense. */
export type Wanted = { readonly what: string; readonly how: string; readonly whole?: true };

/** No measure needs more characters, spelled out in feet and inches; a longer text is a mistake. */
const LONGEST_TEXT = 60;
/** Digits before the point. Ten kilometres in millimetres has eight; nothing cut from leather has. */
const TOO_MANY_DIGITS = /\d{8,}/;

type Trap = (text: string, tidied: string, wanted: Wanted) => Fault | undefined;

const nothing: Trap = (_, tidied, wanted) =>
  tidied === "" ? misread(`got "": ${wanted.what} is missing`, wanted.how) : undefined;

const comma: Trap = (text, tidied, wanted) => {
  if (!/(?:^|[\d\s]),\d/.test(tidied)) return undefined;
  const joined = tidied.replace(/(\d),(?=\d)/g, "$1");
  const pointed = tidied.replace(/,(?=\d)/g, ".");
  const thousands = /(?:^|[^\d,.])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])/.test(tidied);
  const decimals = !wanted.whole && !/\.\d*\./.test(pointed);
  // 1.054,5: points between the thousands, as many countries write them.
  const turned = !wanted.whole && /^\D*\d{1,3}(?:\.\d{3})+,\d+(?![\d,.])/.test(tidied);
  const ways = [
    ...(thousands ? [joined] : []),
    ...(decimals ? [pointed] : []),
    ...(turned ? [tidied.replace(/\./g, "").replace(",", ".")] : []),
  ].map(plain);
  return misread(
    `got ${quote(text)}: a comma is not read in a number`,
    ways.length === 0 ? wanted.how : offer(ways),
  );
};

/** Offers the number in plain digits when it is of a size that a person could mean. */
function inDigits(text: string, value: number, rest: string, wanted: Wanted): Fault {
  const sized = value === 0 || (Math.abs(value) >= 1e-6 && Math.abs(value) < 1e7);
  return misread(
    `got ${quote(text)}: a number is written in plain digits here`,
    sized ? `write "${printNumber(value, 6)}${plain(rest)}"` : wanted.how,
  );
}

const computerNumber: Trap = (text, tidied, wanted) => {
  if (/^[+-]?0[xob]/i.test(tidied)) {
    const whole = /^([+-]?)(0x[\da-f]+|0o[0-7]+|0b[01]+)(?![\w.])(.*)$/i.exec(tidied);
    if (!whole) return inDigits(text, Number.NaN, "", wanted);
    return inDigits(text, Number(whole[2]) * (whole[1] === "-" ? -1 : 1), whole[3] ?? "", wanted);
  }
  const power = /^([+-]?(?:\d+\.?\d*|\.\d+)e[+-]?\d+)(.*)$/i.exec(tidied);
  if (power) return inDigits(text, Number(power[1]), power[2] ?? "", wanted);
  if (/\d_\d/.test(tidied)) {
    return misread(
      `got ${quote(text)}: a number is written in plain digits here`,
      `write "${plain(tidied.replace(/(\d)_+(?=\d)/g, "$1"))}"`,
    );
  }
  return undefined;
};

const noNumber: Trap = (text, tidied, wanted) =>
  /^(?:[+-]?\.?(?:inf|infinity|nan)|null|~|true|false|yes|no|on|off)$/i.test(tidied)
    ? misread(`got ${quote(text)}, which is not ${wanted.what}`, wanted.how)
    : undefined;

const tooLarge: Trap = (text, tidied, wanted) =>
  TOO_MANY_DIGITS.test(tidied.replace(/\.\d+/g, ""))
    ? misread(`got ${quote(text)}: that is more digits than ${wanted.what} can have`, wanted.how)
    : undefined;

const bars: Trap = (text, tidied, wanted) =>
  /[/⁄] ?\d+ ?[/⁄]/.test(tidied)
    ? misread(`got ${quote(text)}, with two fraction bars`, wanted.how)
    : undefined;

const TRAPS: readonly Trap[] = [nothing, comma, computerNumber, noNumber, tooLarge, bars];

/** The text, tidied, when none of the common traps has caught it. */
export function pastTraps(text: string, wanted: Wanted): Reading<string> {
  const length = text.trim().length;
  if (length > LONGEST_TEXT) {
    const problem = `got ${quote(text)}: ${length} characters are too many for ${wanted.what}`;
    return misread(problem, wanted.how);
  }
  const tidied = tidy(text);
  for (const trap of TRAPS) {
    const fault = trap(text, tidied, wanted);
    if (fault) return fault;
  }
  return read(tidied);
}

/** The fault for a text in which nothing was recognised. */
export const unread = (text: string, wanted: Wanted): Fault =>
  misread(`got ${quote(text)}, which cannot be read as ${wanted.what}`, wanted.how);
