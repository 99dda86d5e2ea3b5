import type { Part, Source } from "./length-part.ts";
import { printNumber } from "./number.ts";
import { quote } from "./quote.ts";
import { type Fault, misread } from "./reading.ts";
import { plain } from "./tidy.ts";
import { MM_PER_INCH, toMm, type Unit } from "./unit.ts";
import { offer } from "./words.ts";

/** `8-9 in`, `8 in to 9 in`; also `41 - 1/2`, which is no range but a spaced mixed number. */
function range(a: Part, b: Part, { text, wanted }: Source): Fault {
  const inUnit = (amount: string, unit: Unit | undefined) => (unit ? `${amount} ${unit}` : amount);
  const [first, second] = [plain(a.written), plain(b.written)];
  const mixed =
    a.word === undefined && /^\d+$/.test(first) && b.amount.bottom > 1 && b.amount.top < b.amount.bottom;
  const ways = mixed
    ? [inUnit(`${first} ${second}`, b.unit)]
    : [inUnit(first, a.unit ?? b.unit), inUnit(second, b.unit ?? a.unit)];
  return misread(`got ${quote(text)}, which looks like a range; ${wanted.what} is one number`, offer(ways));
}

/** `1 2 in`: a point, a bar or nothing is missing between them. */
function twoNumbers(a: Part, b: Part, { text, wanted }: Source): Fault {
  const problem = `got ${quote(text)}, two numbers where one is needed`;
  if (!/^\d+$/.test(a.written) || !/^\.?\d+$/.test(b.written)) return misread(problem, wanted.how);
  const joined = a.written + b.written;
  const fraction = a.amount.top < b.amount.top && !/^0/.test(b.written) ? [`${a.written}/${b.written}`] : [];
  const ways = b.written.startsWith(".") ? [joined] : [joined, `${a.written}.${b.written}`, ...fraction];
  const unit = b.unit ? ` ${b.unit}` : "";
  return misread(problem, offer(ways.map((way) => way + unit)));
}

/** The fault of two amounts that are not feet before inches: a range, two numbers, or two units. */
export function twoLengths(a: Part, b: Part, between: string, source: Source): Fault {
  const { text, tidied, wanted } = source;
  const signed = /^[+-]/.test(tidied);
  if (!signed && /-|to/i.test(between)) return range(a, b, source);
  if (!signed && a.word === undefined) return twoNumbers(a, b, source);
  if (signed || !a.unit || !b.unit) {
    return misread(`got ${quote(text)}, two measures where one is needed`, wanted.how);
  }
  const sum = toMm(a.amount, a.unit) + toMm(b.amount, b.unit);
  const imperial = /in|ft/.test(a.unit) && /in|ft/.test(b.unit);
  const total = imperial ? `${printNumber(sum / MM_PER_INCH, 4)} in` : `${printNumber(sum, 3)} mm`;
  return misread(
    `got ${quote(text)}: apart from feet before inches, ${wanted.what} has one unit`,
    `write "${total}" if that is meant`,
  );
}
