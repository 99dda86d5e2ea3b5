import type { PagePiece } from "../../job.ts";
import { cornersOf, nearestOnPath } from "./curves.ts";
import { apart, type Box, isStroke, type Part, type Point, type Stroke, strokeOfPart } from "./shapes.ts";
import type { Cell } from "./shelves.ts";

// What a finger on the drawing means. Points in a piece's own coordinates, mm, y up, grain side up.

/** A hole lies on its seam's line: a line counts as this much of the reach farther away than a point. */
const LINE_BEHIND = 0.4;

/** A piece's point in the overview; turned over, it is mirrored within its own box. */
export const onBench = ({ box, move }: Cell, turned: boolean, [x, y]: Point): Point => [
  (turned ? box.minX + box.maxX - x : x) + move[0],
  y + move[1],
];

/** The reverse: a point of the overview in the piece's own coordinates. */
export const onPiece = ({ box, move }: Cell, turned: boolean, [x, y]: Point): Point => [
  turned ? box.minX + box.maxX - (x - move[0]) : x - move[0],
  y - move[1],
];

const outside = ({ minX, maxX, minY, maxY }: Box, [x, y]: Point): number =>
  Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));

/** The piece under a point of the overview, or the nearest within reach. */
export function cellAt(
  cells: readonly Cell[],
  turned: boolean,
  point: Point,
  reach: number,
): Cell | undefined {
  const far = (cell: Cell): number => outside(cell.box, onPiece(cell, turned, point));
  const near = cells.filter((cell) => far(cell) <= reach);
  return near.reduce<Cell | undefined>(
    (best, next) => (best && far(best) <= far(next) ? best : next),
    undefined,
  );
}

function farFrom(piece: PagePiece, part: Part, p: Point, reach: number): number {
  const point = apart(p, part.at);
  const stroke = strokeOfPart(piece, part.id);
  if (!stroke) return point;
  return Math.min(point, apart(p, nearestOnPath(p, stroke.path)) + reach * LINE_BEHIND);
}

/** The part of a piece that a touch means; undefined when none is within reach, mm. */
export function partAt(piece: PagePiece, p: Point, reach: number): Part | undefined {
  let best: { readonly part: Part; readonly far: number } | undefined;
  for (const part of piece.parts) {
    const far = farFrom(piece, part, p, reach);
    if (far <= reach && (!best || far < best.far)) best = { part, far };
  }
  return best?.part;
}

const nearest = (points: readonly Point[], p: Point): Point | undefined =>
  points.reduce<Point | undefined>(
    (best, next) => (best && apart(p, best) <= apart(p, next) ? best : next),
    undefined,
  );

/** Parts that are a point of themselves; of a seam or a field only its middle would be known. */
const isPoint = ({ id }: Part): boolean => /^(hole|corner)\./.test(id);
/** A hole's circle has joints and a cross: none of them is what a rule is laid to. */
const isHole = ({ id }: Stroke): boolean => id === undefined || id.startsWith("hole.");

/**
 * Where a rule would be laid: to a hole's middle or a corner within reach, else to an end of a line, else
 * along a line close by, else just there.
 */
export function snapped(piece: PagePiece, p: Point, reach: number): Point {
  const strokes = piece.lines.map(({ item }) => item).filter(isStroke);
  const within = (point: Point | undefined, far: number): point is Point =>
    point !== undefined && apart(p, point) <= far;
  const hole = nearest(
    piece.parts.filter(isPoint).map(({ at }) => at),
    p,
  );
  if (within(hole, reach)) return hole;
  const ends = strokes.filter((s) => !isHole(s)).flatMap(({ path }) => cornersOf(path));
  const end = nearest(ends, p);
  if (within(end, reach)) return end;
  const along = nearest(
    strokes.map(({ path }) => nearestOnPath(p, path)),
    p,
  );
  return within(along, reach / 2) ? along : p;
}
