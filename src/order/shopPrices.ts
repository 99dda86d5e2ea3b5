import { type DimensionTable, orderKey } from "../model/dimension.ts";
import type { Fault } from "../model/finding.ts";
import type { GivenText } from "../model/resolve.ts";
import { readSizePrices, readThicknessPrices } from "../trade/shopLists.ts";
import { type Currency, currencyOf, type Decimal, readMoney, readRate, toMinor } from "../units/money.ts";
import type { Reading } from "../units/reading.ts";
import { shopPrice, tabled } from "./shopSections.ts";
import { type GivenSection, NOTHING_GIVEN } from "./sort.ts";

// Prices against the currency that they are in.

type Sections = ReadonlyMap<string, GivenSection>;
type Price = { readonly key: string; readonly at: GivenText; readonly prices: readonly Decimal[] };

/** Prices that are paid as they stand; all others are multiplied first. */
const PAID = [`${shopPrice.path}.round-to`, `${shopPrice.path}.sundries`];

/** The prices in a text; none where it can't be read, which is told elsewhere. */
function pricesIn(table: DimensionTable, name: string, { text }: GivenText): readonly Decimal[] {
  const d = table[name];
  if (d?.kind !== "text" || text === "") return [];
  if (d.reads === readMoney) {
    const price = readMoney(text);
    return price.ok ? [price.value] : [];
  }
  if (d.reads === readThicknessPrices) {
    const list = readThicknessPrices(text);
    return list.ok ? list.value.map((t) => t.price) : [];
  }
  if (d.reads !== readSizePrices) return [];
  const list = readSizePrices(text);
  return list.ok ? list.value.map(({ each }) => each) : [];
}

/** Every price that the file gives, in the order of its sections. */
const pricesOf = (sections: Sections): readonly Price[] =>
  tabled.flatMap(({ path, table }) => {
    const { given } = sections.get(path) ?? NOTHING_GIVEN;
    return Object.keys(table).flatMap((name) => {
      const at = given[orderKey(name)];
      const prices = at ? pricesIn(table, name, at) : [];
      return at && prices.length > 0 ? [{ key: `${path}.${orderKey(name)}`, at, prices }] : [];
    });
  });

function tooFine({ key, at, prices }: Price, currency: Currency): readonly Fault[] {
  const fits = (price: Decimal): Reading<unknown> =>
    PAID.includes(key) ? toMinor(price, currency) : readRate(price, currency);
  return prices
    .map(fits)
    .flatMap((r) =>
      r.ok ? [] : [{ code: "unreadable", key, place: at.place, problem: r.problem, mend: r.mend }],
    );
}

/** Prices without a currency, and those finer than their currency can be paid or reckoned in. */
export function priceFaults(sections: Sections): readonly Fault[] {
  const top = sections.get("") ?? NOTHING_GIVEN;
  const code = top.given.currency?.text ?? "";
  const prices = pricesOf(sections);
  const [first] = prices;
  if (!first || top.faulty.includes("currency")) return [];
  if (code === "")
    return [
      {
        code: "missing",
        key: "currency",
        place: first.at.place,
        problem: "a price stands here, and the file doesn't say in which currency",
        mend: 'add a line at the left margin such as "currency: GBP"',
      },
    ];
  const currency = currencyOf(code);
  return currency ? prices.flatMap((p) => tooFine(p, currency)) : [];
}
