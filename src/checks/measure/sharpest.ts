import { type ArcCurve, type Curve, curvesOf, directionAt } from "../../geometry/curve.ts";
import { curvatureOf } from "../../geometry/length.ts";
import { type Path, type Point, SAME_POINT_MM } from "../../geometry/path.ts";
import { apart, turnBetween } from "../../geometry/vector.ts";
import * as trig from "../../units/trigonometry.ts";

// Where a line of several runs bends, and how sharply.

/** A turn smaller than this is no corner: the leather beside it takes it up. 5°. */
const CORNER_RAD = Math.PI / 36;
/** A cubic's curvature is read at so many places. */
const READINGS = 64;

/** A place that bends: its radius, 0 at a corner, and how much more of radius its straight neighbours allow. */
export type Bending = { readonly radius: number; readonly at: Point; readonly room: number };

/** Every corner and every curve along runs that follow one another; runs that stand apart make no corner. */
export function bendings(runs: readonly Path[]): readonly Bending[] {
  const curves = runs.flatMap((run) => curvesOf(run));
  return curves.flatMap((curve, i): readonly Bending[] => {
    const before = curves[i - 1];
    const joined = before !== undefined && apart(before.p1, curve.p0) <= SAME_POINT_MM;
    const turn = joined ? Math.abs(turnBetween(directionAt(before, 1), directionAt(curve, 0))) : 0;
    const corner = turn > CORNER_RAD ? [{ radius: 0, at: curve.p0, room: roomAt(curves, i, turn) }] : [];
    if (curve.kind === "line") return corner;
    return [...corner, { radius: radiusOf(curve), at: curve.p0, room: roomFor(curves, i) }];
  });
}

function radiusOf(curve: Exclude<Curve, { kind: "line" }>): number {
  if (curve.kind === "arc") return curve.radius;
  const shares = Array.from({ length: READINGS + 1 }, (_, i) => i / READINGS);
  return 1 / Math.max(...shares.map((t) => Math.abs(curvatureOf(curve, t))));
}

/** Flat leather left of a straight stretch beside a corner, mm: before the first stitch, and half a base's middle. */
const LEFT_MM = 5;

/** By how much an arc's radius can grow between straight stretches; the one to its next curve is shared with it. */
function roomFor(curves: readonly Curve[], i: number): number {
  const curve = curves[i]!;
  if (curve.kind !== "arc") return 0;
  return Math.max(
    0,
    Math.min(straightFrom(curves, i + 1, 1), straightFrom(curves, i - 1, -1)) / tangentOf(curve),
  );
}

/** The greatest radius that the straights beside a sharp corner allow, where curve i begins. */
const roomAt = (curves: readonly Curve[], i: number, turn: number): number =>
  Math.max(
    0,
    Math.min(straightFrom(curves, i, 1), straightFrom(curves, i - 1, -1)) /
      trig.tan(Math.min(turn, Math.PI * 0.95) / 2),
  );

/** Flat length of the straights from curve i on, one way; half of what is shared with a next curve or corner. */
function straightFrom(curves: readonly Curve[], i: number, step: 1 | -1): number {
  let length = 0;
  let next = i;
  while (curves[next]?.kind === "line" && (next === i || goesOn(curves, next, step))) {
    length += apart(curves[next]!.p0, curves[next]!.p1);
    next += step;
  }
  return (curves[next] ? length / 2 : length) - LEFT_MM;
}

/** True when a line goes straight on from the one before it. */
function goesOn(curves: readonly Curve[], i: number, step: 1 | -1): boolean {
  const [a, b] = step === 1 ? [curves[i - 1]!, curves[i]!] : [curves[i]!, curves[i + 1]!];
  return Math.abs(turnBetween(directionAt(a, 1), directionAt(b, 0))) <= CORNER_RAD;
}

/** What a radius takes of each straight beside its arc, as a share of it. */
const tangentOf = (arc: ArcCurve): number => trig.tan(Math.min(Math.abs(arc.sweep), Math.PI * 0.95) / 2);
