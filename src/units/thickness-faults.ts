import type { Amount } from "./amount.ts";
import { printNumber } from "./number.ts";
import { quote } from "./quote.ts";
import { type Fault, misread } from "./reading.ts";
import { plain } from "./tidy.ts";
import type { Wanted } from "./traps.ts";
import { offer } from "./words.ts";

export const THICKNESS: Wanted = {
  what: "a thickness",
  how: 'write a number and its unit, as in "9 oz", "8-9 oz", "6 iron", "3.5 mm" or "1/8 in"',
};

/** The thick end of a range over its thin end; more is a slip of a digit (common practice, no source). */
export const WIDEST_RANGE = 2;

/** Parts into which an ounce, an iron or a millimetre is divided; `8-9/10 oz` is no mixed number. */
const HALVINGS: readonly number[] = [1, 2, 4, 8, 16, 32, 64];

export const inHalvings = (amount: Amount): boolean => HALVINGS.includes(amount.bottom);
export const sizeOf = (amount: Amount): number => amount.top / amount.bottom;
const couldBeRange = (from: number, to: number): boolean => from < to && to <= WIDEST_RANGE * from;

/** No unit at all: offers the same text in the units that it can have. */
export function bareThickness(amounts: readonly Amount[], text: string, tidied: string): Fault {
  const problem = `got ${quote(text)}, a thickness without a unit`;
  const [from = 0, to] = amounts.map(sizeOf);
  if (to !== undefined && !couldBeRange(from, to)) return misread(problem, THICKNESS.how);
  // 8/9 alone is most likely a range; 1/8 and ⅞ alone are marks on an inch rule.
  const slashed = /^(\d+)\/(\d+)$/.exec(tidied);
  const asRange = slashed !== null && couldBeRange(Number(slashed[1]), Number(slashed[2]));
  const fraction = /^\d+[/⁄]\d+$/.test(tidied);
  if (!asRange && (fraction || !amounts.every(inHalvings))) {
    return misread(problem, `write "${plain(tidied)} in" if inches are meant`);
  }
  const shown = asRange ? tidied.replace("/", "-") : plain(tidied);
  const inches = amounts.some((amount) => amount.bottom > 1) ? [`${plain(tidied)} in`] : [];
  return misread(problem, offer([`${shown} oz`, `${shown} iron`, `${shown} mm`, ...inches]));
}

/** `3/4 mm`: a range as leather is sold, or three quarters? */
export function doubtfulSlash(from: number, to: number, text: string): Fault {
  const range = couldBeRange(from, to) ? [`${from}-${to} mm`] : [];
  const fraction = to > 0 ? [`${printNumber(from / to, 3)} mm`] : [];
  const ways = [...range, ...fraction];
  const problem = `got ${quote(text)}, which could be a range or a fraction`;
  return misread(problem, ways.length === 0 ? THICKNESS.how : offer(ways));
}

/** The two ends of a range, as written, when they are no range; undefined when they are one. */
export function rangeFault(
  { from, to, unit, slash }: { from: string; to: string; unit: string; slash: boolean },
  [a, b]: readonly [number, number],
  text: string,
): Fault | undefined {
  if (a === b) return misread(`got ${quote(text)}, a range with two ends alike`, `write "${from} ${unit}"`);
  if (Math.max(a, b) > WIDEST_RANGE * Math.min(a, b)) {
    const inches = slash && a > 0 && b > 0 ? `, or "${from}/${to} in" if inches are meant` : "";
    return misread(
      `got ${quote(text)}: the thick end of a range is at most ${WIDEST_RANGE} times the thin end`,
      `measure the leather and write that, as in "8 oz"${inches}`,
    );
  }
  if (a < b) return undefined;
  return misread(`got ${quote(text)}, a range from thick to thin`, `write "${to}-${from} ${unit}"`);
}
