import type { FittingKind } from "./fitting.ts";
import type { Currency, Decimal } from "./money.ts";
import type { WorkKind } from "./work.ts";

/** What one leather costs and how much of it is wasted. Areas mm². */
export type LeatherRate = {
  /** Price of `per` of it. */
  readonly price?: Decimal;
  /** Prices of single thicknesses, mm, thinnest first; they go before the price. */
  readonly byThickness: readonly { readonly thickness: number; readonly price: Decimal }[];
  readonly per: "square foot" | "square decimetre" | "square metre";
  /** Area of the pieces over the area of leather bought, 0 to 1, and where that figure came from. */
  readonly yield: number;
  readonly yieldFrom: string;
  /** Area of a whole side, or whatever it is bought as. */
  readonly side?: number;
  /** Where it is bought: words for the maker's own sheet. */
  readonly supplier: string;
};

export type HardwareRate = {
  readonly each?: Decimal;
  /** Prices of single sizes, mm. */
  readonly bySize: readonly { readonly size: number; readonly each: Decimal }[];
  /** Shank lengths that are in stock, mm, shortest first. */
  readonly lengths: readonly number[];
  readonly lengthsFrom: string;
  /** Share that is laid out more than is needed. */
  readonly spares: number;
};

export type ThreadRate = {
  /** Price of a reel. */
  readonly price?: Decimal;
  /** Length on a reel, mm. */
  readonly reel?: number;
  readonly name: string;
  /** The longest thread that is worked with, mm. */
  readonly needleful: number;
  /** Left at each end of a seam, mm. */
  readonly tail: number;
};

/**
 * A workshop's own size of an article: measures by their name in the order, and other settings by their whole
 * path, "pieces.strap.length", as text.
 */
export type ShopSize = {
  readonly article: string;
  readonly name: string;
  readonly measures: Readonly<Record<string, string>>;
};

/** A workshop's rates and habits, read from its shop file; without one, the built-in defaults and no prices. */
export type Shop = {
  /** "" when there is no shop file. */
  readonly file: string;
  readonly name: string;
  readonly address: string;
  /** Undefined without a shop file: nothing is priced. */
  readonly currency?: Currency;
  readonly perHour?: Decimal;
  readonly overhead: number;
  readonly overheadOf: "labour" | "labour and materials";
  readonly margin: number;
  readonly marginOf: "price" | "cost";
  readonly tax: number;
  readonly taxName: string;
  readonly deposit: number;
  /** The price before tax is rounded up to a whole number of these. */
  readonly roundTo?: Decimal;
  /** Dyes, glue and the like for one article. */
  readonly sundries?: Decimal;
  readonly validDays: number;
  readonly leathers: Readonly<Record<string, LeatherRate>>;
  readonly hardware: Readonly<Record<FittingKind, HardwareRate>>;
  readonly thread: ThreadRate;
  /** Minutes by kind of work, for one of what WORK counts it by. */
  readonly minutes: Readonly<Partial<Record<WorkKind, number>>>;
  /** The shop's own numbers of round punches, and their sizes in mm. */
  readonly punches: readonly { readonly number: string; readonly size: number }[];
  readonly sizes: readonly ShopSize[];
  /** Longer than the sum of the straps that a strip is cut, as a share. */
  readonly stripAllowance: number;
};
