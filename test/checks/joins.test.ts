import { describe, expect, test } from "vitest";
import { folded } from "../../src/checks/measure/folded.ts";
import { tongueNeeds } from "../../src/checks/measure/tongue.ts";
import { widestThrough } from "../../src/checks/piece/strapInSlot.ts";
import { closedPath, cubic, line, type Path, rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { TurnBack } from "../../src/model/piece.ts";
import { found, told, verdict } from "../support/found.ts";
import { soundJob, withJoin, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, buckleFold, cases, punched } from "../support/soundPiece.ts";

describe("strap-in-buckle", () => {
  const strap = (width: number, inside: number, over: object = {}) =>
    bareJob(
      [
        barePiece("strap", rectanglePath([0, -width / 2], 400, width), {
          holes: [punched("near.1", [340, 0], 3, "buckle"), punched("near.2", [320, 0], 3, "buckle")],
          ...over,
        }),
      ],
      {
        joins: [
          {
            kind: "strap in buckle",
            piece: "strap",
            strapWidth: width,
            inside,
            buckle: "buckle",
            dimension: "measures.width",
          },
        ],
      },
    );

  test("0.3 mm over the inside still goes through; more doesn't", () => {
    expect(verdict(strap(20.29, 20), "strap-in-buckle")).toBe("none");
    expect(verdict(strap(20.31, 20), "strap-in-buckle")).toBe("error");
  });

  test("2 mm under the inside is loose, 1 mm in buckles under 5/8 in", () => {
    expect(verdict(strap(18.01, 20), "strap-in-buckle")).toBe("none");
    expect(verdict(strap(17.98, 20), "strap-in-buckle")).toBe("caution");
    expect(verdict(strap(13.9, 15.875), "strap-in-buckle")).toBe("none");
    expect(verdict(strap(14.01, 15), "strap-in-buckle")).toBe("none");
    expect(verdict(strap(13.98, 15), "strap-in-buckle")).toBe("caution");
  });

  test("what counts is the drawn width where it passes, not the width that was said", () => {
    /** 20 wide, swelled to 26 between two places. */
    const swelled = (x0: number, x1: number): Path => {
      const m = (x0 + x1) / 2;
      const up = [
        cubic([x0 + 10, -10], [m - 10, -13], [m, -13]),
        cubic([m + 10, -13], [x1 - 10, -10], [x1, -10]),
      ];
      return closedPath([0, -10], [line([x0, -10]), ...up, line([400, -10]), line([400, 10]), line([0, 10])]);
    };
    const job = (x0: number, x1: number) =>
      withPiece(strap(20, 20), "strap", (p) => ({ ...p, outline: swelled(x0, x1) }));
    expect(verdict(job(100, 200), "strap-in-buckle")).toBe("none"); // the buckle never comes there
    expect(verdict(job(345, 395), "strap-in-buckle")).toBe("error"); // the tail must pass through the buckle
    const narrowed = (inside: number) => withJoin(job(345, 395), "strap in buckle", { inside });
    expect(verdict(narrowed(23), "strap-in-buckle")).toBe("caution");
  });

  test("a turn-back lies in its buckle at its fold", () => {
    expect(verdict(withJoin(soundJob(), "strap in buckle", { inside: 15 }), "strap-in-buckle")).toBe("error");
    expect(told(withJoin(soundJob(), "strap in buckle", { inside: 19 }), "strap-in-buckle")).toEqual([
      "caution in the cheek buckle",
      "caution in the cheek buckle",
    ]);
  });

  test("the width it suggests mends it; another dimension gets no suggestion", () => {
    const [finding] = found(strap(21, 20), "strap-in-buckle");
    expect(finding!.change).toEqual({ dimension: "measures.width", value: "20 mm" });
    expect(verdict(strap(20, 20), "strap-in-buckle")).toBe("none");
    const other = withJoin(strap(21, 20), "strap in buckle", { dimension: "hardware.buckle.inside" });
    expect(found(other, "strap-in-buckle")[0]!.change).toBeUndefined();
  });

  test("a strap that is cut wider for its edges' finishing is judged finished", () => {
    const cut = strap(21, 20, { edgeLoss: 1 });
    expect(verdict(cut, "strap-in-buckle")).toBe("none");
    expect(verdict(strap(21.4, 20, { edgeLoss: 1 }), "strap-in-buckle")).toBe("error");
  });
});

describe("tongue-in-slot", () => {
  const { tongueSlot } = cases;
  const worked: TurnBack = {
    ...buckleFold,
    bar: { kind: "round", diameter: tongueSlot.bar },
    frontThickness: tongueSlot.thickness,
    backThickness: tongueSlot.thickness,
    wrapThickness: tongueSlot.thickness,
    clamp: tongueSlot.clamp,
    liftOff: tongueSlot.clamp,
  };
  const open = (tongueSlot.openDegrees * Math.PI) / 180;

  test("the worked case: how far each leg must be open (fixtures/published/worked-cases.json)", () => {
    const tongue = { thickness: tongueSlot.tongue, openAngle: open };
    expect(tongueNeeds(worked, folded(worked)!, tongue, true)).toBeCloseTo(tongueSlot.front, 4);
    expect(tongueNeeds(worked, folded(worked)!, tongue, false)).toBeCloseTo(tongueSlot.back, 4);
  });

  /** A square-ended slot, so that its corners are the tongue's. */
  const job = (front: number, back: number, width: number, direction: 1 | -1 = 1) => {
    const [low, high] = direction === 1 ? [back, front] : [front, back];
    return bareJob(
      [
        barePiece("cheek", rectanglePath([0, -10], 200, 20), {
          cutouts: [
            {
              id: "slot",
              use: "tongue slot",
              outline: rectanglePath([60 - low, -width / 2], low + high, width),
              length: low + high,
              width,
            },
          ],
          turnBacks: [{ ...worked, direction }],
        }),
      ],
      {
        joins: [
          {
            kind: "tongue in slot",
            piece: "cheek",
            cutout: "slot",
            turnBack: "buckle",
            tongueThickness: tongueSlot.tongue,
            tongueBreadth: 4,
            openAngle: open,
            dimension: "hardware.cheek-buckle.tongue",
          },
        ],
      },
    );
  };

  test("open as far as the tongue needs on either leg, and as wide as it is", () => {
    const { front, back } = tongueSlot;
    expect(verdict(job(front, back, 4.01), "tongue-in-slot")).toBe("none");
    expect(verdict(job(front, back, 4.01, -1), "tongue-in-slot")).toBe("none");
    expect(told(job(front - 0.02, back, 4.01), "tongue-in-slot")).toEqual([
      "error tongue slot slot, front leg",
    ]);
    expect(told(job(front, back - 0.02, 4.01), "tongue-in-slot")).toEqual([
      "error tongue slot slot, back leg",
    ]);
    expect(told(job(front - 0.02, back, 4.01, -1), "tongue-in-slot")).toEqual([
      "error tongue slot slot, front leg",
    ]);
    expect(told(job(front, back, 3.95), "tongue-in-slot")).toEqual(["error tongue slot slot, width"]);
  });

  test("round ends take their part: the same slot with round ends is too short", () => {
    const { front, back } = tongueSlot;
    const length = front + back;
    const rounded = withPiece(job(front, back, 5), "cheek", (p) =>
      withPart(p, "cutouts", "slot", { outline: slotPath([60 + (front - back) / 2, 0], length, 5) }),
    );
    expect(verdict(rounded, "tongue-in-slot")).toBe("error");
    // A round end of 2.5 is open 4 wide from 2.5 − √(2.5² − 2²) = 1 mm in.
    const longer = (by: number) =>
      withPiece(job(front, back, 5), "cheek", (p) =>
        withPart(p, "cutouts", "slot", {
          outline: slotPath([60 + (front - back) / 2, 0], length + 2 * by, 5),
        }),
      );
    expect(verdict(longer(1.001), "tongue-in-slot")).toBe("none");
    expect(verdict(longer(0.97), "tongue-in-slot")).toBe("error");
  });

  test("a slot that doesn't lie over the fold lets no tongue through", () => {
    expect(
      verdict(
        withPiece(soundJob(), "cheek", (p) =>
          withPart(p, "cutouts", "slot", { outline: slotPath([90, 0], 22, 4) }),
        ),
        "tongue-in-slot",
      ),
    ).toBe("error");
  });

  test("a tongue that opens further down needs a longer slot", () => {
    expect(
      verdict(withJoin(soundJob(), "tongue in slot", { openAngle: Math.PI / 2 }), "tongue-in-slot"),
    ).toBe("none");
    expect(
      verdict(withJoin(soundJob(), "tongue in slot", { openAngle: Math.PI / 9 }), "tongue-in-slot"),
    ).toBe("error");
  });

  test("round a flat bar the eye keeps its distance all round", () => {
    // A disc of 4 is a flat bar of 4 × 4 with corners of 2.
    const disc: TurnBack = { ...worked, bar: { kind: "flat", along: 4, through: 4, corner: 2 } };
    const tongue = { thickness: tongueSlot.tongue, openAngle: open };
    expect(tongueNeeds(disc, folded(disc)!, tongue, true)).toBeCloseTo(tongueSlot.front, 4);
    expect(tongueNeeds(disc, folded(disc)!, tongue, false)).toBeCloseTo(tongueSlot.back, 4);
  });
});

describe("strap-in-slot", () => {
  const { strapSlot } = cases;

  test.each([0, 0.4, Math.PI / 2, 2])(
    "the worked case at any angle (%d): the strap's corners touch the round ends",
    (angle) => {
      const slot = slotPath([30, 30], strapSlot.slotLength, strapSlot.slotWidth, angle);
      expect(widestThrough(slot, strapSlot.strapThickness)).toBeCloseTo(strapSlot.strapWidth, 2);
    },
  );

  test("a slot as thick as the strap lets it through, a thinner one nothing", () => {
    expect(widestThrough(slotPath([0, 0], 20, 6), 6.001)).toBe(0);
    expect(widestThrough(rectanglePath([0, 0], 20, 6), 5.9)).toBeGreaterThan(18);
  });

  test("the strap goes through at its width and thickness, and no wider or thicker", () => {
    const strap = (over: object) => verdict(withJoin(soundJob(), "strap in slot", over), "strap-in-slot");
    expect(strap({})).toBe("none");
    expect(strap({ strapWidth: 16.05 })).toBe("error");
    expect(strap({ strapWidth: 15.95 })).toBe("none");
    expect(strap({ strapThickness: 6.1 })).toBe("error");
    expect(strap({ strapThickness: 6.6 })).toBe("error");
  });

  test("a strap that weaves through needs t ÷ sin ψ + T ÷ tan ψ of the slot's width", () => {
    const weaving = (angle: number, through: number) =>
      verdict(
        withJoin(soundJob(), "strap in slot", { strapThickness: 2, weave: { angle, through } }),
        "strap-in-slot",
      );
    // The sound slot is 6.5 mm wide. 2 mm at 45°: 2.828 + T.
    expect(weaving(Math.PI / 4, 3.6)).toBe("none");
    expect(weaving(Math.PI / 4, 3.7)).toBe("error");
    // Straight through, the leather's thickness doesn't count.
    expect(weaving(Math.PI / 2, 50)).toBe("none");
  });
});

describe("keeper-girth", () => {
  const { keeperGirth } = cases;
  const keeper = (cut: number, over: object = {}) => {
    const job = withPiece(soundJob(), "keeper-fixed", (p) => ({
      ...p,
      outline: rectanglePath([0, -5], cut, 10),
      corners: rectanglePath([0, -5], cut, 10).segments.map((s) => ({ name: "corner", at: s.to })),
    }));
    return withJoin(job, "keeper round stack", { cut, ...over });
  };

  test("the worked girth goes round; 0.05 mm less still does, more doesn't", () => {
    expect(verdict(keeper(keeperGirth.girth), "keeper-girth")).toBe("none");
    expect(verdict(keeper(keeperGirth.girth - 0.049), "keeper-girth")).toBe("none");
    expect(verdict(keeper(keeperGirth.girth - 0.051), "keeper-girth")).toBe("error");
  });

  test("a lap needs its length besides", () => {
    expect(verdict(keeper(keeperGirth.girth, { lap: 10 }), "keeper-girth")).toBe("error");
    expect(verdict(keeper(keeperGirth.girth + 10, { lap: 10 }), "keeper-girth")).toBe("none");
  });

  test("6 mm of slack is the most", () => {
    expect(verdict(keeper(keeperGirth.girth + 5.99), "keeper-girth")).toBe("none");
    expect(verdict(keeper(keeperGirth.girth + 6.01), "keeper-girth")).toBe("caution");
  });

  test("what is drawn and what is said to be cut are the same", () => {
    expect(
      verdict(withJoin(soundJob(), "keeper round stack", { cut: keeperGirth.girth + 0.06 }), "keeper-girth"),
    ).toBe("error");
    expect(
      verdict(withJoin(soundJob(), "keeper round stack", { cut: keeperGirth.girth + 0.04 }), "keeper-girth"),
    ).toBe("none");
  });
});
