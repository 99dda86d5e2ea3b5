import type { MeasuredDimension, Value } from "../model/dimension.ts";
import { sayHands } from "../model/say.ts";
import { MM_PER_INCH, MM_PER_OUNCE, printLengthShort, printNumber } from "../units/index.ts";

// A value as a maker would write it in an order. It reads back to what it was where the unit can say
// it in few digits; else it is rounded, to the side that its range allows.

type Range = { readonly least?: number | undefined; readonly most?: number | undefined };

/** Two writings of one size; computed sizes come out a hair off. */
const SAME = 1e-9;

const isWhole = (n: number): boolean => Math.abs(n - Math.round(n)) < SAME * Math.max(1, Math.abs(n));

/** Rounded to a number of decimals; to the side that the range allows, when the nearest falls outside. */
function rounded(value: number, decimals: number, { least = -Infinity, most = Infinity }: Range): string {
  const step = 10 ** -decimals;
  const near = Number(printNumber(value, decimals));
  const fits = [near, near - step, near + step].find((n) => n >= least - SAME && n <= most + SAME);
  return printNumber(fits ?? value, fits === undefined ? 9 : decimals);
}

/** The finest mark of an inch rule that people write. */
const PARTS_OF_INCH = 32;
const MM_DECIMALS = 2;

function lengthText(mm: number, range: Range): string {
  return isWhole((mm / MM_PER_INCH) * PARTS_OF_INCH) && mm !== 0
    ? printLengthShort(mm, "in")
    : `${rounded(mm, MM_DECIMALS, range)} mm`;
}

function thicknessText(mm: number, range: Range): string {
  const halves = (2 * mm) / MM_PER_OUNCE;
  return isWhole(halves) && mm !== 0
    ? `${printNumber(halves / 2, 1)} oz`
    : `${rounded(mm, MM_DECIMALS, range)} mm`;
}

function pitchText(mm: number, range: Range): string {
  const perInch = MM_PER_INCH / mm;
  return isWhole(perInch) ? `${printNumber(perInch, 0)} per inch` : `${rounded(mm, MM_DECIMALS, range)} mm`;
}

const degrees = (rad: number): number => (rad * 180) / Math.PI;

function angleText(rad: number, { least, most }: Range): string {
  const range = {
    least: least === undefined ? least : degrees(least),
    most: most === undefined ? most : degrees(most),
  };
  return `${rounded(degrees(rad), 2, range)} deg`;
}

/** The text of a measured value of that kind. */
export function measuredText(value: number, kind: MeasuredDimension["kind"], range: Range = {}): string {
  switch (kind) {
    case "length":
      return lengthText(value, range);
    case "thickness":
      return thicknessText(value, range);
    case "pitch":
      return pitchText(value, range);
    case "hands":
      return sayHands(value);
    case "angle":
      return angleText(value, range);
    case "count":
      return printNumber(value, 0);
    default:
      return rounded(value, 4, range);
  }
}

/** The text of a choice, a flag or a text. */
export const plainText = (value: Exclude<Value, object>): string =>
  typeof value === "boolean" ? (value ? "yes" : "no") : value;
