import { describe, expect, test } from "vitest";
import { folded } from "../../src/checks/measure/folded.ts";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Piece, TurnBack } from "../../src/model/piece.ts";
import { flat, round, turnBack, workedCases } from "../support/foldCases.ts";
import { found, verdict } from "../support/found.ts";
import { soundJob, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, buckleFold, cases, punched, stitched } from "../support/soundPiece.ts";

const { roundBar, bitEnd } = cases;

describe("folding the data", () => {
  test.each(workedCases)(
    "%s: half of the worked hole to mate comes to lie at the clamp",
    (_, t, holeToMate) => {
      expect(folded(t)!.at(holeToMate / 2).x).toBeCloseTo(t.clamp, 4);
    },
  );

  test("the second screw lies a spacing further on", () => {
    const [, t] = workedCases[4]!;
    expect(folded(t)!.at(bitEnd.second / 2).x).toBeCloseTo(bitEnd.clamp + bitEnd.spacing, 4);
  });

  test("the worked slopes", () => {
    const degrees = (t: TurnBack): number => (folded(t)!.slope * 180) / Math.PI;
    expect(degrees(workedCases[0]![1])).toBeCloseTo(roundBar.slopeDegrees, 4);
    expect(degrees(workedCases[4]![1])).toBeCloseTo(bitEnd.slopeDegrees, 1);
  });

  test("legs held as far apart as the wrap is wide run straight off it", () => {
    // Closed forms: half a turn round the bar, then straight on. Gap = wrap: caught = d.
    const t = turnBack(round(4), 3, 20, { caught: 4 });
    const fold = folded(t)!;
    expect(fold.slope).toBeCloseTo(0, 6);
    expect(fold.held).toBeCloseTo((Math.PI / 2) * 3.5 + 20, 6);
    // Flat bar 5 × 2, corner 0.5, fibre 1.5 off: 0.5 up, a quarter turn of 2, then 2 + 20 along.
    const f = folded(turnBack(flat, 3, 20, { caught: 2 }))!;
    expect(f.slope).toBeCloseTo(0, 6);
    expect(f.held).toBeCloseTo(0.5 + Math.PI + 2 + 20, 6);
  });

  test("a flat bar whose corners are its whole half is a round one", () => {
    const disc = turnBack({ kind: "flat", along: 4, through: 4, corner: 2 }, 3, 12);
    expect(folded(disc)!.held).toBeCloseTo(folded(turnBack(round(4), 3, 12))!.held, 6);
  });

  test("no fold holds the legs inside the wrap", () => {
    // The wrap's fibre lies 3.5 from the bar's centre, the legs' fibres are held 1.5 from the middle.
    const edge = Math.sqrt(3.5 ** 2 - 1.5 ** 2);
    expect(folded(turnBack(round(4), 3, edge + 0.01))).toBeDefined();
    expect(folded(turnBack(round(4), 3, edge - 0.01))).toBeUndefined();
    expect(folded(turnBack(round(4), 3, Number.NaN))).toBeUndefined();
  });
});

/** A strap with one turn-back and one pair of mated holes at these distances from the fold. */
function mated(t: TurnBack, front: number, back: number, direction: 1 | -1 = 1, y = 0): Piece {
  const at = (d: number) => 100 + direction * d;
  return barePiece("strap", rectanglePath([0, -10], 200, 20), {
    holes: [punched("front", [at(front), 0], 3), punched("back", [at(-back), y], 3)],
    turnBacks: [{ ...t, centre: 100, direction, mates: [["front", "back"]] }],
  });
}
const meets = (piece: Piece): string => verdict(bareJob([piece]), "mates-meet");

describe("mates-meet", () => {
  test.each(workedCases)("%s: mates meet at half the worked distance, either way round", (_, t, d) => {
    expect(meets(mated(t, d / 2, d / 2))).toBe("none");
    expect(meets(mated(t, d / 2, d / 2, -1))).toBe("none");
  });

  test.each(workedCases)("%s: 0.2 mm off is found, on one leg or shared by both", (_, t, d) => {
    expect(meets(mated(t, d / 2, d / 2 + 0.2))).toBe("error");
    expect(meets(mated(t, d / 2 - 0.2, d / 2, -1))).toBe("error");
    expect(meets(mated(t, d / 2 + 0.1, d / 2 + 0.1))).toBe("error");
  });

  test("0.05 mm is the most that mates may miss, along the strap or across", () => {
    const [, t, d] = workedCases[0]!;
    expect(meets(mated(t, d / 2, d / 2 + 0.049))).toBe("none");
    expect(meets(mated(t, d / 2, d / 2 + 0.051))).toBe("error");
    expect(meets(mated(t, d / 2, d / 2, 1, 0.049))).toBe("none");
    expect(meets(mated(t, d / 2, d / 2, 1, 0.051))).toBe("error");
  });

  test("the fold's centre lies midway: mates about another place miss their clamp", () => {
    const [, t, d] = workedCases[0]!;
    expect(meets(mated(t, d / 2 + 0.1, d / 2 - 0.1))).toBe("error");
  });

  test("a wrong claim is found though the holes are right: thickness, bar, clamp", () => {
    const off = (change: Partial<TurnBack>): string =>
      verdict(
        withPiece(soundJob(), "cheek", (p) => withPart(p, "turnBacks", "bit", change)),
        "mates-meet",
      );
    expect(off({})).toBe("none");
    expect(off({ wrapThickness: 2.3 })).toBe("error");
    expect(off({ bar: round(8.2) })).toBe("error");
    expect(off({ clamp: 20.06 })).toBe("error");
    expect(off({ clamp: 20.04 })).toBe("none");
  });

  test("mates on the same leg are found", () => {
    const [, t, d] = workedCases[0]!;
    expect(meets(mated(t, d / 2, -d / 2))).toBe("error");
    expect(meets(mated(t, -d / 2, -d / 2))).toBe("error");
    expect(found(bareJob([mated(t, d / 2, -d / 2)]), "mates-meet")[0]!.message).toContain("own legs");
  });

  test("a stitched turn-back is held where it was clamped: its first stitch", () => {
    const shift = (by: number): string =>
      verdict(
        withPiece(soundJob(), "cheek", (p) => ({
          ...p,
          holes: p.holes.map((h) =>
            h.use === "stitch" ? { ...h, at: [h.at[0] + by, h.at[1]] as const } : h,
          ),
        })),
        "mates-meet",
      );
    expect(shift(0.04)).toBe("none");
    expect(shift(0.06)).toBe("error");
  });

  test("a row of stitches that isn't the turn-back's own holds nothing", () => {
    const row = stitched("fancy", 68, 3, 2, 3);
    const job = withPiece(soundJob(), "cheek", (p) => ({
      ...p,
      holes: [...p.holes, ...row.holes],
      seams: [...p.seams, row.seam],
    }));
    expect(verdict(job, "mates-meet")).toBe("none");
  });

  test("a turn-back that nothing holds is found", () => {
    const loose = withPiece(soundJob(), "cheek", (p) => ({
      ...p,
      holes: p.holes.filter((h) => h.use !== "stitch"),
      seams: [],
    }));
    // The bit's screws lie on the buckle's front leg too, far from where it was clamped.
    expect(verdict(loose, "mates-meet")).toBe("error");
    const bare = withPiece(loose, "cheek", (p) => ({ ...p, holes: [], turnBacks: [buckleFold] }));
    expect(found(bare, "mates-meet").map((f) => f.value)).toEqual(["no fixing"]);
  });
});

describe("fold-as-drawn", () => {
  const change = (over: Partial<TurnBack>, line = 0): string =>
    verdict(
      withPiece(soundJob(), "cheek", (p) =>
        withPart(withPart(p, "turnBacks", "buckle", over), "folds", "buckle.fold", {
          from: [60 + line, -8],
          to: [60 + line, 8],
        }),
      ),
      "fold-as-drawn",
    );

  test("the fold's line lies at the turn-back's centre within 0.05 mm", () => {
    expect(change({})).toBe("none");
    expect(change({}, 0.049)).toBe("none");
    expect(change({}, 0.051)).toBe("error");
  });

  test("the wrap ends where the folded leather leaves the bar", () => {
    expect(change({ wrapHalf: buckleFold.wrapHalf + 0.045 })).toBe("none");
    expect(change({ wrapHalf: buckleFold.wrapHalf + 0.055 })).toBe("error");
  });
});
