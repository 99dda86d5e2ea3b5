// A stretch of a curve held between its chord and how far it strays from it; halved until it is flat enough.
import { bendingAt, type Curve, curveAt } from "./curve.ts";
import { lineParameter } from "./nearest.ts";
import type { Point } from "./path.ts";
import { apart, cross, minus, sizeOf } from "./vector.ts";

export type Stretch = {
  readonly curve: Curve;
  readonly t0: number;
  readonly t1: number;
  readonly p0: Point;
  readonly p1: Point;
  /** No point of the stretch is further than this from the chord's point of the same share. */
  readonly strays: number;
};

/** h²/8 · max|p″|; p″ of a cubic runs straight, so it is greatest at an end; of an arc it is r θ². */
function strayOf(curve: Curve, t0: number, t1: number): number {
  if (curve.kind === "line") return 0;
  const h = t1 - t0;
  if (curve.kind === "arc") return (h * h * curve.radius * curve.sweep * curve.sweep) / 8;
  return (h * h * Math.max(sizeOf(bendingAt(curve, t0)), sizeOf(bendingAt(curve, t1)))) / 8;
}

export function stretchOf(
  curve: Curve,
  t0 = 0,
  t1 = 1,
  p0 = curveAt(curve, t0),
  p1 = curveAt(curve, t1),
): Stretch {
  return { curve, t0, t1, p0, p1, strays: strayOf(curve, t0, t1) };
}

export function halvesOf({ curve, t0, t1, p0, p1 }: Stretch): readonly [Stretch, Stretch] {
  const t = (t0 + t1) / 2;
  const p = curveAt(curve, t);
  return [stretchOf(curve, t0, t, p0, p), stretchOf(curve, t, t1, p, p1)];
}

/** At least how far two stretches' boxes are apart. */
export function stretchBoxGap(a: Stretch, b: Stretch): number {
  const dx = Math.max(
    Math.min(b.p0[0], b.p1[0]) - Math.max(a.p0[0], a.p1[0]),
    Math.min(a.p0[0], a.p1[0]) - Math.max(b.p0[0], b.p1[0]),
    0,
  );
  const dy = Math.max(
    Math.min(b.p0[1], b.p1[1]) - Math.max(a.p0[1], a.p1[1]),
    Math.min(a.p0[1], a.p1[1]) - Math.max(b.p0[1], b.p1[1]),
    0,
  );
  return Math.sqrt(dx * dx + dy * dy) - a.strays - b.strays;
}

export type ChordGap = { readonly gap: number; readonly a: number; readonly b: number };

/** Where two chords cross, as shares of each, if they do. */
function chordCrossing(a: Stretch, b: Stretch): ChordGap | undefined {
  const [u, v, w] = [minus(a.p1, a.p0), minus(b.p1, b.p0), minus(b.p0, a.p0)];
  const det = cross(u, v);
  if (det === 0) return undefined;
  const [s, t] = [cross(w, v) / det, cross(w, u) / det];
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? { gap: 0, a: s, b: t } : undefined;
}

/** Distance between the chords and where they come nearest, as shares (0 to 1) of each. */
export function chordGap(a: Stretch, b: Stretch): ChordGap {
  const crossing = chordCrossing(a, b);
  if (crossing) return crossing;
  const along = (p: Point, q: Point, t: number): Point => [
    p[0] + t * (q[0] - p[0]),
    p[1] + t * (q[1] - p[1]),
  ];
  const [a0, a1] = [lineParameter(b.p0, b.p1, a.p0), lineParameter(b.p0, b.p1, a.p1)];
  const [b0, b1] = [lineParameter(a.p0, a.p1, b.p0), lineParameter(a.p0, a.p1, b.p1)];
  const four: readonly ChordGap[] = [
    { gap: apart(a.p0, along(b.p0, b.p1, a0)), a: 0, b: a0 },
    { gap: apart(a.p1, along(b.p0, b.p1, a1)), a: 1, b: a1 },
    { gap: apart(b.p0, along(a.p0, a.p1, b0)), a: b0, b: 0 },
    { gap: apart(b.p1, along(a.p0, a.p1, b1)), a: b1, b: 1 },
  ];
  return four.reduce((best, next) => (next.gap < best.gap ? next : best));
}

export const shareOf = ({ t0, t1 }: Stretch, share: number): number => t0 + (t1 - t0) * share;
