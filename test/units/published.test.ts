import { describe, expect, test } from "vitest";
import { printThickness, readLength, readStitchPitch, readThickness } from "../../src/units/index.ts";
import { valueIn } from "./faults.ts";

const mm = (text: string): number => valueIn(readLength(text));
const thick = (text: string): number => valueIn(readThickness(text)).middle;

describe("thickness units", () => {
  // ASTM D1814-70 (reapproved 2000), Measuring Thickness of Leather Units, 1.2:
  // 1 oz = 1/64 in = 0.0156 in = 0.396 mm (cut off, not rounded); 1 iron = 1/48 in = 0.0208 in = 0.53 mm.
  test("are those of ASTM D1814", () => {
    expect(Math.floor(thick("1 oz") * 1000) / 1000).toBe(0.396);
    expect(thick("1 iron")).toBeCloseTo(0.53, 2);
    expect(thick("1 oz")).toBe(mm("1/64 in"));
    expect(thick("1 iron")).toBe(mm("1/48 in"));
    expect(thick("1 oz") / mm("1 in")).toBeCloseTo(0.0156, 4);
    expect(thick("1 iron") / mm("1 in")).toBeCloseTo(0.0208, 4);
  });

  // fineleatherworking.com, leather thickness conversion chart: mm to 0.1, reckoned with 0.4 mm an ounce.
  test.each([
    [1, 0.4],
    [2, 0.8],
    [3, 1.2],
    [4, 1.6],
    [8, 3.2],
    [10, 4.0],
    [12, 4.8],
    [16, 6.4],
  ])("%i oz is %f mm in a vendor's chart, within its rounding", (oz, printed) => {
    expect(Math.abs(thick(`${oz} oz`) - printed)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  // The same chart: 8 oz = 1/8 in, 12 oz = 3/16 in, 16 oz = 1/4 in.
  test.each([
    ["8 oz", "1/8 in"],
    ["12 oz", "3/16 in"],
    ["16 oz", "1/4 in"],
  ])("%s is %s", (oz, inches) => {
    expect(thick(oz)).toBe(mm(inches));
    expect(thick(inches)).toBe(mm(inches));
  });

  // brettunsvillage.com, leather conversions: 6 oz = 4.5 iron, 13-14 oz = 10 iron, 16 oz = 12 iron = 1/4 in.
  test("ounces and irons agree with Brettuns Village's table", () => {
    expect(thick("6 oz")).toBe(thick("4.5 iron"));
    expect(thick("16 oz")).toBe(thick("12 iron"));
    expect(thick("12 iron")).toBe(thick("1/4 in"));
    const range = valueIn(readThickness("13-14 oz"));
    expect(range.thinnest).toBeLessThan(thick("10 iron"));
    expect(range.thickest).toBeGreaterThan(thick("10 iron"));
    expect(printThickness(thick("6 oz"), "iron")).toBe("4.5 iron (2.38 mm)");
  });
});

describe("lengths", () => {
  test("an inch is 25.4 mm exactly", () => expect(mm("1 in")).toBe(25.4));

  // P. N. Hasluck (ed.), Harness Making, Cassell 1904, pp. 104, 148, 140, 67, 149: each cut both ways.
  test.each([
    ["6 ft 4 in", "76 in"],
    ["7 ft 6 in", "90 in"],
    ["2 ft 8 in", "32 in"],
    ["2 ft 2 in", "26 in"],
    ["3 ft 3 in", "39 in"],
    ["3 ft 4 in", "40 in"],
    ["3 ft 8 in", "44 in"],
  ])("Hasluck's %s is %s", (feet, inches) => expect(mm(feet)).toBe(mm(inches)));

  // Hasluck p. 38: strap butts 4 ft 6 in to 4 ft 9 in; in mm by the reference table, to 1 mm.
  test.each([
    ["4 ft 6 in", 1372],
    ["4 ft 9 in", 1448],
  ])("%s is %i mm", (text, printed) => {
    expect(Math.round(mm(text))).toBe(printed);
  });

  // Pairs printed together by one source, to the last decimal that it prints.
  test.each([
    ["3/16 in", 4.8, 1], // ASTM D4831, buckle tear hole
    ["3/32 in", 2.38, 2], // graphicdies.com, least spacing of rules
    ["0.028 in", 0.71, 2], // bj-bandsaw, 2 pt rule
    ["0.042 in", 1.07, 2], // the same, 3 pt
    ["0.056 in", 1.42, 2], // the same, 4 pt
    ["0.25 in", 6.35, 2], // printers' safe margin, help.seagullscientific.com
    ["0.4 in", 10.2, 1], // ASTM D1814 6.1, gauge foot
    ["8 1/2 in", 215.9, 1], // ANSI/ASME Y14.1 A is 8 1/2 in wide; 215.9 mm from memory
    ["0.164 in", 4.166, 3], // #8 screw, unified table
  ])("%s is %f mm", (text, printed, decimals) => expect(mm(text)).toBeCloseTo(printed, decimals));

  // size-charts.com, bridle chart: headpiece in inches and cm, rounded to whole inches or half cm.
  test.each([
    [36, 91],
    [39, 99.5],
    [44, 112],
    [46, 117],
    [50, 127],
  ])("a headpiece of %i in is %f cm", (inches, cm) => {
    expect(Math.abs(mm(`${inches} in`) - mm(`${cm} cm`))).toBeLessThanOrEqual(5);
  });
});

// veneaistudio.com, how stitch length is calculated: 2.5 mm is 10.16 stitches per inch.
test("a stitch length of 2.5 mm is 10.16 stitches per inch", () => {
  expect(valueIn(readStitchPitch("10.16 per inch"))).toBeCloseTo(valueIn(readStitchPitch("2.5 mm")), 9);
});
