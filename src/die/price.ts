// What a die costs by the die maker's prices: rule, tubes and board, each rounded once to the smallest coin.
import type { Quantity } from "../model/quantity.ts";
import { roundTo } from "../units/index.ts";
import { currencyOf, lineAmount } from "../units/money.ts";
import { type RulePath, ruleLengths } from "./rulePaths.ts";
import type { DieSettings } from "./settings.ts";

/** One line of an estimate. */
export type PriceLine = {
  readonly what: "rule" | "tubes" | "board";
  /** Rule: mm, to a hundredth, as drawings print it. Tubes and board: how many. */
  readonly amount: number;
  /** For each of those, in the currency's main unit. */
  readonly each: number;
  /** In the currency's smallest units. */
  readonly minor: number;
};

/** An estimate: its lines, and their sum in the currency's smallest units. */
export type Price = {
  /** Three letters, ISO 4217. */
  readonly currency: string;
  readonly lines: readonly PriceLine[];
  readonly minor: number;
};

/** Lengths are counted in hundredths of a millimetre: what stands on the sheet is what is paid for. */
const LENGTH_DECIMALS = 2;

function lineOf(what: PriceLine["what"], amount: number, price: Quantity, currency: string): PriceLine {
  return {
    what,
    amount,
    each: price.value,
    minor: lineAmount(String(price.value), amount, currencyOf(currency)!),
  };
}

/** True when the order has any price of a die. */
export const hasPrice = ({ pricePerMm, pricePerTube, priceForBoard }: DieSettings): boolean =>
  [pricePerMm, pricePerTube, priceForBoard].some((price) => price !== undefined);

/**
 * What `dies` dies on one board cost by the order's prices: length of rule × its price, tubes × theirs, one
 * board; parts that the order has no price for are left out. Undefined without any price or without a currency
 * (a check asks for it).
 */
export function priceOf(rules: readonly RulePath[], settings: DieSettings, dies = 1): Price | undefined {
  const { currency, pricePerMm, pricePerTube, priceForBoard } = settings;
  if (currency === "" || !hasPrice(settings)) return undefined;
  const length = roundTo(dies * ruleLengths(rules).rule, LENGTH_DECIMALS);
  const tubes = dies * rules.filter(({ kind }) => kind === "tube").length;
  const lines = [
    ...(pricePerMm ? [lineOf("rule", length, pricePerMm, currency)] : []),
    ...(pricePerTube && tubes > 0 ? [lineOf("tubes", tubes, pricePerTube, currency)] : []),
    ...(priceForBoard ? [lineOf("board", 1, priceForBoard, currency)] : []),
  ];
  return { currency, lines, minor: lines.reduce((sum, { minor }) => sum + minor, 0) };
}
