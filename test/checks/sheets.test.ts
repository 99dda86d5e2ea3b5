import { describe, expect, test } from "vitest";
import { checkSheets } from "../../src/checks/index.ts";
import type { Point } from "../../src/geometry/path.ts";
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

test("the sound sheets have nothing to find", () =>
  expect(checkSheets(job, layout, { units: "in" })).toEqual([]));

describe("sheet-scale", () => {
  test("a page is a page of its paper", () => {
    expect(told(withSheet(layout, "A1", { page: { width: 279.4, height: 210 } }), "sheet-scale")).toContain(
      "error sheet A1",
    );
    expect(told(withSheet(layout, "A1", { landscape: false }), "sheet-scale")).toContain("error sheet A1");
    expect(
      told({ ...layout, paper: { ...layout.paper, width: 210, height: 297 } }, "sheet-scale"),
    ).toHaveLength(6);
  });

  test("a roll's page is as wide as the roll and no longer than it may be", () => {
    const roll = (page: { width: number; height: number }, height = 5000): Layout => {
      const window = { minX: 0, minY: 0, maxX: 120, maxY: 120 };
      const one = {
        ...layout.sheets[4]!,
        name: "A1",
        window,
        landscape: false,
        page,
        origin: [10, 10] as Point,
        joins: {},
      };
      return {
        ...layout,
        paper: { name: "roll 610 mm", width: 610, height, source: "as ordered", roll: true },
        plates: [layout.plates[1]!],
        sheets: [one],
      };
    };
    expect(told(roll({ width: 610, height: 140 }), "sheet-scale")).toEqual([]);
    expect(told(roll({ width: 600, height: 140 }), "sheet-scale")).toEqual(["error sheet A1"]);
    expect(told(roll({ width: 610, height: 140 }, 139), "sheet-scale")).toEqual(["error sheet A1"]);
  });

  test("what a sheet shows lies between its margins, 259.4 mm of Letter on its side", () => {
    const wide = (by: number) =>
      withSheet(layout, "A2", { window: { ...windowOf("A2"), maxX: windowOf("A2").maxX + by } });
    expect(told(wide(0), "sheet-scale")).toEqual([]);
    expect(told(wide(0.02), "sheet-scale")).toEqual(["error sheet A2"]);
    const placed = (x: number) => told(withSheet(layout, "A4", { origin: [x, 100] }), "sheet-scale");
    expect(placed(10)).toEqual([]);
    expect(placed(9.98)).toEqual(["error sheet A4"]);
    expect(
      told(
        withSheet(layout, "A4", { window: { ...windowOf("A4"), maxX: windowOf("A4").minX } }),
        "sheet-scale",
      ),
    ).toEqual(["error sheet A4"]);
  });

  test("a printer that prints small needs more page for the same leather, along the edge it strays on", () => {
    // At 0.99 along the long edge 259.4 mm of leather is sent as 262.0 mm.
    expect(told({ ...layout, factor: { x: 1, y: 0.99 } }, "sheet-scale")).toEqual([
      "error sheet A1",
      "error sheet A2",
      "error sheet A3",
    ]);
    expect(told({ ...layout, factor: { x: 0.99, y: 1 } }, "sheet-scale")).toEqual([]);
    // One that prints large may run off the paper itself: what is shown stays within the printable paper.
    expect(told({ ...layout, factor: { x: 1, y: 1.02 } }, "sheet-scale")).toEqual([]);
  });

  test("over 3 % astray the viewer has scaled the page", () => {
    expect(told({ ...layout, factor: { x: 1.0299, y: 1 } }, "sheet-scale")).toEqual([]);
    expect(told({ ...layout, factor: { x: 1.0301, y: 1 } }, "sheet-scale")).toEqual(["error printer"]);
    expect(
      foundOnSheets(job, { ...layout, factor: { x: 0.95, y: 1.04 } }, "sheet-scale").filter(
        (f) => f.place === "printer",
      ),
    ).toHaveLength(2);
  });

  test("a margin under 6.4 mm is a caution (trade sources R11)", () => {
    expect(told({ ...layout, margin: 6.4 }, "sheet-scale")).toEqual([]);
    expect(told({ ...layout, margin: 6.3 }, "sheet-scale")).toEqual(["caution margin"]);
  });
});

describe("sheet-joints", () => {
  const shift = (name: string, by: number) =>
    withSheet(layout, name, { window: { ...windowOf(name), minX: windowOf(name).minX + by } });

  test("neighbours overlap by what is claimed", () => {
    expect(told(shift("A2", 0.005), "sheet-joints")).toEqual([]);
    expect(told(shift("A2", 0.1), "sheet-joints")).toEqual(["error sheet A1, right", "error sheet A2, left"]);
    expect(told({ ...layout, overlap: 12 }, "sheet-joints")).toHaveLength(8);
    const low = withSheet(layout, "B1", { window: { ...windowOf("B1"), minY: 51 } });
    expect(told(low, "sheet-joints")).toEqual(["error sheet B1, below", "error sheet C1, above"]);
  });

  test("the joint is one of the plate's", () => {
    expect(told(withPlate(layout, "1", { jointsX: [254.4, 503.8, 753.3] }), "sheet-joints")).toEqual([
      "error sheet A3, right",
      "error sheet A4, left",
    ]);
  });

  test("they lie level with each other", () => {
    const up = withSheet(layout, "A2", { window: { ...windowOf("A2"), maxY: 79 } });
    expect(told(up, "sheet-joints")).toContain("error sheet A1, right");
  });

  test("each names the other, and nobody else", () => {
    expect(told(withSheet(layout, "A2", { joins: { right: "A3" } }), "sheet-joints")).toEqual([
      "error sheet A1, right",
    ]);
    expect(told(withSheet(layout, "A4", { joins: { left: "A9" } }), "sheet-joints")).toContain(
      "error sheet A4, left",
    );
    expect(told(withSheet(layout, "B1", { joins: { below: "A1" } }), "sheet-joints")).toContain(
      "error sheet B1, below",
    );
    const silent = withSheet(withSheet(layout, "B1", { joins: {} }), "C1", { joins: {} });
    expect(told(silent, "sheet-joints")).toEqual(["error sheet C1, above"]);
  });
});

describe("sheets-used", () => {
  test("a sheet on which nothing is drawn is found", () => {
    const window = { minX: 0, minY: 95, maxX: 120, maxY: 120 };
    expect(
      foundOnSheets(job, withSheet(layout, "B1", { window, pieces: [] }), "sheets-used").map(
        (f) => f.message,
      ),
    ).toEqual(["Sheet B1 is empty."]);
  });

  test("a sheet names what it shows and nothing else", () => {
    expect(told(withSheet(layout, "A2", { pieces: ["crown"] }), "sheets-used")).toEqual(["error sheet A2"]);
    expect(told(withSheet(layout, "A4", { pieces: ["crown", "cheek"] }), "sheets-used")).toEqual([
      "error sheet A4",
    ]);
  });

  test("leather all over a sheet is no empty sheet", () => {
    const inside = { minX: 20, minY: 40, maxX: 60, maxY: 80 };
    const bare = withPiece(job, "ear-piece", (p) => ({ ...p, cutouts: [] }));
    expect(
      told(withSheet(layout, "B1", { window: inside, pieces: ["ear-piece"] }), "sheets-used", bare),
    ).toEqual([]);
  });

  test("names of sheets are given once, and their drawings exist", () => {
    expect(told(withSheet(layout, "A3", { name: "A2" }), "sheets-used")).toContain("error sheet A2");
    expect(told(withSheet(layout, "B1", { plate: "3" }), "sheets-used")).toEqual(["error sheet B1"]);
  });
});
