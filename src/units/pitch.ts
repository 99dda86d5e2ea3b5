import { AMOUNT, readAmount, WORD } from "./amount.ts";
import { lengthFor } from "./length.ts";
import { quote } from "./quote.ts";
import { type Fault, misread, type Reading, read } from "./reading.ts";
import { plain } from "./tidy.ts";
import { pastTraps, unread, type Wanted } from "./traps.ts";
import { MM_PER_INCH, toMm, unitOf } from "./unit.ts";
import { offer } from "./words.ts";

const WANTED: Wanted = {
  what: "a stitch pitch",
  how: 'write stitches per inch, as in "8 per inch", or the distance between two holes, as in "3.4 mm"',
};

/** Holes an inch apart sew nothing; whoever writes `8 in` means 8 to the inch. */
const LONGEST_PITCH_MM = MM_PER_INCH;

const STITCHES = "(?:stitch(?:es)?|sts?\\.?)?";
const RATE = new RegExp(`^(-?)(${AMOUNT}) ?${STITCHES} ?(?:(?:per|to the|an|a) |/ ?)(${WORD})$`, "i");
const SPI = new RegExp(`^(-?)(${AMOUNT}) ?s\\.?p\\.?i\\.?$`, "i");
const RANGE = new RegExp(`^(${AMOUNT}) ?(?:-|to) ?(${AMOUNT}) ?(\\D+)$`, "i");
const BARE = new RegExp(`^[+-]?${AMOUNT}$`);
const ONE_AMOUNT = new RegExp(`^${AMOUNT}\\D*$`);
/** An iron or wheel called by its number, or counted by its teeth. */
const IRON = /iron|wheel|t\.?p\.?i|teeth|tooth|^(?:no\.?|nr\.?|#) ?\d/i;

const tooSmall = (text: string): Fault =>
  misread(`got ${quote(text)}: a stitch pitch must be more than 0`, WANTED.how);

const tooLong = (text: string, mend: string): Fault =>
  misread(`got ${quote(text)}: the holes would be more than an inch apart`, mend);

/** Stitches per inch or per cm, as the distance between two holes. */
function perUnit(text: string, tidied: string, match: RegExpExecArray): Reading<number> {
  const [, sign, written = "", word = "inch"] = match;
  const amount = readAmount(written, text, tidied);
  if (!amount.ok) return amount;
  const unit = unitOf(word);
  if (unit !== "in" && unit !== "cm") {
    return misread(`got ${quote(text)}: stitches are counted per inch or per cm`, WANTED.how);
  }
  const { top, bottom } = amount.value;
  if (sign === "-" || top === 0) return tooSmall(text);
  const pitch = toMm({ top: bottom, bottom: top }, unit);
  return pitch > LONGEST_PITCH_MM ? tooLong(text, WANTED.how) : read(pitch);
}

/** A number alone: offers what it can mean, and not the 1/8 stitch to the inch that it cannot. */
function bareFault(text: string, tidied: string): Fault {
  if (tidied.startsWith("-")) return tooSmall(text);
  const amount = readAmount(tidied.replace("+", ""), text, tidied);
  if (!amount.ok) return amount;
  const { top, bottom } = amount.value;
  const number = plain(tidied.replace("+", ""));
  const ways = [
    ...(top >= bottom ? [`${number} per inch`] : []),
    ...(top > 0 && top <= LONGEST_PITCH_MM * bottom ? [`${number} mm`] : []),
    ...(top > 0 && top < bottom && bottom > 1 ? [`${number} in`] : []),
  ];
  const problem = `got ${quote(text)}: is that stitches per inch, or mm from hole to hole?`;
  return misread(problem, ways.length === 0 ? WANTED.how : offer(ways));
}

function asDistance(text: string, tidied: string): Reading<number> {
  if (BARE.test(tidied)) return bareFault(text, tidied);
  const range = ONE_AMOUNT.test(tidied) ? null : RANGE.exec(tidied);
  if (range) {
    const [, from = "", to = "", rest = ""] = range;
    const ends = [from, to].map((end) => plain(`${end} ${rest}`));
    return misread(`got ${quote(text)}, which looks like a range; a stitch pitch is one number`, offer(ends));
  }
  if (/per|spi|stitch/i.test(tidied)) return unread(text, WANTED);
  const length = lengthFor(WANTED, text);
  if (!length.ok) return length;
  if (length.value <= 0) return tooSmall(text);
  if (length.value <= LONGEST_PITCH_MM) return length;
  const [, count, word = ""] = /^(\d+) ?(\D+)$/.exec(tidied) ?? [];
  const meantRate = count !== undefined && unitOf(word) === "in";
  return tooLong(text, meantRate ? `write "${count} per inch"` : WANTED.how);
}

/**
 * Reads a stitch pitch, in mm from hole to hole: stitches per inch (`8 per inch`, `8 spi`, `8/in`,
 * `3 per cm`) or the distance itself (`3.4 mm`, `1/8 in`). A bare number is a fault, for both are
 * written so; an iron's number is one too, for it is its maker's name: one sold as 8 measured
 * 3.4 mm, and not 25.4/8.
 */
export function readStitchPitch(text: string): Reading<number> {
  const clear = pastTraps(text, WANTED);
  if (!clear.ok) return clear;
  if (IRON.test(clear.value)) {
    return /\d/.test(clear.value)
      ? misread(
          `got ${quote(text)}: the number of an iron is a name, not a measure`,
          'measure from tooth to tooth and write that, as in "3.4 mm"',
        )
      : unread(text, WANTED);
  }
  const rate = RATE.exec(clear.value) ?? SPI.exec(clear.value);
  return rate ? perUnit(text, clear.value, rate) : asDistance(text, clear.value);
}
