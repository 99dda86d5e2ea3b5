// Sheets of nested dies for the tests, and what is measured on them and on sheets with stretches.
import type { Die } from "../../src/die/die.ts";
import { pairDie } from "../../src/die/pairDie.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Box } from "../../src/geometry/path.ts";
import type { Units } from "../../src/model/say.ts";
import { type PairSheetInput, pairSheet } from "../../src/picture/die/pairSheet.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Stroke } from "../../src/picture/picture.ts";
import { inputFor, LETTER } from "./dies.ts";

export const TABLOID = { width: 279.4, height: 431.8 };

export function pairSheetOf(die: Die, units: Units, more: Partial<PairSheetInput> = {}): Picture {
  const { title, margin } = inputFor(die, units);
  return pairSheet({
    die,
    nest: pairDie(die),
    sheet: LETTER,
    margin,
    units,
    title,
    of: `${title.number}, revision B`,
    file: `die-${die.piece.id}-two-B.dxf`,
    ...more,
  });
}

export const strokesOn = (picture: Picture): readonly Stroke[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "stroke" ? [item] : []));

/** The box of the stroke with this name or whose name ends so. */
export function boxOf(picture: Picture, id: string): Box {
  const found = strokesOn(picture).find((s) => s.id === id || s.id?.endsWith(`.${id}`));
  if (!found) throw new Error(`no ${id} on ${picture.title}`);
  return boundsOf(found.path);
}

/** Of the black bars on a sheet, the box of those that are 50 mm long with an equal one across: squares. */
export function squaresOn(picture: Picture): readonly Box[] {
  const bars = strokesOn(picture)
    .filter(({ fill, layer }) => fill === "black" && layer === "sheet")
    .map(({ path }) => boundsOf(path));
  const level = bars.filter((b) => Math.abs(b.maxX - b.minX - 50) < 0.01);
  return level.flatMap((low) => {
    const high = level.find(
      (b) => Math.abs(b.maxY - low.minY - 50) < 0.01 && Math.abs(b.minX - low.minX) < 0.01,
    );
    const sides = bars.filter(
      (b) => Math.abs(b.minY - low.minY) < 0.01 && Math.abs(b.maxY - b.minY - 50) < 0.01,
    );
    const both = [low.minX, low.maxX].every((x) =>
      sides.some((b) => b.minX <= x + 0.01 && b.maxX >= x - 0.01),
    );
    return high && both ? [{ minX: low.minX, maxX: low.maxX, minY: low.minY, maxY: high.maxY }] : [];
  });
}

/** Whether two boxes share an area. */
export const meet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
