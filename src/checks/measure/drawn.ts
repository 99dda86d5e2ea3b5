import { flatten } from "../../geometry/flatten.ts";
import { line, openPath, type Path, type Point } from "../../geometry/path.ts";
import { placedPoint } from "../../geometry/transform.ts";
import type { Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import type { Kept, Layout, Placed, Plate } from "../../model/sheet.ts";
import { holeShape } from "./shapes.ts";
import { measurable } from "./sound.ts";

// What is drawn of a placed piece, as short straight lines on its plate.

/** Drawn lines are followed this closely when asking which sheet shows them; a fifth of a fine pen. */
export const FOLLOW_MM = 0.05;

export type Stroke = { readonly what: string; readonly a: Point; readonly b: Point };
type Part = { readonly what: string; readonly path: Path };

/** Names of the lines that run along the whole of a piece. */
export const OUTLINE = "outline";
export const ROUGH = "rough-cut line";

/** Everything of a piece that must be on paper. */
export function drawnParts(piece: Piece): readonly Part[] {
  return [
    { what: OUTLINE, path: piece.outline },
    ...(piece.rough ? [{ what: ROUGH, path: piece.rough }] : []),
    ...piece.cutouts.map((c) => ({ what: `${c.use} ${c.id}`, path: c.outline })),
    ...piece.holes.map((h) => ({ what: `hole ${h.id}`, path: holeShape(h) })),
    ...piece.seams.map((s) => ({ what: `seam ${s.id}`, path: s.path })),
    ...piece.folds.map((f) => ({ what: `fold ${f.id}`, path: openPath(f.from, [line(f.to)]) })),
    ...piece.zones.map((z) => ({ what: `zone ${z.id}`, path: z.outline })),
    ...piece.marks.map((m) => ({ what: `mark ${m.id}`, path: m.path })),
  ];
}

function strokesOf({ what, path }: Part): readonly Stroke[] {
  const points = flatten(path, FOLLOW_MM);
  const ring = path.closed ? [...points, points[0]!] : points;
  return ring.slice(1).map((b, i) => ({ what, a: ring[i]!, b }));
}

/** The part of a stroke that lies in a kept stretch, moved as it is drawn. */
function keptPart({ what, a, b }: Stroke, [from, to, moved]: Kept): readonly Stroke[] {
  const inside = (t: number): Point => [a[0] + t * (b[0] - a[0]) - moved, a[1] + t * (b[1] - a[1])];
  const run = b[0] - a[0];
  if (run === 0) return a[0] >= from && a[0] <= to ? [{ what, a: inside(0), b: inside(1) }] : [];
  const [s, e] = [(from - a[0]) / run, (to - a[0]) / run];
  const [t0, t1] = [Math.max(0, Math.min(s, e)), Math.min(1, Math.max(s, e))];
  return t0 < t1 ? [{ what, a: inside(t0), b: inside(t1) }] : [];
}

/** The strokes of a placed piece on its plate. */
function strokesOnPlate(piece: Piece, { placement, kept }: Placed): readonly Stroke[] {
  const all = drawnParts(piece).flatMap(strokesOf);
  const drawn = kept ? all.flatMap((stroke) => kept.flatMap((k) => keptPart(stroke, k))) : all;
  return drawn.map(({ what, a, b }) => ({
    what,
    a: placedPoint(a, placement),
    b: placedPoint(b, placement),
  }));
}

export type OnPlate = {
  readonly plate: Plate;
  readonly placed: Placed;
  readonly piece: Piece;
  readonly strokes: readonly Stroke[];
};

/** Every measurable piece where it lies. */
export function piecesOnPlates(job: Made, layout: Layout): readonly OnPlate[] {
  const pieces = new Map(measurable(job).map((p) => [p.id, p]));
  return layout.plates.flatMap((plate) =>
    plate.placed.flatMap((placed) => {
      const piece = pieces.get(placed.piece);
      return piece ? [{ plate, placed, piece, strokes: strokesOnPlate(piece, placed) }] : [];
    }),
  );
}
