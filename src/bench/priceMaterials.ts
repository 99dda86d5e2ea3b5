import type { Bench, HardwareRow, LeatherRow, PriceLine, ThreadList } from "../model/bench.ts";
import type { FittingKind } from "../model/fitting.ts";
import type { Decimal } from "../model/money.ts";
import type { Units } from "../model/say.ts";
import type { HardwareRate, LeatherRate } from "../model/shop.ts";
import { MM2_PER } from "../units/area.ts";
import { printLengthShort, printNumber, printThickness } from "../units/index.ts";
import { lineAmount } from "../units/money.ts";
import { counted, lacking, NOTHING, noRate, type Priced, type PricingShop, together } from "./priced.ts";

// What is bought for the whole order, priced line by line.

/** Of the order: how many articles, in which units its sizes are said, and whether the customer brings the leather. */
export type Ordered = { readonly quantity: number; readonly units: Units; readonly ownLeather: boolean };

/** Leather, hardware and thread as the lists have them, and the shop's sundries for each article. */
export const priceMaterials = (
  { leather, hardware, thread }: Pick<Bench, "leather" | "hardware" | "thread">,
  shop: PricingShop,
  order: Ordered,
): Priced =>
  together([
    ...leather.map((row) => priceLeather(row, shop, order)),
    priceHardware(hardware, shop, order.units),
    priceThread(thread, shop),
    priceSundries(shop, order.quantity),
  ]);

/** Areas, and shares of a reel, to a thousandth: what is multiplied is what is printed. */
const DECIMALS = 3;

const MANY: Readonly<Record<LeatherRate["per"], string>> = {
  "square foot": "square feet",
  "square decimetre": "square decimetres",
  "square metre": "square metres",
};

/** Thicknesses less than this apart are one, mm: a quarter of an ounce, the finest step that leather is sold in. */
const ONE_THICKNESS_MM = 0.1;

/** The price of the thickness that is nearest; else that of any thickness. */
function priceAt(thickness: number, { price, byThickness }: LeatherRate): Decimal | undefined {
  const off = (of: { readonly thickness: number }): number => Math.abs(of.thickness - thickness);
  const [nearest] = [...byThickness].sort((a, b) => off(a) - off(b) || a.thickness - b.thickness);
  return nearest && off(nearest) < ONE_THICKNESS_MM ? nearest.price : price;
}

/** What has no price, and the one or two lines that would give it one. */
function noLeatherRate(
  { leather }: LeatherRow,
  thick: string,
  rate: LeatherRate | undefined,
  shop: PricingShop,
) {
  const path = `leather.${leather}`;
  if (!rate || rate.byThickness.length === 0)
    return lacking(noRate(`the ${leather} leather has no price`, `${path}.price`, shop));
  const words = noRate(`the ${leather} leather of ${thick} has no price`, `${path}.price`, shop);
  return lacking(`${words}, or the thickness in ${path}.by-thickness`);
}

/** The leather that is needed, waste included. */
function priceLeather(row: LeatherRow, shop: PricingShop, { units, ownLeather }: Ordered): Priced {
  const { leather, thickness, needed } = row;
  const thick = printThickness(thickness, units === "in" ? "oz" : "mm");
  const what = `${leather} leather, ${thick}`;
  if (ownLeather) return { lines: [{ what, how: BROUGHT, minor: 0 }], unpriced: [] };
  const rate = Object.hasOwn(shop.leathers, leather) ? shop.leathers[leather] : undefined;
  const price = rate && priceAt(thickness, rate);
  if (!rate || price === undefined) return noLeatherRate(row, thick, rate, shop);
  const area = printNumber(needed / MM2_PER[rate.per], DECIMALS);
  const line = {
    what,
    how: `${counted(area, rate.per, MANY[rate.per])} at ${price}`,
    minor: lineAmount(price, area, shop.currency),
  };
  return { lines: [line], unpriced: [] };
}

const BROUGHT = "the customer brings it: not priced";

/**
 * Sizes less than this apart are one size under two names, mm: a 1 in buckle is sold as 25 mm too, a 1/2 in one
 * as 13 mm. Common practice, no source; whole millimetres stay apart.
 */
const ONE_SIZE_MM = 0.5;

/** The price of the size that is nearest; else the price of any size. */
function eachOf(row: HardwareRow, { bySize, each }: HardwareRate): Decimal | undefined {
  const bought = sizeOf(row);
  if (bought === undefined) return each;
  const off = (of: { readonly size: number }): number => Math.abs(of.size - bought);
  const [nearest] = [...bySize].sort((a, b) => off(a) - off(b) || a.size - b.size);
  return nearest && off(nearest) < ONE_SIZE_MM ? nearest.each : each;
}

/** The size it is bought by: its own, or its shank's length. */
const sizeOf = ({ size, shank }: HardwareRow): number | undefined => size ?? shank?.chosen;
const sizeText = (row: HardwareRow, units: Units): string => {
  const size = sizeOf(row);
  return size === undefined ? "" : printLengthShort(size, units);
};

/** A line for each row; one key of the shop file for all rows of a kind that lack a price. */
function priceHardware(rows: readonly HardwareRow[], shop: PricingShop, units: Units): Priced {
  const wanted = rows.filter((r) => r.count + r.spares > 0);
  const lacks = wanted.filter((r) => !r.brought && eachOf(r, rateOf(r, shop)) === undefined);
  const kinds = [...new Set(lacks.map((r) => r.kind))];
  return {
    lines: wanted.flatMap((r) => hardwareLine(r, shop, units)),
    unpriced: kinds.map((kind) => noHardwareRate(kind, lacks, shop, units)),
  };
}

const rateOf = ({ kind }: HardwareRow, shop: PricingShop): HardwareRate => shop.hardware[kind as FittingKind];

function hardwareLine(row: HardwareRow, shop: PricingShop, units: Units): readonly PriceLine[] {
  const { name, kind, count, spares } = row;
  const named = name.includes(kind) ? name : `${name}: ${kind}`;
  const what = [named, sizeText(row, units)].filter((w) => w !== "").join(", ");
  if (row.brought) return [{ what, how: BROUGHT, minor: 0 }];
  const each = eachOf(row, rateOf(row, shop));
  if (each === undefined) return [];
  const more = spares === 0 ? "" : ` and ${counted(String(spares), "spare", "spares")}`;
  return [
    { what, how: `${count}${more} at ${each}`, minor: lineAmount(each, count + spares, shop.currency) },
  ];
}

function noHardwareRate(
  kind: string,
  lacks: readonly HardwareRow[],
  shop: PricingShop,
  units: Units,
): string {
  const alike = lacks.filter((r) => r.kind === kind);
  const sizes = [...new Set(alike.map((r) => sizeText(r, units)))].filter((w) => w !== "");
  const what = `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}${sizes.length > 0 ? ` of ${sizes.join(" or ")}` : ""}`;
  const path = `hardware.${kind.replaceAll(" ", "-")}`;
  const words = noRate(`${what} has no price`, `${path}.each`, shop);
  const { bySize } = rateOf(alike[0]!, shop);
  return bySize.length === 0 ? words : `${words}, or the size in ${path}.by-size`;
}

const MM_PER_M = 1000;

/** Thread as its share of a reel, both in metres. */
function priceThread({ total }: ThreadList, shop: PricingShop): Priced {
  const { price, reel } = shop.thread;
  if (total === 0) return NOTHING;
  if (price === undefined || reel === undefined)
    return together([
      ...(price === undefined ? [lacking(noRate("the thread has no price", "thread.price", shop))] : []),
      ...(reel === undefined
        ? [lacking(noRate("nothing says how much thread is on a reel", "thread.reel", shop))]
        : []),
    ]);
  const metres = printNumber(total / MM_PER_M, DECIMALS);
  const onReel = printNumber(reel / MM_PER_M, DECIMALS);
  const share = printNumber(Number(metres) / Number(onReel), DECIMALS);
  const line = {
    what: "thread",
    how: `${metres} m, of reels of ${onReel} m: ${counted(share, "reel", "reels")} at ${price}`,
    minor: lineAmount(price, share, shop.currency),
  };
  return { lines: [line], unpriced: [] };
}

function priceSundries({ sundries, currency }: PricingShop, quantity: number): Priced {
  if (sundries === undefined) return NOTHING;
  const how = `${counted(String(quantity), "article", "articles")} at ${sundries}`;
  return {
    lines: [{ what: "dye, glue and the like", how, minor: lineAmount(sundries, quantity, currency) }],
    unpriced: [],
  };
}
