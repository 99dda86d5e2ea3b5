import { describe, expect, test } from "vitest";
import { polyline, rectanglePath } from "../../src/geometry/path.ts";
import { found, told, verdict } from "../support/found.ts";
import { pocketJob as job, outline, type Pocket, pocketSeam, seam, side } from "../support/pocketJob.ts";
import { bareJob, barePiece, punched } from "../support/soundPiece.ts";

const SOUND: Pocket = { y: 40, w: 120, h: 80 };
const RULE = "pocket-smaller";

describe.each([true, false])("pocket-smaller, place marked: %s", (marked) => {
  test("a pocket well inside its panel passes", () => {
    expect(told(job(SOUND, {}, marked), RULE)).toEqual([]);
  });

  // The edge's seam lies at x = 96: 3 mm clear is a pocket 186 wide.
  test("3 mm from the panel's own seam, and no nearer", () => {
    expect(verdict(job({ ...SOUND, w: 185.99 }, {}, marked), RULE)).toBe("none");
    expect(verdict(job({ ...SOUND, w: 186.01 }, {}, marked), RULE)).toBe("error");
  });

  // In the corner: the seam's round of 26 about (−70, 30); the pocket's corner at (−60, y) 3 mm inside it.
  test("in a round corner it is the pocket's corner that counts", () => {
    const y = 30 - Math.sqrt(23 ** 2 - 15 ** 2);
    expect(verdict(job({ y: y + 0.01, w: 170, h: 60 }), RULE)).toBe("none");
    expect(verdict(job({ y: y - 0.01, w: 170, h: 60 }), RULE)).toBe("error");
  });

  test("it keeps 3 mm from a fold, and from the bend where its size is known", () => {
    const fold = { id: "f", from: [-100, 130], to: [100, 130], label: "fold of the flap" } as const;
    const under = (top: number) => ({ y: 40, w: 100, h: top - 40 });
    // The unmarked edge is told from the seam, whose open top lies 3 mm lower.
    expect(verdict(job(under(126.9), { folds: [fold] }, marked), RULE)).toBe("none");
    expect(verdict(job(under(127.1), { folds: [fold] }, marked), RULE)).toBe("error");
    // A quarter turn about 4 mm of inner radius in 2 mm, middle fibre: π/2 · 5 of flat leather.
    const bend = { inner: 4, angle: Math.PI / 2, thickness: 2, neutral: 0.5, inside: "flesh" } as const;
    const edge = 130 - (Math.PI * 5) / 4 - 3;
    expect(verdict(job(under(edge - 0.01), { folds: [{ ...fold, bend }] }, marked), RULE)).toBe("none");
    expect(verdict(job(under(edge + 0.01), { folds: [{ ...fold, bend }] }, marked), RULE)).toBe("error");
  });

  test("a pocket laid over a seam, a fold or the edge is told with what lies there", () => {
    const across = seam(
      "dart",
      polyline([
        [-20, 70],
        [20, 70],
      ]),
    );
    const over = job(SOUND, { seams: [side, pocketSeam(SOUND), across] }, marked);
    expect(found(over, RULE)[0]!.message).toBe("The pocket lies over the seam dart of front.");
    const beyond = found(job({ ...SOUND, x: 60 }, {}, marked), RULE).map((f) => f.message);
    expect(beyond).toContain("The pocket runs over the edge of front.");
    const folded = job(
      SOUND,
      { folds: [{ id: "f", from: [-100, 70], to: [100, 70], label: "fold" }] },
      marked,
    );
    expect(verdict(folded, RULE)).toBe("error");
  });

  test("it covers nothing of the closure", () => {
    const stud = (x: number) => ({ holes: [punched("closure", [x, 80], 4, "stud")] });
    expect(verdict(job(SOUND, stud(0), marked), RULE)).toBe("error");
    expect(verdict(job(SOUND, stud(58), marked), RULE)).toBe("error");
    expect(verdict(job(SOUND, stud(63), marked), RULE)).toBe("none");
    const cut = rectanglePath([-10, 60], 20, 3);
    const slot = { cutouts: [{ id: "closure", use: "tuck-in slot", outline: cut }] };
    expect(verdict(job(SOUND, slot, marked), RULE)).toBe("error");
    const above = {
      cutouts: [{ id: "closure", use: "tuck-in slot", outline: rectanglePath([-10, 125], 20, 3) }],
    };
    expect(verdict(job(SOUND, above, marked), RULE)).toBe("none");
  });
});

test("what mends it names the pocket's width and height; a panel without a pocket is passed over", () => {
  const [finding] = found(job({ ...SOUND, w: 190 }), RULE);
  expect(finding!.mend).toMatch(/pieces\.pocket\.width, pieces\.pocket\.height/);
  expect(finding).toMatchObject({ piece: "front", place: "pocket", value: "1 mm", limit: "at least 3 mm" });
  expect(told(bareJob([barePiece("front", outline, { seams: [side] })]), RULE)).toEqual([]);
});
