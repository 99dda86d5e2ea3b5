import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import {
  bandChord,
  bandRadius,
  defaultEase,
  openingPerimeter,
  ovalHalfWidth,
  slotBridge,
} from "../../src/trade/earLoop.ts";
import { hull, lengthRound, onRoundedBar } from "../support/hull.ts";
import { given, radians } from "../support/quantities.ts";

// Expected values: fixtures/published/worked-cases.json (independent simulation), and polygons here.

describe("a band closed by the crown's edge", () => {
  test("the worked case", () => {
    const c = worked.cases.earBand;
    const spread = given("spread", radians(c.spreadDegrees), "angle");
    const radius = bandRadius(given("perimeter", c.perimeter), spread);
    expect(radius.value).toBeCloseTo(c.radius, 4);
    expect(radius.value * spread.value).toBeCloseTo(c.arc, 4);
    expect(bandChord(radius, spread).value).toBeCloseTo(c.chord, 4);
  });

  test("round the arc and back along the chord it measures what the ear asks for", () => {
    for (const deg of [200, 240, 280]) {
      const spread = radians(deg);
      const rho = bandRadius(given("perimeter", 254), given("spread", spread, "angle")).value;
      const arc = Array.from({ length: 20001 }, (_, i): readonly [number, number] => {
        const a = (spread * i) / 20000;
        return [rho * Math.cos(a), rho * Math.sin(a)];
      });
      expect(lengthRound(arc)).toBeCloseTo(254, 4);
    }
  });
});

test("a closed oval measures what the ear asks for, for any slenderness", () => {
  for (const slender of [1, 1.4, 2.5]) {
    const a = ovalHalfWidth(given("perimeter", 254), given("slenderness", slender, "ratio")).value;
    const oval = hull(onRoundedBar(2 * a * slender, 2 * a, a, 4000));
    expect(lengthRound(oval)).toBeCloseTo(254, 3);
  }
});

describe("defaults (common practice, no source)", () => {
  test("ease is 12 %, at least 25 mm", () => {
    expect(defaultEase(given("ear", 150)).value).toBe(25);
    expect(defaultEase(given("ear", 250)).value).toBeCloseTo(30, 9);
    expect(openingPerimeter(given("ear", 229), given("ease", 25)).value).toBe(254);
  });

  test("a bridge is 6 mm, or two thicknesses", () => {
    expect(slotBridge(given("t", 2.5, "thickness")).value).toBe(6);
    expect(slotBridge(given("t", 4, "thickness")).value).toBe(8);
  });
});
