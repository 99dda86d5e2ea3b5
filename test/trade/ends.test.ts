import fc from "fast-check";
import { describe, expect, test } from "vitest";
import harness from "../../fixtures/published/harness-making-1904.json";
import { bitEnd } from "../../src/trade/bitEnd.ts";
import { buckleEnd } from "../../src/trade/buckleEnd.ts";
import { loopEnd } from "../../src/trade/loopEnd.ts";
import { bitFrom, buckleFrom, END_VALUES, type EndValues, loopFrom } from "../support/ends.ts";
import { hull, onCircle, onRoundedBar, tautRound } from "../support/hull.ts";
import { degrees } from "../support/quantities.ts";

// What must be true of any end, measured on the folded strap by a hull of points, not by its formulas.

const anyEnd = fc.record({
  neutral: fc.double({ min: 0.4, max: 0.6, noNaN: true }),
  front: fc.double({ min: 2, max: 5, noNaN: true }),
  back: fc.double({ min: 1.2, max: 3.5, noNaN: true }),
  wrap: fc.double({ min: 1.2, max: 3, noNaN: true }),
  caught: fc.constant(0),
  bar: fc.double({ min: 2.5, max: 7, noNaN: true }),
  tongue: fc.double({ min: 2, max: 4, noNaN: true }),
  breadth: fc.double({ min: 2, max: 6, noNaN: true }),
  open: fc.double({ min: 0.7, max: 1.4, noNaN: true }),
  overhang: fc.double({ min: 0, max: 25, noNaN: true }),
  pitch: fc.double({ min: 2, max: 4.5, noNaN: true }),
  hole: fc.double({ min: 3, max: 6, noNaN: true }),
  head: fc.double({ min: 6, max: 12, noNaN: true }),
  spacing: fc.double({ min: 16, max: 25, noNaN: true }),
  keeper: fc.double({ min: 8, max: 18, noNaN: true }),
  feather: fc.double({ min: 5, max: 12, noNaN: true }),
  ring: fc.double({ min: 5, max: 12, noNaN: true }),
});

/** Runs a check over many ends. */
const forEnds = (check: (v: EndValues) => void): void =>
  fc.assert(fc.property(anyEnd, check), { seed: 7, numRuns: 150 });

/** Steepest part of the string from a bar to where the legs are held, from a hull of points. */
function slopeOf(radius: number, clamp: number, gap: number): number {
  const corners = hull([...onCircle([0, 0], radius, 2000), [clamp, gap], [clamp, -gap]]);
  const held = corners.findIndex((p) => p[0] === clamp && p[1] === gap);
  const touch = corners[(held + 1) % corners.length]!;
  return Math.atan2(touch[1] - gap, clamp - touch[0]);
}

describe("buckle end", () => {
  test("the first stitch lies 2 mm past the slot's end, a punched hole its own diameter", () => {
    forEnds((v) => {
      const stitched = buckleEnd(buckleFrom(v, "stitched"));
      const gap = (stitched.developed.holeToMate.value - stitched.slotLength.value) / 2;
      expect(gap).toBeGreaterThanOrEqual(2 - 1e-9);
      const screwed = buckleEnd(buckleFrom(v, "screws"));
      const toEdge = (screwed.developed.holeToMate.value - screwed.slotLength.value) / 2 - v.hole / 2;
      expect(toEdge).toBeGreaterThanOrEqual(v.hole - 1e-9);
    });
  });

  test("the legs are no steeper than 15°", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "stitched"));
      const slope = slopeOf(
        v.bar / 2 + v.neutral * v.wrap,
        e.clamp.value,
        (v.neutral * (v.front + v.back)) / 2,
      );
      expect(degrees(slope)).toBeLessThanOrEqual(15 + 0.1);
    });
  });

  test("the keeper lies past the frame, and off the first stitch", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "stitched"));
      expect(e.keeperNear!.value).toBeGreaterThanOrEqual(v.overhang + 2 - 1e-9);
      expect(e.keeperNear!.value).toBeGreaterThan(e.clamp.value);
      expect(e.keeperFar!.value - e.keeperNear!.value).toBeCloseTo(v.keeper, 9);
    });
  });

  test("whole stitches, at least three of them past the keeper", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "stitched"));
      expect(e.run.value / e.stitches.value).toBeCloseTo(v.pitch, 9);
      const past = e.clamp.value + e.run.value - e.keeperFar!.value;
      expect(past / v.pitch).toBeGreaterThanOrEqual(3 - 1e-5);
      expect(past / v.pitch).toBeLessThan(4);
    });
  });

  test("screws sit on both sides of the keeper, heads clear of it", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "screws"));
      expect(e.stitches.value).toBe(1);
      expect(e.clamp.value + e.run.value - v.head / 2).toBeGreaterThanOrEqual(e.keeperFar!.value - 1e-9);
      expect(e.run.value).toBeGreaterThanOrEqual(v.spacing - 1e-9);
    });
  });

  test("the first fixing lies no further from the bar than the slot, the slope or the head asks for", () => {
    const near = (v: EndValues, kind: "stitched" | "screws", wanted: number): void => {
      const clamp = buckleEnd(buckleFrom(v, kind)).clamp.value;
      expect(clamp).toBeGreaterThanOrEqual(wanted - 1e-6);
      expect(clamp).toBeLessThan(wanted + 0.5);
    };
    forEnds((v) => {
      // A head so broad that it decides: half the bar, the leg, half the head, 1 mm.
      near({ ...v, head: 60 }, "screws", v.bar / 2 + v.front + 30 + 1);
      // A slot so long that it decides: reach and round end, 1 mm to spare, 2 mm or one and a half holes,
      // and what a slope of 15° takes.
      const long = { ...v, open: 0.35 };
      const { reach } = buckleEnd(buckleFrom(long, "stitched"));
      const slot = reach.reach.value + reach.roundEnd.value + 1 + (v.bar / 2 + v.neutral * v.wrap) * 0.25882;
      near(long, "stitched", slot + 2);
      near({ ...long, head: 0 }, "screws", slot + 1.5 * v.hole);
    });
  });

  test("a screw's head lies on a leg, not on the wrap", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "screws"));
      expect(e.clamp.value - v.head / 2).toBeGreaterThanOrEqual(v.bar / 2 + v.front - 1e-9);
    });
  });

  test("a keeper's near edge clears the head of the screw before it", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "screws"));
      expect(e.keeperNear!.value).toBeGreaterThanOrEqual(e.clamp.value + v.head / 2 - 1e-9);
    });
  });

  test("a length on the flat is one on the strap and the take-up", () => {
    forEnds((v) => {
      const e = buckleEnd(buckleFrom(v, "stitched"));
      expect(e.clamp.value + e.takeUp.value).toBeCloseTo(e.developed.holeToMate.value / 2, 9);
      expect(e.length.value).toBeCloseTo(e.developed.holeToMate.value / 2 + e.beyond.value, 9);
    });
  });

  test("ordered by its length, it has the most whole stitches before the feathered end", () => {
    forEnds((v) => {
      const least = buckleEnd(buckleFrom(v, "stitched")).leastLength.value;
      const length = Math.ceil(least) + 7;
      const e = buckleEnd({ ...buckleFrom({ ...v, length }, "stitched") });
      expect(e.length.value).toBe(length);
      const left = e.beyond.value - e.run.value;
      expect(left).toBeGreaterThanOrEqual(v.feather - 1e-6);
      expect(left).toBeLessThan(v.feather + v.pitch + 1e-6);
    });
  });

  test("the handbook's 2 in turn-down on a 1 1/2 in strap holds slot and stitches, without a keeper, p. 49", () => {
    // A strap 1 1/2 in wide has a buckle of that size; its bar and tongue are common practice, no source.
    const v = { ...END_VALUES, length: harness.figures.H32.turnDown * 25.4, wrap: 2.1 };
    const e = buckleEnd(buckleFrom(v, "stitched", false));
    expect(e.keeperFar).toBeUndefined();
    expect(e.leastLength.value).toBeLessThanOrEqual(v.length);
    expect(e.stitches.value).toBeGreaterThanOrEqual(5);
  });
});

describe("bit end", () => {
  test("head and leg clear the ring, legs no steeper than 15°, the end lies past the last hole", () => {
    forEnds((v) => {
      const e = bitEnd(bitFrom(v));
      expect(e.clamp.value - v.head / 2 - Math.max(v.front, v.back)).toBeGreaterThanOrEqual(
        v.ring / 2 + 1 - 1e-6,
      );
      const slope = slopeOf(
        v.ring / 2 + v.neutral * v.wrap,
        e.clamp.value,
        (v.neutral * (v.front + v.back)) / 2,
      );
      expect(degrees(slope)).toBeLessThanOrEqual(15 + 0.1);
      expect(e.toEnd.value).toBeGreaterThanOrEqual(1.5 * v.hole - 1e-6);
      expect(e.toEnd.value).toBeGreaterThanOrEqual(v.head / 2);
    });
  });

  test("no further from the ring, and no longer, than it must be", () => {
    forEnds((v) => {
      const e = bitEnd(bitFrom({ ...v, head: 60 }));
      const wanted = v.ring / 2 + Math.max(v.front, v.back) + 30 + 1;
      expect(e.clamp.value).toBeGreaterThanOrEqual(wanted - 1e-6);
      expect(e.clamp.value).toBeLessThan(wanted + 0.5);
      const small = bitEnd(bitFrom({ ...v, head: 1 }));
      expect(small.toEnd.value).toBeLessThan(Math.max(1.5 * v.hole, 2.5) + 0.5);
    });
  });

  test("from the fold's centre: half way to the mate, the spacing, the end", () => {
    forEnds((v) => {
      const e = bitEnd(bitFrom({ ...v, length: 80 }));
      const half = e.developed.holeToMate.value / 2;
      expect(half + v.spacing + e.toEnd.value).toBeCloseTo(80, 9);
      expect(e.beyond.value - e.toEnd.value).toBeCloseTo(v.spacing, 9);
      expect(e.clamp.value + e.takeUp.value).toBeCloseTo(half, 9);
      // The second head's far edge, along the folded strap.
      expect(e.reach.value - v.head / 2 - v.spacing).toBeCloseTo(e.clamp.value, 9);
    });
  });
});

describe("loop round another strap", () => {
  const strap = { width: 20, thickness: 4 };
  const loop = (v: EndValues) => loopEnd(loopFrom(v, strap.width, strap.thickness));

  test("hole to mate is a taut string round the strap, whose edges it rounds", () => {
    forEnds((v) => {
      const e = loop(v);
      const off = v.neutral * v.wrap;
      const solid = onRoundedBar(
        strap.width + 2 * off,
        strap.thickness + 2 * off,
        strap.thickness / 2 + off,
        500,
      );
      const string = tautRound(solid, e.clamp.value, (v.neutral * (v.front + v.back)) / 2);
      expect(Math.abs(e.developed.holeToMate.value - string)).toBeLessThan(1e-3);
    });
  });

  test("five stitches by default, then the feathered end; by its length as many as it has room for", () => {
    forEnds((v) => {
      const e = loop(v);
      expect(e.stitches.value).toBe(5);
      expect(e.run.value).toBeCloseTo(5 * v.pitch, 9);
      expect(e.beyond.value - e.run.value).toBeCloseTo(v.feather, 6);
      const longer = loop({ ...v, length: e.leastLength.value + 2.5 * v.pitch });
      expect(longer.stitches.value).toBe(7);
    });
  });

  test("the first stitch is clear of the strap it goes round", () => {
    forEnds((v) => {
      const past = loop(v).clamp.value - strap.width / 2;
      expect(past).toBeGreaterThanOrEqual(1 + v.front);
      // The legs close at about one in three: half of strap and leg on each side.
      expect(past).toBeLessThan(1.5 * (strap.thickness + v.front) + 1.5);
    });
  });
});
