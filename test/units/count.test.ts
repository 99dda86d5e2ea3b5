import { expect, test } from "vitest";
import { readAngle, readCount, readRatio } from "../../src/units/index.ts";
import { checkFaults, valueIn } from "./faults.ts";

test.each([
  ["7", 7],
  [" 7 ", 7],
  ["07", 7],
  ["7.0", 7],
  ["-3", -3],
  ["−3", -3],
  ["0", 0],
])("count %s", (text, value) => {
  expect(readCount(text)).toEqual({ ok: true, value });
});
test("a count of -0 is 0", () => expect(Object.is(valueIn(readCount("-0")), 0)).toBe(true));

test.each([
  ["0.5", 0.5],
  ["12 %", 0.12],
  ["12%", 0.12],
  ["12 per cent", 0.12],
  ["150 %", 1.5],
  ["1/2", 0.5],
  ["½", 0.5],
  ["1 1/4", 1.25],
  ["-5 %", -0.05],
  ["12", 12],
])("ratio %s", (text, value) => expect(valueIn(readRatio(text))).toBeCloseTo(value, 12));

// Radians by the sine and cosine of well-known angles, not by a factor.
test.each(["30", "30 deg", "30°", "30º", "30˚", "30 degrees", "30 Deg."])(
  "angle %s has the sine 1/2",
  (text) => {
    expect(Math.sin(valueIn(readAngle(text)))).toBeCloseTo(0.5, 12);
  },
);
test("180° is half a turn, 240° two thirds, -60° turns back", () => {
  expect(valueIn(readAngle("180"))).toBe(Math.PI);
  expect(Math.cos(valueIn(readAngle("240°")))).toBeCloseTo(-0.5, 12);
  expect(Math.sin(valueIn(readAngle("240°")))).toBeLessThan(0);
  expect(Math.cos(valueIn(readAngle("-60°")))).toBeCloseTo(0.5, 12);
  expect(valueIn(readAngle("22 1/2°"))).toBe(Math.PI / 8);
});

const COUNT = 'write a whole number, as in "7"';
test("count faults", () =>
  checkFaults(
    [
      ["7.5", 'got "7.5": a count is a whole number', 'write "7" or "8"'],
      ["-7½", 'got "-7½": a count is a whole number', 'write "-8" or "-7"'],
      ["7 mm", 'got "7 mm": a count has no unit', 'write "7"'],
      ["1,000", 'got "1,000": a comma is not read in a number', 'write "1000"'],
      ["7,5", 'got "7,5": a comma is not read in a number', COUNT],
      ["1 000", 'got "1 000", which cannot be read as a count', COUNT],
      ["0x10", 'got "0x10": a number is written in plain digits here', 'write "16"'],
      ["1e3", 'got "1e3": a number is written in plain digits here', 'write "1000"'],
      [".inf", 'got ".inf", which is not a count', COUNT],
      ["99999999", 'got "99999999": that is more digits than a count can have', COUNT],
      ["seven", 'got "seven", which cannot be read as a count', COUNT],
      ["", 'got "": a count is missing', COUNT],
    ],
    readCount,
  ));

const RATIO = 'write a number or a percentage, as in "0.5" or "12 %"';
test("ratio faults", () =>
  checkFaults(
    [
      ["0.5 mm", 'got "0.5 mm": a ratio has no unit but %', RATIO],
      ["1:2", 'got "1:2": a ratio has no unit but %', RATIO],
      ["12 % %", 'got "12 % %": a ratio has no unit but %', RATIO],
      ["0,5", 'got "0,5": a comma is not read in a number', 'write "0.5"'],
      [
        "1/0",
        'got "1/0": nothing can be divided by 0',
        'put a number other than 0 under the fraction, as in "1/2"',
      ],
      ["1e-1", 'got "1e-1": a number is written in plain digits here', 'write "0.1"'],
      ["NaN", 'got "NaN", which is not a ratio', RATIO],
      ["half", 'got "half", which cannot be read as a ratio', RATIO],
      ["", 'got "": a ratio is missing', RATIO],
    ],
    readRatio,
  ));

const ANGLE = 'write degrees, as in "240" or "240 deg"';
test("angle faults", () =>
  checkFaults(
    [
      ["4.19 rad", 'got "4.19 rad": an angle is written in degrees', 'write "240.1 deg"'],
      ["12° 30'", 'got "12° 30\'": an angle is written in degrees', ANGLE],
      ["1/4 turn", 'got "1/4 turn": an angle is written in degrees', ANGLE],
      ["240,5°", 'got "240,5°": a comma is not read in a number', 'write "240.5°"'],
      ["0x10", 'got "0x10": a number is written in plain digits here', 'write "16"'],
      ["wide", 'got "wide", which cannot be read as an angle', ANGLE],
      ["", 'got "": an angle is missing', ANGLE],
    ],
    readAngle,
  ));
