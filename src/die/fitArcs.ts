// A rule is bent in arcs: an outline's cubics become arcs, as few as may be, and its lines and arcs stay.
import { type Curve, curvesOf, partOf, pathOf } from "../geometry/curve.ts";
import type { Path, Point } from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import { strayBetween } from "./arcFewest.ts";
import { goesOn, oneEach } from "./arcMerge.ts";
import { type Fitted, fittedRun, type SmoothRun } from "./arcPlan.ts";
import { halfOf, mirrorOf, withImage } from "./mirrorHalves.ts";
import { mirrorAxis } from "./symmetry.ts";

/**
 * How far fitted arcs may lie from the outline, mm. A drawing promises 0.05; a tenth of it is kept for the
 * rounding of the table that the outline is rebuilt from.
 */
export const ARC_FIT_MM = 0.045;
/** Halves that differ by no more than this, mm, are one another's image: a tenth of what fitting may cost. */
const ALIKE_MM = 0.004;

export type ArcFit = {
  /** Lines and arcs only, in the same direction; a closed one from the joint nearest to the path's start. */
  readonly path: Path;
  /** The furthest that either lies from the other, mm; 0 when nothing had to be fitted. */
  readonly error: number;
};

/** The curves in runs that are smooth within. */
function smoothRuns(curves: readonly Curve[]): readonly (readonly Curve[])[] {
  const runs: Curve[][] = [];
  for (const curve of curves) {
    const run = runs.at(-1);
    if (run && goesOn(run.at(-1)!, curve)) run.push(curve);
    else runs.push([curve]);
  }
  return runs;
}

function fittedAlong({ curves, start, end }: SmoothRun, tolerance: number): Fitted {
  const runs = smoothRuns(curves);
  const fits = runs.map((run, i) =>
    fittedRun(
      { curves: run, start: i === 0 ? start : "corner", end: i === runs.length - 1 ? end : "corner" },
      tolerance,
    ),
  );
  return { curves: fits.flatMap((f) => f.curves), error: Math.max(0, ...fits.map((f) => f.error)) };
}

const turnedTo = (curves: readonly Curve[], first: number): readonly Curve[] => [
  ...curves.slice(first),
  ...curves.slice(0, first),
];

/** A closed outline begins at a corner; without one in the middle of a line or arc, which joins up again. */
function fittedRound(curves: readonly Curve[], tolerance: number): Fitted {
  const corner = curves.findIndex((curve, i) => !goesOn(curves.at(i - 1)!, curve));
  if (corner >= 0)
    return fittedAlong({ curves: turnedTo(curves, corner), start: "corner", end: "corner" }, tolerance);
  const kept = curves.findIndex(({ kind }) => kind !== "cubic");
  if (kept < 0) return fittedAlong({ curves, start: "fixed", end: "fixed" }, tolerance);
  const [whole, ...rest] = turnedTo(curves, kept);
  const open = [partOf(whole!, 0.5, 1), ...rest, partOf(whole!, 0, 0.5)];
  return fittedAlong({ curves: open, start: "fixed", end: "fixed" }, tolerance);
}

/** One half fitted and mirrored; undefined where the outline has no axis, or its halves aren't near enough alike. */
function fittedInHalves(path: Path, curves: readonly Curve[], tolerance: number): Fitted | undefined {
  const axis = mirrorAxis(path, [], Math.min(ALIKE_MM, tolerance / 2));
  const mirror = axis && mirrorOf(path, axis);
  const half = mirror && halfOf(curves, mirror);
  if (!half) return undefined;
  const found = withImage(fittedAlong(half, tolerance).curves, mirror);
  const error = strayBetween(curves, found);
  return error <= tolerance ? { curves: found as Fitted["curves"], error } : undefined;
}

/** A closed outline from its joint nearest to the given place. */
function startedAt(curves: readonly Curve[], at: Point): readonly Curve[] {
  const far = curves.map(({ p0 }) => apart(p0, at));
  return turnedTo(curves, far.indexOf(Math.min(...far)));
}

function fitted(path: Path, tolerance: number): Fitted {
  const curves = oneEach(curvesOf(path), path.closed);
  if (curves.every(({ kind }) => kind !== "cubic")) return { curves: curves as Fitted["curves"], error: 0 };
  if (!path.closed) return fittedAlong({ curves, start: "corner", end: "corner" }, tolerance);
  const { curves: found, error } = fittedInHalves(path, curves, tolerance) ?? fittedRound(curves, tolerance);
  return { curves: startedAt(oneEach(found, true), path.start) as Fitted["curves"], error };
}

/**
 * The path as lines and arcs within `tolerance` mm of it, measured both ways: as few as are found. Neighbours
 * that are one line or one arc become one. A line or arc of the path stays on its line or circle, but may end
 * sooner or later where it runs smoothly into a curve; between two curves a short one may go up in the fitted
 * arcs. Joints that were smooth stay smooth. A closed path that is its own mirror image gets arcs that are.
 * Congruent stretches, turned, mirrored or reversed, get the same arcs. Throws a RangeError for a tolerance
 * that is not above 0. The error that was reached is given back: at a cusp, where no arc can follow, it may be
 * more than what was asked.
 */
export function fitArcs(path: Path, tolerance: number = ARC_FIT_MM): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`fitArcs: tolerance must be above 0 mm, not ${tolerance}`);
  const { curves, error } = fitted(path, tolerance);
  return { path: pathOf(curves[0]?.p0 ?? path.start, curves, path.closed), error };
}
