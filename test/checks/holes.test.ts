import { describe, expect, test } from "vitest";
import { circlePath, type Point, rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { HoleKind } from "../../src/model/piece.ts";
import { found, told, verdict } from "../support/found.ts";
import { soundJob, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, buckleFold, punched } from "../support/soundPiece.ts";

// The limits are those of the trade: 1.5 and 1.0 diameters to an edge, 2 from middle to middle, a third of
// the strap's width, 3 mm beside a tongue's slot; common practice, no source.

const wide = rectanglePath([0, 0], 100, 100);
const job = (over: object, outline = wide) => bareJob([barePiece("a", outline, over)]);

describe("holes-to-edge", () => {
  const at = (y: number, size = 4, kind: HoleKind = "round") =>
    job({ holes: [{ ...punched("h", [50, y], size), kind }] });

  test("1.5 diameters is far enough, less is a caution, less than 1.0 an error", () => {
    expect(verdict(at(6.001), "holes-to-edge")).toBe("none");
    expect(verdict(at(5.999), "holes-to-edge")).toBe("caution");
    expect(verdict(at(4.001), "holes-to-edge")).toBe("caution");
    expect(verdict(at(3.999), "holes-to-edge")).toBe("error");
  });

  test("nothing but awl slits lies nearer, however small", () => {
    expect(verdict(at(1.4, 1, "staple"), "holes-to-edge")).toBe("caution");
    expect(verdict(at(1.4, 1, "awl"), "holes-to-edge")).toBe("none");
  });

  test("an opening's edge is an edge, and so is a slot's", () => {
    const beside = (x: number) =>
      job({
        holes: [punched("h", [x, 50], 4)],
        cutouts: [{ id: "o", use: "opening", outline: circlePath([50, 50], 10) }],
      });
    expect(verdict(beside(66.01), "holes-to-edge")).toBe("none");
    expect(verdict(beside(65.99), "holes-to-edge")).toBe("caution");
  });

  test("a slot's ends keep away from edges as holes of its width do; a tongue's slot has its own rule", () => {
    const slot = (y: number, use = "strap slot") =>
      job({ cutouts: [{ id: "s", use, outline: slotPath([50, y], 30, 6), length: 30, width: 6 }] });
    expect(verdict(slot(9.01), "holes-to-edge")).toBe("none");
    expect(told(slot(8.99), "holes-to-edge")).toEqual([
      "caution strap slot s, end 1",
      "caution strap slot s, end 2",
    ]);
    expect(verdict(slot(5.99), "holes-to-edge")).toBe("error");
    expect(verdict(slot(8.99, "tongue slot"), "holes-to-edge")).toBe("none");
  });

  test("the words say how far, how far it should be, and what to change", () => {
    const [finding] = found(
      withPiece(soundJob(), "crown", (p) => withPart(p, "holes", "near.1", { at: [60, 5] })),
      "holes-to-edge",
    );
    expect(finding).toMatchObject({
      severity: "error",
      piece: "crown",
      value: "3 mm",
      limit: "at least 4 mm",
    });
    expect(finding!.mend).toContain("straps.width");
  });
});

describe("holes-apart", () => {
  const pair = (distance: number, small = 4, kind: HoleKind = "round") =>
    job({ holes: [punched("a", [40, 50], 4), { ...punched("b", [40 + distance, 50], small), kind }] });

  test("two diameters of the larger from middle to middle; less is a caution, under 1.5 an error", () => {
    expect(verdict(pair(8.001), "holes-apart")).toBe("none");
    expect(verdict(pair(7.999), "holes-apart")).toBe("caution");
    expect(verdict(pair(7.999, 2), "holes-apart")).toBe("caution");
    expect(verdict(pair(6.001), "holes-apart")).toBe("caution");
    expect(verdict(pair(5.999), "holes-apart")).toBe("error");
  });

  test("awl slits don't count", () => expect(verdict(pair(5, 2, "awl"), "holes-apart")).toBe("none"));
});

describe("hole-to-width", () => {
  const strap = (width: number, size: number) =>
    job({ holes: [punched("h", [50, 0], size)] }, rectanglePath([0, -width / 2], 100, width));

  test("a third of the strap and no more", () => {
    expect(verdict(strap(15, 4.99), "hole-to-width")).toBe("none");
    expect(verdict(strap(15, 5.01), "hole-to-width")).toBe("caution");
  });

  test("the width is the drawn one where the hole is: in a point it is narrower", () => {
    const near = (x: number) =>
      verdict(
        withPiece(soundJob(), "crown", (p) => withPart(p, "holes", "near.1", { at: [x, 0] })),
        "hole-to-width",
      );
    expect(near(60)).toBe("none");
    expect(near(8)).toBe("caution");
  });
});

describe("beside-slot", () => {
  const narrow = (width: number, wrap = 2.1) =>
    bareJob([
      barePiece("cheek", rectanglePath([0, -width / 2], 200, width), {
        cutouts: [
          { id: "slot", use: "tongue slot", outline: slotPath([60, 0], 22, 4), length: 22, width: 4 },
        ],
        turnBacks: [{ ...buckleFold, wrapThickness: wrap }],
      }),
    ]);

  test("3 mm on each side, or the wrap's thickness when that is more", () => {
    expect(verdict(narrow(10.001), "beside-slot")).toBe("none");
    expect(verdict(narrow(9.999), "beside-slot")).toBe("error");
    expect(verdict(narrow(11.001, 3.5), "beside-slot")).toBe("none");
    expect(verdict(narrow(10.999, 3.5), "beside-slot")).toBe("error");
  });

  test("both legs together are no weaker than the strap at a buckle hole", () => {
    // 2 × 12 × 2.1 = 50.4 mm² beside the slot; (16 − d) × 3.5 at a hole of d: 50.4 at 1.6.
    const hole = (size: number) =>
      withPiece(soundJob(), "crown", (p) => ({ ...p, holes: p.holes.map((h) => ({ ...h, size })) }));
    expect(verdict(hole(1.61), "beside-slot")).toBe("none");
    expect(verdict(hole(1.59), "beside-slot")).toBe("caution");
  });

  test("a slot that lies off its middle has one weak side", () => {
    const off = (y: number) =>
      withPiece(soundJob(), "cheek", (p) =>
        withPart(p, "cutouts", "slot", { outline: slotPath([60, y] as Point, 22, 4) }),
      );
    expect(verdict(off(2.9), "beside-slot")).toBe("none");
    expect(verdict(off(3.1), "beside-slot")).toBe("error");
  });
});
