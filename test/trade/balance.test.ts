import { describe, expect, test } from "vitest";
import harness from "../../fixtures/published/harness-making-1904.json";
import worked from "../../fixtures/published/worked-cases.json";
import {
  adjustmentHalf,
  crownCutBothSides,
  defaultPitch,
  defaultToTip,
  effectiveCrown,
  effectiveOneSide,
  holeRow,
} from "../../src/trade/balance.ts";
import { given } from "../support/quantities.ts";

// Sources: fixtures/published/worked-cases.json (independent simulation), harness-making-1904.json
// (P. N. Hasluck, Harness Making, 1904, READ).

const INCH = 25.4;
const book = harness.figures;

describe("a crown with a buckle on both cheeks", () => {
  const c = worked.cases.crown;
  const measures = { overPoll: 1054.1, cheek: 254, holeOffset: 1.5, toTip: 60 };
  const row = holeRow(given("holes", c.holes, "count"), given("pitch", c.pitch));
  const effective = effectiveCrown({
    overPoll: given("over poll", measures.overPoll),
    cheek: given("cheek", measures.cheek),
    holeOffset: given("offset", measures.holeOffset),
    holes: given("holes", c.holes, "count"),
    pitch: given("pitch", c.pitch),
    toTip: given("to tip", measures.toTip),
  });
  const cut = crownCutBothSides(effective, row, given("to tip", measures.toTip)).value;

  /** The strap on the horse: holes counted from each tip, both tips hang down past their buckle. */
  const measureAt = (near: number, off: number): number => {
    const hole = (n: number): number => measures.toTip + n * c.pitch;
    const between = cut - hole(near) - hole(off);
    return between + 2 * (measures.cheek + measures.holeOffset);
  };
  const settings = Array.from({ length: c.holes ** 2 }, (_, i) =>
    measureAt(i % c.holes, Math.floor(i / c.holes)),
  );

  test("the middle holes give the measure asked for", () => {
    const middle = (c.holes - 1) / 2;
    expect(measureAt(middle, middle)).toBeCloseTo(measures.overPoll, 9);
  });

  test("it reaches as far each way as the worked case", () => {
    expect(Math.max(...settings) - measures.overPoll).toBeCloseTo(c.eachWay, 4);
    expect(measures.overPoll - Math.min(...settings)).toBeCloseTo(c.eachWay, 4);
    expect(adjustmentHalf(row, true).value).toBeCloseTo(c.eachWay, 4);
  });

  test("it has as many different settings, a pitch apart", () => {
    const different = [...new Set(settings.map((m) => Math.round((m - measures.overPoll) / c.step)))];
    expect(different).toHaveLength(c.settings);
    expect(adjustmentHalf(row, true).value / c.step).toBeCloseTo((c.settings - 1) / 2, 9);
  });
});

test("a buckle on the near side only: half the row each way", () => {
  const row = holeRow(given("holes", 9, "count"), given("pitch", 25.4));
  const effective = effectiveOneSide(given("over poll", 1000), given("cheek", 250), given("offset", 2)).value;
  // Bar to ring along the strap through hole n of the nine, counted from the middle one.
  const measureAt = (n: number): number => 250 + 2 + effective + n * 25.4;
  expect(measureAt(0)).toBeCloseTo(1000, 9);
  expect(measureAt(4) - measureAt(0)).toBeCloseTo(adjustmentHalf(row, false).value, 9);
});

describe("the handbook's holes", () => {
  test("hole spacing is a little more than the strap's width, p. 51", () => {
    for (let sixteenths = 6; sixteenths <= 40; sixteenths += 1) {
      const width = (sixteenths / 16) * INCH;
      const more = defaultPitch(given("width", width)).value - width;
      expect(more).toBeGreaterThan(0.1);
      expect(more).toBeLessThanOrEqual(INCH / 8 + 1e-9);
    }
    expect(defaultPitch(given("width", 16)).value).toBeCloseTo(0.75 * INCH, 9);
  });

  test("the first hole of a 1 1/2 in strap is about 5 in from the point, p. 51", () => {
    const width = given("width", book.H30.strapWidth * INCH);
    const toTip = defaultToTip(given("keeper", 40), given("point", 40), width).value;
    expect(Math.abs(toTip - book.H30.firstHole * INCH)).toBeLessThan(2);
  });

  test("a far keeper or a long point moves it on: 10 mm past both", () => {
    expect(defaultToTip(given("keeper", 60), given("point", 20), given("width", 16)).value).toBe(90);
  });
});
