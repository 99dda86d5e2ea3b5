import type { Made } from "../model/article.ts";
import type { HardwareRow } from "../model/bench.ts";
import type { Fitting } from "../model/fitting.ts";
import type { HardwareRate, Shop } from "../model/shop.ts";
import { shankOf, shankWords } from "./shankLength.ts";

// What is bought for the whole order, alike things together.

/**
 * Rows of the hardware list: fittings of one kind, size, shank and details are one row, in the order that the
 * article names them. Counts are for `quantity` articles; spares come on top, as the shop lays them out of each
 * kind, rounded up to whole ones; none of what the customer brings.
 */
export function hardwareList(made: Made, shop: Shop, quantity: number): readonly HardwareRow[] {
  const groups = new Map<string, readonly Fitting[]>();
  for (const f of made.fittings ?? []) groups.set(keyOf(f), [...(groups.get(keyOf(f)) ?? []), f]);
  return [...groups.values()].map((alike) => rowOf(alike, shop.hardware[alike[0]!.kind], quantity));
}

/** Sizes that print alike to a hundredth are bought alike. */
const DECIMALS = 2;
const rough = (n: number | undefined): string => n?.toFixed(DECIMALS) ?? "";

const keyOf = (f: Fitting): string =>
  JSON.stringify([
    f.kind,
    rough(f.size),
    f.details,
    rough(f.through?.shank),
    rough(f.through?.stack),
    f.brought === true,
  ]);

const unique = (list: readonly string[]): readonly string[] => [...new Set(list)];

function rowOf(alike: readonly Fitting[], rate: HardwareRate, quantity: number): HardwareRow {
  const first = alike[0]!;
  const brought = first.brought === true;
  const count = quantity * alike.reduce((n, f) => n + f.count, 0);
  const shank = shankOf(first, rate);
  const words = shank ? shankWords(first.kind, shank, rate.lengths) : [];
  return {
    kind: first.kind,
    name: unique(alike.map((f) => f.name)).join("; "),
    count,
    spares: brought ? 0 : sparesOf(count, rate.spares),
    ...(first.size === undefined ? {} : { size: first.size }),
    details: [...first.details, ...words],
    ...(shank ? { shank } : {}),
    brought,
    pieces: unique(alike.flatMap((f) => f.pieces)),
  };
}

/** A share that a binary fraction puts just over a whole number is that number: 0.07 of 100 is 7. */
const SHARE_SLACK = 1e-9;
const sparesOf = (count: number, share: number): number =>
  Math.max(0, Math.ceil(count * share - SHARE_SLACK));
