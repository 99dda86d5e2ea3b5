import { describe, expect, test } from "vitest";
import { fitArcs } from "../../src/die/fitArcs.ts";
import { closeLength } from "../../src/die/nearness.ts";
import { dieLoad, loadPerLength, piecesPerStroke, pressLoad } from "../../src/die/press.ts";
import { type RulePath, ruleLengths } from "../../src/die/rulePaths.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { circlePath, rectanglePath, slotPath } from "../../src/geometry/index.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import { NEWTONS_IN, sayForce } from "../../src/trade/force.ts";
import { given } from "../support/quantities.ts";

const INCH = 25.4;
const LBF = 4.4482216152605;

const rule = (id: string, kind: RulePath["kind"], path: RulePath["path"], diameter?: number): RulePath => ({
  id,
  kind,
  ...fitArcs(path),
  ...(diameter === undefined ? {} : { diameter }),
});

/** Every named step of a quantity, itself first. */
const steps = (q: Quantity): readonly Quantity[] => [q, ...q.inputs.flatMap(steps)];
const step = (q: Quantity, name: string): number => {
  const found = steps(q).find((s) => s.name === name);
  if (!found) throw new Error(`no step ${name}`);
  return found.value;
};

describe("press load", () => {
  // bizfluent.com, How to Calculate Die Cutting Tonnage (for paper): 500 in of rule at 400 lb and 500 sq in of
  // ejection rubber at 50 lb make 200 000 + 25 000 = 225 000 lb = 112.5 tons of 2000 lb.
  test("the published worked example: 112.5 tons", () => {
    const load = pressLoad({
      ruleLength: given("rule", 500 * INCH),
      perLength: given("load for each mm", (400 * LBF) / INCH, "number"),
      rubberArea: given("rubber", 500 * INCH ** 2, "area"),
      rubberPressure: given("pressure", (50 * LBF) / INCH ** 2, "stress"),
    });
    expect(step(load, "load on the rule") / LBF).toBeCloseTo(200000, 4);
    expect(step(load, "load on the ejection rubber") / LBF).toBeCloseTo(25000, 4);
    expect(load.value / NEWTONS_IN["US short ton"]).toBeCloseTo(112.5, 6);
    expect(sayForce(load.value, "US short ton")).toBe("112.5 US short tons");
    expect(load.kind).toBe("force");
  });

  test("the shear form: tons = length × thickness × shear strength ÷ 2000, in inches and lb", () => {
    // gtproductionsystems.com, Technical Data: 40 in of cut, 1/8 in thick, 3000 lb/sq in (our own figures).
    const per = loadPerLength(
      given("thickness", INCH / 8, "thickness"),
      given("shear", (3000 * LBF) / INCH ** 2, "stress"),
    );
    expect((per.value * 40 * INCH) / NEWTONS_IN["US short ton"]).toBeCloseTo((40 * 0.125 * 3000) / 2000, 6);
  });

  test("the default shear strength covers what is remembered for leather: 250 lb an inch at 2 mm, 400 at 4 mm", () => {
    const { shear } = defaultDie();
    for (const [mm, pounds] of [
      [2, 250],
      [4, 400],
    ] as const) {
      const per = loadPerLength(given("thickness", mm, "thickness"), shear).value;
      expect((per * INCH) / LBF).toBeGreaterThanOrEqual(pounds);
      expect((per * INCH) / LBF).toBeLessThan(1.3 * pounds);
    }
  });

  const rules = [
    rule("outline", "outline", rectanglePath([0, 0], 200, 100)),
    rule("slot", "slot", slotPath([100, 50], 30, 5)),
    rule("big", "tube", circlePath([50, 50], 5), 10),
    rule("small", "tube", circlePath([127, 50], 2), 4),
  ];
  const settings = defaultDie();
  const per = loadPerLength(given("thickness", 3, "thickness"), settings.shear);

  test("rule length: outline and slots; tubes apart", () => {
    const { rule: bent, tubes } = ruleLengths(rules);
    expect(bent).toBeCloseTo(600 + 2 * 25 + Math.PI * 5, 9);
    expect(tubes).toBeCloseTo(Math.PI * 14, 9);
  });

  test("rules that run close: the long sides of the slot, near its middle", () => {
    // Facing sides of the slot lie 5 mm apart; sample by sample all but the very ends.
    const close = closeLength([rules[0]!, rules[1]!], 6);
    expect(close).toBeGreaterThan(40);
    expect(close).toBeLessThan(2 * 25 + Math.PI * 5);
    expect(closeLength([rules[0]!], 6)).toBe(0);
    expect(closeLength(rules, 0)).toBe(0);
  });

  test("two long rules 4 mm apart: both are close over all their length", () => {
    const strips = [
      rule("a", "slot", rectanglePath([0, 0], 300, 40)),
      rule("b", "slot", rectanglePath([0, 44], 300, 40)),
    ];
    expect(Math.abs(closeLength(strips, 6) - 600)).toBeLessThan(25);
    expect(closeLength(strips, 3.9)).toBe(0);
  });

  test("every allowance stands in the load by its name, and they add up", () => {
    const load = dieLoad(rules, per, settings);
    const parts = [
      "load on the rule",
      "load on the tubes",
      "extra for small tubes",
      "extra for close rules",
      "load on the ejection rubber",
    ];
    expect(parts.reduce((sum, name) => sum + step(load, name), 0)).toBeCloseTo(load.value, 6);
    expect(step(load, "extra for small tubes")).toBeCloseTo(Math.PI * 4 * 3 * 22 * 0.5, 6);
    const length = 600 + 50 + 5 * Math.PI;
    expect(step(load, "area of ejection rubber")).toBeCloseTo(20 * length, 6);
  });

  test("inside a small piece there is no more rubber than piece", () => {
    const load = dieLoad([rule("outline", "outline", rectanglePath([0, 0], 100, 8))], per, settings);
    expect(step(load, "area of ejection rubber")).toBeCloseTo(800 + 2160, 6);
  });

  test.each([
    "shear",
    "rubberPressure",
    "rubberStrip",
    "smallTube",
    "smallTubeExtra",
    "closeRules",
    "closeRulesExtra",
  ] as const)("the load changes with die %s", (name) => {
    const more: DieSettings = {
      ...settings,
      [name]: given(name, settings[name].value * 2 + 1, settings[name].kind),
    };
    const perMore = loadPerLength(given("thickness", 3, "thickness"), more.shear);
    expect(dieLoad(rules, perMore, more).value).toBeGreaterThan(dieLoad(rules, per, settings).value);
  });

  test("pieces for each stroke: whole ones only, a fifth of the rating in reserve; one without it", () => {
    const load = given("load", 30000, "force");
    const at = (newtons: number) => piecesPerStroke(load, given("press", newtons, "force"));
    // Two take 60 kN: 98 % of 61.2 kN, 80 % of 75 kN.
    expect([61200, 74999, 75000, 112499, 112500].map((n) => at(n).value)).toEqual([1, 1, 2, 2, 3]);
    expect([29999, 30000, 37499].map((n) => at(n).value)).toEqual([0, 1, 1]);
    expect(at(75000).source).toContain("80 % of the rating");
    expect(at(30000).source).toContain("without reserve");
  });
});
