import { hasPrice } from "../price.ts";
import { dieRule } from "./dieRule.ts";

/** A price is worth nothing to a reader who doesn't know the money. */
export const priced = dieRule("die-price", "prices are stated in a currency", ({ settings, piece }) =>
  settings.currency === "" && hasPrice(settings)
    ? [
        {
          severity: "error" as const,
          place: "price",
          message: `The order has prices for the die of ${piece.name} and does not say in which currency.`,
          value: "no currency",
          limit: "three letters, as in EUR",
          mend: 'Write the currency in die.currency, as in "EUR", "GBP" or "USD", or leave the prices out.',
        },
      ]
    : [],
);
