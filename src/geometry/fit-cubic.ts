// One cubic along a curve of which points and directions are known.
// Least squares on the distances square to the curve only, with each point's t moved to its foot between
// the rounds (Gauss–Newton on the true distance; compare P. J. Schneider, "An algorithm for automatically
// fitting digitized curves", Graphics Gems, 1990, which takes whole distances and comes in slowly; from memory).
import { type CubicCurve, curveAt } from "./curve.ts";
import { towardsFoot } from "./nearest.ts";
import type { Point } from "./path.ts";
import { apart, cross, minus, plus, scaled } from "./vector.ts";

/** Rounds of least squares and feet; each squares what is left, and a third bettered nothing. */
const ROUNDS = 2;

/** A point to be fitted and the direction of travel there. */
export type Sample = { readonly point: Point; readonly way: Point };
export type Fit = { readonly curve: CubicCurve; readonly error: number };
type Handles = { readonly first: number; readonly last: number };

function handles(samples: readonly Sample[], shares: readonly number[]): Handles {
  const [start, end] = [samples[0]!, samples.at(-1)!];
  let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
  samples.forEach(({ point, way }, i) => {
    const [t, s] = [shares[i]!, 1 - shares[i]!];
    const [b0, b1, b2, b3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    const rest = minus(point, plus(scaled(start.point, b0 + b1), scaled(end.point, b2 + b3)));
    const [a0, a1, x] = [b1 * cross(way, start.way), -b2 * cross(way, end.way), cross(way, rest)];
    c00 += a0 * a0;
    c01 += a0 * a1;
    c11 += a1 * a1;
    x0 += x * a0;
    x1 += x * a1;
  });
  const det = c00 * c11 - c01 * c01;
  const third = apart(start.point, end.point) / 3;
  // A straight run leaves the handles undecided: a third of the chord is right for it.
  if (!(det > 1e-12 * c00 * c11)) return { first: third, last: third };
  const [first, last] = [(x0 * c11 - x1 * c01) / det, (x1 * c00 - x0 * c01) / det];
  return first >= 0 && last >= 0 ? { first, last } : { first: third, last: third };
}

/** The cubic from the first sample to the last, in their directions, and the furthest that a sample lies from it. */
export function fitCubic(samples: readonly Sample[]): Fit {
  const [start, end] = [samples[0]!, samples.at(-1)!];
  const [p0, p1] = [start.point, end.point];
  let shares = samples.map((_, i) => i / (samples.length - 1));
  let best: Fit | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const { first, last } = handles(samples, shares);
    const c1 = plus(p0, scaled(start.way, first));
    const c2 = minus(p1, scaled(end.way, last));
    const curve: CubicCurve = { kind: "cubic", p0, c1, c2, p1 };
    shares = samples.map(({ point }, i) => towardsFoot(curve, point, shares[i]!));
    const error = Math.max(...samples.map(({ point }, i) => apart(point, curveAt(curve, shares[i]!))));
    if (!best || error < best.error) best = { curve, error };
  }
  return best!;
}
