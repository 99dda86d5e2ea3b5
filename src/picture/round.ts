// Where drawn coordinates are rounded: once, to 0.001 mm, by the one function for it (units/round.ts).
// Outputs convert only numbers that have been through here.
import {
  type ArcSegment,
  arc,
  cubic,
  line,
  type Path,
  type Point,
  type Segment,
  withStarts,
} from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import { roundMm, roundTo } from "../units/round.ts";
import { arcMiddle, overHalfTurn } from "./arcs.ts";

/**
 * An arc with a radius or a chord below this is drawn as a straight line: rounding its ends could turn it
 * inside out. The line strays from it by less than 0.01 mm, a twenty-fifth of the thinnest line.
 */
const TINY_ARC_MM = 0.01;

/** Decimals of an angle in radians: the end of a base line of 300 mm moves by 0.0003 mm at most. */
const ANGLE_DECIMALS = 6;

/** A point to 0.001 mm on both axes. */
export const roundPoint = ([x, y]: Point): Point => [roundMm(x), roundMm(y)];

/** An angle in radians, from above −π to π, to a millionth. */
export function roundAngle(angle: number): number {
  const turn = 2 * Math.PI;
  const rest = angle - turn * Math.round(angle / turn);
  const rounded = roundTo(rest, ANGLE_DECIMALS);
  return rounded <= -roundTo(Math.PI, ANGLE_DECIMALS) ? -rounded : rounded;
}

/** An arc over half a turn is halved, so that ends that fall together can't make it vanish. */
function roundArc(from: Point, segment: ArcSegment): readonly Segment[] {
  const { to, centre, ccw } = segment;
  if (overHalfTurn(from, segment)) {
    const middle = arcMiddle(from, segment);
    return [arc(middle, centre, ccw), arc(to, centre, ccw)].flatMap((half, i) =>
      roundArc(i === 0 ? from : middle, half),
    );
  }
  const tiny = apart(from, to) < TINY_ARC_MM || apart(from, centre) < TINY_ARC_MM;
  return [tiny ? line(roundPoint(to)) : arc(roundPoint(to), roundPoint(centre), ccw)];
}

function roundSegment(from: Point, segment: Segment): readonly Segment[] {
  if (segment.kind === "line") return [line(roundPoint(segment.to))];
  if (segment.kind === "arc") return roundArc(from, segment);
  return [cubic(roundPoint(segment.c1), roundPoint(segment.c2), roundPoint(segment.to))];
}

/** A path with all coordinates to 0.001 mm; arcs stay arcs. */
export function roundPath(path: Path): Path {
  const segments = withStarts(path).flatMap(({ from, segment }) => roundSegment(from, segment));
  return { start: roundPoint(path.start), segments, closed: path.closed };
}
