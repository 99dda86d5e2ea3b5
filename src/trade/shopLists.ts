import { type Reading, readLength, readThickness } from "../units/index.ts";
import { type Decimal, readMoney } from "../units/money.ts";
import { quote } from "../units/quote.ts";
import { misread, read } from "../units/reading.ts";

// Values of a shop file that hold several sizes in one line, parted by commas.

/** A size in mm and the price of one. */
export type SizePrice = { readonly size: number; readonly each: Decimal };

/** Two sizes this near are the same, mm; no hardware is made in finer steps. */
const SAME_MM = 0.01;

const items = (text: string): readonly string[] => text.split(",").map((item) => item.trim());

/** Each item read; the first fault of them. */
function readItems<T>(text: string, how: string, one: (item: string) => Reading<T>): Reading<readonly T[]> {
  const found: T[] = [];
  for (const item of items(text)) {
    if (item === "") return misread(`got ${quote(text)}, with nothing before or after a comma`, how);
    const r = one(item);
    if (!r.ok) return r;
    found.push(r.value);
  }
  return read(found);
}

/** A length above 0, its unit beside it. */
function readSize(text: string): Reading<number> {
  const r = readLength(text);
  if (!r.ok || r.value > 0) return r;
  return misread(`got ${quote(text)}: a size is more than 0`, 'write a size with its unit, as in "5/8 in"');
}

/** The sizes, shortest first; a fault where one stands twice. */
function inOrder<T>(found: readonly T[], text: string, sizeOf: (t: T) => number): Reading<readonly T[]> {
  const sorted = [...found].sort((a, b) => sizeOf(a) - sizeOf(b));
  const twice = sorted.some((t, i) => i > 0 && sizeOf(t) - sizeOf(sorted[i - 1]!) < SAME_MM);
  return twice ? misread(`got ${quote(text)}, with one size twice`, "write each size once") : read(sorted);
}

const PRICES_HOW =
  'write each size with its unit and its price, parted by commas, as in "5/8 in 3.20, 1 in 4.80"';

function readSizePrice(item: string): Reading<SizePrice> {
  const parts = /^(.*\S)\s+(\S+)$/s.exec(item);
  if (!parts) return misread(`got ${quote(item)}: a size and its price belong together`, PRICES_HOW);
  const size = readSize(parts[1]!);
  if (!size.ok) return misread(size.problem, PRICES_HOW);
  const each = readMoney(parts[2]!);
  return each.ok ? read({ size: size.value, each: each.value }) : misread(each.problem, PRICES_HOW);
}

/** Reads prices by size: `5/8 in 3.20, 1 in 4.80`; smallest size first. */
export function readSizePrices(text: string): Reading<readonly SizePrice[]> {
  const found = readItems(text, PRICES_HOW, readSizePrice);
  return found.ok ? inOrder(found.value, text, ({ size }) => size) : found;
}

/** A thickness in mm and the price of one area unit of leather that thick. */
export type ThicknessPrice = { readonly thickness: number; readonly price: Decimal };

const THICKNESS_HOW =
  'write each thickness with its unit and its price, parted by commas, as in "8 oz 12.50, 10 oz 14.00"';

function readThicknessPrice(item: string): Reading<ThicknessPrice> {
  const parts = /^(.*\S)\s+(\S+)$/s.exec(item);
  if (!parts) return misread(`got ${quote(item)}: a thickness and its price belong together`, THICKNESS_HOW);
  const thickness = readThickness(parts[1]!);
  if (!thickness.ok) return misread(thickness.problem, THICKNESS_HOW);
  const price = readMoney(parts[2]!);
  return price.ok
    ? read({ thickness: thickness.value.middle, price: price.value })
    : misread(price.problem, THICKNESS_HOW);
}

/** Reads prices by thickness: `8 oz 12.50, 10 oz 14.00`; thinnest first. */
export function readThicknessPrices(text: string): Reading<readonly ThicknessPrice[]> {
  const found = readItems(text, THICKNESS_HOW, readThicknessPrice);
  return found.ok ? inOrder(found.value, text, ({ thickness }) => thickness) : found;
}

const LENGTHS_HOW = 'write each length with its unit, parted by commas, as in "1/4 in, 3/8 in"';

/** Reads lengths in stock: `1/4 in, 3/8 in`; mm, shortest first. */
export function readLengths(text: string): Reading<readonly number[]> {
  const found = readItems(text, LENGTHS_HOW, (item) => {
    const size = readSize(item);
    return size.ok ? size : misread(size.problem, LENGTHS_HOW);
  });
  return found.ok ? inOrder(found.value, text, (length) => length) : found;
}

/**
 * A measure's name and its text, "over-poll" and "39 in"; another setting of an order has its section before it,
 * "pieces.strap.length".
 */
export type NamedMeasure = { readonly name: string; readonly text: string };

const MEASURES_HOW =
  'write each measure\'s name and its size, parted by commas, as in "over-poll 39 in, ear-base 8 1/2 in"';

/** Reads measures by name: `over-poll 39 in, ear-base 8 1/2 in`; whether an article has them, others judge. */
export function readNamedMeasures(text: string): Reading<readonly NamedMeasure[]> {
  const found = readItems(text, MEASURES_HOW, (item) => {
    const parts = /^([a-z][a-z-]*(?:\.[a-z][a-z-]*)*)(?:\s*[:=]\s*|\s+)(\S.*)$/is.exec(item);
    return parts
      ? read({ name: parts[1]!, text: parts[2]!.trim() })
      : misread(`got ${quote(item)}, where a measure's name and its size are wanted`, MEASURES_HOW);
  });
  if (!found.ok) return found;
  const twice = found.value.find(({ name }, i) => found.value.findIndex((m) => m.name === name) < i);
  return twice ? misread(`got ${quote(twice.name)} twice`, "write each measure once") : found;
}
