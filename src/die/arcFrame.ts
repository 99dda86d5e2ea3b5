// The same stretch may lie anywhere on a piece, turned, mirrored, run the other way. Seen in a frame of its own
// it always looks the same, so that it is always given the same arcs.

import type { Curve } from "../geometry/curve.ts";
import type { Point } from "../geometry/path.ts";
import { apart, cross, dot, minus, unit } from "../geometry/vector.ts";
import { roundTo } from "../units/round.ts";
import * as trig from "../units/trigonometry.ts";
import type { Beside, Bridged, Gap, Plain } from "./arcFewest.ts";
import { backwards } from "./arcMerge.ts";

/** Decimals of a millimetre that looks are compared to: far above rounding, far below what a knife follows. */
const DECIMALS = 6;

type Look = { readonly mirrored: boolean; readonly backward: boolean };
const LOOKS: readonly Look[] = [
  { mirrored: false, backward: false },
  { mirrored: true, backward: false },
  { mirrored: false, backward: true },
  { mirrored: true, backward: true },
];

type PointMap = (point: Point) => Point;

/** The curve with its points moved by a map that keeps lengths; one that mirrors turns arcs the other way. */
export function mappedCurve<C extends Curve>(curve: C, map: PointMap, mirrors: boolean): C {
  const [p0, p1] = [map(curve.p0), map(curve.p1)];
  if (curve.kind === "line") return { ...curve, p0, p1 };
  if (curve.kind === "cubic") return { ...curve, p0, c1: map(curve.c1), c2: map(curve.c2), p1 };
  const centre = map(curve.centre);
  const angle0 = trig.atan2(p0[1] - centre[1], p0[0] - centre[0]);
  return { ...curve, p0, p1, centre, angle0, sweep: mirrors ? -curve.sweep : curve.sweep };
}

/** Into the frame, and out of it: chord along x from the origin, y turned over if said, or turned half round. */
type Frame = Look & { readonly origin: Point; readonly along: Point; readonly chord: number };

function into({ origin, along, chord, mirrored, backward }: Frame): PointMap {
  return (p) => {
    const v = minus(p, origin);
    const [x, y] = [dot(v, along), cross(along, v)];
    return [backward ? chord - x : x, mirrored ? 0 - y : y];
  };
}

function outOf({ origin, along, chord, mirrored, backward }: Frame): PointMap {
  return ([fx, fy]) => {
    const [x, y] = [backward ? chord - fx : fx, mirrored ? 0 - fy : fy];
    return [origin[0] + x * along[0] - y * along[1], origin[1] + x * along[1] + y * along[0]];
  };
}

/** Looked at from the other end x is turned over, which mirrors; so does y. Both together turn half round. */
const mirrors = ({ mirrored, backward }: Look): boolean => mirrored !== backward;

function seen(gap: Gap, frame: Frame): Gap {
  const own = (curve: Curve): Curve => {
    const mapped = mappedCurve(curve, into(frame), mirrors(frame));
    return frame.backward ? backwards(mapped) : mapped;
  };
  const beside = (b: Beside): Beside => (typeof b === "string" ? b : (own(b) as Plain));
  const curves = gap.curves.map(own);
  const [before, after] = [beside(gap.before), beside(gap.after)];
  return frame.backward
    ? { before: after, curves: [...curves].reverse(), after: before }
    : { before, curves, after };
}

function figures({ before, curves, after }: Gap): readonly number[] {
  const of = (curve: Curve): readonly number[] => {
    if (curve.kind === "line") return [...curve.p0, ...curve.p1];
    if (curve.kind === "arc") return [...curve.p0, ...curve.centre, ...curve.p1];
    return [...curve.p0, ...curve.c1, ...curve.c2, ...curve.p1];
  };
  const beside = (b: Beside): readonly number[] => (typeof b === "string" ? [] : of(b));
  return [...beside(before), ...curves.flatMap(of), ...beside(after)].map((n) => roundTo(n, DECIMALS));
}

/** Below 0 when a comes before b, 0 when they are the same. */
function compared(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((n, i) => n !== b[i]);
  if (index < 0) return 0;
  return a[index]! - (b[index] ?? 0);
}

function frameOf(gap: Gap): Frame {
  const [first, last] = [
    typeof gap.before === "string" ? gap.curves[0]! : gap.before,
    typeof gap.after === "string" ? gap.curves.at(-1)! : gap.after,
  ];
  const [origin, chord] = [first.p0, apart(first.p0, last.p1)];
  // What ends where it began has no chord: it is taken as it lies.
  const closed = chord < 10 ** -DECIMALS;
  const along: Point = closed ? [1, 0] : unit(minus(last.p1, origin));
  const looks = (closed ? LOOKS.slice(0, 1) : LOOKS).map((look) => ({ ...look, origin, along, chord }));
  const all = looks.map((frame) => ({ frame, told: figures(seen(gap, frame)) }));
  return all.reduce((a, b) => (compared(b.told, a.told) < 0 ? b : a)).frame;
}

/** What is found for the gap in a frame of its own, back where the gap lies. */
export function framedGap(gap: Gap, find: (seen: Gap) => Bridged | undefined): Bridged | undefined {
  const frame = frameOf(gap);
  const found = find(seen(gap, frame));
  if (!found) return undefined;
  const curves = found.curves.map((curve) => {
    const mapped = mappedCurve(curve, outOf(frame), mirrors(frame));
    return (frame.backward ? backwards(mapped) : mapped) as Plain;
  });
  return { ...found, curves: frame.backward ? curves.reverse() : curves };
}
