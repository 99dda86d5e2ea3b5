// The raw offset cut wherever it meets itself; a piece stays when its inside lies at the full distance.
import { boxDistance, boxesMeet, boxOfCurve } from "./bounds.ts";
import { type Curve, curveAt, partOf } from "./curve.ts";
import { MEET_MM, meetCurves } from "./meet.ts";
import { nearestOnCurve } from "./nearest.ts";
import type { Point } from "./path.ts";
import { apart } from "./vector.ts";

/** A piece of the raw offset: curve number `raw` from t0 to t1. */
export type OffsetPiece = {
  readonly raw: number;
  readonly t0: number;
  readonly t1: number;
  readonly curve: Curve;
  /** The piece may rightly begin or end where nothing joins it: at the end of an open path's reach. */
  readonly freeStart: boolean;
  readonly freeEnd: boolean;
};

type Cut = { readonly t: number; readonly at: Point; readonly free: boolean };

/** Lines and arcs are exact; this is their rounding, and what a shallow cut may lie off by. */
const EXACT_SLACK_MM = 0.00001;
/** Fitted cubics stray by up to a thousandth; twice that where two of them bound a piece. */
const FITTED_SLACK_MM = 0.0015;
/** Cuts closer than this in t are one. */
const SAME_CUT = 1e-9;
/** A piece shorter than this, far less than a knife can follow, is left out. */
export const CRUMB_MM = 0.00002;
/** Where a piece is held against the path. */
const PROBES = [0.5, 0.25, 0.75] as const;

function addCuts(raw: readonly Curve[], cutters: readonly Curve[], cuts: readonly Cut[][]): void {
  const boxes = raw.map(boxOfCurve);
  raw.forEach((curve, i) => {
    for (let j = i + 1; j < raw.length; j++) {
      if (!boxesMeet(boxes[i]!, boxes[j]!, MEET_MM)) continue;
      for (const { a, b, at } of meetCurves(curve, raw[j]!).points) {
        cuts[i]!.push({ t: a, at, free: false });
        cuts[j]!.push({ t: b, at, free: false });
      }
    }
    for (const cutter of cutters) {
      for (const { a, at } of meetCurves(curve, cutter).points) cuts[i]!.push({ t: a, at, free: true });
    }
  });
}

function piecesOf(
  raw: number,
  curve: Curve,
  cuts: readonly Cut[],
  ends: readonly [Cut, Cut],
): readonly OffsetPiece[] {
  const inner = cuts.filter(({ t }) => t > SAME_CUT && t < 1 - SAME_CUT).sort((a, b) => a.t - b.t);
  const bounds = [ends[0], ...inner.filter(({ t }, i) => i === 0 || t - inner[i - 1]!.t > SAME_CUT), ends[1]];
  return bounds.slice(1).map((to, i) => {
    const from = bounds[i]!;
    // Both curves that meet at a cut take the same point for it.
    const part = { ...partOf(curve, from.t, to.t), p0: from.at, p1: to.at };
    return { raw, t0: from.t, t1: to.t, curve: part, freeStart: from.free, freeEnd: to.free };
  });
}

const isCrumb = ({ p0, p1 }: Curve, middle: Point): boolean =>
  apart(p0, middle) + apart(middle, p1) < CRUMB_MM;

function reachesDistance(piece: OffsetPiece, source: readonly Curve[], distance: number): boolean {
  const slack =
    piece.curve.kind === "cubic" || source.some(({ kind }) => kind === "cubic")
      ? FITTED_SLACK_MM
      : EXACT_SLACK_MM;
  const least = distance - slack;
  const whole = piece.t0 === 0 && piece.t1 === 1;
  return PROBES.slice(0, whole ? 1 : PROBES.length).every((share) => {
    const point = curveAt(piece.curve, share);
    return !source.some(
      (curve) =>
        boxDistance(boxOfCurve(curve), point) < least && nearestOnCurve(curve, point).distance < least,
    );
  });
}

/**
 * The pieces of the raw offset that lie at `distance` from the source, in order. `cutters` only cut: for an
 * open path they are the rest of the line at that distance all round it.
 */
export function offsetPieces(
  raw: readonly Curve[],
  cutters: readonly Curve[],
  source: readonly Curve[],
  distance: number,
  open: boolean,
): readonly OffsetPiece[] {
  const cuts: Cut[][] = raw.map(() => []);
  addCuts(raw, cutters, cuts);
  return raw
    .flatMap((curve, i) => {
      const start: Cut = { t: 0, at: curve.p0, free: open && i === 0 };
      const end: Cut = { t: 1, at: curve.p1, free: open && i === raw.length - 1 };
      return piecesOf(i, curve, cuts[i]!, [start, end]);
    })
    .filter((piece) => !isCrumb(piece.curve, curveAt(piece.curve, 0.5)))
    .filter((piece) => reachesDistance(piece, source, distance));
}
