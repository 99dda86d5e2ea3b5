// The least distance between two curves.

import * as trig from "../units/trigonometry.ts";
import { boxGap, boxOfCurve } from "./bounds.ts";
import {
  type ArcCurve,
  arcParameter,
  type CubicCurve,
  type Curve,
  curveAt,
  type LineCurve,
} from "./curve.ts";
import { nearestOnCurve, squareTo } from "./nearest.ts";
import type { Point } from "./path.ts";
import { rootsBetween } from "./roots.ts";
import { chordGap, halvesOf, type Stretch, shareOf, stretchBoxGap, stretchOf } from "./stretch.ts";
import { apart, cross, leftOf, minus } from "./vector.ts";

/** Cubics: stretches that cannot better the answer by more than this are left; the answer is polished after. */
const GAP_ERROR_MM = 0.002;
/** Projections to and fro at the end; each shrinks what is left many times over. */
const POLISHING = 4;

/** Distances from the four ends to the other curve. */
function endGaps(a: Curve, b: Curve): number {
  return Math.min(
    nearestOnCurve(b, a.p0).distance,
    nearestOnCurve(b, a.p1).distance,
    nearestOnCurve(a, b.p0).distance,
    nearestOnCurve(a, b.p1).distance,
  );
}

/** From the arc's points in the directions ±`way` to the other curve: where a common normal may be. */
function normalGaps(arc: ArcCurve, way: Point, other: Curve): number {
  const gaps = [way, [-way[0], -way[1]] as Point].map((direction) => {
    const t = arcParameter(arc, trig.atan2(direction[1], direction[0]));
    return t >= 0 && t <= 1 ? nearestOnCurve(other, curveAt(arc, t)).distance : Infinity;
  });
  return Math.min(...gaps);
}

/** From the points at `ts` of a cubic to the other curve. */
function cubicGaps(cubic: CubicCurve, ts: readonly number[], other: Curve): number {
  return Math.min(...ts.map((t) => nearestOnCurve(other, curveAt(cubic, t)).distance));
}

/** Where a cubic runs along the line's direction. */
function alongLine({ p0, c1, c2, p1 }: CubicCurve, line: LineCurve): readonly number[] {
  const way = minus(line.p1, line.p0);
  return rootsBetween([minus(c1, p0), minus(c2, c1), minus(p1, c2)].map((leg) => cross(leg, way)));
}

/**
 * Curves that do not cross come nearest at an end or on a common normal, which goes through an arc's
 * centre and is square to a line.
 */
function simpleGap(a: Curve, b: LineCurve | ArcCurve): number {
  if (a.kind === "cubic") {
    return cubicGaps(a, b.kind === "arc" ? squareTo(a, b.centre) : alongLine(a, b), b);
  }
  if (a.kind === "arc") {
    return normalGaps(a, b.kind === "arc" ? minus(b.centre, a.centre) : leftOf(minus(b.p1, b.p0)), b);
  }
  return b.kind === "arc" ? simpleGap(b, a) : Infinity;
}

function polished(a: Curve, b: Curve, start: Point): number {
  let point = start;
  let distance = Infinity;
  for (let i = 0; i < POLISHING; i++) {
    const onB = nearestOnCurve(b, point);
    const onA = nearestOnCurve(a, onB.point);
    point = onA.point;
    distance = onA.distance;
  }
  return distance;
}

/** Two cubics: halve the pair of stretches that may still hold something nearer than what is known. */
function searchedGap(a: CubicCurve, b: CubicCurve, known: number): number {
  let best = known;
  let from: Point | undefined;
  const visit = (s: Stretch, r: Stretch): void => {
    if (stretchBoxGap(s, r) >= best - GAP_ERROR_MM) return;
    const chords = chordGap(s, r);
    const onS = curveAt(a, shareOf(s, chords.a));
    const reached = apart(onS, curveAt(b, shareOf(r, chords.b)));
    if (reached < best) [best, from] = [reached, onS];
    if (chords.gap - s.strays - r.strays >= best - GAP_ERROR_MM) return;
    const split = s.strays >= r.strays ? s : r;
    const pairs = halvesOf(split).map((half): [Stretch, Stretch] => (split === s ? [half, r] : [s, half]));
    if (stretchBoxGap(...pairs[1]!) < stretchBoxGap(...pairs[0]!)) pairs.reverse();
    for (const [x, y] of pairs) visit(x, y);
  };
  visit(stretchOf(a), stretchOf(b));
  return from ? Math.min(best, polished(a, b, from)) : best;
}

/** The least distance between two curves that do not cross, or `known` when it is not less. */
export function curveGap(a: Curve, b: Curve, known: number): number {
  if (boxGap(boxOfCurve(a), boxOfCurve(b)) >= known) return known;
  const ends = Math.min(known, endGaps(a, b));
  if (b.kind !== "cubic") return Math.min(ends, simpleGap(a, b));
  return a.kind === "cubic" ? searchedGap(a, b, ends) : Math.min(ends, simpleGap(b, a));
}
