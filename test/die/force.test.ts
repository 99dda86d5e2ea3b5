import { describe, expect, test } from "vitest";
import { NEWTONS_IN, readForce, sayForce } from "../../src/trade/force.ts";

const newtons = (text: string): number => {
  const r = readForce(text);
  if (!r.ok) throw new Error(`${r.problem}; ${r.mend}`);
  return r.value.newtons;
};

describe("what a press is rated for", () => {
  // NIST Special Publication 811 (2008), Appendix B.8: ton-force (2000 lbf) = 8.896 443 kN; kilogram-force
  // = 9.806 65 N; pound-force = 4.448 222 N (from memory).
  test.each([
    ["20 US tons", 20 * 8896.443],
    ["20 us short tons", 20 * 8896.443],
    ["20 short tons", 20 * 8896.443],
    ["20 tons (US)", 20 * 8896.443],
    ["1 short ton", 8896.443],
    ["15 t", 15 * 9806.65],
    ["15 metric tons", 15 * 9806.65],
    ["15 tonnes", 15 * 9806.65],
    ["12 1/2 t", 12.5 * 9806.65],
    ["10 long tons", 10 * 2240 * 4.448222],
    ["150 kN", 150000],
    ["150kN", 150000],
    ["5000 N", 5000],
    ["40000 lbf", 40000 * 4.448222],
    ["40000 lb.", 40000 * 4.448222],
  ])("%s", (text, expected) => {
    expect(Math.abs(newtons(text) / expected - 1)).toBeLessThan(1e-6);
  });

  test("a US ton, a metric ton and a long ton are told apart", () => {
    const [us, metric, long] = [newtons("10 US tons"), newtons("10 metric tons"), newtons("10 long tons")];
    expect(metric / us).toBeCloseTo(1.1023, 4);
    expect(long / us).toBeCloseTo(1.12, 9);
  });

  test.each(["20 tons", "20 ton", "20tn"])("%s says not which ton: it is asked for", (text) => {
    const r = readForce(text);
    expect(r.ok).toBe(false);
    if (r.ok) return;
    expect(r.problem).toContain("more than one ton");
    expect(r.mend).toContain('"20 US tons"');
    expect(r.mend).toContain('"20 t"');
    expect(readForce("20 US tons").ok && readForce("20 t").ok).toBe(true);
  });

  test.each(["20", "", "tons", "20 stone", "-5 kN", "0 kN", "1e5 N", "20,5 t", "∞ kN", "20 kN kN"])(
    "%j is no force",
    (text) => {
      const r = readForce(text);
      expect(r.ok).toBe(false);
      if (!r.ok) expect(r.mend.length).toBeGreaterThan(10);
    },
  );

  test("a force is said in the unit of the press", () => {
    expect(sayForce(112.5 * NEWTONS_IN["US short ton"], "US short ton")).toBe("112.5 US short tons");
    expect(sayForce(NEWTONS_IN["metric ton"], "metric ton")).toBe("1 metric ton");
    expect(sayForce(150000, "kN")).toBe("150 kN");
  });
});
