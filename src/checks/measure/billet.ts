import { boundsOf } from "../../geometry/bounds.ts";
import type { Adjustment, Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { pieceOf } from "./sound.ts";

/** Every adjustable end of a job with its drawn piece. */
export const adjustments = (job: Made): readonly { readonly join: Adjustment; readonly piece: Piece }[] =>
  job.joins.flatMap((join) => {
    const piece = join.kind === "adjustment" ? pieceOf(job, join.piece) : undefined;
    return piece && join.kind === "adjustment" ? [{ join, piece }] : [];
  });

export type AlikeEnds = {
  readonly join: Adjustment;
  readonly piece: Piece;
  readonly sides: readonly string[];
};

/** Adjustable ends that are alike but for their side, together: what is said of one is said once. */
export function alikeEnds(job: Made): readonly AlikeEnds[] {
  const found = new Map<string, AlikeEnds>();
  for (const { join, piece } of adjustments(job)) {
    const key = JSON.stringify({ ...join, side: "" });
    const before = found.get(key);
    found.set(
      key,
      before
        ? { ...before, sides: [...before.sides, join.side].sort() }
        : { join, piece, sides: [join.side] },
    );
  }
  return [...found.values()];
}

/** "near end", "near and off ends" */
export const endsOf = (sides: readonly string[]): string =>
  `${sides.join(" and ")} ${sides.length === 1 ? "end" : "ends"}`;

/** The buckle holes drawn on a piece, as rising distances from its one end and from its other. */
export function drawnBillets(piece: Piece): readonly (readonly number[])[] {
  const { minX, maxX } = boundsOf(piece.outline);
  const xs = piece.holes.filter((h) => h.use === "buckle").map((h) => h.at[0]);
  const rising = (list: readonly number[]): readonly number[] => [...list].sort((a, b) => a - b);
  return [rising(xs.map((x) => x - minX)), rising(xs.map((x) => maxX - x))];
}

/** Outermost to innermost hole, mm; 0 for a single one. */
export const rowLength = (holes: readonly number[]): number =>
  holes.length === 0 ? 0 : Math.max(...holes) - Math.min(...holes);
