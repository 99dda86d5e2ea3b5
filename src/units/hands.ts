import { lengthFor } from "./length.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { roundTo } from "./round.ts";
import { pastTraps, unread, type Wanted } from "./traps.ts";
import { MM_PER_INCH, toMm } from "./unit.ts";
import { offer } from "./words.ts";

const WANTED: Wanted = {
  what: "a height in hands",
  how: 'write hands, a point and inches from 0 to 3, as in "14.2 hands"',
};

/** A hand is 4 inches (from memory). */
const INCHES_PER_HAND = 4;

const HANDS = "(?:hands?|h\\.?h|h)\\.?";
const POINTED = new RegExp(`^(\\d{1,2})(?:\\.(\\d+)(?: (\\d+)[/⁄](\\d+))?)? ?(?:${HANDS})?$`, "i");
const SPELLED = new RegExp(`^(\\d{1,2}) ?${HANDS} ?(?:and )?(\\d{1,2}) ?(?:inches|inch|in\\.?|")$`, "i");
const HALVED = new RegExp(`^(\\d{1,2}) ?(?:1[/⁄]2) ?(?:${HANDS})?$`, "i");

/** `14.2 hands`; the inches in excess of a hand carried over. */
function printHands(hands: number, inches: number): string {
  const whole = hands + Math.floor(inches / INCHES_PER_HAND);
  const rest = inches % INCHES_PER_HAND;
  return rest === 0 ? `${whole} hands` : `${whole}.${rest} hands`;
}

function inchesFault(text: string, hands: number, inches: number): Reading<number> {
  const halved = inches === 5 ? [printHands(hands, 2)] : [];
  return misread(
    `got ${quote(text)}: inches over the hands go from 0 to 3, for 4 inches make a hand`,
    offer([...halved, printHands(hands, inches)]),
  );
}

/** A height in another unit, or with half a hand: said in hands, to the inch. */
function otherwise(text: string, tidied: string): Reading<number> {
  const halved = HALVED.exec(tidied);
  if (halved) {
    const mend = `write "${printHands(Number(halved[1]), 2)}" for ${halved[1]} and a half`;
    return misread(`got ${quote(text)}: half a hand is 2 inches`, mend);
  }
  const length = lengthFor(WANTED, text);
  if (!length.ok || length.value <= 0) return unread(text, WANTED);
  const inches = roundTo(length.value / MM_PER_INCH, 0);
  if (inches >= 100 * INCHES_PER_HAND) return unread(text, WANTED); // no horse, and no two digits
  return misread(
    `got ${quote(text)}: a horse's height is read in hands`,
    `write "${printHands(0, inches)}", to the nearest inch`,
  );
}

/**
 * Reads a horse's height in hands, in mm: `14.2`, `14.2 hands`, `14.2hh`, `14 hands`, `14 hands 2 in`.
 * The digit after the point counts inches, 0 to 3: 14.2 is 14 hands 2 in, 58 in. A part of an inch may
 * follow it (`14.2½`). A bare number is hands, for that is how a height is written.
 */
export function readHands(text: string): Reading<number> {
  const clear = pastTraps(text, WANTED);
  if (!clear.ok) return clear;
  const match = POINTED.exec(clear.value) ?? SPELLED.exec(clear.value);
  if (!match) return otherwise(text, clear.value);
  const [, hands = "", inches = "0", partTop = "0", partBottom = "1"] = match;
  const [top, bottom] = [Number(partTop), Number(partBottom)];
  if (match.length > 3 && inches.length > 1) {
    return misread(`got ${quote(text)}: one digit follows the point, for whole inches`, WANTED.how);
  }
  if (Number(inches) >= INCHES_PER_HAND) return inchesFault(text, Number(hands), Number(inches));
  if (top >= bottom) {
    return misread(`got ${quote(text)}: after whole inches the fraction must be less than 1`, WANTED.how);
  }
  const whole = Number(hands) * INCHES_PER_HAND + Number(inches);
  return read(toMm({ top: whole * bottom + top, bottom }, "in"));
}
