import { describe, expect, test } from "vitest";
import { makeJob } from "../../src/job.ts";
import type { Fit } from "../../src/model/article.ts";
import { fitLines } from "../../src/model/fit.ts";

const INCH = 25.4;

const strapOf = (strap: string, ends = "left-end: buckle, right-end: billet"): Fit | undefined => {
  const text = `article: strap\nunits: in\nmeasures: { ${ends}, width: 1 }\npieces: { strap: { ${strap} } }`;
  const result = makeJob(text, "strap.yaml");
  if (!result.made) throw new Error(JSON.stringify(result.faults));
  return result.job.made.fit;
};

describe("the holes of a strap", () => {
  test("36 in to the middle of 5 holes, 1 in apart: 34 to 38 in, the tip's hole the longest", () => {
    const fit = strapOf("length: 36, holes: 5, hole-pitch: 1")!;
    expect(fit.rows.map((r) => [r.near, r.off])).toEqual([1, 2, 3, 4, 5].map((hole) => [hole, undefined]));
    [38, 37, 36, 35, 34].forEach((inches, i) => {
      expect(fit.rows[i]!.measure).toBeCloseTo(inches * INCH, 6);
    });
    expect([fit.shortest, fit.wanted, fit.longest].map((mm) => mm / INCH)).toEqual(
      [34, 36, 38].map((n) => expect.closeTo(n, 6)),
    );
    const marked = fitLines(fit, "in").filter((l) => l.includes("<-"));
    expect(marked).toEqual([expect.stringMatching(/hole 3 .*36 in .*<- as ordered$/)]);
  });

  test("the buckle on the right, and an even number of holes: none is the one ordered", () => {
    const fit = strapOf("length: 36, holes: 4, hole-pitch: 1", "left-end: billet, right-end: buckle")!;
    expect(fit.rows.map((r) => r.measure / INCH)).toEqual(
      [37.5, 36.5, 35.5, 34.5].map((n) => expect.closeTo(n, 6)),
    );
    expect(fitLines(fit, "in").join("\n")).not.toContain("<-");
  });

  test("reckoned from fold to tip, the first hole lies to-tip and the bar's take-up short of it", () => {
    const fit = strapOf("length: 40, holes: 5, hole-pitch: 1, to-tip: 2, reckoned: fold to fold")!;
    const inUse = strapOf("length: 36, holes: 5, hole-pitch: 1, to-tip: 2")!;
    // Fold to tip 40 in, less 2 in to the first hole, less what the leather takes round half the bar.
    expect(fit.longest).toBeLessThan(38 * INCH);
    expect(fit.longest).toBeGreaterThan(38 * INCH - 12);
    expect(fit.longest - fit.shortest).toBeCloseTo(inUse.longest - inUse.shortest, 6);
    expect(fitLines(fit, "in").join("\n")).toContain("<- as reckoned");
  });

  test("a strap without a buckle or without a billet has none", () => {
    expect(strapOf("length: 36", "left-end: ring, right-end: billet")).toBeUndefined();
    expect(strapOf("length: 36", "left-end: buckle, right-end: plain")).toBeUndefined();
  });
});
