// What a press is rated for. A "ton" is three different things: the short ton of the United States, the
// metric ton and the long ton; a rating that does not say which is not guessed at.

import { AMOUNT, readAmount } from "../units/amount.ts";
import { printNumber } from "../units/index.ts";
import { quote } from "../units/quote.ts";
import { misread, type Reading, read } from "../units/reading.ts";
import { pastTraps, unread, type Wanted } from "../units/traps.ts";
import { NEWTON_PER_LBF } from "./facts/dies.ts";

export type ForceUnit = "US short ton" | "metric ton" | "long ton" | "kN" | "N" | "lbf";

/** Standard gravity, m/s², exact by definition (3rd General Conference on Weights and Measures, 1901; from memory). */
const GRAVITY = 9.80665;

/** Newtons in each unit; the tons by their pounds and kilograms, exact (from memory). */
export const NEWTONS_IN: Readonly<Record<ForceUnit, number>> = {
  "US short ton": 2000 * NEWTON_PER_LBF,
  "metric ton": 1000 * GRAVITY,
  "long ton": 2240 * NEWTON_PER_LBF,
  kN: 1000,
  N: 1,
  lbf: NEWTON_PER_LBF,
};

/** A force as the order says it. */
export type Rating = { readonly newtons: number; readonly amount: number; readonly unit: ForceUnit };

const SPELLINGS: readonly (readonly [RegExp, ForceUnit])[] = [
  [/^(?:us|u\.s\.?|american|short)(?: short)? (?:tons?|tn|tonf)$/, "US short ton"],
  [/^(?:tons?|tonf) ?\(?(?:us|u\.s\.?|short|2000 ?(?:lbs?|pounds))\)?$/, "US short ton"],
  [/^(?:metric (?:tons?|tonnes?)|tonnes?|t|tf|tonnes? force)$/, "metric ton"],
  [/^(?:tons?) ?\(?(?:metric|1000 ?kg)\)?$/, "metric ton"],
  [/^(?:uk|long|imperial|british)(?: long)? tons?$/, "long ton"],
  [/^(?:kn|kilonewtons?)$/, "kN"],
  [/^(?:n|newtons?)$/, "N"],
  [/^(?:lbf?|lbs|pounds?(?: force)?)$/, "lbf"],
];

const WANTED: Wanted = {
  what: "a force",
  how: 'write a number and its unit, as in "20 US tons", "15 t" (metric tons) or "150 kN"',
};
const FORM = new RegExp(`^(${AMOUNT}) ?(.*)$`);
const BARE_TON = /^(?:tons?|tonf|tn)$/;

/** Reads what a press is rated for: `20 US tons`, `15 t`, `15 metric tons`, `150 kN`, `40000 lbf`. */
export function readForce(text: string): Reading<Rating> {
  const clear = pastTraps(text, WANTED);
  if (!clear.ok) return clear;
  const match = FORM.exec(clear.value);
  if (!match) return unread(text, WANTED);
  const amount = readAmount(match[1]!, text, clear.value);
  if (!amount.ok) return amount;
  const size = amount.value.top / amount.value.bottom;
  const word = match[2]!.toLowerCase().replace(/[.]$/, "").replaceAll("-", " ");
  const number = printNumber(size, 3);
  if (BARE_TON.test(word)) {
    const ways = `write "${number} US tons" (of 2000 lb, on presses from the United States) or "${number} t" (metric tons)`;
    return misread(`got ${quote(text)}: there is more than one ton`, ways);
  }
  if (word === "") return misread(`got ${quote(text)}, a number without a unit`, WANTED.how);
  const unit = SPELLINGS.find(([form]) => form.test(word))?.[1];
  if (!unit) return unread(text, WANTED);
  if (!(size > 0)) return misread(`got ${quote(text)}: a press has some force`, WANTED.how);
  return read({ newtons: size * NEWTONS_IN[unit], amount: size, unit });
}

const DECIMALS: Readonly<Record<ForceUnit, number>> = {
  "US short ton": 1,
  "metric ton": 1,
  "long ton": 1,
  kN: 1,
  N: 0,
  lbf: 0,
};

/** A force in one unit: "112.5 US short tons". */
export function sayForce(newtons: number, unit: ForceUnit): string {
  const amount = printNumber(newtons / NEWTONS_IN[unit], DECIMALS[unit]);
  const word = unit.endsWith("ton") && amount !== "1" ? `${unit}s` : unit;
  return `${amount} ${word}`;
}
