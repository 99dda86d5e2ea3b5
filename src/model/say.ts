import {
  MM_PER_INCH,
  printAngle,
  printLength,
  printLengthShort,
  printNumber,
  printThickness,
  roundTo,
} from "../units/index.ts";
import type { QuantityKind } from "./quantity.ts";

/** The units a maker works in: inches with ounces, or millimetres. */
export type Units = "in" | "mm" | "cm";

/** A height in hands and inches, `14.2 hands`, to the inch. */
export function sayHands(mm: number): string {
  const inches = roundTo(mm / MM_PER_INCH, 0);
  const rest = Math.abs(inches % 4);
  return `${Math.trunc(inches / 4)}${rest === 0 ? "" : `.${rest}`} hands`;
}

/** A value in words with its unit, millimetres beside inches. */
export function sayValue(value: number, kind: QuantityKind | "hands", units: Units): string {
  switch (kind) {
    case "length":
      return printLength(value, units);
    case "hands":
      return sayHands(value);
    case "thickness":
      return printThickness(value, units === "in" ? "oz" : "mm");
    case "pitch":
      return `${printNumber(value, 2)} mm`;
    case "angle":
      return printAngle(value);
    case "area":
      return `${printNumber(value / 100, 1)} cm²`;
    case "force":
      return `${printNumber(value, 0)} N`;
    case "stress":
      return `${printNumber(value, 1)} N/mm²`;
    default:
      return printNumber(value, 4);
  }
}

/** A length within this of a 32nd of an inch is said as that fraction, mm; a 64th is 0.4 mm. */
const AS_FRACTION_MM = 0.02;

/** The same, shorter, for use inside an expression; in mm where a fraction of an inch would be too coarse. */
export function sayFigure(value: number, kind: QuantityKind, units: Units): string {
  if (kind !== "length") return sayValue(value, kind, units);
  const inches32 = Math.round((value / MM_PER_INCH) * 32) / 32;
  const coarse = units === "in" && Math.abs(value - inches32 * MM_PER_INCH) > AS_FRACTION_MM;
  return printLengthShort(value, coarse ? "mm" : units);
}
