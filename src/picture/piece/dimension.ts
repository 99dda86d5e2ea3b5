import { type Point, polyline } from "../../geometry/path.ts";
import { between, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Layer, Stroke } from "../picture.ts";
import { stroke } from "./strokes.ts";

// Dimension lines after ISO 129-1: extension lines, an arrow at each end, narrow continuous line.

/** Arrow: 3 mm long, 15° over all, filled (from memory of ISO 129-1). */
const ARROW_MM = 3;
const ARROW_HALF = trig.tan((7.5 * Math.PI) / 180) * ARROW_MM;
/** An extension line leaves this gap at the piece and passes the dimension line by as much. */
const GAP_MM = 0.8;

/** A filled arrow whose tip is at `tip`, pointing along `direction` (of length 1). */
export function arrow(layer: Layer, tip: Point, direction: Point): Stroke {
  const foot = minus(tip, scaled(direction, ARROW_MM));
  const side: Point = [-direction[1] * ARROW_HALF, direction[0] * ARROW_HALF];
  const path = polyline([tip, plus(foot, side), minus(foot, side)], true);
  return { ...stroke(layer, "01.1", path), fill: "black" };
}

export type Dimension = {
  readonly from: Point;
  readonly to: Point;
  /** Where the dimension line's ends lie: beside `from` and `to`, square to them. */
  readonly lineFrom: Point;
  readonly lineTo: Point;
};

/** The dimension of a → b, its line moved by `offset` to the left of that direction. */
export function dimensionBeside(from: Point, to: Point, offset: number): Dimension {
  const along = unit(minus(to, from));
  const aside: Point = [-along[1] * offset, along[0] * offset];
  return { from, to, lineFrom: plus(from, aside), lineTo: plus(to, aside) };
}

/** The lines of a dimension, without its words. */
export function dimensionStrokes(layer: Layer, { from, to, lineFrom, lineTo }: Dimension): readonly Stroke[] {
  const along = unit(minus(lineTo, lineFrom));
  const extension = (a: Point, b: Point): readonly Stroke[] => {
    const way = minus(b, a);
    if (Math.abs(way[0]) + Math.abs(way[1]) < 2 * GAP_MM) return [];
    const beyond = scaled(unit(way), GAP_MM);
    return [stroke(layer, "01.1", polyline([plus(a, beyond), plus(b, beyond)]))];
  };
  return [
    ...extension(from, lineFrom),
    ...extension(to, lineTo),
    stroke(layer, "01.1", polyline([lineFrom, lineTo])),
    arrow(layer, lineFrom, scaled(along, -1)),
    arrow(layer, lineTo, along),
  ];
}

/** The middle of a dimension line. */
export const middleOf = ({ lineFrom, lineTo }: Dimension): Point => between(lineFrom, lineTo, 0.5);
