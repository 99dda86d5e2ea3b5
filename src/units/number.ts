import { roundTo } from "./round.ts";

/**
 * Prints a number with at most `maxDecimals` decimals (0 to 9): no exponent, no "-0", no trailing zeros.
 * Throws when the number is not finite: that is our own fault.
 */
export function printNumber(n: number, maxDecimals: number): string {
  const rounded = roundTo(n, maxDecimals);
  // toFixed turns to exponents from 1e21 on; such a number is whole.
  if (Math.abs(rounded) >= 1e21) return BigInt(rounded).toString();
  const digits = rounded.toFixed(maxDecimals);
  return digits.includes(".") ? digits.replace(/\.?0+$/, "") : digits;
}
