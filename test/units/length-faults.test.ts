import { expect, test } from "vitest";
import { readLength } from "../../src/units/index.ts";
import { checkFaults, type FaultRow } from "./faults.ts";

const HOW = 'write a number and its unit, as in "41 1/2 in", "1054 mm" or "105.4 cm"';
const read = (text: string) => readLength(text);
const readBare = (text: string) => readLength(text, "in");

const check = (name: string, rows: readonly FaultRow[]) =>
  test(name, () => checkFaults(rows, read, readBare));

check("a decimal comma shows the point", [
  ["41,5", 'got "41,5": a comma is not read in a number', 'write "41.5"'],
  ["41,5 in", 'got "41,5 in": a comma is not read in a number', 'write "41.5 in"'],
  ['41,5"', 'got "41,5"": a comma is not read in a number', 'write "41.5 in"'],
  [",5 in", 'got ",5 in": a comma is not read in a number', 'write ".5 in"'],
  ["0,125 in", 'got "0,125 in": a comma is not read in a number', 'write "0.125 in"'],
  [
    "1,054 mm",
    'got "1,054 mm": a comma is not read in a number',
    'write "1054 mm" or "1.054 mm", whichever is meant',
  ],
  ["1,054.5 mm", 'got "1,054.5 mm": a comma is not read in a number', 'write "1054.5 mm"'],
  ["1.054,5 mm", 'got "1.054,5 mm": a comma is not read in a number', 'write "1054.5 mm"'],
  ["1,054,000 mm", 'got "1,054,000 mm": a comma is not read in a number', 'write "1054000 mm"'],
  ["41,5,3 in", 'got "41,5,3 in": a comma is not read in a number', HOW],
]);

const PLAIN = "a number is written in plain digits here";
check("numbers as computers write them", [
  ["0x10", `got "0x10": ${PLAIN}`, 'write "16"'],
  ["0x10 mm", `got "0x10 mm": ${PLAIN}`, 'write "16 mm"'],
  ["-0X1F", `got "-0X1F": ${PLAIN}`, 'write "-31"'],
  ["0b101 in", `got "0b101 in": ${PLAIN}`, 'write "5 in"'],
  ["0o17", `got "0o17": ${PLAIN}`, 'write "15"'],
  ["0xZZ", `got "0xZZ": ${PLAIN}`, HOW],
  ["0xffffffffff", `got "0xffffffffff": ${PLAIN}`, HOW],
  ["1e3", `got "1e3": ${PLAIN}`, 'write "1000"'],
  ["1.5E+2 mm", `got "1.5E+2 mm": ${PLAIN}`, 'write "150 mm"'],
  ["1e-3 m", `got "1e-3 m": ${PLAIN}`, 'write "0.001 m"'],
  ["1e300", `got "1e300": ${PLAIN}`, HOW],
  ["1e999", `got "1e999": ${PLAIN}`, HOW],
  ["1_000 mm", `got "1_000 mm": ${PLAIN}`, 'write "1000 mm"'],
]);

check("words that are numbers or nothing to a computer", [
  [".inf", 'got ".inf", which is not a length', HOW],
  ["-.INF", 'got "-.INF", which is not a length', HOW],
  ["Infinity", 'got "Infinity", which is not a length', HOW],
  [".nan", 'got ".nan", which is not a length', HOW],
  ["NaN", 'got "NaN", which is not a length', HOW],
  ["null", 'got "null", which is not a length', HOW],
  ["~", 'got "~", which is not a length', HOW],
  ["no", 'got "no", which is not a length', HOW],
  ["true", 'got "true", which is not a length', HOW],
]);

const RATHER_LESS = "after a whole number the fraction must be less than 1";
check("fractions", [
  [
    "41 1/0",
    'got "41 1/0": nothing can be divided by 0',
    'put a number other than 0 under the fraction, as in "1/2"',
  ],
  [
    "1/0 in",
    'got "1/0 in": nothing can be divided by 0',
    'put a number other than 0 under the fraction, as in "1/2"',
  ],
  ["41 1/2/3", 'got "41 1/2/3", with two fraction bars', HOW],
  ["½½ in", 'got "½½ in", with two fraction bars', HOW],
  ["½/8 in", 'got "½/8 in", with two fraction bars', HOW],
  ["41 10/4 in", `got "41 10/4 in": ${RATHER_LESS}`, 'write "43 1/2 in" if that is meant'],
  ["41-8/8", `got "41-8/8": ${RATHER_LESS}`, 'write "42" if that is meant'],
  ["3' 4 5/4\"", `got "3' 4 5/4"": ${RATHER_LESS}`, 'write "3 ft 5 1/4 in" if that is meant'],
  ["½3 in", 'got "½3 in", two numbers where one is needed', HOW],
  ["41.5 1/2 in", 'got "41.5 1/2 in", two numbers where one is needed', HOW],
  ["41.1/2 in", 'got "41.1/2 in", which cannot be read as a length', HOW],
]);

check("more than one number", [
  [
    "1 2 in",
    'got "1 2 in", two numbers where one is needed',
    'write "12 in", "1.2 in" or "1/2 in", whichever is meant',
  ],
  [
    "1 054 mm",
    'got "1 054 mm", two numbers where one is needed',
    'write "1054 mm" or "1.054 mm", whichever is meant',
  ],
  ["41 5", 'got "41 5", two numbers where one is needed', 'write "415" or "41.5", whichever is meant'],
  ["41 .5 in", 'got "41 .5 in", two numbers where one is needed', 'write "41.5 in"'],
  ["41.5.5", 'got "41.5.5", which cannot be read as a length', HOW],
  ["-1 2 in", 'got "-1 2 in", two measures where one is needed', HOW],
  ["3 in 4 furlongs", 'got "3 in 4 furlongs": the unit "furlongs" is not known here', HOW],
]);

const RANGE = "which looks like a range; a length is one number";
check("a range", [
  ["8-9 in", `got "8-9 in", ${RANGE}`, 'write "8 in" or "9 in", whichever is meant'],
  ["9-0", `got "9-0", ${RANGE}`, 'write "9" or "0", whichever is meant'],
  ["8–9", `got "8–9", ${RANGE}`, 'write "8" or "9", whichever is meant'],
  ["8 to 9 in", `got "8 to 9 in", ${RANGE}`, 'write "8 in" or "9 in", whichever is meant'],
  ["8 in to 9 in", `got "8 in to 9 in", ${RANGE}`, 'write "8 in" or "9 in", whichever is meant'],
  ["3 ft to 5 in", `got "3 ft to 5 in", ${RANGE}`, 'write "3 ft" or "5 in", whichever is meant'],
  ["41 - 1/2 in", `got "41 - 1/2 in", ${RANGE}`, 'write "41 1/2 in"'],
]);

check("a missing or a wrong unit", [
  [
    "41 1/2",
    'got "41 1/2", a number without a unit',
    'write "41 1/2 in", "41 1/2 mm" or "41 1/2 cm", whichever is meant',
  ],
  [
    "41½",
    'got "41½", a number without a unit',
    'write "41 1/2 in", "41 1/2 mm" or "41 1/2 cm", whichever is meant',
  ],
  [
    "9 oz",
    'got "9 oz": oz is for the thickness of leather, not for a length',
    'write "3.57 mm" if that is meant',
  ],
  [
    "6 irons",
    'got "6 irons": iron is for the thickness of leather, not for a length',
    'write "3.18 mm" if that is meant',
  ],
  ["8-9 oz", 'got "8-9 oz": oz is for the thickness of leather, not for a length', HOW],
  ["14.2 hands", 'got "14.2 hands": hands are for the height of a horse, not for a length', HOW],
  ["14.2hh", 'got "14.2hh": hands are for the height of a horse, not for a length', HOW],
  ["5 furlongs", 'got "5 furlongs": the unit "furlongs" is not known here', HOW],
  ["5 constructor", 'got "5 constructor": the unit "constructor" is not known here', HOW],
  ["8 spi", 'got "8 spi": the unit "spi" is not known here', HOW],
]);

const ONE_UNIT = "apart from feet before inches, a length has one unit";
check("units that do not go together", [
  ["1 m 5 cm", `got "1 m 5 cm": ${ONE_UNIT}`, 'write "1050 mm" if that is meant'],
  ["5 in 4 mm", `got "5 in 4 mm": ${ONE_UNIT}`, 'write "131 mm" if that is meant'],
  ["1' 054 mm", `got "1' 054 mm": ${ONE_UNIT}`, 'write "358.8 mm" if that is meant'],
  ["3 in 2 ft", `got "3 in 2 ft": ${ONE_UNIT}`, 'write "27 in" if that is meant'],
  [
    "6 1/2 ft 4 in",
    'got "6 1/2 ft 4 in": feet with inches after them must be whole',
    'write "82 in" if that is meant',
  ],
  ["6.5' 4\"", 'got "6.5\' 4"": feet with inches after them must be whole', 'write "82 in" if that is meant'],
  [
    "3 ft 12 in",
    'got "3 ft 12 in": after feet there can only be fewer than 12 inches',
    'write "48 in" if that is meant',
  ],
  [
    "-3 ft 14 in",
    'got "-3 ft 14 in": after feet there can only be fewer than 12 inches',
    'write "-50 in" if that is meant',
  ],
]);

check("nothing, too much, or no number at all", [
  ["", 'got "": a length is missing', HOW],
  [" \t\u00a0", 'got "": a length is missing', HOW],
  ["half an inch", 'got "half an inch", which cannot be read as a length', HOW],
  ["in", 'got "in", which cannot be read as a length', HOW],
  ["41. in", 'got "41. in", which cannot be read as a length', HOW],
  ["- 3 mm", 'got "- 3 mm", which cannot be read as a length', HOW],
  ["123456789 mm", 'got "123456789 mm": that is more digits than a length can have', HOW],
  ["9".repeat(70), `got "${"9".repeat(40)}…": 70 characters are too many for a length`, HOW],
  ["x".repeat(5_000_000), `got "${"x".repeat(40)}…": 5000000 characters are too many for a length`, HOW],
]);

test("a message shows unseen characters by their number and never sends them to a terminal", () => {
  checkFaults(
    [
      ["5\u001b[31m in", 'got "5[U+001B][31m in", which cannot be read as a length', HOW],
      ["5\u202e in", 'got "5[U+202E] in", which cannot be read as a length', HOW],
      ["1\u200b2 in", 'got "1[U+200B]2 in": the unit "[U+200B]" is not known here', HOW],
      ["5 \ud83d", 'got "5 [U+D83D]": the unit "[U+D83D]" is not known here', HOW],
    ],
    read,
  );
});

test("the same fault stands whether or not bare numbers have a unit", () => {
  for (const text of ["41,5", "0x10", "1e3", ".inf", "41 1/0", "1 2 in", "9 oz", ""]) {
    expect(readLength(text, "mm"), text).toEqual(readLength(text));
  }
});
