import { expect, test } from "vitest";
import { readHands } from "../../src/units/index.ts";
import { checkFaults, type FaultRow, valueIn } from "./faults.ts";

const HOW = 'write hands, a point and inches from 0 to 3, as in "14.2 hands"';

// 14.2 hands = 14 hands 2 in = 58 in, and 58 × 25.4 = 1473.2 by hand; a hand is 4 in (from memory).
test.each([
  "14.2",
  "14.2 hands",
  "14.2hh",
  "14.2 HH",
  "14.2 h.h.",
  "14.2h",
  "14 hands 2 in",
  '14 hh 2"',
  "14 hands and 2 inches",
])("%s is 58 in", (text) => expect(readHands(text)).toEqual({ ok: true, value: 1473.2 }));

// FEI: a pony stands at most 148 cm without shoes, which is called 14.2 hands (from memory).
test("148 cm is nearer to 14.2 hands than to an inch more or less; 14.2½ is just over it", () => {
  expect(Math.abs(valueIn(readHands("14.2")) - 1480)).toBeLessThan(25.4 / 2);
  expect(valueIn(readHands("14.2½")) - valueIn(readHands("14.2"))).toBeCloseTo(12.7, 9);
  expect(valueIn(readHands("14.2½"))).toBeGreaterThan(1480);
});

test("the digit counts inches, so 14.3 is one inch under 15 hands", () => {
  expect(valueIn(readHands("15 hands")) - valueIn(readHands("14.3 hands"))).toBeCloseTo(25.4, 9);
  expect(valueIn(readHands("14 hands"))).toBe(valueIn(readHands("14.0")));
  expect(valueIn(readHands("9"))).toBe(914.4);
});

const INCHES = "inches over the hands go from 0 to 3, for 4 inches make a hand";
const rows: readonly FaultRow[] = [
  ["14.4", `got "14.4": ${INCHES}`, 'write "15 hands"'],
  ["14.5 hands", `got "14.5 hands": ${INCHES}`, 'write "14.2 hands" or "15.1 hands", whichever is meant'],
  ["14.7hh", `got "14.7hh": ${INCHES}`, 'write "15.3 hands"'],
  ["14.9", `got "14.9": ${INCHES}`, 'write "16.1 hands"'],
  ["14 hands 6 in", `got "14 hands 6 in": ${INCHES}`, 'write "15.2 hands"'],
  ["14.25", 'got "14.25": one digit follows the point, for whole inches', HOW],
  ["14.20 hands", 'got "14.20 hands": one digit follows the point, for whole inches', HOW],
  ["14.2 3/2", 'got "14.2 3/2": after whole inches the fraction must be less than 1', HOW],
  ["14.2 2/2", 'got "14.2 2/2": after whole inches the fraction must be less than 1', HOW],
  ["14.2 1/0", 'got "14.2 1/0": after whole inches the fraction must be less than 1', HOW],
  ["14½ hands", 'got "14½ hands": half a hand is 2 inches', 'write "14.2 hands" for 14 and a half'],
  ["148 cm", `got "148 cm": a horse's height is read in hands`, 'write "14.2 hands", to the nearest inch'],
  ["60 in", `got "60 in": a horse's height is read in hands`, 'write "15 hands", to the nearest inch'],
  ["41 m", 'got "41 m", which cannot be read as a height in hands', HOW],
  ["142", 'got "142", which cannot be read as a height in hands', HOW],
  ["-14.2", 'got "-14.2", which cannot be read as a height in hands', HOW],
  ["14,2 hh", 'got "14,2 hh": a comma is not read in a number', 'write "14.2 hh"'],
  ["fourteen", 'got "fourteen", which cannot be read as a height in hands', HOW],
  ["0x10", 'got "0x10": a number is written in plain digits here', 'write "16"'],
  ["", 'got "": a height in hands is missing', HOW],
];
test("faults", () => checkFaults(rows, readHands));
