import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  beforeShare,
  CURRENCIES,
  type Currency,
  counting,
  currencyOf,
  lineAmount,
  printMoney,
  readMoney,
  readRate,
  shareOf,
  splitShare,
  toMinor,
  totalOf,
  upToSteps,
} from "../../src/units/money.ts";

const known = (code: string): Currency => currencyOf(code)!;
const [GBP, JPY, KWD] = [known("GBP"), known("JPY"), known("KWD")];

/** A decimal as a whole number over a power of ten; the tests' own arithmetic has no fractions at all. */
function asFraction(decimal: string): { readonly top: bigint; readonly bottom: bigint } {
  const [whole = "", after = ""] = decimal.split(".");
  return { top: BigInt(whole + after), bottom: 10n ** BigInt(after.length) };
}
/** The nearest whole number, a half going up. */
const nearest = (top: bigint, bottom: bigint): bigint => (2n * top + bottom) / (2n * bottom);

const decimal = (wholeDigits: number, decimals: number) =>
  fc
    .tuple(
      fc.integer({ min: 0, max: 10 ** wholeDigits - 1 }),
      fc.integer({ min: 0, max: 10 ** decimals - 1 }),
    )
    .map(([whole, after]) => `${whole}.${String(after).padStart(decimals, "0")}`);
const currency = fc.constantFrom(GBP, JPY, KWD, known("CLF"));

describe("a price as it is written", () => {
  test.each([
    ["14.50", "14.50"],
    ["14", "14"],
    [" 0.0375 ", "0.0375"],
    [".5", "0.5"],
    ["007", "7"],
    ["0", "0"],
    ["9999999.99", "9999999.99"],
  ])("%s", (text, value) => {
    expect(readMoney(text)).toEqual({ ok: true, value });
  });

  test.each([
    ["14,50", 'write "14.50"'],
    ["1,250.00", 'write "1250.00"'],
    ["1.250,00", 'write "1250.00"'],
    ["1,250", 'write "1250" or "1.250", whichever is meant'],
    ["-3", 'write "3" if that is meant'],
    ["−3.20", 'write "3.20" if that is meant'],
    ["1e3", 'write "1000"'],
    ["5.", 'write the number alone, as in "14.50"'],
    ["1/2", 'write the number alone, as in "14.50"'],
    ["", 'write the number alone, as in "14.50"'],
    ["free", 'write the number alone, as in "14.50"'],
    ["12345678", 'write the number alone, as in "14.50"'],
    ["٣", 'write the number alone, as in "14.50"'],
  ])("%s is a fault", (text, mend) => {
    expect(readMoney(text)).toMatchObject({ ok: false, mend });
  });

  test.each(["£14.50", "14.50 £", "GBP 14", "14 GBP", "$3", "3 each", "3.20 per foot"])(
    "%s has the currency with it",
    (text) => {
      expect(readMoney(text)).toMatchObject({
        ok: false,
        mend: 'write the number alone; the currency stands once, as in "currency: GBP"',
      });
    },
  );

  test("any text gives a value or a fault, and a value is digits with at most one point", () => {
    const piece = fc.constantFrom("1", "0", ".", ",", "-", " ", "£", "e", "/", "½", "\u202E", "x", "_", "９");
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece, { maxLength: 9 }).map((p) => p.join("")),
        ),
        (text) => {
          const r = readMoney(text);
          if (r.ok) expect(r.value).toMatch(/^(0|[1-9]\d*)(\.\d+)?$/);
          else expect(r.mend).not.toBe("");
        },
      ),
      { seed: 11, numRuns: 800 },
    );
  });
});

describe("currencies", () => {
  // ISO 4217, list one: minor units.
  test.each([
    ["GBP", 2],
    ["EUR", 2],
    ["USD", 2],
    ["JPY", 0],
    ["KRW", 0],
    ["KWD", 3],
    ["TND", 3],
    ["CLF", 4],
    ["XAF", 0],
    ["XCD", 2],
  ])("%s has %d digits", (code, digits) => {
    expect(currencyOf(code)).toMatchObject({ code, digits });
  });

  test.each(["gbp", "", "XDR", "XAU", "XTS", "ABC", "constructor", "£"])("%s is none", (code) => {
    expect(currencyOf(code)).toBeUndefined();
  });

  test("each has a code of its own, a name, and 0 to 4 digits", () => {
    expect(new Set(CURRENCIES.map((c) => c.code)).size).toBe(CURRENCIES.length);
    expect(CURRENCIES.length).toBeGreaterThan(150);
    for (const { code, digits, name } of CURRENCIES) {
      expect(code).toMatch(/^[A-Z]{3}$/);
      expect(name).not.toBe("");
      expect([0, 2, 3, 4]).toContain(digits);
    }
  });
});

describe("an amount in the smallest coin", () => {
  test.each([
    ["14.50", GBP, 1450],
    ["14.5", GBP, 1450],
    ["14.500", GBP, 1450],
    ["0.29", GBP, 29],
    ["1.13", GBP, 113],
    ["500", JPY, 500],
    ["500.00", JPY, 500],
    ["1.234", KWD, 1234],
  ])("%s", (text, c, minor) => {
    expect(toMinor(text, c)).toEqual({ ok: true, value: minor });
  });

  test("more digits than the currency has are a fault", () => {
    expect(toMinor("1.005", GBP)).toEqual({
      ok: false,
      problem: 'got "1.005": GBP (Pound Sterling) has at most 2 digits after the point here',
      mend: 'write "1.01" if that is meant',
    });
    expect(toMinor("3.5", JPY)).toMatchObject({ mend: 'write "4" if that is meant' });
  });

  test("a rate may have 4 digits more", () => {
    expect(readRate("0.037519", GBP)).toEqual({ ok: true, value: "0.037519" });
    expect(readRate("0.0375191", GBP).ok).toBe(false);
    expect(readRate("0.0375", JPY).ok).toBe(true);
    expect(readRate("0.03751", JPY).ok).toBe(false);
  });

  test("printed and read again it is the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999_999 }), currency, (minor, c) => {
        const printed = printMoney(minor, c);
        expect(printed.split(".")[1]?.length ?? 0).toBe(c.digits);
        expect(toMinor(printed, c)).toEqual({ ok: true, value: minor });
      }),
      { seed: 12, numRuns: 400 },
    );
  });

  test.each([
    [0, GBP, "0.00"],
    [5, GBP, "0.05"],
    [-5, GBP, "-0.05"],
    [123450, GBP, "1234.50"],
    [7, KWD, "0.007"],
    [0, JPY, "0"],
    [Number.MAX_SAFE_INTEGER, GBP, "90071992547409.91"],
  ])("%d is printed", (minor, c, printed) => {
    expect(printMoney(minor, c)).toBe(printed);
  });
});

describe("a line", () => {
  // Halves that a binary fraction falls short of: 1.005 is 1.00499999999999989… as a double.
  test.each([
    ["1.005", 1, GBP, 101],
    ["1.005", "1", GBP, 101],
    ["0.15", 0.7, GBP, 11],
    ["2.35", "14.50", GBP, 3408], // 34.075
    ["14.50", 0, GBP, 0],
    ["0", 1e6, GBP, 0],
    ["0.5", 1, JPY, 1],
    ["0.49", 1, JPY, 0],
    ["0.0000001", 1e-7, GBP, 0],
    ["9999999.99", 200000, GBP, 199999999800000],
  ])("%s × %s", (rate, quantity, c, minor) => {
    expect(lineAmount(rate, quantity, c)).toBe(minor);
  });

  test("is rate × quantity in whole numbers, rounded once", () => {
    fc.assert(
      fc.property(decimal(6, 6), decimal(5, 3), currency, (rate, quantity, c) => {
        const [r, q] = [asFraction(rate), asFraction(quantity)];
        const expected = nearest(r.top * q.top * 10n ** BigInt(c.digits), r.bottom * q.bottom);
        expect(BigInt(lineAmount(rate, quantity, c))).toBe(expected);
        // The same figures as numbers: what stands on the sheet.
        expect(lineAmount(rate, Number(quantity), c)).toBe(Number(expected));
      }),
      { seed: 13, numRuns: 600 },
    );
  });

  test("beyond what a number counts one by one nothing is made up", () => {
    const far = () => lineAmount("9999999.99", 1e9, GBP);
    expect(far).toThrow(/more money than can be counted/);
    expect(counting(far)).toBeUndefined();
    expect(counting(() => totalOf([Number.MAX_SAFE_INTEGER, 1]))).toBeUndefined();
    expect(counting(() => totalOf([Number.MAX_SAFE_INTEGER, -1, 1]))).toBe(Number.MAX_SAFE_INTEGER);
    expect(() =>
      counting(() => {
        throw new Error("another");
      }),
    ).toThrow("another");
  });
});

describe("shares", () => {
  const minor = fc.integer({ min: 0, max: 1_000_000_000_000 });
  /** Hundredths of a per cent, as a ratio's reader gives them: n divided by 100. */
  const percent = fc.integer({ min: 0, max: 10_000 });

  test("a share is the nearest coin, a half going up, whatever the double behind the ratio", () => {
    fc.assert(
      fc.property(minor, percent, (m, hundredths) => {
        expect(BigInt(shareOf(m, hundredths / 100 / 100))).toBe(
          nearest(BigInt(m) * BigInt(hundredths), 10_000n),
        );
      }),
      { seed: 14, numRuns: 800 },
    );
  });

  test("14.35 % of 1000 coins is a half, and goes up", () => {
    expect(shareOf(1000, 14.35 / 100)).toBe(144);
    expect(shareOf(10, 0.05)).toBe(1);
    expect(shareOf(0, 0.3)).toBe(0);
  });

  test("a deposit and what is left are the whole, to the last coin", () => {
    fc.assert(
      fc.property(minor, fc.double({ min: 0, max: 1, noNaN: true }), (m, ratio) => {
        const [deposit, balance] = splitShare(m, ratio);
        expect(deposit + balance).toBe(m);
        expect(Math.min(deposit, balance)).toBeGreaterThanOrEqual(0);
        expect(Number.isSafeInteger(deposit)).toBe(true);
      }),
      { seed: 15, numRuns: 600 },
    );
    expect(splitShare(101, 0.5)).toEqual([51, 50]);
  });

  test("a price leaves the cost when its margin is taken off", () => {
    expect(beforeShare(8000, 0.2)).toBe(10000);
    expect(beforeShare(8000, 0)).toBe(8000);
    expect(beforeShare(100, 1 / 3)).toBe(150);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000_000_000 }),
        fc.integer({ min: 0, max: 9000 }),
        (cost, margin) => {
          const price = beforeShare(cost, margin / 10_000);
          expect(BigInt(price)).toBe(nearest(BigInt(cost) * 10_000n, BigInt(10_000 - margin)));
        },
      ),
      { seed: 16, numRuns: 400 },
    );
  });

  test("a price goes up to whole steps, never down and never by a whole step", () => {
    expect(upToSteps(10_001, 100)).toBe(10_100);
    expect(upToSteps(10_100, 100)).toBe(10_100);
    expect(upToSteps(10_001, 0)).toBe(10_001);
    fc.assert(
      fc.property(minor, fc.integer({ min: 1, max: 100_000 }), (m, step) => {
        const up = upToSteps(m, step);
        expect(up % step).toBe(0);
        expect(up - m).toBeGreaterThanOrEqual(0);
        expect(up - m).toBeLessThan(step);
      }),
      { seed: 17, numRuns: 300 },
    );
  });
});
