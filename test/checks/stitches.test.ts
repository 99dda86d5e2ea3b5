import { describe, expect, test } from "vitest";
import { circlePath, line, openPath, type Point, rectanglePath } from "../../src/geometry/path.ts";
import type { Hole, Piece } from "../../src/model/piece.ts";
import { found, told, verdict } from "../support/found.ts";
import { soundJob, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, buckleFold, stitched } from "../support/soundPiece.ts";

const strap = (row: ReturnType<typeof stitched>, over: Partial<Piece> = {}) =>
  bareJob([
    barePiece("a", rectanglePath([0, -10], 200, 20), { seams: [row.seam], holes: row.holes, ...over }),
  ]);

describe("stitch-pitch", () => {
  const asked = (pitchAsked: number, count = 7) =>
    verdict(strap(stitched("s", 20, 8, count, 3, { pitchAsked })), "stitch-pitch");

  test("8 % off what was asked is the most, either way", () => {
    expect(asked(3 / 1.079)).toBe("none");
    expect(asked(3 / 1.081)).toBe("caution");
    expect(asked(3 / 0.921)).toBe("none");
    expect(asked(3 / 0.919)).toBe("caution");
  });

  test("on fewer than seven stitches it is a note", () => expect(asked(4, 6)).toBe("note"));

  test("the pitch is the drawn one, whatever the seam says", () => {
    expect(verdict(strap(stitched("s", 20, 8, 8, 3, { pitch: 4, pitchAsked: 4 })), "stitch-pitch")).toBe(
      "caution",
    );
  });
});

describe("stitch-to-edge", () => {
  const inset = (y: number, over = {}) =>
    verdict(strap(stitched("s", 20, y, 8, 3, { inset: 3 }), over), "stitch-to-edge");

  test("nearer than its inset is a caution, give or take 0.05 mm; under 1.5 mm an error", () => {
    expect(inset(7)).toBe("none");
    expect(inset(7.049)).toBe("none");
    expect(inset(7.051)).toBe("caution");
    expect(inset(8.499)).toBe("caution");
    expect(inset(8.501)).toBe("error");
    expect(verdict(strap(stitched("s", 20, 8.52, 8, 3, { inset: 1.5 })), "stitch-to-edge")).toBe("error");
  });

  test("a cutout's edge counts, at 2 mm", () => {
    const beside = (r: number) =>
      inset(0, { cutouts: [{ id: "o", use: "opening", outline: circlePath([50, 0], r) }] });
    expect(beside(3.9)).toBe("none"); // the last stitch lies at 44
    expect(beside(4.1)).toBe("caution");
    expect(beside(4.6)).toBe("error");
  });

  test("the awl comes through the back leg, which must reach as far", () => {
    // The last stitch lies 42.8887 from the fold; the back leg must go on for 1.5 mm.
    const back = (length: number): Piece => {
      const [x, whole] = [60 - length, 392 + length];
      return {
        ...soundJob().pieces[0]!,
        outline: rectanglePath([x, -8], whole, 16),
        corners: rectanglePath([x, -8], whole, 16).segments.map((s) => ({ name: "c", at: s.to })),
        zones: [],
      };
    };
    const job = (length: number) => withPiece(soundJob(), "cheek", () => back(length));
    expect(verdict(job(44.4), "stitch-to-edge")).toBe("none");
    expect(told(job(44.3), "stitch-to-edge")).toEqual([
      "error hole lower.9, back leg",
      "error hole upper.9, back leg",
    ]);
    expect(
      found(job(40), "stitch-to-edge").some(
        (f) => f.place === "hole upper.9, back leg" && f.message.includes("too short"),
      ),
    ).toBe(true);
  });

  test("only a turn-back's own seam goes through both legs", () => {
    const row = stitched("s", 130, 0, 8, 3);
    const job = strap(row, { turnBacks: [{ ...buckleFold, centre: 60 }] });
    expect(verdict(job, "stitch-to-edge")).toBe("none"); // mirrored at the fold it would miss the piece
  });
});

describe("stitch-row", () => {
  const moved = (id: string, by: Point) =>
    withPiece(soundJob(), "cheek", (p) => withPart(p, "holes", id, { at: holeAt(p, id, by) }));
  const holeAt = (p: Piece, id: string, by: Point): Point => {
    const [x, y] = p.holes.find((h) => h.id === id)!.at;
    return [x + by[0], y + by[1]];
  };

  test("a hole lies on its seam within 0.05 mm", () => {
    expect(verdict(moved("upper.4", [0, -0.049]), "stitch-row")).toBe("none");
    expect(told(moved("upper.4", [0, -0.051]), "stitch-row")).toEqual(["error hole upper.4"]);
  });

  test("stitches are even within a tenth of the pitch", () => {
    expect(verdict(moved("upper.4", [0.299, 0]), "stitch-row")).toBe("none");
    expect(told(moved("upper.4", [0.301, 0]), "stitch-row")).toEqual([
      "error hole upper.4",
      "error hole upper.5",
    ]);
  });

  test("holes out of order are found", () => {
    const swapped = withPiece(soundJob(), "cheek", (p) =>
      withPart(p, "seams", "upper", { holes: ["upper.2", "upper.1", ...p.seams[0]!.holes.slice(2)] }),
    );
    expect(verdict(swapped, "stitch-row")).toBe("error");
  });

  test("an open row of n stitches has n + 1 holes", () => {
    const count = (stitches: number) =>
      told(
        withPiece(soundJob(), "cheek", (p) => withPart(p, "seams", "upper", { stitches })),
        "stitch-row",
      );
    expect(count(8)).toEqual([]);
    expect(count(9)).toEqual(["error seam upper"]);
    expect(count(7)).toEqual(["error seam upper"]);
  });

  test("a closed row of n stitches has n, the last stitch among the rest", () => {
    const ring = (n: number, skip = 0) => {
      const holes = Array.from({ length: n }, (_, i): Hole => {
        const a = (2 * Math.PI * (i + (i === n - 1 ? skip : 0))) / n;
        return {
          id: `s.${i + 1}`,
          kind: "awl",
          at: [100 + 5 * Math.cos(a), 5 * Math.sin(a)],
          size: 1,
          angle: a,
          use: "stitch",
        };
      });
      const pitch = (10 * Math.PI) / n;
      const seam = {
        id: "s",
        path: circlePath([100, 0], 5),
        pitchAsked: pitch,
        pitch,
        stitches: n,
        inset: 2,
        holes: holes.map((h) => h.id),
      };
      return verdict(strap({ seam, holes }), "stitch-row");
    };
    expect(ring(10)).toBe("none");
    expect(ring(10, 0.2)).toBe("error");
  });

  test("steps are measured along the seam, round its corners", () => {
    const path = openPath([20, 0], [line([26, 0]), line([26, 6])]);
    const holes = (
      [
        [20, 0],
        [23, 0],
        [26, 0],
        [26, 3],
        [26, 6],
      ] as const
    ).map((at, i): Hole => ({ id: `s.${i}`, kind: "awl", at, size: 1, angle: 0, use: "stitch" }));
    const seam = {
      id: "s",
      path,
      pitchAsked: 3,
      pitch: 3,
      stitches: 4,
      inset: 2,
      holes: holes.map((h) => h.id),
    };
    expect(verdict(strap({ seam, holes }), "stitch-row")).toBe("none");
  });
});
