import { describe, expect, test } from "vitest";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Bar, TurnBack } from "../../src/model/piece.ts";
import { flat, round, turnBack } from "../support/foldCases.ts";
import { found, verdict } from "../support/found.ts";
import { soundJob, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, buckleFold } from "../support/soundPiece.ts";

describe("turn-back-slope", () => {
  // Held h from the middle and c from the bar's centre, a leg at α passes r from it: c sin α + h cos α = r.
  const clampFor = (degrees: number, r = 3.5, h = 1.5): number => {
    const a = (degrees * Math.PI) / 180;
    return (r - h * Math.cos(a)) / Math.sin(a);
  };
  const slope = (clamp: number, over: Partial<TurnBack> = {}): string =>
    verdict(
      bareJob([
        barePiece("a", rectanglePath([0, -8], 200, 16), { turnBacks: [turnBack(round(4), 3, clamp, over)] }),
      ]),
      "turn-back-slope",
    );

  test("over 15° is a caution, over 30° an error", () => {
    expect(slope(clampFor(14.9))).toBe("none");
    expect(slope(clampFor(15))).toBe("none");
    expect(slope(clampFor(15.1))).toBe("caution");
    expect(slope(clampFor(29.9))).toBe("caution");
    expect(slope(clampFor(30.1))).toBe("error");
  });

  test("held inside the wrap is an error", () => expect(slope(3)).toBe("error"));

  test("legs that run apart at a steep slope are as bad", () => {
    expect(slope(20, { caught: 4 })).toBe("none");
    expect(slope(20, { caught: 16 })).toBe("caution");
  });

  test("the words name the turn-back's length in the order", () => {
    const [finding] = found(
      withPiece(soundJob(), "cheek", (p) => withPart(p, "turnBacks", "bit", { liftOff: 8, clamp: 8 })),
      "turn-back-slope",
    );
    expect(finding!.mend).toContain("pieces.cheek.bit-turn-back");
  });
});

describe("caught-clear", () => {
  const clear = (liftOff: number, caught: number, bar = round(4)): string =>
    verdict(
      bareJob([
        barePiece("a", rectanglePath([0, -8], 200, 16), {
          turnBacks: [turnBack(bar, 1.8, 16, { caught, liftOff })],
        }),
      ]),
      "caught-clear",
    );

  test("caught layers begin half the bar and 1 mm from its centre", () => {
    expect(clear(3.001, 1.5)).toBe("none");
    expect(clear(2.999, 1.5)).toBe("error");
    expect(clear(2.999, 0)).toBe("none");
    expect(clear(3.501, 1.5, flat)).toBe("none");
    expect(clear(3.499, 1.5, flat)).toBe("error");
  });
});

describe("fold-strain", () => {
  // Strain of the grain, by the stretch of a bent strip about its neutral fibre: (1 − k) t / (d/2 + k t).
  const strained = (bar: Bar, wrapThickness: number, neutral = 0.5) =>
    bareJob([
      barePiece("cheek", rectanglePath([0, -8], 200, 16), {
        turnBacks: [{ ...buckleFold, bar, wrapThickness, neutral }],
      }),
    ]);

  test("over 0.35 is a caution, over 0.50 an error", () => {
    // At k = 0.5 and d = 4: t = 28/13 for 0.35, t = 4 for 0.50.
    expect(verdict(strained(round(4), 2.153), "fold-strain")).toBe("none");
    expect(verdict(strained(round(4), 2.155), "fold-strain")).toBe("caution");
    expect(verdict(strained(round(4), 3.999), "fold-strain")).toBe("caution");
    expect(verdict(strained(round(4), 4.001), "fold-strain")).toBe("error");
  });

  test("a flat bar bends the leather round its corners", () => {
    expect(verdict(strained({ kind: "flat", along: 20, through: 4, corner: 2 }, 2.15), "fold-strain")).toBe(
      "none",
    );
    expect(verdict(strained({ kind: "flat", along: 20, through: 4, corner: 0.5 }, 2.15), "fold-strain")).toBe(
      "error",
    );
  });

  test("a neutral fibre nearer the grain is kinder to it", () => {
    expect(verdict(strained(round(4), 2.3, 0.5), "fold-strain")).toBe("caution");
    expect(verdict(strained(round(4), 2.3, 0.6), "fold-strain")).toBe("none");
  });

  test("the mend it suggests, applied, mends it; where no skive can, none is suggested", () => {
    const [finding] = found(strained(round(4), 3.5), "fold-strain");
    expect(finding!.change!.dimension).toBe("pieces.cheek.skive-at-buckle");
    expect(finding!.change!.value).toMatch(/^\d+(\.\d+)? mm$/);
    const thinner = Number.parseFloat(finding!.change!.value);
    expect(verdict(strained(round(4), thinner), "fold-strain")).toBe("none");
    expect(verdict(strained(round(4), thinner + 0.02), "fold-strain")).toBe("caution");
    expect(found(strained(round(1), 2), "fold-strain")[0]!.change).toBeUndefined();
  });
});
