import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  cubic,
  type Path,
  type Point,
  polyline,
  rectanglePath,
  slotPath,
} from "../../src/geometry/path.ts";
import { reversed } from "../../src/geometry/transform.ts";
import { told, verdict } from "../support/found.ts";
import { soundJob, withJoin, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, punched, soundCheek } from "../support/soundPiece.ts";

const job = (outline: Path, over = {}) => bareJob([barePiece("a", outline, over)]);
const square = rectanglePath([0, 0], 40, 40);

describe("numbers-sound", () => {
  test("a place that is no number is found, named, and hides nothing else", () => {
    const broken = withPiece(soundJob(), "cheek", (p) =>
      withPart(p, "holes", "bit.back.2", { at: [Number.NaN, 0] }),
    );
    expect(told(broken, "numbers-sound")).toEqual(["error hole bit.back.2"]);
    const lost = withPiece(broken, "crown", (p) => ({ ...p, outline: reversed(p.outline) }));
    expect(verdict(lost, "outline-sound")).toBe("error");
  });

  test("every part of a piece is looked at", () => {
    const nan: Point = [0, Number.NaN];
    const lines = polyline([[0, 0], nan]);
    const ring = polyline([[0, 0], [1, 0], nan], true);
    const all = barePiece(
      "a",
      closedPath([0, 0], [cubic([1, Infinity], [1, 1], [40, 0]), arc([40, 40], nan, true)]),
      {
        corners: [{ name: "tip", at: nan }],
        cutouts: [{ id: "c", use: "opening", outline: ring }],
        holes: [{ ...punched("h", [1, 1], Number.NaN) }],
        seams: [{ id: "s", path: lines, pitchAsked: 3, pitch: 3, stitches: 1, inset: 2, holes: [] }],
        folds: [{ id: "f", from: [0, 0], to: nan, label: "" }],
        zones: [{ id: "z", kind: "skive", outline: ring, label: "" }],
        marks: [{ id: "m", kind: "crease", path: lines, label: "" }],
      },
    );
    const places = told(bareJob([all]), "numbers-sound").map((t) => t.replace("error ", ""));
    expect([...places].sort()).toEqual([
      "corner tip",
      "cutout c",
      "fold f",
      "hole h",
      "mark m",
      "outline",
      "seam s",
      "zone z",
    ]);
    expect(verdict(soundJob(), "numbers-sound")).toBe("none");
  });
});

describe("named-parts", () => {
  test("the sound job names only what it has", () => expect(verdict(soundJob(), "named-parts")).toBe("none"));

  test.each([
    [
      "a seam's hole",
      withPiece(soundJob(), "cheek", (p) => withPart(p, "seams", "upper", { holes: ["upper.1", "nowhere"] })),
      "seam upper",
    ],
    [
      "a seam's turn-back",
      withPiece(soundJob(), "cheek", (p) => withPart(p, "seams", "upper", { turnBack: "nowhere" })),
      "seam upper",
    ],
    [
      "a turn-back's fold",
      withPiece(soundJob(), "cheek", (p) => withPart(p, "turnBacks", "bit", { fold: "nowhere" })),
      "turn-back bit",
    ],
    [
      "a mate",
      withPiece(soundJob(), "cheek", (p) =>
        withPart(p, "turnBacks", "bit", { mates: [["bit.front.1", "nowhere"]] }),
      ),
      "turn-back bit",
    ],
    [
      "a join's piece",
      withJoin(soundJob(), "keeper round stack", { piece: "nowhere" }),
      "keeper round stack",
    ],
    ["a join's slot", withJoin(soundJob(), "strap in slot", { cutout: "nowhere" }), "strap in slot"],
    ["a join's turn-back", withJoin(soundJob(), "tongue in slot", { turnBack: "nowhere" }), "tongue in slot"],
  ])("%s that doesn't exist is found", (_, job, place) =>
    expect(told(job, "named-parts")).toContain(`error ${place}`),
  );

  test("a name given twice is found, on a piece and among pieces", () => {
    const twice = withPiece(soundJob(), "cheek", (p) => ({ ...p, folds: [...p.folds, p.folds[0]!] }));
    expect(told(twice, "named-parts")).toEqual(["error fold buckle.fold"]);
    expect(told({ ...soundJob(), pieces: [...soundJob().pieces, soundCheek()] }, "named-parts")).toEqual([
      "error piece",
    ]);
  });
});

describe("inside-outline", () => {
  const holed = (at: Point, size = 6) => job(square, { holes: [punched("h", at, size)] });

  test("a hole lies wholly inside: touching the edge is inside, past it isn't", () => {
    expect(verdict(holed([3.0001, 20]), "inside-outline")).toBe("none");
    expect(told(holed([2.99, 20]), "inside-outline")).toEqual(["error hole h"]);
    expect(verdict(holed([60, 20]), "inside-outline")).toBe("error");
  });

  test("an awl's slit lies inside with its whole length", () => {
    const slit = (x: number) =>
      job(square, {
        holes: [{ id: "h", kind: "awl" as const, at: [x, 20] as Point, size: 2, angle: 0, use: "stitch" }],
      });
    expect(verdict(slit(1.01), "inside-outline")).toBe("none");
    expect(verdict(slit(0.99), "inside-outline")).toBe("error");
  });

  test("a cutout past the edge is found", () => {
    const cut = (x: number) =>
      job(square, {
        cutouts: [{ id: "s", use: "strap slot", outline: slotPath([x, 20], 20, 4), length: 20, width: 4 }],
      });
    expect(verdict(cut(10.01), "inside-outline")).toBe("none");
    expect(told(cut(9.9), "inside-outline")).toEqual(["error strap slot s"]);
  });

  test("openings that run into each other are found; those that lie apart aren't", () => {
    const pair = (x: number) => job(square, { holes: [punched("a", [15, 20], 4), punched("b", [x, 20], 6)] });
    expect(verdict(pair(20.01), "inside-outline")).toBe("none");
    expect(verdict(pair(19.99), "inside-outline")).toBe("error");
    expect(verdict(pair(15), "inside-outline")).toBe("error");
    const slot = (x: number) =>
      job(square, {
        holes: [punched("a", [x, 20], 4)],
        cutouts: [{ id: "o", use: "opening", outline: circlePath([20, 20], 8) }],
      });
    expect(verdict(slot(9.99), "inside-outline")).toBe("none");
    expect(verdict(slot(10.01), "inside-outline")).toBe("error");
    expect(verdict(slot(20), "inside-outline")).toBe("error"); // in the middle of nothing
  });

  test("one cutout inside another is found", () => {
    const two = job(square, {
      cutouts: [
        { id: "o", use: "opening", outline: circlePath([20, 20], 10) },
        { id: "s", use: "strap slot", outline: slotPath([20, 20], 6, 2), length: 6, width: 2 },
      ],
    });
    expect(verdict(two, "inside-outline")).toBe("error");
  });

  test("awl slits may cross each other, and may not run into a punched hole", () => {
    const slit = (id: string, at: Point, angle: number) => ({
      id,
      kind: "awl" as const,
      at,
      size: 3,
      angle,
      use: "stitch",
    });
    const crossing = [slit("a", [20, 20], 0), slit("b", [20, 20], 1)];
    expect(verdict(job(square, { holes: crossing }), "inside-outline")).toBe("none");
    expect(
      verdict(
        job(square, { holes: [slit("a", [20, 20], 0), punched("h", [23.4, 20], 4)] }),
        "inside-outline",
      ),
    ).toBe("error");
    expect(
      verdict(
        job(square, { holes: [slit("a", [20, 20], 0), punched("h", [23.6, 20], 4)] }),
        "inside-outline",
      ),
    ).toBe("none");
  });
});
