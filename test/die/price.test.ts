import { describe, expect, test } from "vitest";
import { sayDie } from "../../src/die/about.ts";
import { checkDie } from "../../src/die/checks/index.ts";
import { dieFor } from "../../src/die/die.ts";
import { priceOf } from "../../src/die/price.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { rectanglePath } from "../../src/geometry/index.ts";
import { readCurrencyCode } from "../../src/trade/currencyCode.ts";
import { currencyOf, sayMoney } from "../../src/units/money.ts";
import { given } from "../support/quantities.ts";
import { roundHole, samplePiece } from "../support/samplePieces.ts";

const settings = defaultDie();
const price = (value: number) => given("price", value, "number");
const shop = (over: Partial<DieSettings>): DieSettings => ({ ...settings, currency: "EUR", ...over });
const piece = (length = 100, width = 50) =>
  samplePiece("r", rectanglePath([0, 0], length, width), {
    holes: [roundHole("a", 20, 5, 25), roundHole("b", 40, 5, 25)],
  });
const minors = (over: Partial<DieSettings>, length?: number): readonly (string | number)[] =>
  (dieFor(piece(length), shop(over)).price?.lines ?? []).flatMap(({ what, minor }) => [what, minor]);

describe("a die's price", () => {
  test("rule, tubes and board, each by its own price, and their sum", () => {
    // 300 mm × 0.05 = 15.00; 2 tubes × 2.50 = 5.00; a board 12.34.
    const all = { pricePerMm: price(0.05), pricePerTube: price(2.5), priceForBoard: price(12.34) };
    expect(minors(all)).toEqual(["rule", 1500, "tubes", 500, "board", 1234]);
    const die = dieFor(piece(), shop(all));
    expect(die.price).toMatchObject({ currency: "EUR", minor: 3234 });
    expect(sayDie(die, "mm")).toContain("rule, tubes and board for EUR 32.34");
  });
  test("each line is rounded once, halves up, in exact decimals", () => {
    // 300 × 0.00335 = 1.005, which binary numbers make 1.00499…: a hundred times is 100.49….
    expect(minors({ pricePerMm: price(0.00335) })).toEqual(["rule", 101]);
    expect(minors({ pricePerMm: price(0.003349) })).toEqual(["rule", 100]);
    expect(minors({ pricePerTube: price(1.005) })).toEqual(["tubes", 201]);
    expect(minors({ pricePerMm: price(1e-7) })).toEqual(["rule", 0]);
    expect(minors({ pricePerMm: price(10000) })).toEqual(["rule", 300000000]);
  });
  test("the length is that on the sheet, in hundredths of a millimetre", () => {
    // 2 × (100.004 + 50) = 300.008 mm is 300.01 mm on the sheet; at 1.00 each.
    expect(minors({ pricePerMm: price(1) }, 100.004)).toEqual(["rule", 30001]);
  });
  test("currencies without hundredths", () => {
    expect(minors({ currency: "JPY", pricePerMm: price(6.335) })).toEqual(["rule", 1901]);
    expect(minors({ currency: "KWD", pricePerMm: price(0.0123) })).toEqual(["rule", 3690]);
  });
  test("a pair on one board: twice the rule and tubes, one board", () => {
    const all = shop({ pricePerMm: price(0.05), pricePerTube: price(2.5), priceForBoard: price(12.34) });
    const lines = priceOf(dieFor(piece(), all).rules, all, 2)!.lines;
    expect(lines.map(({ minor }) => minor)).toEqual([3000, 1000, 1234]);
  });
  test("none without prices; a line only for what has one", () => {
    expect(dieFor(piece(), shop({})).price).toBeUndefined();
    expect(minors({})).toEqual([]);
    expect(minors({ priceForBoard: price(7) })).toEqual(["board", 700]);
  });
});

describe("currency", () => {
  const found = (over: Partial<DieSettings>) =>
    checkDie(dieFor(piece(), { ...settings, ...over }), "mm").filter(({ rule }) => rule === "die-price");
  test.each(["pricePerMm", "pricePerTube", "priceForBoard"] as const)(
    "%s without a currency is an error that asks for it",
    (name) => {
      const [told] = found({ [name]: price(1) });
      expect(told).toMatchObject({ severity: "error", place: "price" });
      expect(told!.mend).toContain("die.currency");
      expect(found({ [name]: price(1), currency: "GBP" })).toEqual([]);
    },
  );
  test("a currency without a price is nothing to remark", () => {
    expect(found({ currency: "GBP" })).toEqual([]);
  });
  test("three capital letters", () => {
    expect(readCurrencyCode("GBP").ok).toBe(true);
    for (const text of ["gbp", "GB", "GBPX", "£", "", "GPB"])
      expect(readCurrencyCode(text).ok, text).toBe(false);
  });
  // ISO 4217, list one (currency codes and their minor units): EUR 2, JPY 0, KWD 3, CLF 4; from memory.
  test.each([
    ["EUR", 2, "EUR 0.05"],
    ["JPY", 0, "JPY 5"],
    ["KWD", 3, "KWD 0.005"],
    ["CLF", 4, "CLF 0.0005"],
  ])("%s has %d decimals", (currency, decimals, said) => {
    expect(currencyOf(currency)!.digits).toBe(decimals);
    expect(sayMoney(5, currency)).toBe(said);
  });
  test("amounts in words", () => {
    expect(sayMoney(123456, "USD")).toBe("USD 1234.56");
    expect(sayMoney(0, "USD")).toBe("USD 0.00");
  });
});
