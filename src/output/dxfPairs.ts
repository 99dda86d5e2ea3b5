// The groups that a DXF file is made of, and how numbers stand in them.
import type { Point } from "../geometry/path.ts";
import { roundTo } from "../units/round.ts";

/** Decimals of a millimetre, and of a bulge: the centre of a flat arc, too, comes back within 0.001 mm. */
const MM_DECIMALS = 8;
export const BULGE_DECIMALS = 13;
/** Beyond this a number would be written with an exponent; no drawing is so large. */
const LARGEST = 1e9;

/** A group of the file: a code that says what the value is, and the value. */
export type Pair = readonly [code: number, value: string];

/** A real number: always with a point, never with an exponent, never −0. */
export function real(n: number, decimals: number): string {
  if (!(Math.abs(n) < LARGEST)) throw new Error(`dxf: cannot write ${n}; a coordinate must be finite`);
  // Beyond nine decimals, which only bulges have, a number is printed to so many as it is.
  const rounded = decimals > 9 ? n : roundTo(n, decimals);
  const written = rounded
    .toFixed(decimals)
    .replace(/^-(?=0\.0*$)/, "")
    .replace(/0+$/, "");
  return written.endsWith(".") ? `${written}0` : written;
}
/** A length. */
export const mm = (code: number, n: number): Pair => [code, real(n, MM_DECIMALS)];
export const whole = (code: number, n: number): Pair => [code, String(n)];
export const at = ([x, y]: Point): readonly Pair[] => [mm(10, x), mm(20, y)];
export const at3 = (p: Point): readonly Pair[] => [...at(p), mm(30, 0)];
