import { describe, expect, test } from "vitest";
import { boundsOf, type Path } from "../../src/geometry/index.ts";
import { bitEnd } from "../../src/trade/bitEnd.ts";
import { buckleEnd } from "../../src/trade/buckleEnd.ts";
import {
  type DrawnStrap,
  drawBitEnd,
  drawBuckleEnd,
  drawLoopEnd,
  mateDrift,
} from "../../src/trade/drawTurnBack.ts";
import { loopEnd } from "../../src/trade/loopEnd.ts";
import type { Parts } from "../../src/trade/parts.ts";
import { developRoundBar } from "../../src/trade/turnBack.ts";
import { bitFrom, buckleFrom, END_VALUES, legsFrom, loopFrom } from "../support/ends.ts";
import { given } from "../support/quantities.ts";

const strap = (more: Partial<DrawnStrap> = {}): DrawnStrap => ({
  frame: { id: "top", centre: 60, direction: 1 },
  width: given("width", 16),
  thickness: given("thickness", 3.5, "thickness"),
  inset: 2,
  backHoles: "punched flat",
  ...more,
});

const buckle = (kind: "stitched" | "screws", s = strap()) => {
  const i = buckleFrom(END_VALUES, kind);
  const e = buckleEnd(i);
  return { e, parts: drawBuckleEnd(s, i, e) };
};
const bit = (s = strap()) => {
  const i = bitFrom(END_VALUES);
  const e = bitEnd(i);
  const drawing = { legs: i.legs, ring: i.ring, hole: i.hole, use: "rivet", label: "bit end" } as const;
  return { e, parts: drawBitEnd(s, drawing, e) };
};
const loop = (s = strap()) => {
  const i = loopFrom(END_VALUES, 20, 4);
  const e = loopEnd(i);
  return { e, parts: drawLoopEnd(s, i, e) };
};

const spanX = (path: Path): readonly [number, number] => {
  const box = boundsOf(path);
  return [box.minX, box.maxX];
};
const zone = (parts: Parts, id: string) => parts.zones.find((z) => z.id === id)!;

/** A hole's place once folded: along the strap from the bar, from the developed length of its turn-back. */
const distance = (parts: Parts, front: string, back: string): number => {
  const at = (id: string): number => parts.holes.find((h) => h.id === id)!.at[0];
  return Math.abs(at(front) - at(back));
};

describe("mates", () => {
  test("of a bit end lie hole to mate apart, the second pair twice the spacing more", () => {
    const { e, parts } = bit();
    const [first, second] = parts.turnBacks[0]!.mates;
    expect(distance(parts, ...first!)).toBeCloseTo(e.developed.holeToMate.value, 9);
    expect(distance(parts, ...second!)).toBeCloseTo(e.developed.holeToMate.value + 2 * END_VALUES.spacing, 9);
    expect(parts.holes).toHaveLength(4);
    expect(new Set(parts.holes.map((h) => h.at[1]))).toEqual(new Set([0]));
  });

  test("of a screwed buckle end as well, astride the keeper", () => {
    const { e, parts } = buckle("screws");
    const [first, second] = parts.turnBacks[0]!.mates;
    expect(distance(parts, ...first!)).toBeCloseTo(e.developed.holeToMate.value, 9);
    expect(distance(parts, ...second!)).toBeCloseTo(e.developed.holeToMate.value + 2 * e.run.value, 9);
    const [near, far] = spanX(zone(parts, "top.keeper").outline);
    const fronts = parts.holes.filter((h) => h.id.includes(".front.")).map((h) => h.at[0]);
    expect(fronts[0]!).toBeLessThan(near);
    expect(fronts[1]!).toBeGreaterThan(far);
  });

  test("aren't drawn where the back leg is punched after folding", () => {
    const { parts } = bit(strap({ backHoles: "after folding" }));
    expect(parts.holes.map((h) => h.id)).toEqual(["top.rivet.front.1", "top.rivet.front.2"]);
    expect(parts.turnBacks[0]!.mates).toEqual([]);
  });
});

describe("stitches", () => {
  test("are pricked on the front leg only, in two rows, an inset from the edges", () => {
    const { e, parts } = buckle("stitched");
    expect(parts.seams).toHaveLength(2);
    expect(new Set(parts.holes.map((h) => Math.abs(h.at[1])))).toEqual(new Set([16 / 2 - 2]));
    const half = e.developed.holeToMate.value / 2;
    for (const h of parts.holes) {
      expect(h.at[0]).toBeGreaterThanOrEqual(60 + half - 1e-6);
      expect(h.at[0]).toBeLessThanOrEqual(60 + half + e.run.value + 1e-6);
    }
    expect(parts.holes).toHaveLength(2 * (e.stitches.value + 1));
  });

  test("end before the feathered end of the back leg when folded over", () => {
    const { e, parts } = buckle("stitched");
    const [from, to] = spanX(zone(parts, "top.feather").outline);
    expect(60 - from).toBeCloseTo(e.length.value, 9);
    const last = Math.max(...parts.holes.map((h) => h.at[0])) - 60;
    // The last stitch goes through the back leg as far from the fold as on the front leg.
    expect(60 - to).toBeCloseTo(last, 6);
  });
});

describe("slot, fold and skive", () => {
  test("the slot is centred on the fold, and the skive covers it", () => {
    const { e, parts } = buckle("stitched");
    const [from, to] = spanX(parts.cutouts[0]!.outline);
    expect((from + to) / 2).toBeCloseTo(60, 9);
    expect(to - from).toBeCloseTo(e.slotLength.value, 9);
    expect(parts.folds[0]!.from[0]).toBe(60);
    const [, skiveTo] = spanX(zone(parts, "top.skive").outline);
    expect(skiveTo - to).toBeCloseTo(5, 9);
    expect(zone(parts, "top.skive")).toMatchObject({ from: 3.5, to: 2.1 });
  });

  test("leather that isn't thinned has no skive", () => {
    const { parts } = buckle("screws", strap({ thickness: given("thickness", 2.1, "thickness") }));
    expect(parts.zones.map((z) => z.id)).toEqual(["top.keeper"]);
  });

  test("a loop's skive covers the strap that it goes round", () => {
    const { e, parts } = loop();
    const [, to] = spanX(zone(parts, "top.skive").outline);
    expect(to - 60 - parts.turnBacks[0]!.wrapHalf).toBeCloseTo(5, 9);
    expect(parts.turnBacks[0]!.bar).toMatchObject({ kind: "flat", along: 20, through: 4 });
    expect(parts.turnBacks[0]!.clamp).toBe(e.clamp.value);
    expect(parts.turnBacks[0]!.wrapHalf + e.developed.straight.value).toBeCloseTo(
      e.developed.holeToMate.value / 2,
      9,
    );
  });
});

test("an end that points the other way is the same one turned over", () => {
  for (const make of [
    (s: DrawnStrap) => buckle("screws", s).parts,
    (s: DrawnStrap) => bit(s).parts,
    (s: DrawnStrap) => loop(s).parts,
  ]) {
    const right = make(strap());
    const left = make(strap({ frame: { id: "top", centre: 60, direction: -1 } }));
    expect(left.holes.map((h) => h.id)).toEqual(right.holes.map((h) => h.id));
    for (const [i, h] of left.holes.entries()) expect(h.at[0] + right.holes[i]!.at[0]).toBeCloseTo(120, 6);
    for (const [i, z] of left.zones.entries()) {
      const [a, b] = [spanX(z.outline), spanX(right.zones[i]!.outline)];
      expect(a[0] + b[1]).toBeCloseTo(120, 9);
      expect(a[1] + b[0]).toBeCloseTo(120, 9);
    }
  }
});

test("every part has its section's estimate, and each is named", () => {
  const names = [buckle("stitched"), buckle("screws"), bit(), loop()].flatMap(({ parts }) => parts.sections);
  expect(names.map((s) => s.name)).toEqual([
    "end: beside the tongue slot",
    "end: stitched joint",
    "end: beside the tongue slot",
    "end: first screw hole",
    "bit end: front leg at a rivet hole",
    "bit end: back leg at a rivet hole",
    "bit end: both rivets tear out",
    "end: stitched joint",
  ]);
  for (const { estimate } of names) expect(estimate.value).toBeGreaterThan(0);
});

test("a mate in 3 mm leather moves 0.94 mm when the neutral fibre lies 0.1 further out", () => {
  // The trade's own figure; a half turn of 0.3 mm is 0.3π = 0.942 mm.
  const develop = (neutral: number) =>
    developRoundBar(
      legsFrom({ ...END_VALUES, neutral, front: 3, back: 3, wrap: 3 }),
      given("bar", 4),
      given("clamp", 12),
    );
  expect(mateDrift(develop, 0.5)).toBeCloseTo(0.94, 2);
});
