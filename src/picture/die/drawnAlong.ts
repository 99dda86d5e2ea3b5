// Lines of the piece that a hole's extension line would lie upon and hide.

import type { Die } from "../../die/die.ts";
import { curvesOf } from "../../geometry/curve.ts";
import type { Point } from "../../geometry/path.ts";
import * as trig from "../../units/trigonometry.ts";

/** Lines nearer than this run together on paper, mm: a narrow line and the room that tells it from its neighbour. */
const TOGETHER_MM = 0.7;
/** A line that turns by more than this from the axis only crosses, as a share of its length. */
const SLANT = 0.02;

/**
 * True when a fold, the centre line, or a straight edge of anything else runs along an extension line: "x" for
 * lines of one x, which stand upright; `k` paper millimetres to one of the piece.
 */
export function drawnAlong({ features, axis }: Die, along: "x" | "y", value: number, k: number): boolean {
  const [own, across] = along === "x" ? [0, 1] : [1, 0];
  const near = (a: Point, b: Point): boolean =>
    Math.abs(b[own]! - a[own]!) <= SLANT * Math.abs(b[across]! - a[across]!) &&
    Math.abs((a[own]! + b[own]!) / 2 - value) * k < TOGETHER_MM;
  if (axis) {
    const way: Point = [trig.cos(axis.angle), trig.sin(axis.angle)];
    if (near(axis.at, [axis.at[0] + way[0], axis.at[1] + way[1]])) return true;
  }
  return features
    .filter(({ letter, kind }) => letter === undefined && kind !== "outline")
    .flatMap(({ paths }) => paths.flatMap((path) => curvesOf(path)))
    .some((curve) => curve.kind === "line" && near(curve.p0, curve.p1));
}
