import { roundMm } from "../units/round.ts";

/** Beyond this a number would be written with an exponent; no drawing is so large. */
const LARGEST = 1e15;

/**
 * Writes a number for a text format: at most 3 decimals, a full stop, no exponent, no "-0", no zeros at
 * the end. Throws when it is not finite or absurdly large: that is our own fault.
 */
export function num(n: number): string {
  if (!(Math.abs(n) < LARGEST)) throw new Error(`num: cannot write ${n}; a coordinate must be finite`);
  const written = roundMm(n)
    .toFixed(3)
    .replace(/\.?0+$/, "");
  return written === "-0" ? "0" : written;
}
