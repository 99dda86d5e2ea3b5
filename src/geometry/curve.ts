// One segment together with where it starts, in the form that sums are done in: t runs from 0 to 1.
import * as trig from "../units/trigonometry.ts";
import {
  type ArcSegment,
  arc,
  cubic,
  line,
  type Path,
  type Point,
  SAME_POINT_MM,
  type Segment,
} from "./path.ts";
import { remembered } from "./remember.ts";
import { apart, between, leftOf, minus, polar, scaled, sizeOf, unit } from "./vector.ts";

export type LineCurve = { readonly kind: "line"; readonly p0: Point; readonly p1: Point };
export type ArcCurve = {
  readonly kind: "arc";
  readonly p0: Point;
  readonly p1: Point;
  readonly centre: Point;
  readonly radius: number;
  /** Direction from the centre to p0. */
  readonly angle0: number;
  /** Angle run through, positive anticlockwise. */
  readonly sweep: number;
};
export type CubicCurve = {
  readonly kind: "cubic";
  readonly p0: Point;
  readonly c1: Point;
  readonly c2: Point;
  readonly p1: Point;
};
export type Curve = LineCurve | ArcCurve | CubicCurve;

/**
 * A segment shorter than this has no length: it is left out of every sum. A thousandth of what a
 * knife can follow, far above the rounding of coordinates (about 1e-13 mm).
 */
export const NO_LENGTH_MM = SAME_POINT_MM / 1000;

/** A derivative smaller than this share of a cubic's size has no direction. */
const NO_SPEED = 1e-9;

const TURN = 2 * Math.PI;

function arcCurve(from: Point, segment: ArcSegment): ArcCurve {
  const { to, centre, ccw } = segment;
  const a0 = trig.atan2(from[1] - centre[1], from[0] - centre[0]);
  const a1 = trig.atan2(to[1] - centre[1], to[0] - centre[0]);
  const left = (((a1 - a0) % TURN) + TURN) % TURN;
  const sweep = ccw ? left : left === 0 ? 0 : left - TURN;
  // The mean of both ends, should they differ in the last digits.
  const radius = (apart(from, centre) + apart(to, centre)) / 2;
  return { kind: "arc", p0: from, p1: to, centre, radius, angle0: a0, sweep };
}

export function curveOf(from: Point, segment: Segment): Curve {
  if (segment.kind === "arc") return arcCurve(from, segment);
  if (segment.kind === "line") return { kind: "line", p0: from, p1: segment.to };
  return { kind: "cubic", p0: from, c1: segment.c1, c2: segment.c2, p1: segment.to };
}

export function segmentOf(curve: Curve): Segment {
  if (curve.kind === "line") return line(curve.p1);
  if (curve.kind === "arc") return arc(curve.p1, curve.centre, curve.sweep > 0);
  return cubic(curve.c1, curve.c2, curve.p1);
}

/** An open path along the curves, which follow one another. */
export function pathOf(start: Point, curves: readonly Curve[], closed = false): Path {
  return { start, segments: curves.map(segmentOf), closed };
}

function hasLength(curve: Curve): boolean {
  if (apart(curve.p0, curve.p1) >= NO_LENGTH_MM) return true;
  if (curve.kind !== "cubic") return false;
  return apart(curve.p0, curve.c1) >= NO_LENGTH_MM || apart(curve.p0, curve.c2) >= NO_LENGTH_MM;
}

/** The path's curves in order, without those of no length. */
export const curvesOf = remembered((path: Path): readonly Curve[] => {
  const curves: Curve[] = [];
  let from = path.start;
  for (const segment of path.segments) {
    const curve = curveOf(from, segment);
    if (hasLength(curve)) curves.push(curve);
    from = segment.to;
  }
  return curves;
});

function cubicAt({ p0, c1, c2, p1 }: CubicCurve, t: number): Point {
  const s = 1 - t;
  const a = s * s * s;
  const b = 3 * s * s * t;
  const c = 3 * s * t * t;
  const d = t * t * t;
  return [a * p0[0] + b * c1[0] + c * c2[0] + d * p1[0], a * p0[1] + b * c1[1] + c * c2[1] + d * p1[1]];
}

/** The point at t; exactly the ends at 0 and 1. */
export function curveAt(curve: Curve, t: number): Point {
  if (t === 0) return curve.p0;
  if (t === 1) return curve.p1;
  if (curve.kind === "line") return between(curve.p0, curve.p1, t);
  if (curve.kind === "arc") return polar(curve.centre, curve.radius, curve.angle0 + curve.sweep * t);
  return cubicAt(curve, t);
}

/** First derivative by t, in mm. */
export function velocityAt(curve: Curve, t: number): Point {
  if (curve.kind === "line") return minus(curve.p1, curve.p0);
  if (curve.kind === "arc") {
    const speed = curve.radius * curve.sweep;
    return leftOf(polar([0, 0], speed, curve.angle0 + curve.sweep * t));
  }
  const { p0, c1, c2, p1 } = curve;
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const c = 3 * t * t;
  return [
    a * (c1[0] - p0[0]) + b * (c2[0] - c1[0]) + c * (p1[0] - c2[0]),
    a * (c1[1] - p0[1]) + b * (c2[1] - c1[1]) + c * (p1[1] - c2[1]),
  ];
}

/** Second derivative by t of a cubic, in mm. */
export function bendingAt({ p0, c1, c2, p1 }: CubicCurve, t: number): Point {
  const s = 1 - t;
  return [
    6 * (s * (c2[0] - 2 * c1[0] + p0[0]) + t * (p1[0] - 2 * c2[0] + c1[0])),
    6 * (s * (c2[1] - 2 * c1[1] + p0[1]) + t * (p1[1] - 2 * c2[1] + c1[1])),
  ];
}

/** Which way a cubic goes where it stands still: at an end whose handle is drawn in, or at a cusp. */
function directionAtRest(curve: CubicCurve, t: number): Point {
  const { p0, c1, c2, p1 } = curve;
  if (t > 0 && t < 1) return unit(bendingAt(curve, t));
  const ways = t <= 0 ? [minus(c2, p0), minus(p1, p0)] : [minus(p1, c1), minus(p1, p0)];
  return unit(ways.find((way) => sizeOf(way) >= NO_LENGTH_MM) ?? ways[1]!);
}

/** Direction of travel at t, length 1. */
export function directionAt(curve: Curve, t: number): Point {
  const velocity = velocityAt(curve, t);
  if (curve.kind !== "cubic") return unit(velocity);
  const size = apart(curve.p0, curve.c1) + apart(curve.c1, curve.c2) + apart(curve.c2, curve.p1);
  return sizeOf(velocity) > NO_SPEED * size ? unit(velocity) : directionAtRest(curve, t);
}

function cubicPart(curve: CubicCurve, t0: number, t1: number): CubicCurve {
  const [p0, p1] = [curveAt(curve, t0), curveAt(curve, t1)];
  const third = (t1 - t0) / 3;
  const [v0, v1] = [scaled(velocityAt(curve, t0), third), scaled(velocityAt(curve, t1), third)];
  return { kind: "cubic", p0, c1: [p0[0] + v0[0], p0[1] + v0[1]], c2: minus(p1, v1), p1 };
}

/** The stretch from t0 to t1 as a curve of its own; a cubic's handles are those of de Casteljau. */
export function partOf(curve: Curve, t0: number, t1: number): Curve {
  if (t0 === 0 && t1 === 1) return curve;
  if (curve.kind === "cubic") return cubicPart(curve, t0, t1);
  const [p0, p1] = [curveAt(curve, t0), curveAt(curve, t1)];
  if (curve.kind === "line") return { kind: "line", p0, p1 };
  return { ...curve, p0, p1, angle0: curve.angle0 + curve.sweep * t0, sweep: curve.sweep * (t1 - t0) };
}

/** Where on an arc's circle the direction `angle` lies, as t; 0 to 1 on the arc itself. */
export function arcParameter(curve: ArcCurve, angle: number): number {
  const along = curve.sweep >= 0 ? angle - curve.angle0 : curve.angle0 - angle;
  const run = Math.abs(curve.sweep);
  const turned = ((along % TURN) + TURN) % TURN;
  // Beyond the arc's end: whichever end is nearer, so that a hair before the start is a hair below 0.
  const beyond = turned > run + (TURN - run) / 2;
  return run === 0 ? 0 : (beyond ? turned - TURN : turned) / run;
}
