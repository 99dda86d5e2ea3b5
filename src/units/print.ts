import { printNumber } from "./number.ts";
import { roundTo } from "./round.ts";
import { type LengthUnit, MM_PER_INCH, MM_PER_IRON, MM_PER_OUNCE, type ThicknessUnit } from "./unit.ts";

export { printNumber } from "./number.ts";

/** Inches are printed to the finest mark on a saddler's rule. */
const PARTS_OF_INCH = 32;
/** Under half a mark a fraction would say 0; a decimal says how little it is. */
const SHORTEST_FRACTION_IN = 1 / (2 * PARTS_OF_INCH);

/** A tenth is what a rule shows; under 1 mm the gaps and tolerances need a hundredth. */
const mmText = (mm: number): string => `${printNumber(mm, Math.abs(mm) < 1 ? 2 : 1)} mm`;

/** 41 1/2 for 1054.1: inches to the nearest 1/32 as people write them, in lowest terms. */
function inchText(mm: number): string {
  const inches = mm / MM_PER_INCH;
  if (Math.abs(inches) < SHORTEST_FRACTION_IN) return printNumber(inches, 3);
  const parts = roundTo(inches * PARTS_OF_INCH, 0);
  const whole = Math.floor(Math.abs(parts) / PARTS_OF_INCH);
  let top = Math.abs(parts) % PARTS_OF_INCH;
  let bottom = PARTS_OF_INCH;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const words = [...(whole > 0 || top === 0 ? [`${whole}`] : []), ...(top > 0 ? [`${top}/${bottom}`] : [])];
  return (parts < 0 ? "-" : "") + words.join(" ");
}

/**
 * Prints a length in one unit: `41 1/2 in` (to 1/32), `1054.1 mm` (to 0.1, under 1 mm to 0.01) or
 * `105.41 cm`. A length under 1/64 in prints as a decimal, `0.012 in`.
 */
export function printLengthShort(mm: number, unit: LengthUnit): string {
  if (unit === "in") return `${inchText(mm)} in`;
  return unit === "mm" ? mmText(mm) : `${printNumber(mm / 10, Math.abs(mm) < 1 ? 3 : 2)} cm`;
}

/** Prints a length, inches with the millimetres beside them: `41 1/2 in (1054.1 mm)`. */
export function printLength(mm: number, unit: LengthUnit): string {
  const short = printLengthShort(mm, unit);
  return unit === "in" ? `${short} (${mmText(mm)})` : short;
}

/** Prints a thickness: `9 oz (3.57 mm)`, `6 iron (3.18 mm)`, to a tenth; `3.5 mm`, to a hundredth. */
export function printThickness(mm: number, unit: ThicknessUnit): string {
  const inMm = `${printNumber(mm, 2)} mm`;
  if (unit === "mm") return inMm;
  return `${printNumber(mm / (unit === "oz" ? MM_PER_OUNCE : MM_PER_IRON), 1)} ${unit} (${inMm})`;
}

/** Prints an angle in radians as degrees, to a tenth: `60°`. */
export const printAngle = (rad: number): string => `${printNumber((rad * 180) / Math.PI, 1)}°`;
