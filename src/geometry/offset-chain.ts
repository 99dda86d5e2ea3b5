// Pieces of an offset joined end to start into paths.
import { directionAt } from "./curve.ts";
import { CRUMB_MM, type OffsetPiece } from "./offset-pieces.ts";
import { apart, turnBetween } from "./vector.ts";

/** An end joins a start this near: two crumbs and a bit of rounding may have dropped out between. */
const JOINS_MM = 3 * CRUMB_MM;

/** A turn this near to −π is π. */
const RIGHT_BACK_RAD = 1e-6;

export type Chain = { readonly pieces: readonly OffsetPiece[]; readonly closed: boolean };
export type Chains = { readonly chains: readonly Chain[]; readonly leftOver: readonly OffsetPiece[] };

const joins = (before: OffsetPiece, after: OffsetPiece): boolean =>
  apart(before.curve.p1, after.curve.p0) <= JOINS_MM;

/** Leaves out pieces that hang loose at an end which is not free, until none does. */
function withoutStubs(pieces: readonly OffsetPiece[]): readonly OffsetPiece[] {
  const kept = pieces.filter(
    (piece) =>
      (piece.freeEnd || pieces.some((next) => joins(piece, next))) &&
      (piece.freeStart || pieces.some((before) => joins(before, piece))),
  );
  return kept.length === pieces.length ? kept : withoutStubs(kept);
}

/**
 * Of several pieces that could follow, the one that turns most away from the path: to the left for an
 * offset to the left. So lobes that touch come apart.
 */
function follower(piece: OffsetPiece, pool: readonly OffsetPiece[], side: number): OffsetPiece | undefined {
  const arriving = directionAt(piece.curve, 1);
  let best: { readonly next: OffsetPiece; readonly turn: number } | undefined;
  for (const next of pool) {
    if (!joins(piece, next)) continue;
    const away = Math.sign(side) * turnBetween(arriving, directionAt(next.curve, 0));
    // Turning right back is furthest away, whatever rounding makes of its sign.
    const turn = away < -Math.PI + RIGHT_BACK_RAD ? Math.PI : away;
    if (!best || turn > best.turn) best = { next, turn };
  }
  return best?.next;
}

function trace(first: OffsetPiece, pool: Set<OffsetPiece>, side: number): Chain {
  const pieces = [first];
  for (let last = first; ; last = pieces.at(-1)!) {
    if (last.freeEnd) return { pieces, closed: false };
    // A ring's first piece is among those that may follow: choosing it closes the ring.
    const next = follower(last, first.freeStart ? [...pool] : [first, ...pool], side);
    if (!next || next === first) return { pieces, closed: next === first };
    pool.delete(next);
    pieces.push(next);
  }
}

/** Rings and, for open paths, open runs. `leftOver` are pieces that would join to neither. */
export function chainPieces(pieces: readonly OffsetPiece[], side: number): Chains {
  const pool = new Set(withoutStubs(pieces));
  const chains: Chain[] = [];
  const leftOver = pieces.filter((piece) => !pool.has(piece));
  const starts = [...pool].filter(({ freeStart }) => freeStart);
  for (const first of [...starts, ...pool]) {
    if (!pool.has(first)) continue;
    pool.delete(first);
    const chain = trace(first, pool, side);
    const whole = chain.closed || (first.freeStart && chain.pieces.at(-1)!.freeEnd);
    if (whole) chains.push(chain);
    else leftOver.push(...chain.pieces);
  }
  return { chains, leftOver };
}
