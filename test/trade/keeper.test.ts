import { describe, expect, test } from "vitest";
import harness from "../../fixtures/published/harness-making-1904.json";
import worked from "../../fixtures/published/worked-cases.json";
import { keeperBreadth, keeperGirth, keeperStack } from "../../src/trade/keeper.ts";
import { hull, lengthRound, onRoundedBar } from "../support/hull.ts";
import { given } from "../support/quantities.ts";

// Sources: fixtures/published/worked-cases.json (independent simulation), harness-making-1904.json
// (P. N. Hasluck, Harness Making, 1904, READ).

const INCH = 25.4;
const book = harness.figures;

const girth = (width: number, height: number, neutral: number, thickness: number): number =>
  keeperGirth(
    "keeper",
    { width: given("W", width), height: given("H", height) },
    given("k", neutral, "ratio"),
    given("t", thickness, "thickness"),
  ).value;

describe("girth along the neutral fibre", () => {
  test("the worked case", () => {
    const c = worked.cases.keeperGirth;
    expect(girth(c.width, c.height, 0.5, c.thickness)).toBeCloseTo(c.girth, 4);
  });

  test("a string round the stack, as far off as the neutral fibre lies", () => {
    for (const [w, h, k, t] of [
      [16.5, 6.5, 0.5, 2],
      [25.4, 9, 0.4, 3.5],
      [12, 5, 0.6, 1],
    ] as const) {
      const off = k * t;
      const string = lengthRound(hull(onRoundedBar(w + 2 * off, h + 2 * off, off, 2000)));
      expect(girth(w, h, k, t)).toBeCloseTo(string, 4);
    }
  });
});

describe("the handbook's running loop", () => {
  // Rule, pp. 50, 57 (READ): twice the strap's width, 1/2 in overlap, two thicknesses of strap.
  // The rule has no ease and no neutral fibre: ours is longer by 2πk t_k + 2 (e_w + e_h).
  const strap = { width: book.H20worked.strapWidth * INCH, thickness: book.H20worked.strapThickness * INCH };
  const lap = book.H20.overlap * INCH;
  const layers = [given("strap", strap.thickness, "thickness"), given("tail", strap.thickness, "thickness")];
  const cut = (easeWidth: number, easeHeight: number, thickness: number): number => {
    const stack = keeperStack("keeper", given("width", strap.width), layers, easeWidth, easeHeight);
    return keeperGirth("keeper", stack, 0.5, given("t", thickness, "thickness")).value + lap;
  };

  test("without ease, of leather without thickness, it is the rule's 3 in", () => {
    expect(cut(0, 0, 0)).toBeCloseTo(book.H20worked.cut * INCH, 9);
  });

  test("2 mm leather, 1 mm and 0.5 mm of ease: 9.2832 mm longer", () => {
    // 2π × 0.5 × 2 = 6.2832, and 2 × (1 + 0.5) = 3.
    expect(cut(1, 0.5, 2) - book.H20worked.cut * INCH).toBeCloseTo(9.2832, 4);
  });
});

describe("breadth", () => {
  const breadth = (strap: number, pitch: number): number =>
    keeperBreadth(given("strap", strap), given("pitch", pitch, "pitch")).value;

  test.each([
    ["a 1 1/2 in strap, p. 49-50", book.H21wide],
    ["a 7/8 in strap, p. 54", book.H21narrow],
  ])("within 2 mm of the handbook's on %s", (_, h) => {
    expect(Math.abs(breadth(h.strapWidth * INCH, 2.54) - h.breadth * INCH)).toBeLessThan(2);
  });

  test("room for the handbook's two stitches through each end, and never under 8 mm", () => {
    for (const pitch of [2.1, 3.2, 4.2]) {
      expect(breadth(12, pitch)).toBeGreaterThanOrEqual(Math.max(8, book.H23.stitches * pitch));
    }
    expect(breadth(12, 2.1)).toBe(8);
  });
});
