import type { Path, Point } from "../../geometry/path.ts";
import type { Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";

// Rules that measure a drawing need numbers to measure. A piece with a coordinate that is no number is
// reported by one rule and passed over by the rest, so that one fault doesn't hide behind a crash.

const finite = ([x, y]: Point): boolean => Number.isFinite(x) && Number.isFinite(y);

/** True when every coordinate of the path is a number. */
const pathHasNumbers = (path: Path): boolean =>
  finite(path.start) &&
  path.segments.every((s) => {
    if (!finite(s.to)) return false;
    if (s.kind === "arc") return finite(s.centre);
    return s.kind === "line" || (finite(s.c1) && finite(s.c2));
  });

/** The parts of a piece that have a coordinate that is no number, in words. */
export function withoutNumbers(piece: Piece): readonly string[] {
  const paths: readonly (readonly [string, Path])[] = [
    ["outline", piece.outline],
    ...(piece.rough ? [["rough-cut line", piece.rough] as const] : []),
    ...piece.cutouts.map((c) => [`cutout ${c.id}`, c.outline] as const),
    ...piece.seams.map((s) => [`seam ${s.id}`, s.path] as const),
    ...piece.zones.map((z) => [`zone ${z.id}`, z.outline] as const),
    ...piece.marks.map((m) => [`mark ${m.id}`, m.path] as const),
  ];
  return [
    ...paths.filter(([, path]) => !pathHasNumbers(path)).map(([place]) => place),
    ...piece.holes
      .filter((h) => !(finite(h.at) && Number.isFinite(h.size) && Number.isFinite(h.angle)))
      .map((h) => `hole ${h.id}`),
    ...piece.folds.filter((f) => !(finite(f.from) && finite(f.to))).map((f) => `fold ${f.id}`),
    ...piece.corners.filter((c) => !finite(c.at)).map((c) => `corner ${c.name}`),
  ];
}

const open = (piece: Piece): boolean =>
  piece.rough?.closed === false ||
  !piece.outline.closed ||
  piece.cutouts.some((c) => !c.outline.closed) ||
  piece.zones.some((z) => !z.outline.closed);

/** The pieces that can be measured: all numbers, closed outlines. */
export const measurable = (job: Made): readonly Piece[] =>
  job.pieces.filter((p) => withoutNumbers(p).length === 0 && !open(p));

/** The measurable piece of that id. */
export const pieceOf = (job: Made, id: string): Piece | undefined => measurable(job).find((p) => p.id === id);
