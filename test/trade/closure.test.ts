import polygonClipping, { type Polygon } from "polygon-clipping";
import { describe, expect, test } from "vitest";
import { flatten, type Point, signedArea } from "../../src/geometry/index.ts";
import type { Values } from "../../src/model/dimension.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import {
  CLOSURES,
  type ClosureKind,
  type ClosureValues,
  closureParts,
  closureRoom,
  closureSizes,
  closureTable,
  patchSize,
} from "../../src/trade/closure.ts";
import { together } from "../../src/trade/parts.ts";
import { anyValues, valuesOf } from "../support/anyValues.ts";
import { areaOf, ring } from "../support/polygonAreas.ts";
import { given } from "../support/quantities.ts";
import { randomFrom } from "../support/random.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

const FIXING = {
  fixing: "rivet",
  fixingHole: given("fixing hole", 3.4),
  head: given("head", 8),
  fixingSpacing: given("fixing spacing", 14),
} as const;
const handed = (closure: ClosureKind) => ({ ...FIXING, closure });
const values = (closure: ClosureKind, texts: Readonly<Record<string, string>> = {}): ClosureValues =>
  valuesOf(closureTable, texts, handed(closure));
const TONGUE = { width: given("tongue width", 32), thickness: given("tongue thickness", 2.2, "thickness") };
const MIDDLE: Point = [7, 90];

/** Area of a that b leaves, by an independent library. */
const left = (a: Polygon, b: Polygon): number => areaOf(polygonClipping.difference([a], [b]));
const shared = (a: Polygon, b: Polygon): number => areaOf(polygonClipping.intersection([a], [b]));
const box = ([x, y]: Point, w: number, h: number): Polygon => [
  [
    [x - w / 2, y - h / 2],
    [x + w / 2, y - h / 2],
    [x + w / 2, y + h / 2],
    [x - w / 2, y + h / 2],
  ],
];
/** Less of a solid than this outside its slot is the arcs' chords. */
const CHORDS_MM2 = 0.01;

const partsOf = (kind: ClosureKind, v: ClosureValues, side: "flap" | "front") =>
  together(closureParts(kind, v, side, MIDDLE, "closure", TONGUE));

describe("press stud", () => {
  // A line is 1/40 in (sizes.com, Buttons: 40 lines to the inch). The holes are from memory: 1/8 to 5/32 in
  // for line 20, 5/32 to 3/16 in for line 24.
  test.each([
    [20, 1 / 8, 5 / 32],
    [24, 5 / 32, 3 / 16],
  ])("line %i has its hole between punches of %f and %f in", (lines, least, most) => {
    const v = values("press stud", { cap: `${(lines / 40) * 25.4} mm` });
    for (const side of ["flap", "front"] as const) {
      const [hole] = partsOf("press stud", v, side).holes;
      expect(hole!.size).toBeGreaterThanOrEqual(least * 25.4);
      expect(hole!.size).toBeLessThanOrEqual(most * 25.4);
      expect(hole).toMatchObject({ kind: "round", use: "stud", at: MIDDLE, id: "closure" });
    }
  });

  test("the default is line 20, for 1 to 2.5 mm of leather; the cap is marked at its size", () => {
    const v = values("press stud");
    expect(v.cap.value).toBe(12.7);
    const [mark] = partsOf("press stud", v, "flap").marks;
    expect(signedArea(mark!.path)).toBeCloseTo((Math.PI * 12.7 ** 2) / 4, 9);
  });

  test("two holes of their own sizes", () => {
    const v = values("press stud", { "cap-hole": "5 mm", "stud-hole": "3 mm" });
    expect(partsOf("press stud", v, "flap").holes[0]!.size).toBe(5);
    expect(partsOf("press stud", v, "front").holes[0]!.size).toBe(3);
  });
});

describe("prongs", () => {
  const cases = [
    ["magnetic snap", "flap", {}],
    ["magnetic snap", "front", { disc: "14 mm", "prong-breadth": "3 mm", "prong-thickness": "0.5 mm" }],
    ["turn lock", "front", { "prong-spacing": "25 mm" }],
  ] as const;

  test.each(cases)("%s, %s: prongs as solids go through their slits", (kind, side, texts) => {
    const v = values(kind, texts);
    const { cutouts } = partsOf(kind, v, side);
    expect(cutouts.map((c) => c.use)).toEqual(["prong slot", "prong slot"]);
    cutouts.forEach((slot, i) => {
      const x = MIDDLE[0] + (i === 0 ? -0.5 : 0.5) * v.prongSpacing.value;
      const prong = box([x, MIDDLE[1]], v.prongThickness.value, v.prongBreadth.value);
      expect(left(prong, ring(slot.outline))).toBeLessThan(CHORDS_MM2);
      // A prong a good deal broader doesn't.
      const broad = box([x, MIDDLE[1]], v.prongThickness.value, v.prongBreadth.value + 1.5);
      expect(left(broad, ring(slot.outline))).toBeGreaterThan(CHORDS_MM2);
    });
  });

  test.each(["magnetic snap", "turn lock"] as const)(
    "%s: slits lie under what covers them, whatever is ordered",
    (kind) => {
      const random = randomFrom(3);
      for (let n = 0; n < 25; n++) {
        const v = anyValues(closureTable, handed(kind), random)!;
        for (const side of ["flap", "front"] as const) {
          const { cutouts, marks } = partsOf(kind, v, side);
          for (const c of cutouts)
            expect(left(ring(c.outline, 0.002), ring(marks[0]!.path, 0.002))).toBeLessThan(CHORDS_MM2);
        }
      }
    },
  );
});

describe("turn lock", () => {
  test("the opening is oblong with round ends: area L w − (1 − π/4) w²", () => {
    const v = values("turn lock", { "opening-length": "26 mm", "opening-width": "9 mm" });
    const opening = partsOf("turn lock", v, "flap").cutouts.find((c) => c.use === "opening")!;
    expect(signedArea(opening.outline)).toBeCloseTo(26 * 9 - (1 - Math.PI / 4) * 81, 9);
  });

  test("the opening and the slits keep apart, whatever is ordered", () => {
    const random = randomFrom(4);
    for (let n = 0; n < 40; n++) {
      const v = anyValues(closureTable, handed("turn lock"), random)!;
      const rings = partsOf("turn lock", v, "flap").cutouts.map((c) => ring(c.outline));
      expect(rings.length).toBe(3);
      for (const [i, one] of rings.entries()) {
        for (const other of rings.slice(i + 1)) expect(shared(one, other)).toBe(0);
      }
    }
  });
});

describe("tuck-in tongue", () => {
  test("the tongue goes through its slot as a solid, with the room asked and no more", () => {
    for (const extra of [0, 1, 5]) {
      const v = values("tuck-in tongue", { "slot-room": `${extra} mm` });
      const [slot] = partsOf("tuck-in tongue", v, "front").cutouts;
      const goes = (w: number, t: number): boolean =>
        left(box(MIDDLE, w, t), ring(slot!.outline)) < CHORDS_MM2;
      expect(goes(32 + extra + 0.99, 2.2)).toBe(true);
      expect(goes(32 + extra + 1.4, 2.2)).toBe(false);
      expect(goes(32, 2.2 + 0.6)).toBe(false);
    }
  });

  test("nothing is cut in the flap; without the tongue's sizes there is no slot", () => {
    const v = values("tuck-in tongue");
    expect(closureParts("tuck-in tongue", v, "flap", MIDDLE, "closure")).toEqual({});
    expect(() => closureParts("tuck-in tongue", v, "front", MIDDLE, "closure")).toThrow(/tongue/);
  });
});

test("a closure's strap has two rivets, their spacing apart, over one another", () => {
  const { holes } = partsOf("strap and buckle", values("strap and buckle"), "flap");
  expect(holes.map((h) => [h.use, h.at[0], h.size])).toEqual([
    ["rivet", 7, 3.4],
    ["rivet", 7, 3.4],
  ]);
  expect(Math.abs(holes[0]!.at[1] - holes[1]!.at[1])).toBe(14);
});

test("no closure: nothing is cut and no leather is needed", () => {
  const v = values("none");
  expect(closureParts("none", v, "flap", MIDDLE, "closure")).toEqual({});
  expect(closureRoom("none", v).value).toBe(0);
  expect(patchSize("none", v, "flap")).toBeUndefined();
});

/** Greatest of |y − middle| and |x − middle| of everything that is cut, and of the hardware's outline. */
function reach(kind: ClosureKind, v: ClosureValues, side: "flap" | "front"): Point {
  const { cutouts, holes, marks } = partsOf(kind, v, side);
  const points = [...cutouts.map((c) => c.outline), ...marks.map((m) => m.path)].flatMap((p) =>
    flatten(p, 0.01),
  );
  const round = holes.flatMap(({ at: [x, y], size }): Point[] => [
    [x + size / 2, y + size / 2],
    [x - size / 2, y - size / 2],
  ]);
  const all = [...points, ...round];
  return [
    Math.max(0, ...all.map(([x]) => Math.abs(x - MIDDLE[0]))),
    Math.max(0, ...all.map(([, y]) => Math.abs(y - MIDDLE[1]))),
  ];
}

test.each(CLOSURES)("%s: any order keeps its bounds; the flap reaches beyond everything", (kind) => {
  const random = randomFrom(5);
  for (let n = 0; n < 60; n++) {
    const v = anyValues(closureTable, handed(kind), random);
    expect(v).toBeDefined();
    const room = closureRoom(kind, v!).value;
    const [, down] = reach(kind, v!, "flap");
    if (kind !== "none" && kind !== "tuck-in tongue") expect(room).toBeGreaterThan(down + 2.5);
    for (const h of partsOf(kind, v!, "flap").holes) {
      const toEnd = MIDDLE[1] + room - h.at[1];
      expect(toEnd).toBeGreaterThanOrEqual(1.5 * h.size - 1e-9);
    }
    // A patch with its least border of 4 mm covers all that is cut.
    for (const side of ["flap", "front"] as const) {
      const size = patchSize(kind, v!, side, TONGUE);
      const [x, y] = reach(kind, v!, side);
      if (size) expect(size.width.value / 2 + 3).toBeGreaterThan(x);
      if (size) expect(size.height.value / 2 + 3).toBeGreaterThan(y);
    }
  }
});

describe("histories", () => {
  type Numbers = Readonly<Record<string, number>>;
  const kindOf = (name: string) => (name === "tongueThickness" ? "thickness" : "length");
  const measured: Numbers = {
    ...Object.fromEntries(
      Object.entries(values("press stud")).flatMap(([name, q]) =>
        typeof q === "object" ? [[name, q.value]] : [],
      ),
    ),
    tongueWidth: 32,
    tongueThickness: 2.2,
  };
  const from = (n: Numbers) => {
    const q = (name: string): Quantity => given(name, n[name]!, kindOf(name));
    const v = Object.fromEntries(Object.keys(closureTable).map((k) => [k, k in n ? q(k) : "rivet"]));
    return {
      v: v as unknown as Values<typeof closureTable>,
      tongue: { width: q("tongueWidth"), thickness: q("tongueThickness") },
    };
  };

  test.each(CLOSURES)("%s: every size names what it changes with", (kind) => {
    expect(faultsOfHistory((n) => closureRoom(kind, from(n).v), measured)).toEqual([]);
    const count = closureSizes(kind, from(measured).v, TONGUE).length;
    for (let i = 0; i < count; i++) {
      const size = (n: Numbers): Quantity => closureSizes(kind, from(n).v, from(n).tongue)[i]!;
      expect(faultsOfHistory(size, measured)).toEqual([]);
    }
    for (const side of ["flap", "front"] as const) {
      for (const way of ["width", "height"] as const) {
        const size = (n: Numbers): Quantity => patchSize(kind, from(n).v, side, from(n).tongue)![way];
        if (patchSize(kind, from(measured).v, side, TONGUE))
          expect(faultsOfHistory(size, measured)).toEqual([]);
      }
    }
  });
});
