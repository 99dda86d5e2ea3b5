import type { Amount } from "./amount.ts";

/** What a bare number can mean, and what lengths are printed in. */
export type LengthUnit = "in" | "mm" | "cm";
/** What a thickness is printed in. */
export type ThicknessUnit = "oz" | "iron" | "mm";
export type Unit = LengthUnit | ThicknessUnit | "ft" | "m";

/** Exact: the international inch of 1959 (from memory). */
export const MM_PER_INCH = 25.4;
/** One ounce is 1/64 in: ASTM D1814-70 (2000), Measuring Thickness of Leather Units, 1.2. */
export const MM_PER_OUNCE = MM_PER_INCH / 64;
/** One iron is 1/48 in: ASTM D1814-70 (2000), 1.2. */
export const MM_PER_IRON = MM_PER_INCH / 48;

/** Millimetres in a unit as whole numbers, so that one division rounds once: 25.4 is 127/5. */
const MM_IN = {
  mm: [1, 1],
  cm: [10, 1],
  m: [1000, 1],
  in: [127, 5],
  ft: [1524, 5],
  oz: [127, 320],
  iron: [127, 240],
} as const satisfies Record<Unit, readonly [number, number]>;

/** An amount of a unit, in millimetres. */
export function toMm(amount: Amount, unit: Unit): number {
  const [top, bottom] = MM_IN[unit];
  return (amount.top * top) / (amount.bottom * bottom);
}

const spelled = (unit: Unit, words: string): [string, Unit][] => words.split(" ").map((word) => [word, unit]);

const WORDS = new Map<string, Unit>([
  ...spelled("in", 'in inch inches "'),
  ...spelled("ft", "ft foot feet '"),
  ...spelled("mm", "mm millimetre millimetres millimeter millimeters"),
  ...spelled("cm", "cm centimetre centimetres centimeter centimeters"),
  ...spelled("m", "m metre metres meter meters"),
  ...spelled("oz", "oz ounce ounces"),
  ...spelled("iron", "iron irons"),
]);

/** The unit that a word or sign stands for, in any case, with or without its full stop. */
export const unitOf = (word: string): Unit | undefined => WORDS.get(word.toLowerCase().replace(/\.$/, ""));
