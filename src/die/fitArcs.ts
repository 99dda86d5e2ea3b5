// A rule is bent in arcs: an outline's cubics become arcs, and its lines and arcs stay as they are.
import { type CubicCurve, type Curve, curveAt, curvesOf, directionAt, pathOf } from "../geometry/curve.ts";
import { distanceToPath } from "../geometry/distance.ts";
import type { Path } from "../geometry/path.ts";
import { apart, turnBetween } from "../geometry/vector.ts";
import { arcsAlong, type Run } from "./arcRun.ts";
import { alike, type Frame, framed, halves, isLoop, unframed } from "./runFrame.ts";

/**
 * How far fitted arcs may lie from the outline, mm. A drawing promises 0.05; a tenth of it is kept for the
 * rounding of the table that the outline is rebuilt from.
 */
export const ARC_FIT_MM = 0.045;
/** A joint that turns by less than this is smooth: over 1 m it leads a thousandth of a millimetre astray. */
const SMOOTH_RAD = 1e-6;
/** Points of a curve at which the finished fit is measured. */
const MEASURED = 48;
/** Each time a finished fit is found too coarse the arcs are asked for so much closer. */
const CLOSER = 0.85;
const ROUNDS = 12;
/** Centres this near, for a radius up to 1 m, are those of one circle. */
const SAME_CIRCLE_MM = 1e-6;

export type ArcFit = {
  /** Lines and arcs only, from the same start in the same direction. */
  readonly path: Path;
  /** The furthest that either lies from the other, mm; 0 when nothing had to be fitted. */
  readonly error: number;
};

type Stretch = { readonly cubics: Run } | { readonly kept: Curve };

const goesOn = (before: Curve, after: Curve): boolean =>
  Math.abs(turnBetween(directionAt(before, 1), directionAt(after, 0))) < SMOOTH_RAD;

/** The path's curves with smooth neighbouring cubics gathered into runs. */
function stretches(curves: readonly Curve[]): readonly Stretch[] {
  const found: Stretch[] = [];
  let run: CubicCurve[] = [];
  for (const curve of curves) {
    if (curve.kind !== "cubic" || (run.length > 0 && !goesOn(run.at(-1)!, curve))) {
      if (run.length > 0) found.push({ cubics: run });
      run = [];
    }
    if (curve.kind === "cubic") run.push(curve);
    else found.push({ kept: curve });
  }
  return run.length > 0 ? [...found, { cubics: run }] : found;
}

/** The furthest that the points of one run of curves lie from the other. */
function strayFrom(curves: readonly Curve[], other: Path): number {
  let most = 0;
  for (const curve of curves) {
    for (let i = 0; i <= MEASURED; i++) {
      most = Math.max(most, distanceToPath(curveAt(curve, i / MEASURED), other));
    }
  }
  return most;
}

type Fitted = { readonly curves: readonly Curve[]; readonly error: number };

/** A run that closes is halved, so that each half has ends; a run that is its own image gets arcs that are. */
function partsOf(run: Run): readonly Run[] {
  const open = isLoop(run) ? halves(run) : [run];
  return open.flatMap((part) => (alike(framed(part).run) ? halves(part) : [part]));
}

/** Neighbouring arcs of one circle, as halves of a mirrored run leave them, become one; so do lines in one direction. */
function oneEach(curves: readonly Curve[]): readonly Curve[] {
  const done: Curve[] = [];
  for (const curve of curves) {
    const last = done.at(-1);
    const whole = last && oneCurve(last, curve);
    if (whole) done[done.length - 1] = whole;
    else done.push(curve);
  }
  return done;
}

function oneCurve(a: Curve, b: Curve): Curve | undefined {
  if (a.kind === "line" && b.kind === "line") return goesOn(a, b) ? { ...a, p1: b.p1 } : undefined;
  if (a.kind !== "arc" || b.kind !== "arc") return undefined;
  const sweep = a.sweep + b.sweep;
  const one = apart(a.centre, b.centre) < SAME_CIRCLE_MM * Math.max(1, a.radius / 1000);
  return one && a.sweep * b.sweep > 0 && Math.abs(sweep) <= Math.PI ? { ...a, p1: b.p1, sweep } : undefined;
}

/** Turned to and fro, the ends come back a hair off: they are the run's own again. */
const endsKept = (curves: readonly Curve[], run: Run): readonly Curve[] =>
  curves.map((curve, i) => ({
    ...curve,
    ...(i === 0 ? { p0: run[0]!.p0 } : {}),
    ...(i === curves.length - 1 ? { p1: run.at(-1)!.p1 } : {}),
  }));

function fitRun(run: Run, tolerance: number): Fitted {
  const original = pathOf(run[0]!.p0, run);
  const frame: Frame = framed(run);
  const parts = partsOf(frame.run);
  let asked = tolerance;
  for (let round = 0; ; round++) {
    const found = unframed(
      frame,
      parts.flatMap((part) => arcsOf(part, asked)),
    );
    const curves = endsKept(oneEach(found), run);
    const fitted = pathOf(curves[0]!.p0, curves);
    const error = Math.max(strayFrom(run, fitted), strayFrom(curves, original));
    if (error <= tolerance || round === ROUNDS) return { curves, error };
    asked *= CLOSER;
  }
}

/** Each half of a run that is its own image is looked at in a frame of its own, so that both come out alike. */
function arcsOf(part: Run, tolerance: number): readonly Curve[] {
  const frame = framed(part);
  return unframed(frame, arcsAlong(frame.run, tolerance));
}

/**
 * The path with each cubic replaced by arcs (and lines where it is straight) that lie within `tolerance` mm of
 * it, measured both ways. Arcs and lines of the path stay exactly as they are; joints that were smooth stay
 * smooth. Congruent runs of cubics, turned, mirrored or reversed, get the same arcs. Throws a RangeError for a
 * tolerance that is not above 0. The error that was reached is given back: at a cusp, where no arc can follow,
 * it may be more than what was asked.
 */
export function fitArcs(path: Path, tolerance: number = ARC_FIT_MM): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`fitArcs: tolerance must be above 0 mm, not ${tolerance}`);
  let error = 0;
  const curves = stretches(curvesOf(path)).flatMap((stretch): readonly Curve[] => {
    if ("kept" in stretch) return [stretch.kept];
    const fitted = fitRun(stretch.cubics, tolerance);
    error = Math.max(error, fitted.error);
    return fitted.curves;
  });
  return { path: pathOf(curves[0]?.p0 ?? path.start, curves, path.closed), error };
}
