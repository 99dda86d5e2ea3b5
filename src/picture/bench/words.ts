import type { Made } from "../../model/article.ts";
import type { Units } from "../../model/say.ts";
import { MM2_PER } from "../../units/area.ts";
import { MM_PER_INCH, printNumber, printThickness } from "../../units/index.ts";

// Words that several parts of the bench sheet share.

/** Names of pieces by their ids; an id that is no piece's stays. */
export const namesIn =
  ({ pieces }: Pick<Made, "pieces">) =>
  (ids: readonly string[]): string =>
    ids.map((id) => pieces.find((p) => p.id === id)?.name ?? id).join(", ");

/** `9 oz (3.57 mm)`, `3.5 mm` */
export const sayThickness = (mm: number, units: Units): string =>
  printThickness(mm, units === "in" ? "oz" : "mm");

/** `strap leather, 9 oz (3.57 mm)` */
export const sayLeather = (kind: string, thickness: number, units: Units): string =>
  `${/leather/i.test(kind) ? kind : `${kind} leather`}, ${sayThickness(thickness, units)}`;

/** Areas and lengths of thread are printed to a thousandth, as they are priced. */
const PRICED_DECIMALS = 3;

/** `2.354` */
export const squareFeet = (mm2: number): string => printNumber(mm2 / MM2_PER["square foot"], PRICED_DECIMALS);
export const squareDecimetres = (mm2: number): string =>
  printNumber(mm2 / MM2_PER["square decimetre"], PRICED_DECIMALS);

const MM_PER_YARD = 36 * MM_PER_INCH;

/** A length of thread: `1.52 yd (1.39 m)`, `1.392 m`. */
export function sayThread(mm: number, units: Units): string {
  const metres = `${printNumber(mm / 1000, PRICED_DECIMALS)} m`;
  return units === "in" ? `${printNumber(mm / MM_PER_YARD, 2)} yd (${metres})` : metres;
}

/** `12 min` */
export const sayMinutes = (minutes: number): string => `${printNumber(minutes, 1)} min`;

/** `95 min (1 h 35 min)`, `12 min` */
export function sayTime(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60
    ? sayMinutes(minutes)
    : `${sayMinutes(minutes)} (${Math.floor(whole / 60)} h ${whole % 60} min)`;
}

/** `20 %` */
export const sayShare = (ratio: number): string => `${printNumber(ratio * 100, 2)} %`;

/** Where words name a setting as an order has it, its name alone: `give measures.rise` → `give the rise`. */
export const keysInWords = (words: string): string =>
  words.replace(
    /\b(?:measures|pieces|straps|hardware|leather)(?:\.[a-z-]+)*\.([a-z-]+)/g,
    (_, name: string) => `the ${name.replaceAll("-", " ")}`,
  );
