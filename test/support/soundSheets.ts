// Sheets for the sound job, laid out by hand on Letter paper: one plate of four sheets in a row, one of two
// sheets one above the other.
import type { Box } from "../../src/geometry/path.ts";
import type { Layout, Plate, Sheet } from "../../src/model/sheet.ts";

const MARGIN = 10;
const OVERLAP = 10;
/** Width of Letter on its side, less the margins. */
const ROOM_X = 279.4 - 2 * MARGIN;
/** Joints every 249.4 mm: what a sheet shows less one overlap. */
const JOINTS = [254.4, 503.8, 753.2] as const;

const sheet = (
  name: string,
  plate: string,
  row: number,
  column: number,
  window: Box,
  pieces: readonly string[],
  joins: Sheet["joins"],
): Sheet => ({
  name,
  plate,
  row,
  column,
  window,
  landscape: true,
  page: { width: 279.4, height: 215.9 },
  origin: [MARGIN, 40],
  pieces,
  joins,
});

const long: Plate = {
  id: "1",
  width: 908,
  height: 80,
  placed: [
    { piece: "crown", placement: { at: [4, 20], angle: 0 } },
    { piece: "cheek", placement: { at: [4, 50], angle: 0 } },
  ],
  jointsX: JOINTS,
  jointsY: [],
};

const small: Plate = {
  id: "2",
  width: 120,
  height: 120,
  placed: [
    { piece: "ear-piece", placement: { at: [10, 30], angle: 0 } },
    // Turned upright, so that placements with an angle are looked at too.
    { piece: "keeper-fixed", placement: { at: [100, 20], angle: Math.PI / 2 } },
  ],
  jointsX: [],
  jointsY: [55],
};

const across = (i: number): Box => ({
  minX: i * 249.4,
  minY: 0,
  maxX: Math.min(i * 249.4 + ROOM_X, 908),
  maxY: 80,
});
const both = ["crown", "cheek"];
const corner = ["ear-piece", "keeper-fixed"];

export const soundLayout = (): Layout => ({
  paper: { name: "letter", width: 215.9, height: 279.4, source: "ANSI/ASME Y14.1, size A" },
  margin: MARGIN,
  overlap: OVERLAP,
  factor: { x: 1, y: 1 },
  plates: [long, small],
  sheets: [
    sheet("A1", "1", 0, 0, across(0), both, { right: "A2" }),
    sheet("A2", "1", 0, 1, across(1), both, { left: "A1", right: "A3" }),
    sheet("A3", "1", 0, 2, across(2), ["crown"], { left: "A2", right: "A4" }),
    sheet("A4", "1", 0, 3, across(3), ["crown"], { left: "A3" }),
    sheet("B1", "2", 1, 0, { minX: 0, minY: 50, maxX: 120, maxY: 120 }, corner, { below: "C1" }),
    sheet("C1", "2", 2, 0, { minX: 0, minY: 0, maxX: 120, maxY: 60 }, corner, { above: "B1" }),
  ],
});

/** The layout with one sheet changed. */
export const withSheet = (layout: Layout, name: string, change: Partial<Sheet>): Layout => ({
  ...layout,
  sheets: layout.sheets.map((s) => (s.name === name ? { ...s, ...change } : s)),
});

/** The layout with one plate changed. */
export const withPlate = (layout: Layout, id: string, change: Partial<Plate>): Layout => ({
  ...layout,
  plates: layout.plates.map((p) => (p.id === id ? { ...p, ...change } : p)),
});
