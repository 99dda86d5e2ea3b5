import { type DimensionTable, from } from "../model/dimension.ts";
import type { Quantity } from "../model/quantity.ts";
import { WORK, WORK_KINDS } from "../model/work.ts";
import { AREA_UNITS, readArea } from "../units/area.ts";
import { readMoney } from "../units/money.ts";
import { readCurrencyCode } from "./currencyCode.ts";
import { readLengths, readSizePrices, readThicknessPrices } from "./shopLists.ts";

// The sections of a shop file: a workshop's rates and habits. No price has a default.

const COMMON = "common practice, no source";
const BLANK = "left blank: it can't be priced";
const NOTHING = "left out, nothing is added";
const YOURS = "your own";

/** Area of the pieces over the leather bought: 13.5 square feet of cloth are replaced by 18 of leather. */
const YIELD = 13.5 / 18;
export const YIELD_SOURCE = "keleenleathers.com, Hide diagram: 18 square feet of leather for 13.5 of cloth";

const plainNumber = (value: number): Quantity => ({ value, kind: "ratio", parts: [String(value)], inputs: [] });

/** The lines that stand in no section. */
export const shopTopTable = {
  shop: { kind: "text", default: "", longest: 80, example: "Your shop", means: "name of your workshop, as it stands on quotes", source: "left blank" },
  address: { kind: "text", default: "", longest: 200, example: "Your address", means: "where you are and how you are reached, as it stands on quotes", source: "left blank" },
  units: { kind: "choice", choices: ["in", "mm", "cm"], default: "in", means: "what a number without a unit means in this file", source: COMMON },
  currency: { kind: "text", default: "", longest: 30, reads: readCurrencyCode, example: "GBP", means: "currency of every price here, by the three letters of ISO 4217", source: "left blank: nothing is priced" },
} as const satisfies DimensionTable;

export const labourTable = {
  perHour: { kind: "text", default: "", longest: 30, reads: readMoney, example: "30.00", means: "price of an hour's work", source: BLANK },
  overhead: { kind: "ratio", default: 0, least: 0, most: 10, means: "rent, light, tools and the like, as a share added", source: NOTHING },
  overheadOf: { kind: "choice", choices: ["labour", "labour and materials"], default: "labour", means: "what the overhead is a share of", source: COMMON },
} as const satisfies DimensionTable;

/** Of a price a margin is less than the whole; of the cost it may be several times that. */
const mostMargin = from(["marginOf"], (k) => plainNumber(k.choice("marginOf") === "price" ? 0.9 : 10));

export const shopPriceTable = {
  margin: { kind: "ratio", default: 0, least: 0, most: mostMargin, means: "your margin", source: NOTHING },
  marginOf: { kind: "choice", choices: ["price", "cost"], default: "price", means: "what the margin is a share of: the price before tax, or what the work costs you", source: COMMON },
  tax: { kind: "ratio", default: 0, least: 0, most: 1, means: "tax on the price", source: NOTHING },
  taxName: { kind: "text", default: "tax", longest: 30, example: "VAT", means: "what the tax is called on a quote", source: COMMON },
  deposit: { kind: "ratio", default: 0, least: 0, most: 1, means: "share of the whole that is paid when ordering", source: "left out, all is paid at the end" },
  roundTo: { kind: "text", default: "", longest: 30, reads: readMoney, example: "1.00", means: "the price before tax is rounded up to a whole number of these", source: "left blank: not rounded" },
  sundries: { kind: "text", default: "", longest: 30, reads: readMoney, example: "2.50", means: "dye, glue, wax and the like for one article", source: NOTHING },
  validDays: { kind: "count", default: 30, least: 0, most: 3650, means: "days that a quote holds", source: COMMON },
} as const satisfies DimensionTable;

export const leatherRateTable = {
  price: { kind: "text", default: "", longest: 30, reads: readMoney, example: "9.50", means: "price of one square foot, decimetre or metre of it", source: BLANK },
  byThickness: { kind: "text", default: "", longest: 400, reads: readThicknessPrices, example: "8 oz 12.50, 10 oz 14.00", means: "prices of single thicknesses; they go before the price above", source: "left blank" },
  per: { kind: "choice", choices: AREA_UNITS, default: "square foot", means: "what the price is for", source: COMMON },
  yield: { kind: "ratio", default: YIELD, least: 0.1, most: 1, means: "area of the pieces over the area of leather that is bought", source: YIELD_SOURCE },
  side: { kind: "text", default: "", longest: 40, reads: readArea, example: "22 square feet", means: "area of a side, or of whatever you buy it as", source: "left blank" },
  supplier: { kind: "text", default: "", longest: 80, example: "where you buy it", means: "where it is bought; for your own sheet", source: "left blank" },
} as const satisfies DimensionTable;

/** Shanks in the usual steps of a rule; the bench's own list is better. */
const SHANKS = "1/8 in, 3/16 in, 1/4 in, 5/16 in, 3/8 in, 1/2 in, 5/8 in, 3/4 in, 1 in";

const SPARES = { kind: "ratio", default: 0, least: 0, most: 5, means: "spares laid out, as a share of what is needed", source: COMMON } as const;

export const hardwareRateTable = {
  each: { kind: "text", default: "", longest: 30, reads: readMoney, example: "3.20", means: "price of one, whatever its size", source: BLANK },
  bySize: { kind: "text", default: "", longest: 400, reads: readSizePrices, example: "5/8 in 3.20, 1 in 4.80", means: "prices of single sizes; they go before the price of one", source: "left blank" },
  spares: SPARES,
} as const satisfies DimensionTable;

export const shankRateTable = {
  each: hardwareRateTable.each,
  bySize: hardwareRateTable.bySize,
  lengths: { kind: "text", default: SHANKS, longest: 400, reads: readLengths, example: SHANKS, means: "lengths of shank that you have", source: COMMON },
  spares: { ...SPARES, default: 0.1 },
} as const satisfies DimensionTable;

export const threadRateTable = {
  name: { kind: "text", default: "", longest: 60, example: "linen, 4 cord", means: "what thread it is", source: "left blank" },
  price: { kind: "text", default: "", longest: 30, reads: readMoney, example: "12.00", means: "price of a reel", source: BLANK },
  reel: { kind: "length", optional: true, least: 100, most: 1e7, means: "length on a reel, as in 100 m", source: YOURS },
  needleful: {
    kind: "length",
    default: 1676.4,
    least: 200,
    most: 10000,
    means: "longest thread that you sew with, needle to needle",
    source: "P. N. Hasluck, Harness Making (1904), pp. 32, 51: 2 ft 9 in on each side of the hook",
  },
  tail: { kind: "length", default: 127, least: 0, most: 1000, means: "thread left over at each end of a seam", source: "bushcraftuk.com, Leather stitching: 4 to 6 in" },
} as const satisfies DimensionTable;

export const stripsTable = { allowance: { kind: "ratio", default: 0.05, least: 0, most: 1, means: "how much longer than its straps a strip is cut, as a share", source: COMMON } } as const satisfies DimensionTable;

/** Minutes for each kind of work. */
export const minutesTable: DimensionTable = Object.fromEntries(
  WORK_KINDS.map((kind) => [kind, { kind: "number", optional: true, least: 0, most: 10000, means: `minutes to ${WORK[kind].says}, for each ${WORK[kind].per}`, source: YOURS }]),
);
