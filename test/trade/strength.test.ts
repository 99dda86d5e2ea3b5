import { describe, expect, test } from "vitest";
import strength from "../../fixtures/published/strength.json";
import { netSection, STITCH_TEAR, stitchedJoint, TENSILE, tearOut } from "../../src/trade/strength.ts";
import { given } from "../support/quantities.ts";

// Source: fixtures/published/strength.json. Estimates for comparing, never a rating.

const { L1, L2, L7worked } = strength.figures;

describe("net section at a hole", () => {
  test("the strap of the worked example: 1064 N", () => {
    const w = L7worked;
    expect(TENSILE.value).toBe(w.tensile);
    const net = netSection(
      "hole",
      given("width", w.width),
      given("hole", w.hole),
      given("t", w.thickness, "thickness"),
    );
    expect(net.value).toBeCloseTo(w.net, 6);
    expect(net.kind).toBe("force");
  });

  test("the strength it reckons with lies in the published range", () => {
    expect(TENSILE.value).toBeGreaterThanOrEqual(L1.from);
    expect(TENSILE.value).toBeLessThanOrEqual(L1.to);
  });
});

test("stitch tear is the published one, per mm of thickness", () => {
  expect(STITCH_TEAR.value).toBeCloseTo(L2.newtonPerCm / 10, 9);
  // A joint of 10 stitches in leather of 1 cm, were there such leather: ten times the published tear.
  const joint = stitchedJoint("joint", 10, given("t", 10, "thickness"));
  expect(joint.value).toBeCloseTo(10 * L2.newtonPerCm, 6);
});

describe("tear-out behind the last hole", () => {
  const net = given("net", 1000, "force");
  const out = (toEnd: number): number =>
    tearOut("end", given("e", toEnd), given("d", 5), given("t", 3, "thickness"), net).value;

  test("two planes from the hole's middle, less half the hole", () => {
    // 2 planes of 7.5 × 3 mm at 10 N/mm².
    expect(out(10)).toBeCloseTo(450, 9);
  });

  test("never more than the net section", () => expect(out(100)).toBe(1000));
});
