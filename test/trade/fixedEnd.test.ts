import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { widestThrough } from "../../src/checks/piece/strapInSlot.ts";
import { signedArea } from "../../src/geometry/area.ts";
import { distanceToPath } from "../../src/geometry/distance.ts";
import { pathLength } from "../../src/geometry/length.ts";
import { type Point, rectanglePath } from "../../src/geometry/path.ts";
import {
  type FixedEndInput,
  type FixedKind,
  fixedEnd,
  fixedHoles,
  fixedSections,
  placingAt,
  stitchBox,
  throughSlot,
} from "../../src/trade/fixedEnd.ts";
import { given } from "../support/quantities.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

const VALUES = {
  width: 25,
  thickness: 3,
  hole: 5.2,
  head: 9,
  spacing: 14,
  rivets: 2,
  box: 25,
  inset: 3,
  pitch: 3.6,
  thickest: 3.4,
};
type Values = typeof VALUES;

const inputOf = (kind: FixedKind, v: Values, slotted = false): FixedEndInput => ({
  label: "end",
  kind,
  width: given("width", v.width),
  thickness: given("thickness", v.thickness, "thickness"),
  hole: given("hole", v.hole),
  head: given("head", v.head),
  spacing: given("spacing", v.spacing),
  rivets: given("rivets", v.rivets, "count"),
  box: given("box", v.box),
  inset: given("inset", v.inset),
  pitch: given("pitch", v.pitch, "pitch"),
  ...(slotted ? { throughSlot: given("thickest", v.thickest, "thickness") } : {}),
});

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const angles = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const sizes = fc.record({
  ...Object.fromEntries(Object.entries(VALUES).map(([k, v]) => [k, fc.constant(v)])),
  hole: fc.double({ min: 2.2, max: 8.2, noNaN: true }),
  head: fc.double({ min: 3, max: 16, noNaN: true }),
  spacing: fc.double({ min: 17, max: 40, noNaN: true }),
  rivets: fc.constantFrom(1, 2),
  thickest: fc.double({ min: 1, max: 8, noNaN: true }),
}) as unknown as fc.Arbitrary<Values>;

/** Diameters from a hole's middle to an edge; common practice, no source. */
const TO_EDGE = 1.5;

describe("a riveted end", () => {
  test("leaves 1.5 holes of leather past the last rivet, and room for its head, wherever it lies", () => {
    fc.assert(
      fc.property(sizes, angles, (v, angle) => {
        const input = inputOf("riveted", v);
        const e = fixedEnd(input);
        const at: Point = [120, -40];
        const place = placingAt(at, angle);
        const holes = fixedHoles(e, input, place, "rivet", "rivet");
        expect(holes.map((h) => h.id)).toEqual(v.rivets === 2 ? ["rivet.1", "rivet.2"] : ["rivet.1"]);
        expect(apart(holes[0]!.at, at)).toBeGreaterThanOrEqual(TO_EDGE * v.hole - 1e-9);
        expect(apart(holes[0]!.at, at)).toBeGreaterThanOrEqual(v.head / 2);
        // The strap is reckoned from the rivet nearest its body.
        expect(apart(holes.at(-1)!.at, at)).toBeCloseTo(e.reach.value, 9);
        if (v.rivets === 2) expect(apart(holes[0]!.at, holes[1]!.at)).toBeCloseTo(v.spacing, 9);
        // In line along the strap.
        const along = Math.atan2(holes.at(-1)!.at[1] - at[1], holes.at(-1)!.at[0] - at[0]);
        expect(Math.cos(along - angle)).toBeCloseTo(1, 12);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  test("right angles are exact", () => {
    for (const [quarter, x, y] of [
      [0, 7, 0],
      [1, 0, 7],
      [2, -7, 0],
      [3, 0, -7],
    ] as const) {
      const [px, py] = placingAt([0, 0], (quarter * Math.PI) / 2)(7, 0);
      expect([px + 0, py + 0]).toEqual([x, y]);
    }
  });

  test("holds no more than its leather does: the net section, (w − d) t σ", () => {
    const sections = fixedSections(inputOf("riveted", VALUES), fixedEnd(inputOf("riveted", VALUES)), "rivet");
    const net = (25 - 5.2) * 3 * 20;
    expect(sections[0]!.estimate.value).toBeCloseTo(net, 9);
    expect(sections.every((s) => s.estimate.value <= net + 1e-9 && s.estimate.value > 0)).toBe(true);
  });
});

describe("a stitched end", () => {
  test("its box lies an inset inside three edges, closed and anticlockwise, wherever it lies", () => {
    fc.assert(
      fc.property(angles, (angle) => {
        const input = inputOf("stitched", VALUES);
        const e = fixedEnd(input);
        const box = stitchBox(e, input, placingAt([10, 20], angle));
        expect(box.closed).toBe(true);
        expect(signedArea(box)).toBeCloseTo(25 * 19, 6);
        expect(pathLength(box)).toBeCloseTo(2 * (25 + 19), 6);
      }),
      { numRuns: 20, seed: 7 },
    );
    const input = inputOf("stitched", VALUES);
    const strap = rectanglePath([0, -12.5], 300, 25);
    const box = stitchBox(fixedEnd(input), input, placingAt([0, 0], 0));
    for (const corner of box.segments.map((s) => s.to))
      expect(distanceToPath(corner, strap)).toBeCloseTo(3, 9);
  });

  test("its strength is whole stitches round the box, each tearing at 29.4 N a millimetre", () => {
    const [joint] = fixedSections(
      inputOf("stitched", VALUES),
      fixedEnd(inputOf("stitched", VALUES)),
      "rivet",
    );
    expect(joint!.estimate.value).toBeCloseTo(Math.floor((2 * (25 + 19)) / 3.6) * 3 * 29.4, 6);
  });
});

describe("an end that goes through a slot", () => {
  test("passes it as a solid, and its holes keep away from the slot", () => {
    fc.assert(
      fc.property(sizes, angles, (v, angle) => {
        const input = inputOf("riveted", v, true);
        const e = fixedEnd(input);
        const place = placingAt([5, 5], angle);
        const slot = throughSlot(e, place, "slot")!;
        expect(signedArea(slot.outline)).toBeGreaterThan(0);
        expect(widestThrough(slot.outline, v.thickest)).toBeGreaterThanOrEqual(v.width);
        // No more room than the trade leaves: 1 mm in length and half the slot's width at each end.
        expect(widestThrough(slot.outline, v.thickest)).toBeLessThan(v.width + 1 + v.thickest);
        for (const hole of fixedHoles(e, input, place, "rivet", "rivet")) {
          expect(distanceToPath(hole.at, slot.outline)).toBeGreaterThanOrEqual(TO_EDGE * v.hole - 1e-6);
        }
        expect(apart(place(e.reach.value, 0), [5, 5])).toBeCloseTo(e.reach.value, 9);
      }),
      { numRuns: 40, seed: 8 },
    );
  });

  test("no slot, no cutout", () => {
    const e = fixedEnd(inputOf("riveted", VALUES));
    expect(throughSlot(e, placingAt([0, 0], 0), "slot")).toBeUndefined();
  });
});

describe("histories", () => {
  const quantities = (kind: FixedKind, slotted: boolean, v: Values) => {
    const input = inputOf(kind, v, slotted);
    const e = fixedEnd(input);
    return {
      toEnd: e.toEnd,
      row: e.row,
      reach: e.reach,
      ...(e.slot ? { slotWidth: e.slot.width, slotLength: e.slot.length, above: e.slot.above } : {}),
      ...Object.fromEntries(fixedSections(input, e, "rivet").map((s) => [s.name, s.estimate])),
    };
  };
  for (const kind of ["riveted", "stitched"] as const) {
    for (const slotted of [false, true]) {
      for (const name of Object.keys(quantities(kind, slotted, VALUES))) {
        test(`${kind}${slotted ? " through a slot" : ""}: ${name}`, () => {
          const work = (v: Readonly<Record<string, number>>) =>
            (quantities(kind, slotted, v as unknown as Values) as unknown as Record<string, never>)[name]!;
          expect(faultsOfHistory(work, VALUES)).toEqual([]);
        });
      }
    }
  }
});
