// Plain immutable paths. Millimetres, x to the right, y up; an angle grows anticlockwise.
// An arc keeps its centre, so that it stays an arc: a die maker bends arcs, and DXF has them.

import * as trig from "../units/trigonometry.ts";

export type Point = readonly [x: number, y: number];

export type LineSegment = { readonly kind: "line"; readonly to: Point };
/** Part of a circle, less than a full turn, from the running point to `to` round `centre`. */
export type ArcSegment = {
  readonly kind: "arc";
  readonly to: Point;
  readonly centre: Point;
  /** True when the arc runs anticlockwise from its start to `to`. */
  readonly ccw: boolean;
};
export type CubicSegment = {
  readonly kind: "cubic";
  readonly c1: Point;
  readonly c2: Point;
  readonly to: Point;
};
export type Segment = LineSegment | ArcSegment | CubicSegment;

/**
 * A run of segments that starts at `start`. A closed path's last segment ends at `start`;
 * closed outlines run anticlockwise.
 */
export type Path = { readonly start: Point; readonly segments: readonly Segment[]; readonly closed: boolean };

export type Box = {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
};

/** Two points closer than this are the same point. A knife cannot follow less. */
export const SAME_POINT_MM = 0.001;

export const line = (to: Point): LineSegment => ({ kind: "line", to });
export const arc = (to: Point, centre: Point, ccw: boolean): ArcSegment => ({ kind: "arc", to, centre, ccw });
export const cubic = (c1: Point, c2: Point, to: Point): CubicSegment => ({ kind: "cubic", c1, c2, to });

export const openPath = (start: Point, segments: readonly Segment[]): Path => ({
  start,
  segments,
  closed: false,
});

const same = (a: Point, b: Point): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME_POINT_MM / 1000;

/** Closes a run of segments; a last line is added when the run does not end where it began. */
export function closedPath(start: Point, segments: readonly Segment[]): Path {
  const last = segments.at(-1);
  const closing = last && !same(last.to, start) ? [line(start)] : [];
  return { start, segments: [...segments, ...closing], closed: true };
}

/** Straight lines through the points, in order. */
export function polyline(points: readonly Point[], closed = false): Path {
  const [start, ...rest] = points;
  if (!start) throw new Error("polyline: needs at least one point");
  const segments = rest.map(line);
  return closed ? closedPath(start, segments) : openPath(start, segments);
}

/** A whole circle as two half arcs, anticlockwise, from its rightmost point. */
export function circlePath(centre: Point, radius: number): Path {
  const right: Point = [centre[0] + radius, centre[1]];
  const left: Point = [centre[0] - radius, centre[1]];
  return { start: right, segments: [arc(left, centre, true), arc(right, centre, true)], closed: true };
}

/** A slot with round ends (a stadium), anticlockwise. `length` over all, `angle` of its long side. */
export function slotPath(centre: Point, length: number, width: number, angle = 0): Path {
  const r = width / 2;
  const half = length / 2 - r;
  const [cos, sin] = [trig.cos(angle), trig.sin(angle)];
  const at = (x: number, y: number): Point => [centre[0] + x * cos - y * sin, centre[1] + x * sin + y * cos];
  const start = at(-half, -r);
  return {
    start,
    closed: true,
    segments: [
      line(at(half, -r)),
      arc(at(half, r), at(half, 0), true),
      line(at(-half, r)),
      arc(start, at(-half, 0), true),
    ],
  };
}

/** A rectangle with its lower left corner at `corner`, anticlockwise. */
export function rectanglePath(corner: Point, width: number, height: number): Path {
  const [x, y] = corner;
  return polyline([corner, [x + width, y], [x + width, y + height], [x, y + height]], true);
}

/** Every segment with the point it starts from. */
export function withStarts(path: Path): readonly { readonly from: Point; readonly segment: Segment }[] {
  return path.segments.map((segment, i) => ({
    from: i === 0 ? path.start : path.segments[i - 1]!.to,
    segment,
  }));
}

/** Where the path ends. */
export const endPoint = (path: Path): Point => path.segments.at(-1)?.to ?? path.start;
