import { describe, expect, test } from "vitest";
import harness from "../../fixtures/published/harness-making-1904.json";
import threads from "../../fixtures/published/thread-and-stitches.json";
import { line, openPath, pathLength } from "../../src/geometry/index.ts";
import { defaultInset, saddleThread, spread, spreadStitches } from "../../src/trade/seam.ts";
import { stitchRow } from "../../src/trade/stitchRow.ts";
import { given } from "../support/quantities.ts";

// Sources: fixtures/published/thread-and-stitches.json (READ), harness-making-1904.json (READ).

const INCH = 25.4;

describe("spread: whole stitches on a run", () => {
  /** Tries every count. */
  const nearest = (length: number, asked: number): number => {
    const off = (n: number): number => Math.abs(length / n - asked);
    const counts = Array.from({ length: 400 }, (_, i) => i + 1);
    return counts.reduce((best, n) => (off(n) < off(best) - 1e-9 ? n : best));
  };

  test("no count gives a pitch nearer the one asked", () => {
    for (let i = 0; i < 500; i += 1) {
      const length = 2 + ((i * 37.77) % 300);
      const asked = 1.9 + ((i * 0.61) % 3.5);
      expect(spreadStitches(length, asked)).toBe(nearest(length, asked));
    }
  });

  test("8 to the inch on 3 in is 24, not 23 or 25 for a last bit", () => {
    expect(spreadStitches(3 * INCH, INCH / 8)).toBe(24);
    expect(spreadStitches(0.3, 0.1)).toBe(3);
  });

  test("at least one stitch", () => expect(spreadStitches(1, 3)).toBe(1));

  test("both results, named", () => {
    const s = spread("end", given("run", 50), given("asked", 3.4, "pitch"));
    expect(s.stitches.value).toBe(15);
    expect(s.pitch.value).toBeCloseTo(50 / 15, 9);
    expect([s.stitches.name, s.pitch.name]).toEqual(["end stitches", "end pitch"]);
  });
});

describe("stitch line's inset", () => {
  const inset = (width: number): number => defaultInset(given("width", width)).value;
  const { crease, creaseLight } = harness.figures.H33;

  test("lies between the handbook's 1/16 in on light straps and 1/8 in, pp. 49, 54", () => {
    for (const width of [0.5, 0.875, 1, 1.5].map((w) => w * INCH)) {
      expect(inset(width)).toBeGreaterThanOrEqual(creaseLight * INCH);
      expect(inset(width)).toBeLessThanOrEqual(crease * INCH);
    }
  });

  test("an inch is not under an inch", () => {
    expect(inset(0.875 * INCH)).toBe(2);
    expect(inset(INCH)).toBe(3);
    expect(inset(INCH - 1e-9)).toBe(3);
  });
});

describe("thread for a saddle stitch", () => {
  /** Thread in an inch of long seam, without its ends. */
  const perInch = (thickness: number, stitchesPerInch: number): number => {
    const pitch = INCH / stitchesPerInch;
    const inches = (n: number): number =>
      saddleThread(n * stitchesPerInch, 0, pitch, thickness * INCH) / INCH;
    return inches(11) - inches(10);
  };

  test("the lockstitch rule's worked example: 2.2 in an inch", () => {
    const s = threads.figures.S2;
    expect(perInch(s.thickness, s.stitchesPerInch)).toBeCloseTo(s.threadPerInch, 9);
  });

  test("times the seam, of two thicknesses", () => {
    for (const c of threads.figures.S9.cases) {
      expect(perInch(c.thickness, c.stitchesPerInch)).toBeCloseTo(c.times, 9);
    }
    // About 4 times the seam, says another source of work of usual thickness (S5, READ).
    expect(perInch(0.125, 8)).toBeCloseTo(threads.figures.S5.times, 9);
  });

  test("back-stitches count as stitches, ends come on top", () => {
    const open = saddleThread(20, 4, 3, 4);
    expect(open).toBe(saddleThread(24, 0, 3, 4));
    expect(open - saddleThread(20, 4, 3, 4, 0)).toBe(500);
  });
});

describe("a row of awl marks", () => {
  const path = openPath([10, 5], [line([60, 5])]);
  const row = stitchRow({ id: "end.stitch", path, asked: 3.4, stitches: 15, inset: 2 });

  test("n stitches have n + 1 holes, the first and last at the ends", () => {
    expect(row.holes).toHaveLength(row.seam.stitches + 1);
    expect(row.seam.holes).toEqual(row.holes.map((h) => h.id));
    expect(row.holes[0]!.at[0]).toBeCloseTo(10, 9);
    expect(row.holes.at(-1)!.at[0]).toBeCloseTo(60, 9);
  });

  test("they lie a pitch apart", () => {
    expect(row.seam.pitch * row.seam.stitches).toBeCloseTo(pathLength(path), 9);
    const gaps = row.holes.slice(1).map((h, i) => h.at[0] - row.holes[i]!.at[0]);
    for (const gap of gaps) expect(gap).toBeCloseTo(row.seam.pitch, 6);
  });

  test("a slit is shorter than the pitch, so that slits don't run into each other", () => {
    for (const stitches of [5, 15, 30]) {
      const { seam, holes } = stitchRow({ id: "s", path, asked: 3, stitches, inset: 2 });
      for (const h of holes) expect(h.size).toBeLessThan(seam.pitch);
    }
  });

  test("a note is kept, and none is made up", () => {
    expect("note" in row.seam).toBe(false);
    expect(stitchRow({ id: "s", path, asked: 3, stitches: 5, inset: 2, note: "prick" }).seam.note).toBe(
      "prick",
    );
  });
});
