// The other side of a pair, as a piece of its own.
import { anticlockwise } from "../geometry/area.ts";
import type { Path, Point } from "../geometry/path.ts";
import { mirroredInY } from "../geometry/transform.ts";
import type { Piece } from "../model/piece.ts";

const point = ([x, y]: Point): Point => [x, 0 - y];
const closed = (path: Path): Path => anticlockwise(mirroredInY(path));

/**
 * The piece turned over about its x axis, as it is cut with its template face down: again seen on the grain
 * side, closed outlines anticlockwise, every name kept.
 */
export function mirroredPiece(piece: Piece): Piece {
  return {
    ...piece,
    outline: closed(piece.outline),
    corners: piece.corners.map((c) => ({ ...c, at: point(c.at) })),
    cutouts: piece.cutouts.map((c) => ({ ...c, outline: closed(c.outline) })),
    holes: piece.holes.map((h) => ({ ...h, at: point(h.at), angle: 0 - h.angle })),
    seams: piece.seams.map((s) => ({ ...s, path: mirroredInY(s.path) })),
    folds: piece.folds.map((f) => ({ ...f, from: point(f.from), to: point(f.to) })),
    zones: piece.zones.map((z) => ({ ...z, outline: closed(z.outline) })),
    marks: piece.marks.map((m) => ({ ...m, path: mirroredInY(m.path) })),
    grain: 0 - piece.grain,
    controls: piece.controls.map((c) => ({ ...c, from: point(c.from), to: point(c.to) })),
    ...(piece.rough ? { rough: closed(piece.rough) } : {}),
  };
}
