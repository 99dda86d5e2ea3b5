import { describe, expect, test } from "vitest";
import { circlePath, type Point, rectanglePath } from "../../src/geometry/path.ts";
import type { Layout } from "../../src/model/sheet.ts";
import { foundOnSheets } from "../support/found.ts";
import { soundJob, withPiece } from "../support/soundJob.ts";
import { soundLayout, withPlate, withSheet } from "../support/soundSheets.ts";

const job = soundJob();
const told = (layout: Layout, rule: string, made = job): readonly string[] =>
  foundOnSheets(made, layout, rule).map(
    (f) => `${f.severity} ${[f.piece, f.place].filter((w) => w !== "").join(" ")}`,
  );
const layout = soundLayout();
const windowOf = (name: string) => layout.sheets.find((s) => s.name === name)!.window;

describe("sheet-coverage", () => {
  const narrow = (name: string, by: number) =>
    withSheet(layout, name, { window: { ...windowOf(name), maxX: windowOf(name).maxX - by } });

  test("a strip that no sheet shows is found, however narrow", () => {
    // A1 and A2 share 10 mm; less of A1 by 10.3 leaves a strip of 0.3.
    expect(told(narrow("A1", 9.9), "sheet-coverage")).toEqual([]);
    expect(told(narrow("A1", 10.3), "sheet-coverage")).toContain("error crown outline");
    expect(told(narrow("A4", 4), "sheet-coverage")).toEqual([]);
    expect(told(narrow("A4", 4.2), "sheet-coverage")).toEqual(["error crown outline"]);
  });

  test("every part is looked for: a missing sheet loses holes, folds, seams, zones, marks and slots", () => {
    const missing = { ...layout, sheets: layout.sheets.filter((s) => s.name !== "A1") };
    const lost = told(missing, "sheet-coverage");
    for (const part of [
      "outline",
      "fold buckle.fold",
      "tongue slot slot",
      "seam upper",
      "hole upper.1",
      "zone skive",
      "mark crease",
    ])
      expect(lost).toContain(`error cheek ${part}`);
    expect(lost).toContain("error crown hole near.1");
    expect(lost).not.toContain("error cheek fold bit.fold");
  });

  test("a turned piece is looked for where it lies", () => {
    const out = withPlate(layout, "2", {
      placed: layout.plates[1]!.placed.map((p) =>
        p.piece === "keeper-fixed" ? { ...p, placement: { at: [100, 68] as Point, angle: Math.PI / 2 } } : p,
      ),
    });
    expect(told(out, "sheet-coverage")).toEqual(["error keeper-fixed outline"]);
  });

  test("every piece is drawn, once, and no other", () => {
    const without = withPlate(layout, "2", { placed: layout.plates[1]!.placed.slice(0, 1) });
    expect(told(without, "sheet-coverage")).toEqual(["error keeper-fixed sheets"]);
    const twice = withPlate(layout, "2", {
      placed: [...layout.plates[1]!.placed, layout.plates[1]!.placed[0]!],
    });
    expect(told(twice, "sheet-coverage")).toEqual(["error ear-piece sheets"]);
    const stranger = withPlate(layout, "2", {
      placed: [...layout.plates[1]!.placed, { piece: "browband", placement: { at: [0, 0], angle: 0 } }],
    });
    expect(told(stranger, "sheet-coverage")).toEqual(["error browband sheets"]);
  });

  describe("ends only", () => {
    // The crown is plain between its innermost holes at 174.3 and 725.7.
    const ends = (near: number, far: number, moved = far - near - 60) =>
      withPlate(layout, "1", {
        placed: layout.plates[0]!.placed.map((p) =>
          p.piece === "crown"
            ? {
                ...p,
                kept: [
                  [0, near, 0],
                  [far, 900, moved],
                ] as const,
              }
            : p,
        ),
      });

    test("plain strap may be left out", () => expect(told(ends(200, 700), "ends-only")).toEqual([]));
    test("a hole may not", () =>
      expect(told(ends(170, 700), "ends-only")).toEqual(["error crown hole near.7"]));
    test("the two ends may not be drawn over each other", () =>
      expect(told(ends(200, 700, 501), "ends-only")).toEqual(["error crown ends only"]));
    test("a shaped edge may not be left out", () => {
      const shaped = withPiece(job, "crown", (p) => ({ ...p, straight: false }));
      expect(told(ends(200, 700), "ends-only", shaped)).toEqual(["error crown ends only"]);
      const stub = withPlate(layout, "1", {
        placed: layout.plates[0]!.placed.map((p) =>
          p.piece === "crown" ? { ...p, kept: [[10, 890, 0]] as const } : p,
        ),
      });
      expect(told(stub, "ends-only")).toEqual(["error crown ends only"]);
    });
    test("a seam or a cutout may not be left out", () => {
      const cut = withPiece(job, "crown", (p) => ({
        ...p,
        cutouts: [{ id: "o", use: "opening", outline: circlePath([450, 0], 3) }],
      }));
      expect(told(ends(200, 700), "ends-only", cut)).toEqual(["error crown opening o"]);
    });
    test("what is drawn moved must be on a sheet where it is drawn", () => {
      expect(told(ends(200, 700, -20), "sheet-coverage")).toContain("error crown outline");
    });
  });
});

describe("pieces-apart", () => {
  const cheekAt = (y: number) =>
    withPlate(layout, "1", {
      placed: layout.plates[0]!.placed.map((p) =>
        p.piece === "cheek" ? { ...p, placement: { at: [40, y] as Point, angle: 0 } } : p,
      ),
    });

  test("1 mm of paper lies between two pieces", () => {
    // The crown's upper edge lies at 28, the cheek's lower one 8 under its middle.
    expect(told(cheekAt(37.001), "pieces-apart")).toEqual([]);
    expect(told(cheekAt(36.999), "pieces-apart")).toEqual(["error crown beside cheek"]);
    expect(told(cheekAt(20), "pieces-apart")).toEqual(["error crown beside cheek"]);
  });

  test("a piece inside another's edge lies on it", () => {
    const over = withPlate(layout, "2", {
      placed: layout.plates[1]!.placed.map((p) => ({
        ...p,
        placement: { at: (p.piece === "ear-piece" ? [10, 30] : [40, 35]) as Point, angle: p.placement.angle },
      })),
    });
    expect(told(over, "pieces-apart")).toEqual(["error ear-piece beside keeper-fixed"]);
  });

  test("of a strap printed ends only the ends are looked at", () => {
    const ends = withPlate(cheekAt(20), "1", {
      placed: [
        {
          piece: "crown",
          placement: { at: [0, 20], angle: 0 },
          kept: [
            [0, 30, 0],
            [700, 900, 0],
          ],
        },
        { piece: "cheek", placement: { at: [100, 20], angle: 0 } },
      ],
    });
    expect(told(ends, "pieces-apart")).toEqual([]);
  });

  test("a strap's end that is drawn by itself is an edge like any other", () => {
    const into = (x: number) =>
      withPlate(layout, "1", {
        placed: [
          { piece: "cheek", placement: { at: [100, 20], angle: 0 }, kept: [[0, 452, 0]] },
          { piece: "keeper-fixed", placement: { at: [x, 20], angle: 0 } },
        ],
      });
    expect(told(into(40), "pieces-apart")).toEqual([]);
    expect(told(into(55), "pieces-apart")).toEqual(["error cheek beside keeper-fixed"]);
  });

  test("a rough-cut line is cut along too", () => {
    const rough = (grow: number) =>
      withPiece(job, "cheek", (p) => ({
        ...p,
        rough: rectanglePath([-grow, -8 - grow], 452 + 2 * grow, 16 + 2 * grow),
      }));
    // 2 mm of paper lie between the two cut lines.
    expect(told(cheekAt(38), "pieces-apart", rough(0.9))).toEqual([]);
    expect(told(cheekAt(38), "pieces-apart", rough(1.1))).toEqual(["error crown beside cheek"]);
    expect(told(layout, "sheet-coverage", rough(3.9))).toEqual([]);
    expect(told(layout, "sheet-coverage", rough(4.2))).toEqual(["error cheek rough-cut line"]);
  });

  test("the words give sizes", () => {
    const [finding] = foundOnSheets(job, cheekAt(36.5), "pieces-apart");
    expect(finding).toMatchObject({ value: "0.5 mm", limit: "at least 1 mm" });
  });
});
