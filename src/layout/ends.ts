import { boundsOf } from "../geometry/bounds.ts";
import { type Path, withStarts } from "../geometry/path.ts";
import type { Piece } from "../model/piece.ts";
import type { Kept } from "../model/sheet.ts";
import { drawnBounds } from "./room.ts";

// "Ends only": of a long plain strap both ends are printed true, and the length between in words.

/** Plain strap that is drawn beyond the last hole, cutout or zone, so that the edges can be ruled on. */
export const STUB_MM = 25;
/** Paper between the two break lines, for the words. */
export const BREAK_GAP_MM = 60;
/** Leaving out less than this saves no sheet worth the trouble. */
const LEAST_LEFT_OUT_MM = 100;
/** Edges within this of the strap's full width are its parallel edges. */
const EDGE_MM = 0.01;

type Stretch = readonly [from: number, to: number];

const stretchOf = (path: Path): Stretch => {
  const box = boundsOf(path);
  return [box.minX, box.maxX];
};

/** Stretches of the outline that are not its two parallel edges. */
function endStretches(piece: Piece): readonly Stretch[] {
  const box = boundsOf(piece.outline);
  const atEdge = (y: number): boolean => Math.min(Math.abs(y - box.minY), Math.abs(y - box.maxY)) < EDGE_MM;
  return withStarts(piece.outline)
    .filter(({ from, segment }) => {
      const level = segment.kind === "line" && Math.abs(from[1] - segment.to[1]) < EDGE_MM;
      return !(level && atEdge(from[1]));
    })
    .map(({ from, segment }) => stretchOf({ start: from, segments: [segment], closed: false }));
}

/** Stretches along a strap where something is drawn that must be true. */
function busyStretches(piece: Piece): readonly Stretch[] {
  return [
    ...endStretches(piece),
    ...piece.holes.map((h): Stretch => [h.at[0] - h.size / 2, h.at[0] + h.size / 2]),
    ...piece.cutouts.map((c) => stretchOf(c.outline)),
    ...piece.zones.map((z) => stretchOf(z.outline)),
    ...piece.seams.map((s) => stretchOf(s.path)),
    ...piece.folds.map((f): Stretch => [Math.min(f.from[0], f.to[0]), Math.max(f.from[0], f.to[0])]),
    ...piece.marks.filter((m) => m.kind === "place").map((m) => stretchOf(m.path)),
  ];
}

/**
 * What is drawn of a piece that is printed ends only: two stretches, the second moved towards the first.
 * Undefined when the piece isn't a straight strap, or when too little of it is plain.
 */
export function keptOf(piece: Piece): readonly Kept[] | undefined {
  if (!piece.straight) return undefined;
  const box = drawnBounds(piece);
  const busy = [...busyStretches(piece)].sort((a, b) => a[0] - b[0]);
  let [reached, from, to] = [box.minX, box.minX, box.minX];
  for (const [start, end] of busy) {
    if (start - reached > to - from) [from, to] = [reached, start];
    reached = Math.max(reached, end);
  }
  const [near, far] = [from + STUB_MM, to - STUB_MM];
  const moved = far - near - BREAK_GAP_MM;
  if (moved < LEAST_LEFT_OUT_MM) return undefined;
  return [
    [box.minX, near, 0],
    [far, box.maxX, moved],
  ];
}
