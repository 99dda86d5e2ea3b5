import { type Box, type Point, polyline } from "../../geometry/path.ts";
import { blockBox, blockWords, type Reading } from "../piece/block.ts";
import { findPlace } from "../piece/find.ts";
import type { Chord } from "../piece/space.ts";
import { stroke } from "../piece/strokes.ts";
import { SMALL_MM } from "../piece/title.ts";
import { type Page, withMore } from "./page.ts";

// The edges of a sheet that are joined: left and above they are trimmed and lie on the neighbour, right
// and below they carry the glue.

/** Words of a trimmed edge stand this near to it. */
const TRIM_BAND_MM = 6;

type Side = {
  /** The line that the upper sheet's edge lies on. */
  readonly line: Chord;
  /** Where the words may stand. */
  readonly band: Box;
  readonly reading: Reading;
  /** What is said, the fullest first. */
  readonly says: readonly string[];
};

const trim = (other: string): readonly string[] => [
  `trim here, lay this edge on ${other}`,
  `trim here, lay on ${other}`,
  "trim here",
];
const glue = (other: string): readonly string[] => [
  `glue here: ${other} lies on top, its edge on the line`,
  `glue here, under ${other}`,
  "glue here",
];

/** A side whose line runs up the page at x, or across it at y. */
const upAt = (x: number, w: Box, band: Partial<Box>, says: readonly string[]): Side => ({
  line: [
    [x, w.minY],
    [x, w.maxY],
  ],
  band: { ...w, ...band },
  reading: 90,
  says,
});
const acrossAt = (y: number, w: Box, band: Partial<Box>, says: readonly string[]): Side => ({
  line: [
    [w.minX, y],
    [w.maxX, y],
  ],
  band: { ...w, ...band },
  reading: 0,
  says,
});

function sidesOf({ window: w, scale, sheet }: Page, overlap: number): readonly Side[] {
  const { left, right, above, below } = sheet.joins;
  const [x, y] = [w.maxX - overlap * scale.x, w.minY + overlap * scale.y];
  return [
    ...(left ? [upAt(w.minX, w, { maxX: w.minX + TRIM_BAND_MM }, trim(left))] : []),
    ...(above ? [acrossAt(w.maxY, w, { minY: w.maxY - TRIM_BAND_MM }, trim(above))] : []),
    ...(right ? [upAt(x, w, { minX: x }, glue(right))] : []),
    ...(below ? [acrossAt(y, w, { maxY: y }, glue(below))] : []),
  ];
}

const middle = (b: Box): Point => [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];

function withSideWords(page: Page, { band, reading, says }: Side): Page {
  for (const text of says) {
    const block = [{ text, size: SMALL_MM }];
    const box = findPlace(page.space, {
      ...blockBox(block, reading),
      areas: [band],
      near: middle(band),
      clear: 0.5,
    });
    if (box) return withMore(page, blockWords(block, box, reading));
  }
  return page;
}

/** Draws the lines to trim and to glue by, and says which is which; nothing else may lie under a neighbour. */
export function withEdges(page: Page, overlap: number): Page {
  const sides = sidesOf(page, overlap);
  const lines = sides.map((s) => stroke("sheet", "01.1", polyline(s.line)));
  const lined = withMore(
    page,
    lines,
    [],
    sides.map((s) => s.line),
  );
  return sides.reduce(withSideWords, lined);
}
