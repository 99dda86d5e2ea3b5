import type { PriceLine } from "../model/bench.ts";
import type { Currency } from "../model/money.ts";
import type { Shop } from "../model/shop.ts";
import { printNumber } from "../units/index.ts";

/** Lines that have a price, and for what has none, what to write. */
export type Priced = { readonly lines: readonly PriceLine[]; readonly unpriced: readonly string[] };

/** A shop whose file says what its prices are in. */
export type PricingShop = Shop & { readonly currency: Currency };

export const together = (parts: readonly Priced[]): Priced => ({
  lines: parts.flatMap((p) => p.lines),
  // One key of the shop file mends all that lack it.
  unpriced: [...new Set(parts.flatMap((p) => p.unpriced))],
});

export const NOTHING: Priced = { lines: [], unpriced: [] };
export const lacking = (words: string): Priced => ({ lines: [], unpriced: [words] });

/** "strap leather has no price: write leather.strap.price in shop.yaml". */
export const noRate = (what: string, key: string, shop: Shop): string =>
  `${what}: write ${key} in ${shop.file}`;

/** "1 square foot", "2.354 square feet": a printed number and its unit. */
export const counted = (printed: string, one: string, many: string): string =>
  `${printed} ${printed === "1" ? one : many}`;

/** A share is read to 9 decimals; as a percentage it has 2 less. */
const PERCENT_DECIMALS = 7;
export const percent = (share: number): string => `${printNumber(share * 100, PERCENT_DECIMALS)} %`;
