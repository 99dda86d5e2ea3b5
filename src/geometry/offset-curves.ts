// The raw offset: every curve of a path shifted to its left by d, with an arc round every corner that
// opens. What runs back on itself or comes nearer than d is taken away later.
import * as trig from "../units/trigonometry.ts";
import { type ArcCurve, type CubicCurve, type Curve, curveAt, directionAt, velocityAt } from "./curve.ts";
import { fitCubic } from "./fit-cubic.ts";
import { curvatureOf } from "./length.ts";
import type { Point } from "./path.ts";
import { apart, leftOf, plus, scaled, sizeOf, turnBetween } from "./vector.ts";

/** Cubics are fitted this well at every sample, so that they stay within 0.001 mm between them too. */
const FIT_MM = 0.0005;
/** Points to which one cubic is fitted, less one. */
const SAMPLES = 8;
/** A stretch of cubic this short that cannot be fitted is a cusp: a corner. */
const CUSP_MM = 0.0001;
/** An offset of less than this share of its curve's speed stands still: rounding decides its sign. */
const STILL = 1e-9;
/** Beside a standstill found by halving, that share is zero give or take this. */
const STILL_ENDS = 1e-6;
/** An arc shorter than this round a corner, or of a smaller radius, is a point. */
const POINT_MM = 0.00001;
/**
 * A turn this near to π may be a turning back, whose corner opens on both sides. An arc too many does no
 * harm: it lies nearer than d to the path and is taken away.
 */
const TURNING_BACK_RAD = 0.1;

const shifted = (curve: Curve, t: number, d: number): Point =>
  plus(curveAt(curve, t), scaled(leftOf(directionAt(curve, t)), d));

/** Round a corner at `at`, where direction `way0` becomes `way1`: an arc if the corner opens on the side of d. */
function roundCorner(at: Point, way0: Point, way1: Point, d: number): readonly ArcCurve[] {
  const turn = turnBetween(way0, way1);
  const opens = turn * d < 0;
  const back = Math.abs(turn) > Math.PI - TURNING_BACK_RAD;
  const radius = Math.abs(d);
  if (!(opens || back) || Math.abs(turn) * radius < POINT_MM) return [];
  const p0 = plus(at, scaled(leftOf(way0), d));
  const p1 = plus(at, scaled(leftOf(way1), d));
  const angle0 = trig.atan2(p0[1] - at[1], p0[0] - at[0]);
  const swept = opens ? Math.abs(turn) : 2 * Math.PI - Math.abs(turn);
  return [{ kind: "arc", p0, p1, centre: at, radius, angle0, sweep: -Math.sign(d) * swept }];
}

function arcShifted(curve: ArcCurve, d: number): readonly ArcCurve[] {
  const radius = curve.radius - Math.sign(curve.sweep) * d;
  // Turned inside out: all of it is nearer than d.
  if (radius < POINT_MM) return [];
  return [{ ...curve, radius, p0: shifted(curve, 0, d), p1: shifted(curve, 1, d) }];
}

/** Speed of the offset as a share of the curve's: below 0 it runs backwards. */
const forwardness = (curve: CubicCurve, t: number, d: number): number => 1 - curvatureOf(curve, t) * d;

/** Where forwardness changes sign between lo and hi. */
function standstill(curve: CubicCurve, lo: number, hi: number, d: number): number {
  const forwardAtLo = forwardness(curve, lo, d) > 0;
  let [a, b] = [lo, hi];
  while (b - a > STILL * (hi - lo)) {
    const middle = (a + b) / 2;
    if (forwardness(curve, middle, d) > 0 === forwardAtLo) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

type Reach = { readonly curve: CubicCurve; readonly d: number; readonly out: Curve[] };

function addFitted(reach: Reach, t0: number, t1: number): void {
  const { curve, d, out } = reach;
  const ts = Array.from({ length: SAMPLES + 1 }, (_, i) => t0 + ((t1 - t0) * i) / SAMPLES);
  const signs = ts
    .map((t) => forwardness(curve, t, d))
    .map((f) => (Math.abs(f) < STILL_ENDS ? 0 : Math.sign(f)));
  const sign = signs.find((s) => s !== 0) ?? 0;
  const change = signs.findIndex((s) => s !== 0 && s !== sign);
  const speed = Math.max(...ts.map((t) => sizeOf(velocityAt(curve, t))));
  const short = speed * (t1 - t0) < CUSP_MM;
  if (change >= 0 && !short) {
    const t = standstill(curve, ts[signs.lastIndexOf(sign, change)]!, ts[change]!, d);
    addFitted(reach, t0, t);
    addFitted(reach, t, t1);
    return;
  }
  if (sign <= 0 && !short) return;
  const fit = fitCubic(ts.map((t) => ({ point: shifted(curve, t, d), way: directionAt(curve, t) })));
  if (fit.error <= FIT_MM && sign > 0) out.push(fit.curve);
  else if (short) {
    const [way0, way1] = [directionAt(curve, t0), directionAt(curve, t1)];
    out.push(...roundCorner(curveAt(curve, (t0 + t1) / 2), way0, way1, d));
  } else {
    addFitted(reach, t0, (t0 + t1) / 2);
    addFitted(reach, (t0 + t1) / 2, t1);
  }
}

function cubicShifted(curve: CubicCurve, d: number): readonly Curve[] {
  const out: Curve[] = [];
  addFitted({ curve, d, out }, 0, 1);
  return out;
}

function curveShifted(curve: Curve, d: number): readonly Curve[] {
  if (curve.kind === "arc") return arcShifted(curve, d);
  if (curve.kind === "cubic") return cubicShifted(curve, d);
  return [{ kind: "line", p0: shifted(curve, 0, d), p1: shifted(curve, 1, d) }];
}

/** All curves of the raw offset to the left by d, in the path's order. */
export function rawOffset(curves: readonly Curve[], closed: boolean, d: number): readonly Curve[] {
  return curves.flatMap((curve, i) => {
    const next = curves[i + 1] ?? (closed ? curves[0] : undefined);
    const corner = next ? roundCorner(curve.p1, directionAt(curve, 1), directionAt(next, 0), d) : [];
    return [...curveShifted(curve, d), ...corner].filter((one) => apart(one.p0, one.p1) > 0);
  });
}
