import { cornerTurns } from "../geometry/corners.ts";
import { curvatureAt, pathLength, pointAt, tangentAt } from "../geometry/length.ts";
import { measureOf } from "../geometry/measure.ts";
import { line, openPath, type Path, type Point, SAME_POINT_MM } from "../geometry/path.ts";
import type { Mark } from "../model/piece.ts";
import * as trig from "../units/trigonometry.ts";

// Clips: short cuts in an allowance, so that it opens where the seam it is sewn into curves.

/** A seam that curves wider than this needs no clips, mm; common practice, no source. */
const WIDEST_CLIPPED_MM = 500;
/** A turn sharper than this is a corner and has a clip of its own; 5°. */
const CORNER_RAD = Math.PI / 36;
/** Clips are so far apart at most, round the curve; 15°, common practice, no source. */
const CLIP_TURN_RAD = Math.PI / 12;
/** A stretch of whole parts may come out a hair over them. */
const ROUNDING = 1e-9;
/** Curvature is read this often, mm; finer than any clip. */
const STEP_MM = 0.5;
/** Clips stop this far short of the stitches at least, mm; common practice, no source. */
const SHORT_MM = 1.5;

/** A clip stops max(1.5, t) short of the stitches. */
export const clipShort = (thickness: number): number => Math.max(SHORT_MM, thickness);

/**
 * Lengths along a seam at which an allowance sewn into it is clipped, rising: where the seam curves, at most
 * `spacing` (mm) and 15° apart; one at each corner. Where a curve runs out straight it has none: there the
 * allowance lies flat.
 */
export function clipPlaces(seam: Path, spacing: number): readonly number[] {
  const corners = cornerTurns(seam)
    .filter((c) => Math.abs(c.turn) > CORNER_RAD)
    .map((c) => c.s);
  const stretches = curvedStretches(seam);
  const curved = stretches.flatMap((stretch) => along(seam, stretch, spacing));
  const places = [...corners, ...joints(stretches), ...curved].sort((a, b) => a - b);
  return places.filter((s, i) => i === 0 || s - places[i - 1]! > STEP_MM);
}

type Stretch = { readonly from: number; readonly to: number };

/** The arcs and cubics of a seam. */
function curvedStretches(seam: Path): readonly Stretch[] {
  return measureOf(seam).rows.flatMap(({ curve, start, length }): readonly Stretch[] => {
    const wide = curve.kind === "arc" && curve.radius > WIDEST_CLIPPED_MM;
    return curve.kind === "line" || wide ? [] : [{ from: start, to: start + length }];
  });
}

/** Where one curve goes on from another. */
const joints = (stretches: readonly Stretch[]): readonly number[] =>
  stretches.slice(1).flatMap(({ from }, i) => (from - stretches[i]!.to < SAME_POINT_MM ? [from] : []));

/** Even places inside a stretch: as few as keep both limits where it curves most. */
function along(seam: Path, { from, to }: Stretch, spacing: number): readonly number[] {
  const steps = Math.max(1, Math.ceil((to - from) / STEP_MM));
  const at = (i: number): number => from + ((to - from) * (i + 0.5)) / steps;
  const bends = Array.from({ length: steps }, (_, i) => Math.abs(curvatureAt(seam, at(i))));
  const apart = Math.min(spacing, CLIP_TURN_RAD / Math.max(...bends));
  const parts = Math.max(2, Math.ceil((to - from) / apart - ROUNDING));
  return Array.from({ length: parts - 1 }, (_, i) => from + ((to - from) * (i + 1)) / parts);
}

/** Square to a seam at length s, from `far` to `near` (mm) beside it; positive to the left of the seam's way. */
export function acrossSeam(seam: Path, s: number, far: number, near: number): Path {
  const [x, y] = pointAt(seam, s);
  const way = tangentAt(seam, s) + Math.PI / 2;
  const beside = (d: number): Point => [x + d * trig.cos(way), y + d * trig.sin(way)];
  return openPath(beside(far), [line(beside(near))]);
}

/**
 * Clip marks in the allowance beside a piece's own seam, at the given lengths along it: from the cut edge, `edge`
 * mm beside the seam (positive: to its left), to where they stop.
 */
export function clipMarks(
  id: string,
  seam: Path,
  places: readonly number[],
  edge: number,
  thickness: number,
): readonly Mark[] {
  const short = Math.min(clipShort(thickness), Math.abs(edge));
  return places.map((s, i) => ({
    id: `${id}.${i + 1}`,
    kind: "clip",
    path: acrossSeam(seam, s, edge, Math.sign(edge) * short),
    label: "clip",
  }));
}

/** A notch in a cut edge is no deeper than this, mm, and stops halfway to the stitches; common practice, no source. */
const NOTCH_MM = 3;
const NOTCH_NAMES = ["quarter", "centre", "quarter"] as const;

/** Notches at the middle and the quarters of a seam, in the cut edge `edge` mm beside it (positive: to its left). */
export function quarterNotches(id: string, seam: Path, edge: number): readonly Mark[] {
  const total = pathLength(seam);
  const deep = Math.min(NOTCH_MM, Math.abs(edge) / 2);
  return NOTCH_NAMES.map((label, i) => ({
    id: `${id}.notch.${i + 1}`,
    kind: "notch",
    path: acrossSeam(seam, (total * (i + 1)) / 4, edge, Math.sign(edge) * (Math.abs(edge) - deep)),
    label,
  }));
}
