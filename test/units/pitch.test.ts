import { expect, test } from "vitest";
import { readStitchPitch } from "../../src/units/index.ts";
import { checkFaults, type FaultRow, valueIn } from "./faults.ts";

const HOW = 'write stitches per inch, as in "8 per inch", or the distance between two holes, as in "3.4 mm"';

// Hasluck, Harness Making, 1904, p. 50 and elsewhere: 8, 10 and 6 to the inch; mm to 0.001 in the reference table.
test.each([
  ["8", 3.175],
  ["10", 2.54],
  ["6", 4.233],
])("%s to the inch", (count, mm) => {
  for (const way of [
    "per inch",
    "spi",
    "/in",
    " / in",
    "s.p.i.",
    "stitches per inch",
    "sts/in",
    "to the inch",
    "per in.",
    "an inch",
  ]) {
    expect(valueIn(readStitchPitch(`${count} ${way}`)), way).toBeCloseTo(mm, 3);
  }
});

test.each([
  ["3.4 mm", 3.4],
  ["3.4mm", 3.4],
  ["1/8 in", 3.175],
  ['1/8"', 3.175],
  ["⅛ in", 3.175],
  ["0.34 cm", 3.4],
  ["3-1/2 mm", 3.5],
  ["4 per cm", 2.5],
  ["4/cm", 2.5],
  ["7½ per inch", 3.3867],
  ["8 1/2 spi", 2.9882],
  ["1 in", 25.4],
  ["1 per inch", 25.4],
])("%s is %f mm from hole to hole", (text, mm) => expect(valueIn(readStitchPitch(text))).toBeCloseTo(mm, 4));

const NAME = "the number of an iron is a name, not a measure";
const MEASURE = 'measure from tooth to tooth and write that, as in "3.4 mm"';
const RANGE = "which looks like a range; a stitch pitch is one number";
const MEANT = "is that stitches per inch, or mm from hole to hole?";
const rows: readonly FaultRow[] = [
  ["8", `got "8": ${MEANT}`, 'write "8 per inch" or "8 mm", whichever is meant'],
  ["3.4", `got "3.4": ${MEANT}`, 'write "3.4 per inch" or "3.4 mm", whichever is meant'],
  ["30", `got "30": ${MEANT}`, 'write "30 per inch"'],
  ["⅛", `got "⅛": ${MEANT}`, 'write "1/8 mm" or "1/8 in", whichever is meant'],
  ["-8", 'got "-8": a stitch pitch must be more than 0', HOW],
  ["+8", `got "+8": ${MEANT}`, 'write "8 per inch" or "8 mm", whichever is meant'],
  ["0", `got "0": ${MEANT}`, HOW],
  ["8 in", 'got "8 in": the holes would be more than an inch apart', 'write "8 per inch"'],
  ["80 mm", 'got "80 mm": the holes would be more than an inch apart', HOW],
  ["0.5 per inch", 'got "0.5 per inch": the holes would be more than an inch apart', HOW],
  ["8 iron", `got "8 iron": ${NAME}`, MEASURE],
  ["no. 8", `got "no. 8": ${NAME}`, MEASURE],
  ["8 teeth per inch", `got "8 teeth per inch": ${NAME}`, MEASURE],
  ["8 tpi", `got "8 tpi": ${NAME}`, MEASURE],
  ["0 spi", 'got "0 spi": a stitch pitch must be more than 0', HOW],
  ["-8 spi", 'got "-8 spi": a stitch pitch must be more than 0', HOW],
  ["0 mm", 'got "0 mm": a stitch pitch must be more than 0', HOW],
  ["-3 mm", 'got "-3 mm": a stitch pitch must be more than 0', HOW],
  ["8-9 per inch", `got "8-9 per inch", ${RANGE}`, 'write "8 per inch" or "9 per inch", whichever is meant'],
  ["3 to 3.5 mm", `got "3 to 3.5 mm", ${RANGE}`, 'write "3 mm" or "3.5 mm", whichever is meant'],
  ["8 per foot", 'got "8 per foot": stitches are counted per inch or per cm', HOW],
  ["1/8/in", 'got "1/8/in", with two fraction bars', HOW],
  [
    "8/0 in",
    'got "8/0 in": nothing can be divided by 0',
    'put a number other than 0 under the fraction, as in "1/2"',
  ],
  ["1 2 spi", 'got "1 2 spi", which cannot be read as a stitch pitch', HOW],
  [
    "9 oz",
    'got "9 oz": oz is for the thickness of leather, not for a stitch pitch',
    'write "3.57 mm" if that is meant',
  ],
  ["3,4 mm", 'got "3,4 mm": a comma is not read in a number', 'write "3.4 mm"'],
  ["0x8 mm", 'got "0x8 mm": a number is written in plain digits here', 'write "8 mm"'],
  ["fine", 'got "fine", which cannot be read as a stitch pitch', HOW],
  ["", 'got "": a stitch pitch is missing', HOW],
];
test("faults", () => checkFaults(rows, readStitchPitch));
