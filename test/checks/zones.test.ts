import { describe, expect, test } from "vitest";
import { circlePath, type Path, polyline, rectanglePath } from "../../src/geometry/path.ts";
import type { Piece } from "../../src/model/piece.ts";
import { leaf } from "../../src/model/quantity.ts";
import { found, told, verdict } from "../support/found.ts";
import { soundJob, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, punched, stitched } from "../support/soundPiece.ts";

describe("tooling-clear", () => {
  const tooled = (outline: Path, over: Partial<Piece> = {}) =>
    bareJob([
      barePiece("a", rectanglePath([0, 0], 200, 60), {
        zones: [{ id: "t", kind: "tooling", outline, label: "tooling" }],
        ...over,
      }),
    ]);
  const zone = rectanglePath([50, 10], 100, 40);

  test("a zone inside the outline is clear, one over the edge an error", () => {
    expect(verdict(tooled(zone), "tooling-clear")).toBe("none");
    expect(verdict(tooled(rectanglePath([50, -0.01], 100, 40)), "tooling-clear")).toBe("error");
  });

  test.each([
    ["a hole", { holes: [punched("h", [100, 30], 4)] }, "hole h"],
    ["a hole that reaches into it", { holes: [punched("h", [48.2, 30], 4)] }, "hole h"],
    [
      "an awl slit that reaches into it",
      { holes: [{ ...punched("h", [49, 30], 3), kind: "awl" as const }] },
      "hole h",
    ],
    ["a cutout", { cutouts: [{ id: "o", use: "opening", outline: circlePath([100, 30], 5) }] }, "opening o"],
    [
      "a fold",
      { folds: [{ id: "f", from: [100, 0] as const, to: [100, 60] as const, label: "" }] },
      "fold f",
    ],
    [
      "a short fold all inside",
      { folds: [{ id: "f", from: [100, 20] as const, to: [100, 40] as const, label: "" }] },
      "fold f",
    ],
    [
      "a skive",
      {
        zones: [
          {
            id: "s",
            kind: "skive" as const,
            outline: rectanglePath([0, 0], 51, 60),
            from: 3,
            to: 2,
            label: "",
          },
        ],
      },
      "skive s",
    ],
    [
      "a skive that reaches 0.3 mm onto it",
      {
        zones: [
          {
            id: "s",
            kind: "skive" as const,
            outline: rectanglePath([0, 0], 50.3, 60),
            from: 3,
            to: 2,
            label: "",
          },
        ],
      },
      "skive s",
    ],
    [
      "a skive crossing it",
      {
        zones: [
          {
            id: "s",
            kind: "skive" as const,
            outline: rectanglePath([90, 0], 5, 60),
            from: 3,
            to: 2,
            label: "",
          },
        ],
      },
      "skive s",
    ],
  ])("%s on it is a caution", (_, over, what) => {
    const job = tooled(zone);
    const both = withPiece(job, "a", (p) => ({
      ...p,
      ...over,
      zones: [...p.zones, ...("zones" in over ? over.zones : [])],
    }));
    expect(found(both, "tooling-clear").map((f) => [f.severity, f.value])).toEqual([
      ["caution", `over the ${what}`],
    ]);
  });

  test("what only touches it is clear", () => {
    const over = {
      holes: [punched("h", [47.9, 30], 4)],
      cutouts: [{ id: "o", use: "opening", outline: rectanglePath([160, 10], 20, 20) }],
    };
    const skive = {
      id: "s",
      kind: "skive" as const,
      outline: rectanglePath([0, 0], 50, 60),
      from: 3,
      to: 2,
      label: "",
    };
    const job = withPiece(tooled(zone, over), "a", (p) => ({ ...p, zones: [...p.zones, skive] }));
    expect(verdict(job, "tooling-clear")).toBe("none");
  });
});

describe("feathered-end", () => {
  const holed = (x: number, size = 4) =>
    withPiece(soundJob(), "cheek", (p) => ({ ...p, holes: [...p.holes, punched("h", [x, 0], size)] }));

  test("the end that is thinned to nothing, 12 mm here, carries no part of a hole", () => {
    expect(verdict(holed(14), "feathered-end")).toBe("none");
    expect(told(holed(13.8), "feathered-end")).toEqual(["error hole h"]);
    expect(told(holed(6), "feathered-end")).toEqual(["error hole h"]);
  });

  test("a skive that leaves leather carries holes", () => {
    const left = (to: number) =>
      verdict(
        withPiece(holed(6), "cheek", (p) => withPart(p, "zones", "feather", { to })),
        "feathered-end",
      );
    expect(left(0)).toBe("error");
    expect(left(0.8)).toBe("none");
  });

  test("an awl that goes through both legs counts on the back leg too", () => {
    // The last stitches come through the back leg at 60 − 42.8887 = 17.11.
    const feathered = (length: number) =>
      told(
        withPiece(soundJob(), "cheek", (p) =>
          withPart(p, "zones", "feather", { outline: rectanglePath([0, -8], length, 16) }),
        ),
        "feathered-end",
      );
    expect(feathered(17.11)).toEqual([]);
    expect(feathered(17.3)).toEqual(["error hole lower.9", "error hole upper.9"]);
  });

  test("a row that isn't a turn-back's own stays on its leg", () => {
    const row = stitched("s", 110, 0, 3, 3);
    const job = withPiece(soundJob(), "cheek", (p) => ({
      ...p,
      holes: [...p.holes, ...row.holes],
      seams: [...p.seams, row.seam],
    }));
    expect(verdict(job, "feathered-end")).toBe("none");
  });
});

describe("weakest-section", () => {
  const section = (name: string, value: number) => ({
    name,
    estimate: leaf(name, value, "force", { kind: "fact", source: "invented" }),
  });
  const sections = (...all: readonly ReturnType<typeof section>[]) =>
    bareJob([
      barePiece(
        "a",
        polyline(
          [
            [0, 0],
            [40, 0],
            [40, 40],
            [0, 40],
          ],
          true,
        ),
        { sections: all },
      ),
    ]);

  test("the least estimate is named, as an estimate and not a rating", () => {
    const [finding, ...rest] = found(
      sections(section("slot", 504), section("screw", 495), section("joint", 700)),
      "weakest-section",
    );
    expect(rest).toEqual([]);
    expect(finding).toMatchObject({ severity: "note", place: "screw", value: "495 N" });
    expect(finding!.message).toContain("An estimate for comparing designs, not a rating.");
    expect(finding!.mend).toContain("qualified saddler");
  });

  test("a section with nothing left is an error, and doesn't hide the next", () => {
    expect(told(sections(section("slot", 0), section("screw", 495)), "weakest-section")).toEqual([
      "error slot",
      "note screw",
    ]);
    expect(told(sections(section("slot", Number.NaN)), "weakest-section")).toEqual(["error slot"]);
  });

  test("a piece without sections has none to name", () =>
    expect(verdict(sections(), "weakest-section")).toBe("none"));
});
