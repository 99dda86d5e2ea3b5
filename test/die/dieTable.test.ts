import { describe, expect, test } from "vitest";
import { ruleFaces } from "../../src/die/ruleBody.ts";
import { defaultDie } from "../../src/die/settings.ts";
import {
  circlePath,
  distanceBetween,
  pathLength,
  rectanglePath,
  signedArea,
} from "../../src/geometry/index.ts";
import { resolve } from "../../src/model/resolve.ts";
import { dieTable } from "../../src/trade/dieTable.ts";
import { dieFacts } from "../../src/trade/facts/dies.ts";

const given = (texts: Readonly<Record<string, string>>) =>
  resolve({
    table: dieTable,
    section: "die",
    label: "die",
    given: Object.fromEntries(
      Object.entries(texts).map(([key, text]) => [key, { text, place: { line: 1, column: 1 } }]),
    ),
    units: "mm",
    file: "t.yaml",
  });

describe("the order's section die", () => {
  // bj-bandsaw-site.pages.dev, Die Cutting Rule: 2 pt 0.71 mm, 3 pt 1.07 mm, 4 pt 1.42 mm; 1 point = 0.353 mm.
  test.each([
    ["2 pt", 0.71],
    ["3 pt", 1.07],
    ["4 pt", 1.42],
  ])("rule of %s is %d mm thick, near points of 1/72 in", (rule, mm) => {
    const { values } = given({ rule });
    expect(values!.ruleThickness.value).toBe(mm);
    expect(Math.abs((Number.parseInt(rule, 10) * 25.4) / 72 - mm)).toBeLessThan(0.015);
  });

  test("a thickness that was measured goes before the points", () => {
    expect(given({ rule: "3 pt", "rule-thickness": "1.05" }).values!.ruleThickness.value).toBe(1.05);
  });

  test("published least sizes: 3/32 in between rules, for slots and for spring tubes (graphicdies.com, How Small?)", () => {
    const { spacing, leastSlot, leastTube } = defaultDie();
    for (const q of [spacing, leastSlot, leastTube]) expect(q.value).toBeCloseTo(2.38125, 9);
    expect(given({ "least-tube": "0.7" }).faults[0]).toMatchObject({ key: "die.least-tube" });
  });

  test("every default says where it comes from", () => {
    for (const [name, { source, means }] of Object.entries(dieTable)) {
      expect(source.length, name).toBeGreaterThan(8);
      expect(means.length, name).toBeGreaterThan(8);
    }
    expect(dieTable.shear.source).toContain("from memory");
    expect(dieTable.leastRadius.source).toContain("from memory");
  });

  test("a rule that no maker sells is not taken", () => {
    expect(given({ rule: "5 pt" }).faults[0]).toMatchObject({ code: "unreadable", key: "die.rule" });
  });

  test("the facts are a sound table with a source on each row", () => {
    for (const row of dieFacts.rows) expect(row.source.length).toBeGreaterThan(5);
    expect(
      dieFacts.rows.some(({ cells }) => cells[0] === "rule of 3 pt, thickness" && cells[1] === 1.07),
    ).toBe(true);
  });
});

describe("both faces of a rule", () => {
  const outline = { id: "o", kind: "outline", path: rectanglePath([0, 0], 60, 30), error: 0 } as const;
  const slot = { id: "s", kind: "slot", path: circlePath([30, 15], 8), error: 0 } as const;
  test("centre bevel: half its thickness to either side", () => {
    const { leather, waste } = ruleFaces(outline, defaultDie());
    expect(signedArea(leather[0]!)).toBeCloseTo(59.29 * 29.29, 6);
    expect(distanceBetween(waste[0]!, outline.path)).toBeCloseTo(0.355, 6);
    expect(signedArea(waste[0]!)).toBeGreaterThan(60 * 30);
    const hole = ruleFaces(slot, defaultDie());
    expect(pathLength(hole.waste[0]!)).toBeCloseTo(2 * Math.PI * (8 - 0.355), 6);
    expect(pathLength(hole.leather[0]!)).toBeCloseTo(2 * Math.PI * (8 + 0.355), 6);
  });
  test("ground on the waste's side, the leather's face is the cutting edge itself", () => {
    const { leather, waste } = ruleFaces(outline, given({ bevel: "waste side" }).values!);
    expect(signedArea(leather[0]!)).toBeCloseTo(1800, 9);
    expect(distanceBetween(waste[0]!, outline.path)).toBeCloseTo(0.71, 6);
  });
});
