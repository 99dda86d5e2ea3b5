// Money, exactly: prices are decimals as they were written, amounts are whole minor units. Binary
// fractions never hold either, and each line is rounded once, halves up.

import Big from "big.js";
import { data } from "currency-codes";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { roundTo } from "./round.ts";
import { plain } from "./tidy.ts";
import { pastTraps, type Wanted } from "./traps.ts";

/** An exact decimal as text, "12.50": never a binary fraction. */
export type Decimal = string;

/** A currency by ISO 4217: its code, the digits after its point, its name. */
export type Currency = { readonly code: string; readonly digits: number; readonly name: string };

/**
 * ISO 4217 keeps X for codes of no one country. Those without a minor unit are metals, units of account and
 * codes for tests, which nothing is paid in; only these francs are money.
 */
const FRANCS = ["XAF", "XOF", "XPF"];
const isPaid = (code: string, digits: number): boolean =>
  !code.startsWith("X") || digits > 0 || FRANCS.includes(code);

/** All currencies of ISO 4217 that are paid with, by their codes. */
export const CURRENCIES: readonly Currency[] = data
  .filter(({ code, digits }) => isPaid(code, digits))
  .map(({ code, digits, currency }) => ({ code, digits, name: currency }));

/** The currency of a code in capitals, "GBP"; undefined for what is none. */
export const currencyOf = (code: string): Currency | undefined => CURRENCIES.find((c) => c.code === code);

const MONEY: Wanted = { what: "an amount of money", how: 'write the number alone, as in "14.50"' };
const ONCE = 'write the number alone; the currency stands once, as in "currency: GBP"';

/** A point has digits on both sides, or the reader would not know what was left out. */
const NUMBER = /^(\d+)(?:\.(\d+))?$/;

/**
 * Reads a price, `14.50`. A comma, a currency's sign or letters, a fraction and an amount below 0 are
 * faults that say how to write it. The decimals stay as they were written.
 */
export function readMoney(text: string): Reading<Decimal> {
  const clear = pastTraps(text, MONEY);
  if (!clear.ok) return clear;
  const tidied = clear.value;
  if (/^-\s*[\d.]/.test(tidied)) {
    const positive = plain(tidied.replace(/^-\s*/, ""));
    return misread(
      `got ${quote(text)}: a price can't be less than 0`,
      `write "${positive}" if that is meant`,
    );
  }
  const match = NUMBER.exec(tidied.replace(/^\./, "0."));
  if (match) {
    const whole = (match[1] ?? "").replace(/^0+(?=\d)/, "");
    return read(match[2] === undefined ? whole : `${whole}.${match[2]}`);
  }
  const withWords = /\d/.test(tidied) && /[\p{L}\p{Sc}]/u.test(tidied);
  return withWords
    ? misread(`got ${quote(text)}: a price has no sign or words with it`, ONCE)
    : misread(`got ${quote(text)}, which cannot be read as ${MONEY.what}`, MONEY.how);
}

/** A rate is multiplied before it is rounded, so it may be finer than the smallest coin: 0.0375 a metre. */
const FINER_DIGITS = 4;

const decimalsOf = (decimal: Decimal): number => decimal.split(".")[1]?.replace(/0+$/, "").length ?? 0;

const tooFine = (decimal: Decimal, { code, name }: Currency, most: number): Reading<never> => {
  const digits = most === 0 ? "no digits" : `at most ${most} digit${most === 1 ? "" : "s"}`;
  return misread(
    `got ${quote(decimal)}: ${code} (${name}) has ${digits} after the point here`,
    `write "${new Big(decimal).round(most, Big.roundHalfUp).toFixed(most)}" if that is meant`,
  );
};

/** A price of one of something, which may have up to 4 digits more than the currency; a fault beyond them. */
export const readRate = (decimal: Decimal, currency: Currency): Reading<Decimal> =>
  decimalsOf(decimal) > currency.digits + FINER_DIGITS
    ? tooFine(decimal, currency, currency.digits + FINER_DIGITS)
    : read(decimal);

const TOO_MUCH = Symbol("too much money");

/** A whole amount as a number. Throws beyond what a number counts one by one; see `counting`. */
function counted(amount: Big): number {
  const minor = amount.toNumber();
  if (!Number.isSafeInteger(minor))
    throw new Error(`${amount.toFixed()} is more money than can be counted`, { cause: TOO_MUCH });
  return minor;
}

/** The total of amounts in minor units. */
export const totalOf = (minors: readonly number[]): number =>
  counted(minors.reduce((sum, minor) => sum.plus(minor), new Big(0)));

/**
 * What the work gives; undefined when an amount in it is more than can be counted, about 90 million
 * millions of hundredths: absurd rates times absurd quantities.
 */
export function counting<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (e) {
    if (e instanceof Error && e.cause === TOO_MUCH) return undefined;
    throw e;
  }
}

/** `power` digits to the right: multiplied by 10^power, exactly. */
const shifted = (amount: Big, power: number): Big => amount.times(`1e${power}`);
const rounded = (amount: Big): number => counted(amount.round(0, Big.roundHalfUp));

/** An amount in whole minor units, exactly; a fault when it has more digits than the currency. */
export const toMinor = (decimal: Decimal, currency: Currency): Reading<number> =>
  decimalsOf(decimal) > currency.digits
    ? tooFine(decimal, currency, currency.digits)
    : read(counted(shifted(new Big(decimal), currency.digits)));

/**
 * rate × quantity in minor units, halves up. The quantity is the one that is printed, "2.35" or 2.35, so
 * that the line can be worked again by hand.
 */
export const lineAmount = (rate: Decimal, quantity: string | number, currency: Currency): number =>
  rounded(shifted(new Big(rate).times(quantity), currency.digits));

const MINUTES_PER_HOUR = 60;

/**
 * What so many minutes cost at a rate for an hour, in minor units, halves up. A sixtieth is no decimal, so the
 * product is divided last, by whole number and remainder: nothing is cut off before the amount is rounded.
 */
export function timeAmount(perHour: Decimal, minutes: string, { digits }: Currency): number {
  const product = new Big(perHour).times(minutes).times(`1e${digits}`);
  const over = product.mod(MINUTES_PER_HOUR);
  const whole = product.minus(over).div(MINUTES_PER_HOUR);
  const up = over.times(2).gte(MINUTES_PER_HOUR) ? 1 : 0;
  return totalOf([whole.toNumber(), up]);
}

/** "14.35 %" comes as 0.14350000000000002: a share is exact to so many decimals. */
const SHARE_DECIMALS = 9;
const share = (ratio: number): Big => new Big(roundTo(ratio, SHARE_DECIMALS));

/** A share of an amount, minor units, halves up: tax, a deposit, overhead. */
export const shareOf = (minor: number, ratio: number): number => rounded(share(ratio).times(minor));

/** An amount parted in two that add up to it: the share first, the rest after it. */
export function splitShare(minor: number, ratio: number): readonly [part: number, rest: number] {
  const part = shareOf(minor, ratio);
  return [part, minor - part];
}

/**
 * The amount of which `minor` is left when a share is taken off: cost / (1 − margin), halves up. The
 * ratio is less than 1.
 */
export function beforeShare(minor: number, ratio: number): number {
  // In whole numbers: a quotient that was cut off could tip a half.
  const left = BigInt(shifted(new Big(1).minus(share(ratio)), SHARE_DECIMALS).toFixed());
  const top = BigInt(minor) * 10n ** BigInt(SHARE_DECIMALS);
  return counted(new Big(String((2n * top + left) / (2n * left))));
}

/** The amount raised to whole steps of `step`, both in minor units; as it is where the step is 0. */
export function upToSteps(minor: number, step: number): number {
  const over = step === 0 ? 0 : minor % step;
  return over === 0 ? minor : totalOf([minor - over, step]);
}

/** An amount in minor units as it is printed, "1234.50"; the currency's code stands elsewhere. */
export function printMoney(minor: number, { digits }: Currency): string {
  const sign = minor < 0 ? "-" : "";
  const all = String(Math.abs(minor)).padStart(digits + 1, "0");
  const point = all.length - digits;
  return `${sign}${all.slice(0, point)}${digits === 0 ? "" : `.${all.slice(point)}`}`;
}

/** An amount with its currency's code, as a line of its own says it: "EUR 12.05". Throws for a code that is none. */
export function sayMoney(minor: number, code: string): string {
  const currency = currencyOf(code);
  if (!currency) throw new RangeError(`sayMoney: ISO 4217 has no ${code}`);
  return `${code} ${printMoney(minor, currency)}`;
}
