import type { Box, Point } from "../geometry/path.ts";
import { placedPoint } from "../geometry/transform.ts";
import type { Kept, Placed } from "../model/sheet.ts";
import { roundMm } from "../units/round.ts";

/** Where a point of a piece lies when only stretches of it are drawn; undefined where it is left out. */
export function keptPoint(p: Point, kept?: readonly Kept[]): Point | undefined {
  if (!kept) return p;
  const stretch = kept.find(([from, to]) => p[0] >= from && p[0] <= to);
  return stretch && [p[0] - stretch[2], p[1]];
}

const rounded = ([x, y]: Point): Point => [roundMm(x), roundMm(y)];

/**
 * The box on the plate of a box in the piece as it is drawn; pieces lie square to their plate. Rounded to
 * 0.001 mm: what is chosen by it must not hang on the last bit of a sine.
 */
export function boxOnPlate(placed: Placed, box: Box): Box {
  const a = rounded(placedPoint([box.minX, box.minY], placed.placement));
  const b = rounded(placedPoint([box.maxX, box.maxY], placed.placement));
  return {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  };
}
