import { distanceToPath, nearestOnPath } from "../geometry/distance.ts";
import { pathLength, pointAt } from "../geometry/length.ts";
import { endPoint, type Point } from "../geometry/path.ts";
import type { Made, SeamJoin } from "../model/article.ts";
import type { Piece, SeamLine } from "../model/piece.ts";
import { sumOf } from "./draft.ts";

// Pieces whose edges are sewn flush to each other: they are finished as one edge when they are sewn.

/** A seam is its edge's own when it lies nowhere more than this further from the edge than its inset, mm. */
const NEAR_MM = 0.5;
/** A flange may be cut so much wider to be trimmed; the order's own most. */
const TRIM_MOST_MM = 6;

/** True when the line runs beside the piece's own edge, and not across its face. */
function besideEdge(piece: Piece, seam: SeamLine): boolean {
  const trimmed = piece.zones.some((z) => z.kind === "trim") ? TRIM_MOST_MM : 0;
  const length = pathLength(seam.path);
  return [0.25, 0.5, 0.75].every((part) => {
    const off = distanceToPath(pointAt(seam.path, part * length), piece.outline) - seam.inset;
    return Math.abs(off) <= NEAR_MM || (off > 0 && off <= trimmed + NEAR_MM);
  });
}

export type Run = { readonly piece: Piece; readonly seam: SeamLine };
export type FlushSeam = { readonly join: SeamJoin; readonly runs: readonly Run[] };

function runsOf(made: Made, join: SeamJoin): readonly Run[] {
  return join.sides.flatMap((side) => {
    const piece = made.pieces.find((p) => p.id === side.piece);
    const seam = piece?.seams.find((s) => s.id === side.seam);
    return piece && seam ? [{ piece, seam }] : [];
  });
}

/** Seams that sew edge to edge: every side runs beside its own edge. */
export const flushSeams = (made: Made): readonly FlushSeam[] =>
  made.joins
    .flatMap((join) => (join.kind === "seam" ? [{ join, runs: runsOf(made, join) }] : []))
    .filter(({ runs }) => runs.length > 1 && runs.every((r) => besideEdge(r.piece, r.seam)));

/** A lining that is glued in and trimmed with the piece makes one edge with it. */
export const isLinedFlush = (p: Piece, made: Made): boolean =>
  made.pieces.some((l) => l.id === `lining-${p.id}` && l.zones.some((z) => z.kind === "trim"));

export const isTurnedOut = (made: Made): boolean => (made.assembly ?? []).some((s) => s.does === "turn");

/** A seam begins and ends this many insets short of its edge's corner at most; common practice, no source. */
const SHORT_INSETS = 4;

/**
 * Length of the outline beside a seam, mm: from where its one end is nearest to where the other is, and on to the
 * corner at which the edge ends, where there is one so near.
 */
export function edgeBeside({ piece, seam }: Run): number {
  const whole = pathLength(piece.outline);
  const at = (p: Point): number => nearestOnPath(p, piece.outline).at;
  const [start, end] = [at(seam.path.start), at(endPoint(seam.path))];
  const ahead = (from: number, to: number): number => (((to - from) % whole) + whole) % whole;
  const length = pathLength(seam.path);
  // Of the two ways round the one that is as long as the seam.
  const along = Math.abs(ahead(start, end) - length) <= Math.abs(ahead(end, start) - length);
  const [from, to] = along ? [start, end] : [end, start];
  const corners = piece.corners.map((c) => at(c.at));
  const onTo = (gaps: readonly number[]): number =>
    Math.min(...gaps.filter((gap) => gap <= SHORT_INSETS * seam.inset), Number.POSITIVE_INFINITY);
  const rests = [onTo(corners.map((c) => ahead(c, from))), onTo(corners.map((c) => ahead(to, c)))];
  return Math.min(whole, ahead(from, to) + sumOf(rests.filter(Number.isFinite)));
}

export const besideAll = (runs: readonly Run[]): number => sumOf(runs.map(edgeBeside));
