import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { pairPressEnough } from "../../src/die/checks/pairPressEnough.ts";
import { type Die, dieFor } from "../../src/die/die.ts";
import type { Nest } from "../../src/die/nest.ts";
import { pairDie, pairLoad } from "../../src/die/pairDie.ts";
import { loadOfBoth, pressLoad } from "../../src/die/press.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { rectanglePath } from "../../src/geometry/index.ts";
import { diesOf, makeJob } from "../../src/job.ts";
import { derivationOf } from "../../src/model/derivation.ts";
import { NEWTONS_IN } from "../../src/trade/force.ts";
import { given } from "../support/quantities.ts";
import { samplePiece } from "../support/samplePieces.ts";

const INCH = 25.4;
const LBF = 4.4482216152605;

const settings = defaultDie();
const plate = samplePiece("plate", rectanglePath([0, 0], 200, 100));
const dieWith = (over: Partial<DieSettings> = {}): Die => dieFor(plate, { ...settings, ...over });
/** The second beside the first, so far from edge to edge. */
const beside = (gap: number): Nest => ({
  second: { at: [200 + gap, 0], angle: 0 },
  box: { minX: 0, minY: 0, maxX: 400 + gap, maxY: 100 },
  area: 0,
  gap,
});

describe("load of two dies on one board", () => {
  test("far apart: twice the published worked example, 2 × 112.5 tons", () => {
    // bizfluent.com, How to Calculate Die Cutting Tonnage (for paper): 500 in of rule, 500 sq in of rubber.
    const per = given("load for each mm", (400 * LBF) / INCH, "number");
    const one = pressLoad({
      ruleLength: given("rule", 500 * INCH),
      perLength: per,
      rubberArea: given("rubber", 500 * INCH ** 2, "area"),
      rubberPressure: given("pressure", (50 * LBF) / INCH ** 2, "stress"),
    });
    const extra = given("extra", 0.25, "ratio");
    const ton = NEWTONS_IN["US short ton"];
    expect(loadOfBoth(one, per, { length: 0, extra }).value / ton).toBeCloseTo(225, 6);
    // 10 in of rule of each stands close to the other's: 20 × 400 lb × 0.25 = 2000 lb = 1 ton more.
    expect(loadOfBoth(one, per, { length: 20 * INCH, extra }).value / ton).toBeCloseTo(226, 6);
  });

  test("side by side 4 mm apart: both facing sides and 2 mm round each of their corners press harder", () => {
    // From edge to edge 4 mm; a point d behind a facing corner is 4 + d away, nearer than 6 mm for d < 2.
    const die = dieWith();
    const more = pairLoad(die, beside(4)).value - 2 * die.load.value;
    const length = more / (die.perLength.value * settings.closeRulesExtra.value);
    expect(Math.abs(length - (2 * 100 + 4 * 2))).toBeLessThan(4);
  });

  test("rules further apart than die.close-rules add nothing; a wider reach does", () => {
    const die = dieWith();
    expect(pairLoad(die, beside(6.1)).value).toBeCloseTo(2 * die.load.value, 6);
    const wide = dieWith({ closeRules: given("close", 8) });
    expect(pairLoad(wide, beside(6.1)).value).toBeGreaterThan(2 * wide.load.value + 1);
  });

  test("the extra stands in its derivation by name", () => {
    const die = dieWith();
    const { steps } = derivationOf("plate", pairLoad(die, pairDie(die)));
    const names = steps.map(({ name }) => name);
    for (const name of ["press load", "extra for close rules between the two", "press load of both"])
      expect(names).toContain(name);
  });
});

describe("press for two dies on one board", () => {
  const die = dieWith();
  const both = pairLoad(die, pairDie(die));
  const at = (newtons: number) =>
    pairPressEnough(dieWith({ press: `${(newtons / 1000).toFixed(4)} kN` }), both);

  test("over the rating an error with a mend; over 80 % a caution; else a note", () => {
    expect(at(both.value / 1.01)).toMatchObject([{ rule: "die-press-load", severity: "error" }]);
    expect(at(both.value / 1.01)[0]!.mend).toContain("without --nest");
    expect(at(both.value / 1.01)[0]!.mend).toContain("die.press");
    expect(at(both.value / 0.81)).toMatchObject([{ severity: "caution" }]);
    expect(at(both.value / 0.79)).toMatchObject([{ severity: "note" }]);
  });
  test("nothing where no press is known, or where the single die is told already", () => {
    expect(pairPressEnough(die, both)).toEqual([]);
    expect(at(die.load.value * 0.99)).toEqual([]);
    expect(at(die.load.value * 1.01)).toMatchObject([{ severity: "error" }]);
  });
  test("twice one die fits and the extra between them does not: the pair is too much", () => {
    expect(both.value).toBeGreaterThan(2 * die.load.value);
    expect(at((both.value + 2 * die.load.value) / 2)).toMatchObject([{ severity: "error" }]);
  });
});

test("what was found about a pair is among a die's findings only when two were asked for, and never its own", () => {
  const file = "templates/juniper-headstall.yaml";
  const made = makeJob(readFileSync(file, "utf8"), file);
  if (!made.made) throw new Error(`${file} is not made`);
  const keeper = made.job.made.pieces.find(({ id }) => id.startsWith("keeper"))!;
  const { load } = dieFor(keeper, made.die);
  const small = { ...made.die, press: `${((1.5 * load.value) / 1000).toFixed(3)} kN` };
  const errors = (findings: readonly { readonly severity: string }[]): number =>
    findings.filter(({ severity }) => severity === "error").length;
  const [single] = diesOf(made.job, small, keeper);
  const [nested] = diesOf(made.job, small, keeper, { nest: true });
  expect([errors(single!.findings), single!.pair]).toEqual([0, undefined]);
  expect([errors(nested!.findings), errors(nested!.own)]).toEqual([1, 0]);
  expect(nested!.pair!.load.value).toBeGreaterThanOrEqual(2 * load.value);
});
