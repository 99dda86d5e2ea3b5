// The same run of cubics may lie anywhere on a piece, turned, mirrored, run the other way. Seen in a frame of
// its own it always looks the same, so that it is always given the same arcs.
import { type CubicCurve, type Curve, partOf } from "../geometry/curve.ts";
import type { Point } from "../geometry/path.ts";
import { apart, cross, dot, minus, unit } from "../geometry/vector.ts";
import { roundTo } from "../units/round.ts";
import type { Run } from "./arcRun.ts";

export type Frame = {
  readonly run: Run;
  readonly origin: Point;
  readonly along: Point;
  /** The chord's length. */
  readonly chord: number;
  readonly mirrored: boolean;
  readonly backward: boolean;
};

/** Decimals of a millimetre that frames are compared to: far above rounding, far below what a knife follows. */
const DECIMALS = 6;

type Look = { readonly mirrored: boolean; readonly backward: boolean };
const LOOKS: readonly Look[] = [
  { mirrored: false, backward: false },
  { mirrored: true, backward: false },
  { mirrored: false, backward: true },
  { mirrored: true, backward: true },
];

/** Mirrored: y turned over. Backward: x counted from the run's other end, and the run the other way. */
function seen(run: Run, chord: number, { mirrored, backward }: Look): Run {
  const map = ([x, y]: Point): Point => [backward ? chord - x : x, mirrored ? 0 - y : y];
  const curves = run.map(
    ({ p0, c1, c2, p1 }): CubicCurve =>
      backward
        ? { kind: "cubic", p0: map(p1), c1: map(c2), c2: map(c1), p1: map(p0) }
        : { kind: "cubic", p0: map(p0), c1: map(c1), c2: map(c2), p1: map(p1) },
  );
  return backward ? curves.reverse() : curves;
}

const figures = (run: Run): readonly number[] =>
  run.flatMap(({ c1, c2, p1 }) => [...c1, ...c2, ...p1]).map((n) => roundTo(n, DECIMALS));

/** Below 0 when a comes before b, 0 when they are the same. */
function compared(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((n, i) => n !== b[i]);
  return index < 0 ? 0 : a[index]! - b[index]!;
}

const isClosed = (chord: number): boolean => chord < 10 ** -DECIMALS;

/** The run with its chord along x from the origin, in the one of its four looks that comes first. */
export function framed(run: Run): Frame {
  const [origin, end] = [run[0]!.p0, run.at(-1)!.p1];
  const chord = apart(origin, end);
  // A run that ends where it began has no chord: it is taken as it lies.
  const along: Point = isClosed(chord) ? [1, 0] : unit(minus(end, origin));
  const map = (p: Point): Point => {
    const v = minus(p, origin);
    return [dot(v, along), cross(along, v)];
  };
  const flat = run.map(
    ({ p0, c1, c2, p1 }): CubicCurve => ({
      kind: "cubic",
      p0: map(p0),
      c1: map(c1),
      c2: map(c2),
      p1: map(p1),
    }),
  );
  const looks = isClosed(chord) ? LOOKS.slice(0, 1) : LOOKS;
  const all = looks.map((look) => ({ look, run: seen(flat, chord, look) }));
  const first = all.reduce((a, b) => (compared(figures(b.run), figures(a.run)) < 0 ? b : a));
  return { run: first.run, origin, along, chord, ...first.look };
}

/** Curves found in a frame, back where the run lies, in the run's direction. */
export function unframed(frame: Frame, curves: readonly Curve[]): readonly Curve[] {
  const { origin, along, chord, mirrored, backward } = frame;
  const map = ([fx, fy]: Point): Point => {
    const [x, y] = [backward ? chord - fx : fx, mirrored ? 0 - fy : fy];
    return [origin[0] + x * along[0] - y * along[1], origin[1] + x * along[1] + y * along[0]];
  };
  const mapped = curves.map((curve): Curve => {
    const [p0, p1] = backward ? [map(curve.p1), map(curve.p0)] : [map(curve.p0), map(curve.p1)];
    if (curve.kind === "line") return { kind: "line", p0, p1 };
    if (curve.kind === "cubic") {
      const [c1, c2] = backward ? [curve.c2, curve.c1] : [curve.c1, curve.c2];
      return { kind: "cubic", p0, c1: map(c1), c2: map(c2), p1 };
    }
    const centre = map(curve.centre);
    // Turned over, an arc turns the other way. A backward look turns x over and runs the other way: both
    // together change nothing.
    const sweep = mirrored ? -curve.sweep : curve.sweep;
    return { ...curve, p0, p1, centre, sweep, angle0: Math.atan2(p0[1] - centre[1], p0[0] - centre[0]) };
  });
  return backward ? mapped.reverse() : mapped;
}

/** True when the run ends where it began. */
export const isLoop = (run: Run): boolean => isClosed(apart(run[0]!.p0, run.at(-1)!.p1));

/** True when the run is its own image, seen from its other end, upright or turned over. */
export function alike(run: Run): boolean {
  const chord = apart(run[0]!.p0, run.at(-1)!.p1);
  if (isClosed(chord)) return false;
  const own = figures(run);
  return LOOKS.filter(({ backward }) => backward).some(
    (look) => compared(figures(seen(run, chord, look)), own) === 0,
  );
}

/** The run as its two halves. */
export function halves(run: Run): readonly [Run, Run] {
  const middle = Math.floor(run.length / 2);
  if (run.length % 2 === 0) return [run.slice(0, middle), run.slice(middle)];
  const split = run[middle]!;
  const [before, after] = [partOf(split, 0, 0.5) as CubicCurve, partOf(split, 0.5, 1) as CubicCurve];
  return [
    [...run.slice(0, middle), before],
    [after, ...run.slice(middle + 1)],
  ];
}
