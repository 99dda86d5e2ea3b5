// Where two curves meet: cross, touch, or run along each other.
import * as trig from "../units/trigonometry.ts";
import { boxDistance, boxesMeet, boxOfCurve } from "./bounds.ts";
import {
  type ArcCurve,
  arcParameter,
  type CubicCurve,
  type Curve,
  curveAt,
  type LineCurve,
  NO_LENGTH_MM,
} from "./curve.ts";
import { type Meeting, meetCubics } from "./meet-cubics.ts";
import { nearestOnCurve } from "./nearest.ts";
import type { Point } from "./path.ts";
import { bernsteinProduct, rootsAndTouches } from "./roots.ts";
import { apart, cross, dot, leftOf, minus, plus, scaled, sizeOf, unit } from "./vector.ts";

/**
 * Curves that come this near have met. Half of NO_LENGTH_MM, so that no curve that counts is short enough
 * for its two neighbours to meet across it.
 */
export const MEET_MM = NO_LENGTH_MM / 2;

/** Inner points at which two curves that share two points are compared, to see whether they run together. */
const SHARES = [0.25, 0.5, 0.75] as const;

/** The t of a place on the curve that lies there, or undefined; a hair beyond an end is the end. */
function lineT(curve: LineCurve, point: Point): number | undefined {
  const along = minus(curve.p1, curve.p0);
  return withinEnds(dot(minus(point, curve.p0), along) / dot(along, along), sizeOf(along));
}

function arcT(curve: ArcCurve, point: Point): number | undefined {
  const angle = trig.atan2(point[1] - curve.centre[1], point[0] - curve.centre[0]);
  return withinEnds(arcParameter(curve, angle), curve.radius * Math.abs(curve.sweep));
}

function withinEnds(t: number, length: number): number | undefined {
  const slack = MEET_MM / length;
  return t >= -slack && t <= 1 + slack ? Math.min(Math.max(t, 0), 1) : undefined;
}

const simpleT = (curve: LineCurve | ArcCurve, point: Point): number | undefined =>
  curve.kind === "line" ? lineT(curve, point) : arcT(curve, point);

function meetLines(a: LineCurve, b: LineCurve): readonly Point[] {
  const [u, v, w] = [minus(a.p1, a.p0), minus(b.p1, b.p0), minus(b.p0, a.p0)];
  const det = cross(u, v);
  // Parallel lines meet at their ends or not at all; the ends are looked at elsewhere.
  return det === 0 ? [] : [plus(a.p0, scaled(u, cross(w, v) / det))];
}

/** Points of the circle on a straight line through `foot`, the centre's foot on it. */
function onCircle(foot: Point, way: Point, centre: Point, radius: number): readonly Point[] {
  const off = apart(foot, centre);
  if (Math.abs(off - radius) <= MEET_MM) return [foot];
  if (off > radius) return [];
  const half = Math.sqrt((radius - off) * (radius + off));
  return [plus(foot, scaled(way, -half)), plus(foot, scaled(way, half))];
}

function meetLineArc(line: LineCurve, arc: ArcCurve): readonly Point[] {
  const way = unit(minus(line.p1, line.p0));
  const foot = plus(line.p0, scaled(way, dot(minus(arc.centre, line.p0), way)));
  return onCircle(foot, way, arc.centre, arc.radius);
}

/** The circles' common chord is square to the line of centres, at (d² + r² − R²) / 2d from the first. */
function meetArcs(a: ArcCurve, b: ArcCurve): readonly Point[] {
  const between = minus(b.centre, a.centre);
  const d = sizeOf(between);
  if (d < MEET_MM) return [];
  const way = scaled(between, 1 / d);
  const along = (d * d + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * d);
  // Circles that touch within a hair: the chord's point is snapped onto the line of centres.
  const gap = Math.min(Math.abs(d - a.radius - b.radius), Math.abs(d - Math.abs(a.radius - b.radius)));
  if (gap <= MEET_MM) return [plus(a.centre, scaled(way, Math.sign(along) * a.radius))];
  return onCircle(plus(a.centre, scaled(way, along)), leftOf(way), a.centre, a.radius);
}

/** The t of a cubic on a line (degree 3) or on a circle (degree 6); both are scaled to read in mm. */
function cubicOn(cubic: CubicCurve, other: LineCurve | ArcCurve): readonly number[] {
  const points = [cubic.p0, cubic.c1, cubic.c2, cubic.p1];
  if (other.kind === "line") {
    const normal = leftOf(unit(minus(other.p1, other.p0)));
    return rootsAndTouches(
      points.map((point) => dot(minus(point, other.p0), normal)),
      MEET_MM,
    );
  }
  const x = points.map((point) => point[0] - other.centre[0]);
  const y = points.map((point) => point[1] - other.centre[1]);
  const [xx, yy] = [bernsteinProduct(x, x), bernsteinProduct(y, y)];
  const { radius } = other;
  return rootsAndTouches(
    xx.map((value, i) => (value + yy[i]! - radius * radius) / (2 * radius)),
    MEET_MM,
  );
}

function meetCubicSimple(cubic: CubicCurve, other: LineCurve | ArcCurve): readonly Meeting[] {
  return cubicOn(cubic, other).flatMap((a) => {
    const at = curveAt(cubic, a);
    const b = simpleT(other, at);
    return b === undefined ? [] : [{ a, b, at }];
  });
}

function meetSimple(a: LineCurve | ArcCurve, b: LineCurve | ArcCurve): readonly Meeting[] {
  const points =
    a.kind === "line"
      ? b.kind === "line"
        ? meetLines(a, b)
        : meetLineArc(a, b)
      : b.kind === "line"
        ? meetLineArc(b, a)
        : meetArcs(a, b);
  return points.flatMap((at) => {
    const [ta, tb] = [simpleT(a, at), simpleT(b, at)];
    return ta === undefined || tb === undefined ? [] : [{ a: ta, b: tb, at }];
  });
}

const swapped = ({ a, b, at }: Meeting): Meeting => ({ a: b, b: a, at });

function meetInside(a: Curve, b: Curve): readonly Meeting[] {
  if (a.kind === "cubic") return b.kind === "cubic" ? meetCubics(a, b, MEET_MM) : meetCubicSimple(a, b);
  return b.kind === "cubic" ? meetCubicSimple(b, a).map(swapped) : meetSimple(a, b);
}

/** Ends of one curve that lie on the other. */
function meetEnds(a: Curve, b: Curve): readonly Meeting[] {
  const found: Meeting[] = [];
  for (const end of [0, 1] as const) {
    const [onA, onB] = [curveAt(a, end), curveAt(b, end)];
    if (boxDistance(boxOfCurve(b), onA) <= MEET_MM) {
      const near = nearestOnCurve(b, onA);
      if (near.distance <= MEET_MM) found.push({ a: end, b: near.t, at: onA });
    }
    if (boxDistance(boxOfCurve(a), onB) <= MEET_MM) {
      const near = nearestOnCurve(a, onB);
      if (near.distance <= MEET_MM) found.push({ a: near.t, b: end, at: onB });
    }
  }
  return found;
}

function eachOnce(meetings: readonly Meeting[]): readonly Meeting[] {
  const kept: Meeting[] = [];
  for (const next of meetings) {
    if (!kept.some(({ at }) => apart(at, next.at) <= 2 * MEET_MM)) kept.push(next);
  }
  return kept.sort((x, y) => x.a - y.a || x.b - y.b);
}

/** The middle of a's stretch between two shared points, when b runs along it all the way. */
function sharedMiddle(a: Curve, b: Curve, from: Meeting, to: Meeting): Meeting | undefined {
  const near = SHARES.map((share) => {
    const t = from.a + (to.a - from.a) * share;
    return { t, on: nearestOnCurve(b, curveAt(a, t)) };
  });
  if (!near.every(({ on }) => on.distance <= 2 * MEET_MM)) return undefined;
  const { t, on } = near[1]!;
  return { a: t, b: on.t, at: curveAt(a, t) };
}

export type Meetings = { readonly points: readonly Meeting[]; readonly runTogether: boolean };

const NONE: Meetings = { points: [], runTogether: false };

/**
 * All points that two curves share, each once, in the order of the first. Where they run along each other
 * (such a stretch begins and ends at an end of one of them): both ends of the stretch and its middle.
 */
export function meetCurves(a: Curve, b: Curve): Meetings {
  if (!boxesMeet(boxOfCurve(a), boxOfCurve(b), MEET_MM)) return NONE;
  const ends = eachOnce(meetEnds(a, b));
  const middles = ends.slice(1).flatMap((to, i) => sharedMiddle(a, b, ends[i]!, to) ?? []);
  if (middles.length > 0) return { points: eachOnce([...ends, ...middles]), runTogether: true };
  return { points: eachOnce([...ends, ...meetInside(a, b)]), runTogether: false };
}

/** True when any two curves of the lists share a point. */
export function pathsMeet(as: readonly Curve[], bs: readonly Curve[]): boolean {
  return as.some((a) => bs.some((b) => meetCurves(a, b).points.length > 0));
}
