import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type PriceInput, type PriceResult, priceOf as priceIn } from "../../src/bench/price.ts";
import type { HardwareRow, LeatherRow, Price, WorkStep } from "../../src/model/bench.ts";
import { FITTING_KINDS } from "../../src/model/fitting.ts";
import type { LeatherRate, Shop } from "../../src/model/shop.ts";
import type { WorkKind } from "../../src/model/work.ts";
import { priceTable } from "../../src/trade/benchTables.ts";
import { CURRENCIES, currencyOf } from "../../src/units/money.ts";
import { valuesOf } from "../support/anyValues.ts";
import { shopWith } from "../support/shops.ts";

/** NIST SP 811: 1 square foot is 0.09290304 m². */
const SQUARE_FOOT = 92903.04;
const INCH = 25.4;

const priceOf = (input: Omit<PriceInput, "units"> & Partial<PriceInput>): PriceResult =>
  priceIn({ units: "mm", ...input });
const own = (texts: Readonly<Record<string, string>> = {}) => valuesOf(priceTable, texts, {});
const rate = (over: Partial<LeatherRate>): LeatherRate => ({
  ...{ per: "square foot", yield: 0.75, yieldFrom: "invented", supplier: "", byThickness: [] },
  ...over,
});
const leather = (kind: string, needed: number): LeatherRow => ({
  ...{ leather: kind, thickness: 3.5, pieces: [], net: needed * 0.75, yield: 0.75, yieldFrom: "invented" },
  needed,
});
const hardware = (kind: string, count: number, over: Partial<HardwareRow> = {}): HardwareRow => ({
  ...{ kind, name: `${kind} of the tab`, count, spares: 0, details: [], brought: false, pieces: [] },
  ...over,
});
const step = (does: WorkKind, minutes?: number, amount = 1): WorkStep => ({
  ...{ id: does, does, says: "", pieces: [], tool: "", setting: "", amount, after: [] },
  ...(minutes === undefined ? {} : { minutes }),
});
type Parts = PriceInput["parts"];
const parts = (over: Partial<Parts> & { readonly threadMm?: number } = {}): Parts => ({
  ...{ leather: [], hardware: [], steps: [] },
  ...over,
  thread: { rows: [], total: over.threadMm ?? 0, stitches: 0, advice: [] },
});
const shop = (code: string, over: Partial<Shop> = {}, bits: Parameters<typeof shopWith>[0] = {}): Shop =>
  shopWith(bits, { file: "shop.yaml", currency: currencyOf(code)!, ...over });

const minorsOf = (lines: Price["materials"]): readonly number[] => lines.map((l) => l.minor);
const keysIn = ({ unpriced }: PriceResult): readonly string[] =>
  unpriced.map((u) => /: write (\S+) in shop\.yaml$/.exec(u)?.[1] ?? u);

/*
 * Worked by hand, two articles, GBP.
 *   Leather    2.3541 square feet, printed 2.354, × 14.50 = 34.133           34.13
 *   Buckles    2 of 5/8 in at 3.40                                            6.80
 *   Rivets     8 and 1 spare at 0.12                                          1.08
 *   Bit        brought                                                        0.00
 *   Thread     4.321 m of reels of 100 m = 0.04321, printed 0.043, × 13.20    0.57  (0.5676)
 *   Sundries   2 × 2.50                                                       5.00
 *   Stitching  42.5 minutes × 30.00 / 60                                     21.25
 *   Skiving    9.25 + 3 = 12.25 minutes × 30.00 / 60 = 6.125                  6.13
 *   Other      10 minutes                                                     5.00
 *   Overhead   25 % of 32.38 = 8.095                                          8.10
 *   Cost       47.58 + 32.38 + 8.10                                          88.06
 *   Margin     88.06 / 0.8 = 110.075, 110.08 − 88.06                         22.02
 *   Rounding   110.08 up to 111.00                                            0.92
 *   Tax        20 % of 111.00                                                22.20
 *   Total                                                                   133.20
 *   Deposit    30 %: 39.96; the balance 93.24
 */
const workshop = shop(
  "GBP",
  {
    ...{ perHour: "30.00", overhead: 0.25, margin: 0.2, tax: 0.2, taxName: "VAT", deposit: 0.3 },
    ...{ roundTo: "1.00", sundries: "2.50" },
    leathers: { strap: rate({ price: "14.50" }) },
    thread: { name: "", price: "13.20", reel: 100_000, needleful: 1500, tail: 100 },
  },
  {
    buckle: { each: "9.99", bySize: [{ size: 16, each: "3.40" }] },
    rivet: { each: "0.12" },
  },
);
const worked = parts({
  leather: [leather("strap", 2.3541 * SQUARE_FOOT)],
  hardware: [
    hardware("buckle", 2, { name: "cheek buckle", size: (5 / 8) * INCH }),
    hardware("rivet", 8, { spares: 1 }),
    hardware("bit", 1, { name: "bit", brought: true }),
  ],
  threadMm: 4321,
  steps: [step("skive", 9.25), step("stitch", 42.5), step("skive", 3)],
});
const order = { quantity: "2", minutes: "10" };
const workedPrice = (texts: Readonly<Record<string, string>> = {}, over: Partial<Shop> = {}): Price => {
  const { price, unpriced } = priceOf({
    parts: worked,
    shop: { ...workshop, ...over },
    price: own({ ...order, ...texts }),
  });
  expect(unpriced).toEqual([]);
  return price!;
};

describe("a price worked by hand", () => {
  test("line by line", () => {
    expect(workedPrice()).toEqual({
      currency: { code: "GBP", digits: 2, name: "Pound Sterling" },
      materials: [
        { what: "strap leather, 3.5 mm", how: "2.354 square feet at 14.50", minor: 3413 },
        { what: "cheek buckle, 15.9 mm", how: "2 at 3.40", minor: 680 },
        { what: "rivet of the tab", how: "8 and 1 spare at 0.12", minor: 108 },
        { what: "bit", how: "the customer brings it: not priced", minor: 0 },
        { what: "thread", how: "4.321 m, of reels of 100 m: 0.043 reels at 13.20", minor: 57 },
        { what: "dye, glue and the like", how: "2 articles at 2.50", minor: 500 },
      ],
      labour: [
        { what: "skive", how: "12.25 minutes at 30.00 an hour", minor: 613 },
        { what: "stitch", how: "42.5 minutes at 30.00 an hour", minor: 2125 },
        { what: "other work, as the order says", how: "10 minutes at 30.00 an hour", minor: 500 },
      ],
      overhead: { what: "overhead", how: "25 % of labour, 32.38", minor: 810 },
      cost: 8806,
      margin: { what: "margin", how: "20 % of the price, 110.08", minor: 2202 },
      rounding: 92,
      beforeTax: 11100,
      tax: { what: "VAT", how: "20 % of the price, 111.00", minor: 2220 },
      total: 13320,
      deposit: 3996,
      balance: 9324,
      incomplete: false,
    });
  });

  // 20 % of 79.96 = 15.992, cost 95.95; 95.95 / 0.8 = 119.9375.
  test("overhead on labour and materials", () => {
    expect(workedPrice({}, { overhead: 0.2, overheadOf: "labour and materials" })).toMatchObject({
      overhead: { how: "20 % of labour and materials, 79.96", minor: 1599 },
      cost: 9595,
      margin: { minor: 2399 },
      beforeTax: 12000,
    });
  });

  // 20 % of 88.06 = 17.612: 105.67.
  test("margin on the cost, not rounded up", () => {
    const { roundTo: _, ...unrounded } = workshop;
    const { price } = priceOf({
      parts: worked,
      shop: { ...unrounded, marginOf: "cost" },
      price: own(order),
    });
    expect(price).toMatchObject({
      margin: { how: "20 % of the cost, 88.06", minor: 1761 },
      rounding: 0,
      beforeTax: 10567,
    });
  });

  // Half of the price is 88.06 more; 176.12 up to 177.00; no tax; all of it paid when ordering.
  test("the order's own margin, tax and deposit go before the shop's", () => {
    const price = workedPrice({ margin: "50 %", tax: "0", deposit: "100 %" });
    expect(price).toMatchObject({
      margin: { how: "50 % of the price, 176.12, as this order says", minor: 8806 },
      beforeTax: 17700,
      tax: { how: "0 % of the price, 177.00, as this order says", minor: 0 },
      ...{ total: 17700, deposit: 17700, balance: 0 },
    });
  });

  // 88.06 / 0.1 = 880.60; up to 881.00.
  test("a margin of nine tenths", () => {
    expect(workedPrice({ margin: "90 %" })).toMatchObject({ margin: { minor: 79254 }, beforeTax: 88100 });
  });
});

describe("currencies with other coins", () => {
  const leathers = { strap: rate({ price: "1250", per: "square decimetre" }) };
  const square = parts({ leather: [leather("strap", 12_345.4)], steps: [step("stitch", 7)] });

  // 1.235 dm² × 1250 = 1543.75, 1544 yen; 7 minutes at 2000: 233.33, 233 yen; 10 % of 1777 is 177.7, 178.
  test("none: yen", () => {
    const yen = shop("JPY", { leathers, perHour: "2000", tax: 0.1, roundTo: "100" });
    const { price } = priceOf({ parts: square, shop: yen, price: own({ tax: "10 %" }) });
    expect(price).toMatchObject({
      materials: [{ how: "1.235 square decimetres at 1250", minor: 1544 }],
      labour: [{ minor: 233 }],
      ...{ cost: 1777, rounding: 23, beforeTax: 1800, total: 1980 },
    });
  });

  // 1.235 × 1.125 = 1.389375 dinars, 1389 fils; 7 minutes at 4.500: 0.525.
  test("thousandths: dinars", () => {
    const kwd = shop("KWD", {
      leathers: { strap: rate({ price: "1.125", per: "square decimetre" }) },
      perHour: "4.500",
      deposit: 1 / 3,
    });
    const { price } = priceOf({ parts: square, shop: kwd, price: own() });
    expect(price).toMatchObject({
      materials: [{ minor: 1389 }],
      labour: [{ minor: 525 }],
      ...{ total: 1914, deposit: 638, balance: 1276 },
    });
  });
});

describe("hardware by its size", () => {
  const bySize = [
    { size: 12.7, each: "1.00" },
    { size: 13, each: "2.00" },
    { size: 25, each: "3.00" },
  ];
  const eachOf = (row: HardwareRow, each?: string) => {
    const rates = { buckle: { bySize, ...(each === undefined ? {} : { each }) }, rivet: { bySize } };
    return priceOf({ parts: parts({ hardware: [row] }), shop: shop("GBP", {}, rates), price: own() });
  };
  test.each<[string, number, string]>([
    ["its own size", 12.7, "1 at 1.00"],
    ["a whole millimetre beside an inch size", 13, "1 at 2.00"],
    ["an inch, sold as 25 mm", INCH, "1 at 3.00"],
    ["no such size: the price of any", 19.05, "1 at 4.00"],
    ["a millimetre off is another size", 24, "1 at 4.00"],
  ])("%s", (_, size, how) => {
    expect(eachOf(hardware("buckle", 1, { size }), "4.00").price?.materials[0]?.how).toBe(how);
  });

  test("a rivet by its shank", () => {
    const shank = { diameter: 5, stack: 6, from: 11, to: 14, chosen: 13, listFrom: "" };
    expect(eachOf(hardware("rivet", 1, { shank })).price?.materials[0]?.minor).toBe(200);
  });

  test("a size without a price", () => {
    const none = eachOf(hardware("buckle", 1, { size: 19.05 }));
    expect(none).toEqual({
      unpriced: [
        "a buckle of 19.1 mm has no price: write hardware.buckle.each in shop.yaml, or the size in hardware.buckle.by-size",
      ],
    });
  });
});

describe("what has no rate", () => {
  const bare = shop("GBP", { leathers: { strap: rate({}) } }, {});
  const all = parts({
    leather: [leather("strap", 1e5), leather("ear", 1e4)],
    hardware: [
      ...FITTING_KINDS.map((kind) => hardware(kind, 1, { brought: kind === "bit" })),
      hardware("buckle", 3),
    ],
    threadMm: 1000,
    steps: [step("stitch"), step("setUp"), step("prick", undefined, 0), step("skive", 4)],
  });

  test("is named with the key to write, each once; without any rate there is no price", () => {
    const result = priceOf({ parts: all, shop: bare, price: own() });
    expect(result.price).toBeUndefined();
    const kinds = FITTING_KINDS.filter((k) => k !== "bit").map(
      (k) => `hardware.${k.replaceAll(" ", "-")}.each`,
    );
    expect(keysIn(result)).toEqual([
      ...["leather.strap.price", "leather.ear.price"],
      ...kinds,
      ...["thread.price", "thread.reel", "labour.per-hour", "minutes.set-up", "minutes.stitch"],
    ]);
  });

  test("leaves the price of the rest, incomplete", () => {
    const some = { ...bare, perHour: "30.00", sundries: "1.00" };
    const { price, unpriced } = priceOf({ parts: all, shop: some, price: own() });
    // Four minutes of skiving and the sundries.
    expect(price).toMatchObject({ incomplete: true, cost: 300, total: 300 });
    expect(unpriced).toHaveLength(2 + 10 + 2 + 2);
  });

  test("an hour's price is not asked for where there is no work", () => {
    expect(priceOf({ parts: parts({}), shop: bare, price: own() })).toMatchObject({
      price: { total: 0, incomplete: false },
      unpriced: [],
    });
  });

  test("asks once for a kind in several sizes", () => {
    const rings = [19, 12, 19].map((size) => hardware("ring", 1, { size }));
    expect(priceOf({ parts: parts({ hardware: rings }), shop: bare, price: own() }).unpriced).toEqual([
      "a ring of 19 mm or 12 mm has no price: write hardware.ring.each in shop.yaml",
    ]);
  });

  test("no currency, or no shop file: one line", () => {
    const { currency: _, ...without } = bare;
    const named = priceOf({ parts: all, shop: without, price: own() });
    expect(named.price).toBeUndefined();
    expect(named.unpriced).toEqual([
      'nothing is priced, for no currency is said: write currency in shop.yaml, as in "currency: GBP"',
    ]);
    const none = priceOf({ parts: all, shop: { ...without, file: "" }, price: own() });
    expect(none.unpriced).toEqual([
      'nothing is priced, for the order names no shop file: write "shop: shop.yaml" at its top',
    ]);
  });

  test("nothing of a thing is neither priced nor missed", () => {
    const nothing = parts({ hardware: [hardware("buckle", 0)], steps: [step("stitch", 0)] });
    const { price, unpriced } = priceOf({ parts: nothing, shop: workshop, price: own() });
    expect(unpriced).toEqual([]);
    expect(price).toMatchObject({ materials: [{ what: "dye, glue and the like" }], labour: [] });
  });
});

describe("amounts that are very large", () => {
  const buckles = (count: number, each: string) =>
    priceOf({
      parts: parts({ hardware: [hardware("buckle", count)] }),
      shop: shop("GBP", { tax: 0.2 }, { buckle: { each } }),
      price: own({ quantity: "1000" }),
    });
  test("stay exact to the last coin", () => {
    // 7 000 001 × 12345.67 = 86 419 702 345.67; a fifth of it 17 283 940 469.134.
    expect(buckles(7_000_001, "12345.67").price).toMatchObject({
      cost: 8_641_970_234_567,
      tax: { minor: 1_728_394_046_913 },
      total: 10_370_364_281_480,
    });
  });
  test("are said to be too much where they can't be counted", () => {
    expect(buckles(9_000_000, "99999999999.99")).toEqual({
      unpriced: ["the price is more money than can be counted: look at the rates and the quantity"],
    });
  });
});

// Any order's lists and any shop's rates.

const decimal = (digits: number) =>
  fc.tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: digits })).map(([n, places]) => {
    const text = String(n).padStart(places + 1, "0");
    return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
  });
const share = (most: number) => fc.integer({ min: 0, max: most * 10_000 }).map((n) => n / 10_000);
const currency = fc.constantFrom(
  ...["GBP", "JPY", "KWD"].map((code) => CURRENCIES.find((c) => c.code === code)!),
);

const anyInput: fc.Arbitrary<Omit<PriceInput, "units">> = currency.chain((c) =>
  fc.record({
    parts: fc
      .record({
        leather: fc.array(
          fc.double({ min: 0, max: 1e9, noNaN: true }).map((a) => leather("strap", a)),
          {
            maxLength: 3,
          },
        ),
        hardware: fc.array(
          fc.nat({ max: 100_000 }).map((n) => hardware("buckle", n, { spares: n % 7 })),
          { maxLength: 3 },
        ),
        threadMm: fc.double({ min: 0, max: 1e8, noNaN: true }),
        steps: fc.array(
          fc
            .tuple(fc.constantFrom<WorkKind>("stitch", "skive"), fc.double({ min: 0, max: 1e5, noNaN: true }))
            .map(([kind, m]) => step(kind, m)),
        ),
      })
      .map(parts),
    shop: fc
      .tuple(
        fc.record({
          perHour: decimal(c.digits + 4),
          sundries: decimal(c.digits),
          roundTo: decimal(c.digits),
          overhead: share(10),
          overheadOf: fc.constantFrom("labour" as const, "labour and materials" as const),
          margin: share(0.9),
          marginOf: fc.constantFrom("price" as const, "cost" as const),
          tax: share(1),
          deposit: share(1),
          leathers: fc.record({
            strap: fc.record({
              price: decimal(c.digits + 4),
              per: fc.constantFrom(
                "square foot" as const,
                "square decimetre" as const,
                "square metre" as const,
              ),
            }),
          }),
          thread: decimal(c.digits).map((price) => ({
            ...{ name: "", needleful: 1500, tail: 100, reel: 91_440 },
            price,
          })),
        }),
        decimal(c.digits + 4),
      )
      .map(([over, each]) =>
        shop(c.code, { ...over, leathers: { strap: rate(over.leathers.strap) } }, { buckle: { each } }),
      ),
    price: fc
      .tuple(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 0, max: 100_000 }))
      .map(([q, m]) => own({ quantity: String(q), minutes: String(m) })),
  }),
);
const holds = (says: (price: Price, input: Omit<PriceInput, "units">) => void): void =>
  fc.assert(
    fc.property(anyInput, (input) => {
      const { price, unpriced } = priceOf(input);
      expect(unpriced).toEqual([]);
      says(price!, input);
    }),
    { seed: 5, numRuns: 150 },
  );

/** Whole numbers: an exact decimal as top and bottom of a fraction. */
function fraction(text: string): readonly [bigint, bigint] {
  const [whole = "", digits = ""] = text.split(".");
  return [BigInt(whole + digits), 10n ** BigInt(digits.length)];
}
/** a × b / per, in minor units, halves up: school arithmetic in whole numbers. */
function multiplied(a: string, b: string, per: bigint, digits: number): number {
  const [[an, ad], [bn, bd]] = [fraction(a), fraction(b)];
  const top = an * bn * 10n ** BigInt(digits);
  const bottom = ad * bd * per;
  return Number((2n * top + bottom) / (2n * bottom));
}
const minorOf = (printed: string): number => Number(printed.replace(".", ""));

describe("any price", () => {
  test("is the sum of its lines, in whole coins", () => {
    holds((p) => {
      const all = [p.overhead, p.margin, p.tax, ...p.materials, ...p.labour].map((l) => l.minor);
      expect(all.every((m) => Number.isSafeInteger(m) && m >= 0)).toBe(true);
      const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0);
      expect(sum([...minorsOf(p.materials), ...minorsOf(p.labour), p.overhead.minor])).toBe(p.cost);
      expect(p.cost + p.margin.minor + p.rounding).toBe(p.beforeTax);
      expect(p.beforeTax + p.tax.minor).toBe(p.total);
      expect(p.deposit + p.balance).toBe(p.total);
      expect(Math.min(p.deposit, p.balance, p.rounding)).toBeGreaterThanOrEqual(0);
    });
  });

  test("can be worked again from its own words", () => {
    holds((p) => {
      for (const { how, minor } of [...p.materials, ...p.labour]) {
        const [, before = "", each = "", hour] = /(.*) at (\S+)( an hour)?$/.exec(how)!;
        const numbers = before.replace(/^.*: /, "").match(/[\d.]+/g)!;
        const amount = numbers.length === 1 ? numbers[0]! : String(Number(numbers[0]) + Number(numbers[1]));
        expect(minor, how).toBe(multiplied(amount, each, hour ? 60n : 1n, p.currency.digits));
      }
      for (const { how, minor } of [p.overhead, p.margin, p.tax]) {
        const [, per = "", of = ""] = /^(\S+) % of .*, (\S+)$/.exec(how)!;
        expect(minor, how).toBe(multiplied(per, String(minorOf(of)), 100n, 0));
      }
    });
  });

  test("is rounded up to the shop's steps, by less than one", () => {
    holds((p, { shop: { roundTo = "" } }) => {
      const [top, bottom] = fraction(roundTo);
      const stepMinor = Number((top * 10n ** BigInt(p.currency.digits)) / bottom);
      expect(p.beforeTax % stepMinor).toBe(0);
      expect(p.rounding).toBeLessThan(stepMinor);
    });
  });
});

describe("leather by its thickness", () => {
  // 8 oz and 10 oz, 1/64 in each.
  const byThickness = [
    { thickness: (8 * INCH) / 64, price: "12.50" },
    { thickness: (10 * INCH) / 64, price: "14.00" },
  ];
  const row = (thickness: number): LeatherRow => ({ ...leather("strap", 2 * SQUARE_FOOT), thickness });
  const priced = (
    thickness: number,
    over: Partial<LeatherRate>,
    more: Partial<PriceInput> = {},
  ): PriceResult =>
    priceOf({
      parts: parts({ leather: [row(thickness)] }),
      shop: shop("USD", { leathers: { strap: rate({ byThickness, ...over }) } }),
      price: own(),
      ...more,
    });

  test.each([
    [3.175, 2500],
    [3.97, 2800],
    // Nothing is said of 9 oz: the price of any thickness.
    [3.57, 2000],
  ])("%d mm", (mm, minor) => {
    expect(priced(mm, { price: "10.00" }).price!.materials.map((l) => l.minor)).toEqual([minor]);
  });

  test("without a price of any thickness, one that isn't listed is named with it, in the order's units", () => {
    expect(priced((9 * INCH) / 64, {}, { units: "in" }).unpriced).toEqual([
      "the strap leather of 9 oz (3.57 mm) has no price: write leather.strap.price in shop.yaml, or the thickness in leather.strap.by-thickness",
    ]);
  });

  test("the customer's own leather costs nothing, with or without a rate, and is said", () => {
    const { price, unpriced } = priced(3.57, {}, { price: own({ "own-leather": "yes" }) });
    expect(unpriced).toEqual([]);
    expect(price?.materials).toEqual([
      { what: "strap leather, 3.57 mm", how: "the customer brings it: not priced", minor: 0 },
    ]);
  });

  test("an order in inches has its sizes in inches", () => {
    const { price } = priceOf({
      ...{ parts: worked, shop: workshop, price: own(order), units: "in" },
    });
    expect(price!.materials.map((l) => l.what)).toContain("cheek buckle, 5/8 in");
  });
});
