import { nearestWord } from "../model/words.ts";
import { CURRENCIES, currencyOf } from "../units/money.ts";
import { quote } from "../units/quote.ts";
import { misread, type Reading, read } from "../units/reading.ts";

const HOW = 'write the currency\'s three capital letters by ISO 4217, as in "GBP", "EUR" or "USD"';

/** The code that was meant: in small letters, a name in full, or a slip of one letter. */
function meant(text: string): string | undefined {
  const word = text.trim().toUpperCase();
  const exact = currencyOf(word) ?? CURRENCIES.find(({ name }) => name.toUpperCase() === word);
  if (exact) return exact.code;
  return /^[A-Z]{2,4}$/.test(word)
    ? nearestWord(
        word,
        CURRENCIES.map(({ code }) => code),
      )
    : undefined;
}

/** Reads a currency's code by ISO 4217; what is none is a fault that offers the nearest. */
export function readCurrencyCode(text: string): Reading<string> {
  if (currencyOf(text)) return read(text);
  const near = meant(text);
  return misread(
    `got ${quote(text)}, which is no currency's code`,
    near === undefined ? HOW : `write ${near}`,
  );
}
