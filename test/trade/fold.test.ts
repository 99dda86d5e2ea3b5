import fc from "fast-check";
import { describe, expect, test } from "vitest";
import bends from "../../fixtures/published/bend-allowance.json";
import worked from "../../fixtures/published/worked-cases.json";
import { bendLength, setBack } from "../../src/trade/fold.ts";
import { given, radians } from "../support/quantities.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// Expected values: fixtures/published/bend-allowance.json (machinecalcs.com, READ) and worked-cases.json.

const bend = (
  degrees: number,
  inner: number,
  thickness: number,
  neutral: number,
  inside?: "flesh" | "grain",
) =>
  bendLength(
    "bend",
    given("angle", radians(degrees), "angle"),
    given("inner", inner),
    given("thickness", thickness, "thickness"),
    given("neutral", neutral, "ratio"),
    inside,
  );

describe("length of a bend on the flat", () => {
  test("the published example: 90° round 3 mm in 2 mm sheet, neutral fibre at 0.33", () => {
    const b = bends.figures.B2;
    const length = bend(b.angleDegrees, b.insideRadius, b.thickness, b.neutral).value;
    expect(length).toBeCloseTo(b.allowance, 2);
    expect(length).toBeCloseTo(b.exact, 4);
  });

  test("the tight fold: half a circle at half the thickness", () => {
    const b = bends.figures.B6;
    expect(bend(b.angleDegrees, b.insideRadius, b.thickness, b.neutral).value).toBeCloseTo(b.allowance, 3);
  });

  test("with the grain inside, the neutral fibre is counted from the other face", () => {
    const b = bends.figures.B2;
    const other = bend(b.angleDegrees, b.insideRadius, b.thickness, 1 - b.neutral, "grain").value;
    expect(other).toBeCloseTo(b.exact, 4);
    expect(bend(90, 3, 2, 0.33, "grain").value).toBeGreaterThan(b.exact + 0.5);
  });
});

describe("what a bend takes off the outside sizes", () => {
  const take = (inner: number, thickness: number, degrees: number): number =>
    setBack(given("inner", inner), given("thickness", thickness, "thickness"), radians(degrees)).value;

  test("the worked wrap-round body: two bends between its outside sizes", () => {
    const c = worked.cases.wrapRound;
    // Two sides of the height, the base, whose outside size is the room between them and both leathers.
    const off = take(c.foldRadius, c.thickness, 90);
    const sides = 2 * (c.height + c.thickness - off);
    const base = c.base + 2 * c.thickness - 2 * off;
    const flat = sides + base + 2 * bend(90, c.foldRadius, c.thickness, 0.5).value;
    expect(flat).toBeCloseTo(c.flat, 4);
  });

  test("is the tangent from the corner of the outside sizes to where the bend begins", () => {
    const input = fc.record({
      inner: fc.double({ min: 0, max: 30, noNaN: true }),
      thickness: fc.double({ min: 0.5, max: 8, noNaN: true }),
      degrees: fc.double({ min: 5, max: 149, noNaN: true }),
    });
    fc.assert(
      fc.property(input, ({ inner, thickness, degrees }) => {
        // The bend's outer face from the origin along x; both outer faces meet at [off, 0].
        const off = take(inner, thickness, degrees);
        const r = inner + thickness;
        const a = radians(degrees);
        const leaves = [r * Math.sin(a), r * (1 - Math.cos(a))] as const;
        const onward = [off + off * Math.cos(a), off * Math.sin(a)] as const;
        expect(Math.hypot(leaves[0] - onward[0], leaves[1] - onward[1])).toBeLessThan(1e-9 * (1 + r));
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});

test("the history tells the truth", () => {
  const values = { angle: 1.5, inner: 4, thickness: 2, neutral: 0.4 };
  for (const inside of ["flesh", "grain"] as const) {
    const work = (v: Readonly<Record<string, number>>) =>
      bendLength(
        "b",
        given("angle", v.angle!, "angle"),
        given("inner", v.inner!),
        given("thickness", v.thickness!, "thickness"),
        given("neutral", v.neutral!, "ratio"),
        inside,
      );
    expect(faultsOfHistory(work, values)).toEqual([]);
    expect(work(values).kind).toBe("length");
  }
});
