import { describe, expect, test } from "vitest";
import { readArea } from "../../src/units/area.ts";

describe("areas", () => {
  // NIST Special Publication 811, appendix B.8: a square foot is 9.290304 E-02 square metres (from memory).
  test.each([
    ["1 square foot", 92903.04],
    ["1 sq ft", 92903.04],
    ["1 sq. ft.", 92903.04],
    ["1 ft²", 92903.04],
    ["1ft2", 92903.04],
    ["22 square feet", 22 * 92903.04],
    ["22 1/2 sq ft", 22.5 * 92903.04],
    ["2 square metres", 2e6],
    ["2 m^2", 2e6],
    ["1.5 sq meters", 1.5e6],
    ["200 dm²", 2e6],
    ["200 Square Decimetres", 2e6],
  ])("%s", (text, mm2) => {
    const r = readArea(text);
    expect(r.ok && r.value).toBeCloseTo(mm2, 4);
  });

  test.each([
    ["22", "a number without a unit"],
    ["22 ft", 'got "22 ft": "ft" is no unit of area here'],
    ["22 square", 'got "22 square": "square" is no unit of area here'],
    ["22 acres", "is no unit of area here"],
    ["-2 sq ft", "cannot be read as an area"],
    ["2,5 m2", "a comma is not read"],
    ["", "an area is missing"],
  ])("%s is a fault", (text, problem) => {
    const r = readArea(text);
    expect(r.ok ? "" : r.problem).toContain(problem);
  });
});
