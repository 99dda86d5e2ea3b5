import { CURRENCIES, currencyOf } from "../units/money.ts";
import { quote } from "../units/quote.ts";
import { misread, type Reading, read } from "../units/reading.ts";

const HOW = 'write the currency\'s three capital letters by ISO 4217, as in "GBP", "EUR" or "USD"';

/** Two codes of three letters that one slip of the hand tells apart: one letter wrong, or two neighbours swapped. */
function isSlip(a: string, b: string): boolean {
  const off = [...a].flatMap((letter, i) => (letter === b[i] ? [] : [i]));
  if (off.length < 2) return off.length === 1;
  const [i, k] = off as [number, number];
  return off.length === 2 && k === i + 1 && a[i] === b[k] && a[k] === b[i];
}

/** The code that was meant: in small letters, a name in full, or the only one that a slip turns into this. */
function meant(text: string): string | undefined {
  const word = text.trim().toUpperCase();
  const exact = currencyOf(word) ?? CURRENCIES.find(({ name }) => name.toUpperCase() === word);
  if (exact) return exact.code;
  if (!/^[A-Z]{3}$/.test(word)) return undefined;
  // A wrong currency would misprice everything: of several that are as near, none is offered.
  const near = CURRENCIES.filter(({ code }) => isSlip(word, code));
  return near.length === 1 ? near[0]!.code : undefined;
}

/** Reads a currency's code by ISO 4217; what is none is a fault that offers the one that was surely meant. */
export function readCurrencyCode(text: string): Reading<string> {
  if (currencyOf(text)) return read(text);
  const near = meant(text);
  return misread(
    `got ${quote(text)}, which is no currency's code`,
    near === undefined ? HOW : `write ${near}`,
  );
}
