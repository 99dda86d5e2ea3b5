import type { Resolved } from "../articles/definition.ts";
import type { Values } from "../model/dimension.ts";
import type { FittingKind } from "../model/fitting.ts";
import type { HardwareRate, LeatherRate, Shop, ThreadRate } from "../model/shop.ts";
import { WORK_KINDS } from "../model/work.ts";
import { readLengths, readSizePrices, readThicknessPrices } from "../trade/shopLists.ts";
import {
  type hardwareRateTable,
  type leatherRateTable,
  shankRateTable,
  type shopTopTable,
  YIELD_SOURCE,
} from "../trade/shopTables.ts";
import { readArea } from "../units/area.ts";
import { currencyOf, type Decimal, readMoney } from "../units/money.ts";
import type { Reading } from "../units/reading.ts";
import { hardware, labour, leathers, minutes, shopPrice, strips, thread } from "./shopSections.ts";
import type { GivenSection } from "./sort.ts";

// From the resolved values of a shop file to the shop. Every text was read once without a fault.

type Source = { readonly file: string; readonly given: ReadonlyMap<string, GivenSection> };

/** The value of a text that is known to be readable; undefined where it is left blank. */
function readable<T>(text: string, reads: (text: string) => Reading<T>): T | undefined {
  const r = text === "" ? undefined : reads(text);
  return r?.ok ? r.value : undefined;
}

/** `{ [name]: value }`, or nothing where there is no value. */
const maybe = <K extends string, T>(name: K, value: T | undefined): { readonly [P in K]?: T } =>
  value === undefined ? {} : ({ [name]: value } as { readonly [P in K]: T });

const price = (text: string): Decimal | undefined => readable(text, readMoney);

/** Where a value stands in the file, or what its default comes from. */
function cameFrom(path: string, key: string, otherwise: string, { file, given }: Source): string {
  const at = given.get(path)?.given[key];
  return at ? `${file}:${at.place.line}` : otherwise;
}

function leatherRate(v: Values<typeof leatherRateTable>, path: string, source: Source): LeatherRate {
  return {
    ...maybe("price", price(v.price)),
    byThickness: readable(v.byThickness, readThicknessPrices) ?? [],
    per: v.per,
    yield: v.yield.value,
    yieldFrom: cameFrom(path, "yield", YIELD_SOURCE, source),
    ...maybe("side", readable(v.side, readArea)),
    supplier: v.supplier,
  };
}

type Lengths = Pick<HardwareRate, "lengths" | "lengthsFrom">;
const NO_LENGTHS: Lengths = { lengths: [], lengthsFrom: "" };

const hardwareRate = (v: Values<typeof hardwareRateTable>, lengths: Lengths): HardwareRate => ({
  ...maybe("each", price(v.each)),
  bySize: readable(v.bySize, readSizePrices) ?? [],
  ...lengths,
  spares: v.spares.value,
});

function hardwareRates(values: Resolved, source: Source): Shop["hardware"] {
  const rates = hardware.map((h): [FittingKind, HardwareRate] => {
    if (!h.shank) return [h.kind, hardwareRate(values.of(h.section), NO_LENGTHS)];
    const v = values.of(h.section);
    const lengthsFrom = cameFrom(h.section.path, "lengths", shankRateTable.lengths.source, source);
    return [h.kind, hardwareRate(v, { lengths: readable(v.lengths, readLengths) ?? [], lengthsFrom })];
  });
  return Object.fromEntries(rates) as Shop["hardware"];
}

function threadRate(values: Resolved): ThreadRate {
  const v = values.of(thread);
  return {
    ...maybe("price", price(v.price)),
    ...maybe("reel", v.reel?.value),
    name: v.name,
    needleful: v.needleful.value,
    tail: v.tail.value,
  };
}

function minutesOf(values: Resolved): Shop["minutes"] {
  const v = values.of(minutes);
  return Object.fromEntries(
    WORK_KINDS.flatMap((kind) => {
      const m = v[kind];
      return typeof m === "object" ? [[kind, m.value]] : [];
    }),
  );
}

/** What the whole price is made of besides materials and labour. */
function pricing(values: Resolved) {
  const l = values.of(labour);
  const p = values.of(shopPrice);
  return {
    ...maybe("perHour", price(l.perHour)),
    overhead: l.overhead.value,
    overheadOf: l.overheadOf,
    margin: p.margin.value,
    marginOf: p.marginOf,
    tax: p.tax.value,
    taxName: p.taxName,
    deposit: p.deposit.value,
    ...maybe("roundTo", price(p.roundTo)),
    ...maybe("sundries", price(p.sundries)),
    validDays: p.validDays.value,
  };
}

/** The shop of a file that was read without a fault. */
export function shopOf(
  top: Values<typeof shopTopTable>,
  values: Resolved,
  open: Pick<Shop, "punches" | "sizes">,
  source: Source,
): Shop {
  return {
    file: source.file,
    name: top.shop,
    address: top.address,
    ...maybe("currency", currencyOf(top.currency)),
    ...pricing(values),
    leathers: Object.fromEntries(
      leathers.map(({ name, section }) => [name, leatherRate(values.of(section), section.path, source)]),
    ),
    hardware: hardwareRates(values, source),
    thread: threadRate(values),
    minutes: minutesOf(values),
    ...open,
    stripAllowance: values.of(strips).allowance.value,
  };
}
