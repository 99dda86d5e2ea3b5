import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { readOrder } from "../../src/order/read.ts";
import { neutralFromTrial } from "../../src/trade/trialFold.ts";
import { onCircle, tautRound } from "../support/hull.ts";
import { given } from "../support/quantities.ts";

// A strip folded round a bar is a taut string on a circle of half the bar and k thicknesses; its length is
// worked here by a convex hull, which knows nothing of the formula.
const strip = (bar: number, thickness: number, clamp: number, k: number): number =>
  tautRound(onCircle([0, 0], bar / 2 + k * thickness, 40_000), clamp, k * thickness);

describe("a trial fold finds the neutral fibre it was folded with", () => {
  test.each([
    [4, 3, 14, 0.5],
    [6, 4, 20, 0.4],
    [8, 2.5, 18, 0.6],
    [3, 5, 25, 0.33],
  ])("bar %s, leather %s, held at %s: %s", (bar, thickness, clamp, k) => {
    const found = neutralFromTrial({
      bar: given("bar", bar),
      thickness: given("thickness", thickness, "thickness"),
      clamp: given("clamp", clamp),
      marks: given("marks", strip(bar, thickness, clamp, k)),
    });
    expect(found.value).toBeCloseTo(k, 3);
  });
});

describe("in an order", () => {
  const order = (trial: string) =>
    readOrder(
      `article: strap\nunits: mm\nmeasures: { width: 25 }\nleather: { strap: { thickness: 3 mm, ${trial} } }\npieces: { strap: { length: 500 } }\n`,
      "a.yaml",
      articles,
    );
  const neutralIn = (text: string) =>
    order(text)
      .order?.sections.flatMap((s) => s.dimensions)
      .find((d) => d.key === "leather.strap.neutral")?.value;

  test("the trial's three figures set the neutral fibre", () => {
    const marks = strip(4, 3, 14, 0.42);
    expect(neutralIn(`trial-bar: 4, trial-held-at: 14, trial-marks: ${marks.toFixed(3)}`)).toBeCloseTo(
      0.42,
      2,
    );
  });
  test("without them it is 0.5", () => expect(neutralIn("skive-to: 2 mm")).toBe(0.5));
  test("a misread trial is refused", () => {
    const { faults } = order("trial-bar: 4, trial-held-at: 14, trial-marks: 80");
    expect(faults.map((f) => f.key)).toEqual(["leather.strap.trial-marks"]);
  });
});
