import { type Amount, readAmount } from "./amount.ts";
import { printNumber } from "./number.ts";
import { printThickness } from "./print.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import {
  bareThickness,
  doubtfulSlash,
  inHalvings,
  rangeFault,
  sizeOf,
  THICKNESS,
} from "./thickness-faults.ts";
import { splitThickness, type ThicknessParts } from "./thickness-part.ts";
import { plain } from "./tidy.ts";
import { pastTraps, unread } from "./traps.ts";
import { type ThicknessUnit, toMm, unitOf } from "./unit.ts";

/** A leather's thickness in mm; all three are the same unless it was given as a range. */
export type Thickness = { readonly middle: number; readonly thinnest: number; readonly thickest: number };

type OwnUnit = ThicknessUnit | "in";

/** Kept over whole numbers, so that 8-9 oz is 8.5 oz to the last bit. */
const middleOf = (a: Amount, b: Amount): Amount => ({
  top: a.top * b.bottom + b.top * a.bottom,
  bottom: 2 * a.bottom * b.bottom,
});

/** The unit that the words of a text agree on, when it is a unit of thickness. */
function unitFrom(words: readonly string[], text: string): Reading<OwnUnit> {
  const units = words.map(unitOf);
  const [word = "", unit] = [words.at(-1), units.at(-1)];
  if (units.length === 2 && units[0] !== units[1]) {
    return misread(`got ${quote(text)}: both ends of a range must have the same unit`, THICKNESS.how);
  }
  if (unit === "oz" || unit === "iron" || unit === "mm" || unit === "in") return read(unit);
  const fault = unit
    ? `a thickness is written in oz, iron, mm or in, not in ${unit}`
    : `the unit ${quote(word)} is not known here`;
  return misread(`got ${quote(text)}: ${fault}`, THICKNESS.how);
}

/** The two ends of a range, as its middle and with a note that says so. */
function readRange(
  from: Amount,
  to: Amount,
  unit: OwnUnit,
  parts: ThicknessParts,
  text: string,
): Reading<Thickness> {
  const written = { from: plain(parts.from), to: plain(parts.to ?? ""), unit, slash: parts.slash };
  const fault = rangeFault(written, [sizeOf(from), sizeOf(to)], text);
  if (fault) return fault;
  const between = middleOf(from, to);
  const middle = toMm(between, unit);
  const inMm = printThickness(middle, "mm");
  const said = unit === "mm" ? inMm : `${printNumber(sizeOf(between), 3)} ${unit} (${inMm})`;
  return read(
    { middle, thinnest: toMm(from, unit), thickest: toMm(to, unit) },
    `${text.trim()} read as its middle, ${said}`,
  );
}

/**
 * Reads a leather's thickness as it is sold or measured, in mm: `9 oz`, `6 iron`, `3.5 mm`, `1/8 in`;
 * or a range, `8-9 oz`, `8 to 9 oz`, `3-3.5 mm`, read as its middle with a note that says so.
 *
 * A slash, decided by how leather is sold:
 * - with oz and iron it is a range, always: `8/9 oz`, and `3/4 oz` is 3 to 4 oz;
 * - with in it is a fraction, always: `1/8 in`;
 * - with mm it is a range between decimals, `3/3.5 mm`; `3/4 mm` could be both and is a fault;
 * - after a whole number (`8 1/2 oz`, `8-1/2 oz`) and in one character (`½ oz`) it is a fraction.
 *
 * A bare number is a fault that asks for the unit; so are a negative thickness and a range whose
 * ends are alike, turned about, or further apart than one leather's can be. 0 is read: a feathered edge.
 */
export function readThickness(text: string): Reading<Thickness> {
  const clear = pastTraps(text, THICKNESS);
  if (!clear.ok) return clear;
  const tidied = clear.value;
  if (/^-[\d.]/.test(tidied)) {
    return misread(`got ${quote(text)}: a thickness cannot be less than 0`, THICKNESS.how);
  }
  const parts = splitThickness(tidied);
  if (!parts) return unread(text, THICKNESS);
  const from = readAmount(parts.from, text, tidied);
  if (!from.ok) return from;
  const to = parts.to === undefined ? undefined : readAmount(parts.to, text, tidied);
  if (to && !to.ok) return to;
  const amounts = to ? [from.value, to.value] : [from.value];
  const words = [parts.fromWord, parts.toWord].filter((word) => word !== undefined);
  if (words.length === 0) return bareThickness(amounts, text, tidied);
  const unit = unitFrom(words, text);
  if (!unit.ok) return unit;
  if (to && parts.slash && unit.value === "mm" && amounts.every((a) => Number.isInteger(a.top))) {
    return doubtfulSlash(sizeOf(from.value), sizeOf(to.value), text);
  }
  if (unit.value !== "in" && !amounts.every(inHalvings)) {
    const problem = `got ${quote(text)}, with a fraction that is not in halves, quarters or eighths`;
    return misread(problem, THICKNESS.how);
  }
  if (to) return readRange(from.value, to.value, unit.value, parts, text);
  const mm = toMm(from.value, unit.value);
  return read({ middle: mm, thinnest: mm, thickest: mm });
}
