// Arcs along a smooth run of cubics: as few biarcs as greed finds, their errors evened out afterwards.
import { type CubicCurve, type Curve, curveAt, directionAt } from "../geometry/curve.ts";
import { type Point, SAME_POINT_MM } from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import { type Biarc, biarc, type Knot, strayOf } from "./biarc.ts";

/** Points of the run that a biarc is measured at while searching; the result is measured again, finer. */
const SAMPLES = 24;
/** Ratios of the tangent lengths that are tried. */
const RATIOS = [1, 0.7, 1.4, 0.5, 2, 0.35, 2.8] as const;
/** Halvings when the furthest end of a biarc is looked for, and when errors are evened out. */
const END_HALVINGS = 16;
const EVEN_HALVINGS = 8;
/** A biarc longer than the run it stands for by this factor goes round the wrong way. */
const DETOUR = 1.5;

export type Run = readonly CubicCurve[];

type Tried = { readonly biarc: Biarc; readonly stray: number };

/** The cubic on which the place `u` of a run lies, ⌊u⌋, and t on it. */
function cubicAt(run: Run, u: number): readonly [CubicCurve, number] {
  const index = Math.min(Math.floor(u), run.length - 1);
  return [run[index]!, u - index];
}

const placeAt = (run: Run, u: number): Point => curveAt(...cubicAt(run, u));
const knotAt = (run: Run, u: number): Knot => ({ at: placeAt(run, u), way: directionAt(...cubicAt(run, u)) });

const lengthOf = (curves: readonly Curve[]): number =>
  curves.reduce((sum, c) => sum + (c.kind === "arc" ? c.radius * Math.abs(c.sweep) : apart(c.p0, c.p1)), 0);

const chainLength = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, point, i) => sum + apart(point, points[i]!), 0);

/** The best biarc for the stretch from u0 to u1. */
function bestBiarc(run: Run, u0: number, u1: number): Tried | undefined {
  const [a, b] = [knotAt(run, u0), knotAt(run, u1)];
  const points = Array.from({ length: SAMPLES - 1 }, (_, i) =>
    placeAt(run, u0 + ((u1 - u0) * (i + 1)) / SAMPLES),
  );
  const most = DETOUR * chainLength([a.at, ...points, b.at]);
  let best: Tried | undefined;
  for (const ratio of RATIOS) {
    const found = biarc(a, b, ratio);
    if (!found || lengthOf(found.curves) > most) continue;
    const stray = strayOf(found, points);
    if (!best || stray < best.stray) best = { biarc: found, stray };
  }
  return best;
}

/** A stretch too short for an arc to matter: a line. */
function shortLine(run: Run, u0: number, u1: number): readonly Curve[] {
  return [{ kind: "line", p0: placeAt(run, u0), p1: placeAt(run, u1) }];
}

/** Biarcs from the run's start, each as far as the tolerance lets it. */
function greedy(run: Run, tolerance: number): readonly (readonly Curve[])[] {
  const end = run.length;
  const fits = (u0: number, u1: number): Tried | undefined => {
    const tried = bestBiarc(run, u0, u1);
    return tried && tried.stray <= tolerance ? tried : undefined;
  };
  const found: (readonly Curve[])[] = [];
  for (let u = 0; u < end; ) {
    let best = fits(u, end);
    let [near, far] = [u, end];
    if (best) near = end;
    for (let i = 0; near < end && i < END_HALVINGS; i++) {
      const middle = (near + far) / 2;
      const tried = fits(u, middle);
      if (tried) [best, near] = [tried, middle];
      else far = middle;
    }
    // Nothing fits at a cusp: step over it, shorter than what a knife can follow.
    const next = best ? near : far;
    found.push(best ? best.biarc.curves : shortLine(run, u, next));
    u = next;
  }
  return found;
}

/** As few biarcs as `greedy` finds within the tolerance, at the least tolerance that needs no more of them. */
function evened(run: Run, tolerance: number): readonly Curve[] {
  let best = greedy(run, tolerance);
  let [low, high] = [0, tolerance];
  for (let i = 0; i < EVEN_HALVINGS; i++) {
    const middle = (low + high) / 2;
    const tried = middle > 0 ? greedy(run, middle) : best;
    if (tried.length <= best.length) [best, high] = [tried, middle];
    else low = middle;
  }
  return best.flat().filter(({ p0, p1 }) => apart(p0, p1) > SAME_POINT_MM / 1000);
}

/** Arcs and lines along the run, in order, from its first point to its last. */
export const arcsAlong = (run: Run, tolerance: number): readonly Curve[] => evened(run, tolerance);
