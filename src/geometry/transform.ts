// Moving, turning, mirroring. A mirrored path keeps its order of points, so a length s along it finds the
// mirror image of the same place; a mirrored anticlockwise outline therefore runs clockwise
// (`anticlockwise` turns it round where the direction matters). 0 − x is written for −x so that no −0 arises.
import * as trig from "../units/trigonometry.ts";
import { arc, cubic, line, type Path, type Point, type Segment, withStarts } from "./path.ts";

type PointMap = (point: Point) => Point;

/** How a piece lies somewhere: mirrored first (y → −y) if said, then turned about the origin, then moved. */
export type Placement = { readonly at: Point; readonly angle: number; readonly mirrored?: boolean };

function mappedSegment(segment: Segment, map: PointMap, mirrors: boolean): Segment {
  const to = map(segment.to);
  if (segment.kind === "line") return line(to);
  if (segment.kind === "cubic") return cubic(map(segment.c1), map(segment.c2), to);
  return arc(to, map(segment.centre), segment.ccw !== mirrors);
}

function mapped(path: Path, map: PointMap, mirrors = false): Path {
  const segments = path.segments.map((segment) => mappedSegment(segment, map, mirrors));
  return { start: map(path.start), segments, closed: path.closed };
}

/** The path moved by [dx, dy]. */
export const moved = (path: Path, by: Point): Path => mapped(path, ([x, y]) => [x + by[0], y + by[1]]);

function turning(angle: number, [ox, oy]: Point): PointMap {
  const [cos, sin] = [trig.cos(angle), trig.sin(angle)];
  return ([x, y]) => [ox + (x - ox) * cos - (y - oy) * sin, oy + (x - ox) * sin + (y - oy) * cos];
}

/** The path turned anticlockwise by `angle` about a point, the origin unless said. */
export const turned = (path: Path, angle: number, about: Point = [0, 0]): Path =>
  mapped(path, turning(angle, about));

/** Left and right exchanged: x → −x. */
export const mirroredInX = (path: Path): Path => mapped(path, ([x, y]) => [0 - x, y], true);

/** Up and down exchanged: y → −y. */
export const mirroredInY = (path: Path): Path => mapped(path, ([x, y]) => [x, 0 - y], true);

/** The same path run from its end to its start. */
export function reversed(path: Path): Path {
  const back = withStarts(path).map(({ from, segment }): Segment => {
    if (segment.kind === "line") return line(from);
    if (segment.kind === "cubic") return cubic(segment.c2, segment.c1, from);
    return arc(from, segment.centre, !segment.ccw);
  });
  return { start: path.segments.at(-1)?.to ?? path.start, segments: back.reverse(), closed: path.closed };
}

function placing({ at, angle, mirrored }: Placement): PointMap {
  const turn = turning(angle, [0, 0]);
  return ([x, y]) => {
    const [tx, ty] = turn([x, mirrored ? 0 - y : y]);
    return [tx + at[0], ty + at[1]];
  };
}

/** The path as the placement lays it. */
export const placed = (path: Path, placement: Placement): Path =>
  mapped(path, placing(placement), placement.mirrored === true);

/** A point as the placement lays it. */
export const placedPoint = (point: Point, placement: Placement): Point => placing(placement)(point);
