import { directionAt } from "./curve.ts";
import { measureOf } from "./measure.ts";
import type { Path, Point } from "./path.ts";
import { turnBetween } from "./vector.ts";

/** A joint of a path: where it is, how far along, and how it turns there. */
export type CornerTurn = { readonly at: Point; readonly s: number; readonly turn: number };

/** A turn smaller than this is none: over 1 m it leads a thousandth of a millimetre astray. */
const SMOOTH_RAD = 1e-6;

/** Rounding decides neither whether a joint is smooth nor to which side a path turns right back. */
function tidied(turn: number): number {
  if (Math.abs(turn) < SMOOTH_RAD) return 0;
  return Math.abs(turn) > Math.PI - SMOOTH_RAD ? Math.PI : turn;
}

/**
 * Every joint between two segments, in order; a closed path's start, where its last segment meets its
 * first, comes first. `turn` in radians, left positive, π for a path that turns right back, exactly 0 where
 * it goes on smoothly. Segments of no length are passed over.
 */
export function cornerTurns(path: Path): CornerTurn[] {
  const { rows } = measureOf(path);
  return rows.flatMap(({ curve, start }, i) => {
    const before = i > 0 ? rows[i - 1] : path.closed ? rows.at(-1) : undefined;
    if (!before) return [];
    const turn = turnBetween(directionAt(before.curve, 1), directionAt(curve, 0));
    return [{ at: curve.p0, s: start, turn: tidied(turn) }];
  });
}
