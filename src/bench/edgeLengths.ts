import { boundsOf } from "../geometry/bounds.ts";
import { pathLength } from "../geometry/length.ts";
import type { Piece } from "../model/piece.ts";
import { isKeeper, sumOf, type WorkInput } from "./draft.ts";
import { besideAll, type FlushSeam, isTurnedOut } from "./shell.ts";

// How much edge a piece has to be worked. Lengths mm, of one piece.

/** The edge of a feathered end has no thickness; a keeper's two ends lie hidden. */
function hiddenEnds(piece: Piece): number {
  const acrossY = (path: Piece["outline"]): number => {
    const box = boundsOf(path);
    return box.maxY - box.minY;
  };
  if (isKeeper(piece)) return 2 * acrossY(piece.outline);
  return sumOf(piece.zones.filter((z) => z.kind === "skive" && z.to === 0).map((z) => acrossY(z.outline)));
}

/** Openings that nothing is set in have an edge that shows. */
function openings(piece: Piece, { made }: WorkInput): number {
  const set = (made.fittings ?? []).flatMap((f) =>
    f.serves.filter((s) => s.piece === piece.id).flatMap((s) => s.ids),
  );
  return sumOf(
    piece.cutouts.filter((c) => c.use === "opening" && !set.includes(c.id)).map((c) => pathLength(c.outline)),
  );
}

/**
 * Edge whose corners are taken off: the outline and openings, less hidden ends, less the edges that lie inside
 * when the bag is turned.
 */
export function edgedLength(piece: Piece, flush: readonly FlushSeam[], input: WorkInput): number {
  const inside = isTurnedOut(input.made) ? flush.flatMap((f) => f.runs) : [];
  return (
    pathLength(piece.outline) +
    openings(piece, input) -
    hiddenEnds(piece) -
    besideAll(inside.filter((r) => r.piece.id === piece.id))
  );
}

/** Edge that is finished: as above, and where edges are sewn flush they are one edge, the first piece's. */
export function finishedLength(piece: Piece, flush: readonly FlushSeam[], input: WorkInput): number {
  const all = edgedLength(piece, flush, input);
  if (isTurnedOut(input.made)) return all;
  const others = flush.flatMap((f) => f.runs.filter((r) => r.piece.id !== f.runs[0]!.piece.id));
  return all - besideAll(others.filter((r) => r.piece.id === piece.id));
}
