// The fewest arcs for one smooth stretch of an outline, between lines and arcs of the piece that are kept.

import {
  type ArcCurve,
  type Curve,
  curveAt,
  directionAt,
  type LineCurve,
  pathOf,
} from "../geometry/curve.ts";
import { distanceToPath } from "../geometry/distance.ts";
import type { Path, Point } from "../geometry/path.ts";
import { apart, dot, minus, polar } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";
import { type Link, type Pose, posesOf, type Sample } from "./arcChain.ts";
import { type ChainEnd, chainOf, numbersOf } from "./arcEnds.ts";
import { guesses } from "./arcKnots.ts";
import { solve, type Task } from "./arcSolve.ts";

export type Plain = LineCurve | ArcCurve;
/** How a stretch ends where nothing is kept beside it. */
export type Free = "fixed" | "corner" | "axis";
/** A line or arc of the piece, followed up to the stretch or from it on, or how the stretch ends. */
export type Beside = Plain | Free;

export type Gap = { readonly before: Beside; readonly curves: readonly Curve[]; readonly after: Beside };

export type Bridged = {
  readonly curves: readonly Plain[];
  /** The furthest that these and the ends of what is kept lie from the outline, or it from them, mm. */
  readonly error: number;
};

/** Samples along a stretch, and the least on each of its curves. */
const SAMPLES = 120;
const LEAST_SAMPLES = 4;
/** Points of a curve at which the finished fit is measured. */
const MEASURED = 48;
/** Not yet smooth, through places of the curve: so many times as far off as the same number of smooth free arcs. */
const GUESS_FACTOR = 3;
/** Guesses that are made of a longer one. */
const MERGINGS = 3;
/** Arcs that a guess may have. */
const MOST = 26;
/** So many arcs more than the first guess says are tried. */
const MORE = 6;
/** Each time a finished chain is found too coarse, it is asked for so much closer. */
const CLOSER = 0.96;
const ROUNDS = 3;
/** An arc that bulges and turns by less than this is a straight line: nobody bends it. */
const STRAIGHT_MM = 0.0002;
const STRAIGHT_RAD = 0.0004;
/** A shorter arc can't be bent; it is not asked for. */
const SLIVER_MM = 0.5;

const isPlain = (beside: Beside): beside is Plain => typeof beside !== "string";

export const curvatureOfPlain = (curve: Plain): number =>
  curve.kind === "line" ? 0 : Math.sign(curve.sweep) / curve.radius;

function poseAt(curve: Curve, t: number): Pose {
  const [[x, y], [wx, wy]] = [curveAt(curve, t), directionAt(curve, t)];
  return { x, y, angle: trig.atan2(wy, wx) };
}

function roughLength(curve: Curve): number {
  if (curve.kind === "arc") return curve.radius * Math.abs(curve.sweep);
  const points = Array.from({ length: MEASURED + 1 }, (_, i) => curveAt(curve, i / MEASURED));
  return points.slice(1).reduce((sum, p, i) => sum + apart(p, points[i]!), 0);
}

export const lengthOfCurves = (curves: readonly Curve[]): number =>
  curves.reduce((sum, curve) => sum + roughLength(curve), 0);

/** Samples along the curves, `from` mm on the chain's way. */
function samplesOf(curves: readonly Curve[], from: number, count: number): readonly Sample[] {
  const total = lengthOfCurves(curves);
  const found: Sample[] = [];
  let s = from;
  curves.forEach((curve, c) => {
    const length = roughLength(curve);
    const steps = Math.max(LEAST_SAMPLES, Math.ceil((count * length) / total));
    let last = curve.p0;
    if (c === 0) found.push({ x: last[0], y: last[1], s });
    let run = 0;
    const own = Array.from({ length: steps }, (_, i) => {
      const at = curveAt(curve, (i + 1) / steps);
      run += apart(at, last);
      last = at;
      return { x: at[0], y: at[1], s: run };
    });
    // Chords are a little short: stretched to the curve's length.
    found.push(...own.map((p) => ({ ...p, s: s + (p.s * length) / run })));
    s += length;
  });
  return found;
}

const curvesOfGap = ({ before, curves, after }: Gap): readonly Curve[] => [
  ...(isPlain(before) ? [before] : []),
  ...curves,
  ...(isPlain(after) ? [after] : []),
];

function startOf({ before, curves }: Gap): ChainEnd {
  if (!isPlain(before)) return { kind: before, pose: poseAt(curves[0]!, 0) };
  return { kind: "kept", pose: poseAt(before, 0), curvature: curvatureOfPlain(before) };
}

function endOfGap({ after, curves }: Gap): ChainEnd {
  if (!isPlain(after)) return { kind: after, pose: poseAt(curves.at(-1)!, 1) };
  return { kind: "kept", pose: poseAt(after, 0), curvature: curvatureOfPlain(after) };
}

function plainOf({ curvature, length }: Link, from: Pose, to: Pose): Plain {
  const [p0, p1]: [Point, Point] = [
    [from.x, from.y],
    [to.x, to.y],
  ];
  const turn = curvature * length;
  if (Math.abs(turn * length) / 8 < STRAIGHT_MM && Math.abs(turn) < STRAIGHT_RAD)
    return { kind: "line", p0, p1 };
  const radius = Math.abs(1 / curvature);
  const side = from.angle + (Math.sign(turn) * Math.PI) / 2;
  return {
    kind: "arc",
    p0,
    p1,
    centre: polar(p0, radius, side),
    radius,
    angle0: side + Math.PI,
    sweep: turn,
  };
}

/** The furthest that points of the curves lie from the path, mm. */
export function strayFrom(curves: readonly Curve[], other: Path): number {
  let most = 0;
  for (const curve of curves) {
    for (let i = 0; i <= MEASURED; i++) {
      most = Math.max(most, distanceToPath(curveAt(curve, i / MEASURED), other));
    }
  }
  return most;
}

/** Both ways, mm. */
export function strayBetween(a: readonly Curve[], b: readonly Curve[]): number {
  const [pathA, pathB] = [pathOf(a[0]!.p0, a), pathOf(b[0]!.p0, b)];
  return Math.max(strayFrom(a, pathB), strayFrom(b, pathA));
}

/** A line or arc that was kept, up to or from another place on it. */
export function cutPlain(curve: Plain, p0: Point, p1: Point): Plain {
  if (curve.kind === "line") return { kind: "line", p0, p1 };
  const angle = (p: Point): number => trig.atan2(p[1] - curve.centre[1], p[0] - curve.centre[0]);
  const [a0, a1] = [angle(p0), angle(p1)];
  const way = Math.sign(curve.sweep);
  const turn = 2 * Math.PI;
  const sweep = (way * (((way * (a1 - a0)) % turn) + turn)) % turn;
  return { ...curve, p0, p1, angle0: a0, sweep };
}

/** What is kept before, the new arcs, what is kept after. undefined when the chain runs past the end. */
function built(gap: Gap, start: ChainEnd, numbers: readonly number[]): readonly Plain[] | undefined {
  const { pose, links } = chainOf(start, numbers);
  const poses = posesOf(pose, links);
  const curves = links.map((link, i) => plainOf(link, poses[i]!, poses[i + 1]!));
  const { before, after, curves: source } = gap;
  const first = curves[0]!;
  if (isPlain(before)) curves[0] = cutPlain(before, before.p0, first.p1);
  else if (before !== "axis") curves[0] = { ...first, p0: source[0]!.p0 };
  const last = curves.at(-1)!;
  if (!isPlain(after)) {
    if (after !== "axis") curves[curves.length - 1] = { ...last, p1: source.at(-1)!.p1 };
    return curves;
  }
  const rest = cutPlain(after, last.p1, after.p1);
  const runsOn = after.kind === "arc" || dot(minus(after.p1, last.p1), directionAt(after, 1)) > 0;
  const most = roughLength(after) + lengthOfCurves(source);
  return runsOn && roughLength(rest) <= most ? [...curves, rest] : undefined;
}

function tried(gap: Gap, source: readonly Curve[], task: Task, links: readonly Link[]): Bridged | undefined {
  let tolerance = task.tolerance;
  for (let round = 0; round < ROUNDS; round++) {
    const found = solve({ ...task, tolerance }, numbersOf(task.start, links));
    const curves = found && built(gap, task.start, found.numbers);
    if (!curves || curves.some((c) => roughLength(c) < SLIVER_MM)) return undefined;
    const error = strayBetween(source, curves);
    if (error <= task.tolerance) return { curves, error };
    tolerance *= CLOSER;
  }
  return undefined;
}

/** A guess of one arc more with the arcs i and i + 1 as one, which turns as they did. */
function merged(links: readonly Link[], i: number): readonly Link[] {
  const [a, b] = [links[i]!, links[i + 1]!];
  const length = a.length + b.length;
  const curvature = (a.curvature * a.length + b.curvature * b.length) / length;
  return [...links.slice(0, i), { curvature, length }, ...links.slice(i + 2)];
}

/** How far an arc for both may lie from two: their bends' difference by the square of how long they are. */
const apartBy = (a: Link, b: Link): number =>
  Math.abs(a.curvature - b.curvature) * ((a.length * b.length) / (a.length + b.length)) ** 2;

/** The mergings of neighbours that are most alike. */
function mergings(links: readonly Link[]): readonly (readonly Link[])[] {
  const pairs = links.slice(1).map((link, i) => ({ i, by: apartBy(links[i]!, link) }));
  return pairs
    .sort((a, b) => a.by - b.by || a.i - b.i)
    .slice(0, MERGINGS)
    .map(({ i }) => merged(links, i));
}

/**
 * The fewest arcs and lines, at most `most`, that lead across the gap, smooth where they meet what is kept, within
 * the tolerance; what is kept beside it comes first and last, longer or shorter than it was. undefined when no
 * such chain is found.
 */
export function fewest(gap: Gap, tolerance: number, most: number): Bridged | undefined {
  const source = curvesOfGap(gap);
  const [start, end] = [startOf(gap), endOfGap(gap)];
  const task: Task = { start, end, tolerance: tolerance * 0.999, samples: samplesOf(source, 0, SAMPLES) };
  const kept: readonly Link[] = isPlain(gap.before)
    ? [{ curvature: curvatureOfPlain(gap.before), length: roughLength(gap.before) }]
    : [];
  const all = guesses(samplesOf(gap.curves, 0, SAMPLES), Math.min(most, MOST) + 1);
  const first = all.findIndex(({ stray }) => stray <= GUESS_FACTOR * tolerance);
  for (let n = Math.max(first, 0) + 1; first >= 0 && n <= Math.min(first + MORE, most, all.length); n++) {
    const own = all[n - 1]!.links;
    const more = all[n]?.links ?? [];
    for (const links of [own, ...mergings(more)]) {
      const found = tried(gap, source, task, [...kept, ...links]);
      if (found) return found;
    }
  }
  return undefined;
}
