import type { Bench, Price, PriceLine } from "../model/bench.ts";
import type { Values } from "../model/dimension.ts";
import type { Currency } from "../model/money.ts";
import type { Units } from "../model/say.ts";
import type { Shop } from "../model/shop.ts";
import type { priceTable } from "../trade/benchTables.ts";
import {
  beforeShare,
  counting,
  printMoney,
  shareOf,
  splitShare,
  toMinor,
  totalOf,
  upToSteps,
} from "../units/money.ts";
import { type Priced, type PricingShop, percent } from "./priced.ts";
import { priceLabour } from "./priceLabour.ts";
import { priceMaterials } from "./priceMaterials.ts";

// The price of the whole order, from the lists of the bench sheet and the shop's rates.

export type PriceInput = {
  readonly parts: Pick<Bench, "leather" | "hardware" | "thread" | "steps">;
  readonly shop: Shop;
  /** The order's own section. */
  readonly price: Values<typeof priceTable>;
  /** What the order's sizes are said in. */
  readonly units: Units;
};

export type PriceResult = { readonly price?: Price; readonly unpriced: readonly string[] };

/**
 * The price, and what it lacks. Every amount is a whole number of the currency's minor unit: each line is rounded
 * once, halves up, and every total is the sum of its lines. The order's own margin, deposit and tax go before the
 * shop's. Without a rate for something the price is incomplete; without a currency, or when nothing at all has a
 * rate, there is none.
 */
export function priceOf({ parts, shop, price, units }: PriceInput): PriceResult {
  const { currency } = shop;
  if (!currency) return { unpriced: [noCurrency(shop)] };
  const pricing: PricingShop = { ...shop, currency };
  const result = counting((): PriceResult => {
    const materials = priceMaterials(parts, pricing, {
      ...{ quantity: price.quantity.value, units, ownLeather: price.ownLeather },
    });
    const labour = priceLabour(parts.steps, price.minutes.value, pricing);
    const unpriced = [...materials.unpriced, ...labour.unpriced];
    const nothing = ![...materials.lines, ...labour.lines].some((l) => l.minor > 0);
    if (unpriced.length > 0 && nothing) return { unpriced };
    return { price: madeUp(materials, labour, pricing, price), unpriced };
  });
  return result ?? { unpriced: [TOO_MUCH] };
}

const TOO_MUCH = "the price is more money than can be counted: look at the rates and the quantity";

const noCurrency = ({ file }: Shop): string =>
  file === ""
    ? 'nothing is priced, for the order names no shop file: write "shop: shop.yaml" at its top'
    : `nothing is priced, for no currency is said: write currency in ${file}, as in "currency: GBP"`;

/** A share that the order sets itself, or else the shop's. */
type Share = { readonly ratio: number; readonly whose: string };
const shareFrom = (own: { readonly value: number } | undefined, shops: number): Share =>
  own ? { ratio: own.value, whose: ", as this order says" } : { ratio: shops, whose: "" };

function madeUp(materials: Priced, labour: Priced, shop: PricingShop, own: Values<typeof priceTable>): Price {
  const { currency } = shop;
  const [bought, worked] = [materials, labour].map((p) => totalOf(p.lines.map((l) => l.minor))) as [
    number,
    number,
  ];
  const overhead = overheadOf(bought, worked, shop);
  const cost = totalOf([bought, worked, overhead.minor]);
  const margin = marginOf(cost, shareFrom(own.margin, shop.margin), shop);
  const unrounded = totalOf([cost, margin.minor]);
  const beforeTax = upToSteps(unrounded, stepOf(shop));
  const tax = taxOf(beforeTax, shareFrom(own.tax, shop.tax), shop);
  const total = totalOf([beforeTax, tax.minor]);
  const [deposit, balance] = splitShare(total, own.deposit?.value ?? shop.deposit);
  return {
    currency,
    materials: materials.lines,
    labour: labour.lines,
    overhead,
    cost,
    margin,
    rounding: beforeTax - unrounded,
    beforeTax,
    tax,
    total,
    deposit,
    balance,
    incomplete: materials.unpriced.length + labour.unpriced.length > 0,
  };
}

const shareWords = (ratio: number, of: string, minor: number, currency: Currency): string =>
  `${percent(ratio)} of ${of}, ${printMoney(minor, currency)}`;

function overheadOf(bought: number, worked: number, shop: PricingShop): PriceLine {
  const of = shop.overheadOf === "labour" ? worked : totalOf([bought, worked]);
  return {
    what: "overhead",
    how: shareWords(shop.overhead, shop.overheadOf, of, shop.currency),
    minor: shareOf(of, shop.overhead),
  };
}

/** Of the price it is what takes the cost up to the price of which it is that share. */
function marginOf(cost: number, { ratio, whose }: Share, { marginOf: of, currency }: PricingShop): PriceLine {
  const minor = of === "price" ? beforeShare(cost, ratio) - cost : shareOf(cost, ratio);
  const words =
    of === "price"
      ? shareWords(ratio, "the price", totalOf([cost, minor]), currency)
      : shareWords(ratio, "the cost", cost, currency);
  return { what: "margin", how: `${words}${whose}`, minor };
}

const taxOf = (beforeTax: number, { ratio, whose }: Share, shop: PricingShop): PriceLine => ({
  what: shop.taxName,
  how: `${shareWords(ratio, "the price", beforeTax, shop.currency)}${whose}`,
  minor: shareOf(beforeTax, ratio),
});

/** What the price is rounded up to, in minor units; 0 where it isn't. */
function stepOf({ roundTo, currency }: PricingShop): number {
  const step = roundTo === undefined ? undefined : toMinor(roundTo, currency);
  return step?.ok ? step.value : 0;
}
