import { printNumber } from "./number.ts";
import { roundTo } from "./round.ts";
import { type LengthUnit, MM_PER_INCH, MM_PER_IRON, MM_PER_OUNCE, type ThicknessUnit } from "./unit.ts";

export { printNumber } from "./number.ts";

/** Inches are printed to the finest mark on a saddler's rule; small ones, where it is too coarse, to half of it. */
const PARTS_OF_INCH = 32;
const FINEST_PARTS = 64;
/** Over 1/64 in, no fraction is off by a larger share than this: 1/32 in for 1 mm would be a fifth off. */
const FRACTION_OFF = 0.03;
/** Under half a mark a fraction would say 0; a decimal says how little it is. */
const SHORTEST_FRACTION_IN = 1 / (2 * PARTS_OF_INCH);
/** A punch or a tube this far off is another size, mm. */
const HOLE_OFF_MM = 0.1;

/** A tenth is what a rule shows; under 1 mm the gaps and tolerances need a hundredth. */
const mmText = (mm: number): string => `${printNumber(mm, Math.abs(mm) < 1 ? 2 : 1)} mm`;

/** So many 32nds or 64ths of an inch as people write them, in lowest terms: `41 1/2`. */
function fractionText(parts: number, ofInch: number): string {
  const whole = Math.floor(Math.abs(parts) / ofInch);
  let top = Math.abs(parts) % ofInch;
  let bottom = ofInch;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const words = [...(whole > 0 || top === 0 ? [`${whole}`] : []), ...(top > 0 ? [`${top}/${bottom}`] : [])];
  return (parts < 0 ? "-" : "") + words.join(" ");
}

/** The nearest fraction with the coarsest parts that are near enough; undefined when none are. */
function nearFraction(inches: number, off: number): string | undefined {
  for (const ofInch of [PARTS_OF_INCH, FINEST_PARTS]) {
    const parts = roundTo(inches * ofInch, 0);
    if (Math.abs(parts / ofInch - inches) <= off) return fractionText(parts, ofInch);
  }
  return undefined;
}

/** 41 1/2 for 1054.1, 13/64 for 5.2: no fraction is 3 % off; a decimal stands where one would be. */
function inchText(mm: number): string {
  const inches = mm / MM_PER_INCH;
  const fraction =
    Math.abs(inches) < SHORTEST_FRACTION_IN
      ? undefined
      : nearFraction(inches, FRACTION_OFF * Math.abs(inches));
  return fraction ?? printNumber(inches, 3);
}

/**
 * A hole's size in inches as a fraction, `13/64 in`, to 1/64; undefined where every such fraction is more than
 * 3 % or 0.1 mm off: whoever takes a punch or a tube by it would take another size.
 */
export function printHoleInches(mm: number): string | undefined {
  const off = Math.min(FRACTION_OFF * mm, HOLE_OFF_MM) / MM_PER_INCH;
  const fraction = nearFraction(mm / MM_PER_INCH, off);
  return fraction === undefined ? undefined : `${fraction} in`;
}

/**
 * Prints a length in one unit: `41 1/2 in` (to 1/32), `1054.1 mm` (to 0.1, under 1 mm to 0.01) or
 * `105.41 cm`. In inches a small length prints to 1/64, `13/64 in`, and as a decimal, `0.205 in`, where a
 * fraction would be more than 3 % off.
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
