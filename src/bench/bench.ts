import type { Made } from "../model/article.ts";
import type { Bench } from "../model/bench.ts";
import type { Values } from "../model/dimension.ts";
import type { Finding } from "../model/finding.ts";
import type { Units } from "../model/say.ts";
import type { Shop } from "../model/shop.ts";
import type { finishTable, priceTable } from "../trade/benchTables.ts";
import { cutList } from "./cutList.ts";
import { hardwareList } from "./hardwareList.ts";
import { leatherList } from "./leatherList.ts";
import { priceOf } from "./price.ts";
import { punchList } from "./punchList.ts";
import { stripList } from "./stripList.ts";
import { threadList } from "./threadList.ts";
import { stepsMinutes, workOrder } from "./workSteps.ts";

export type BenchInput = {
  readonly made: Made;
  /** Without a shop file, the built-in one: habits and no prices. */
  readonly shop: Shop;
  readonly finish: Values<typeof finishTable>;
  readonly price: Values<typeof priceTable>;
  readonly units: Units;
};

/** The bench sheet of a whole order, and what is wrong with what the order says of it. */
export function benchOf({ made, shop, finish, price, units }: BenchInput): {
  readonly bench: Bench;
  readonly findings: readonly Finding[];
} {
  const quantity = price.quantity.value;
  const cut = cutList(made, finish, quantity);
  const work = workOrder({ made, shop, finish, quantity, units });
  const parts = {
    hardware: hardwareList(made, shop, quantity),
    thread: threadList(made, shop, quantity),
    leather: leatherList(made, shop, quantity),
    steps: work.steps,
  };
  const bench: Bench = {
    cut: cut.rows,
    strips: stripList(made, shop, quantity),
    punches: punchList(made, shop, quantity),
    ...parts,
    minutes: stepsMinutes(work.steps),
    ...priceOf({ parts, shop, price, units }),
  };
  return { bench, findings: [...cut.findings, ...work.findings] };
}
