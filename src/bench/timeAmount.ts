import Big from "big.js";
import { type Currency, type Decimal, totalOf } from "../units/money.ts";

const MINUTES_PER_HOUR = 60;

/**
 * What so many minutes cost at a rate for an hour, in minor units, halves up. A sixtieth is no decimal, so the
 * product is divided last, by whole number and remainder: nothing is cut off before the amount is rounded.
 */
export function timeAmount(perHour: Decimal, minutes: string, { digits }: Currency): number {
  const product = new Big(perHour).times(minutes).times(`1e${digits}`);
  const over = product.mod(MINUTES_PER_HOUR);
  const whole = product.minus(over).div(MINUTES_PER_HOUR);
  const up = over.times(2).gte(MINUTES_PER_HOUR) ? 1 : 0;
  return totalOf([whole.toNumber(), up]);
}
