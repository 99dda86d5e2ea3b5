import type { PriceLine, WorkStep } from "../model/bench.ts";
import { orderKey } from "../model/dimension.ts";
import { WORK, WORK_KINDS, type WorkKind } from "../model/work.ts";
import { printNumber } from "../units/index.ts";
import { timeAmount } from "../units/money.ts";
import { counted, noRate, type Priced, type PricingShop } from "./priced.ts";

// Time at the bench, priced by the hour.

/** Minutes to a hundredth: what is multiplied is what is printed. */
const DECIMALS = 2;

/**
 * A line for each kind of work that takes time, in the order of `WORK`, and one for the order's own minutes. What
 * the shop gives no minutes for, or no price of an hour, is unpriced.
 */
export function priceLabour(steps: readonly WorkStep[], extra: number, shop: PricingShop): Priced {
  const untimed = WORK_KINDS.filter((kind) => lacksMinutes(steps, kind)).map((kind) =>
    noRate(`nothing says how long it takes to ${WORK[kind].says}`, `minutes.${orderKey(kind)}`, shop),
  );
  const times = [
    ...WORK_KINDS.map((kind) => ({ what: WORK[kind].says, minutes: minutesOf(steps, kind) })),
    { what: "other work, as the order says", minutes: extra },
  ].filter(({ minutes }) => minutes > 0);
  const { perHour } = shop;
  if (perHour === undefined) {
    const none = times.length + untimed.length === 0;
    const hour = none ? [] : [noRate("an hour's work has no price", "labour.per-hour", shop)];
    return { lines: [], unpriced: [...hour, ...untimed] };
  }
  const lines = times.map(({ what, minutes }): PriceLine => {
    const printed = printNumber(minutes, DECIMALS);
    const how = `${counted(printed, "minute", "minutes")} at ${perHour} an hour`;
    return { what, how, minor: timeAmount(perHour, printed, shop.currency) };
  });
  return { lines, unpriced: untimed };
}

const lacksMinutes = (steps: readonly WorkStep[], kind: WorkKind): boolean =>
  steps.some((s) => s.does === kind && s.amount > 0 && s.minutes === undefined);

const minutesOf = (steps: readonly WorkStep[], kind: WorkKind): number =>
  steps.reduce((sum, s) => sum + (s.does === kind ? (s.minutes ?? 0) : 0), 0);
