import { flatten } from "../geometry/flatten.ts";
import { type Box, type Path, type Point, rectanglePath } from "../geometry/path.ts";
import type { Piece } from "../model/piece.ts";
import type { Kept } from "../model/sheet.ts";
import { type Feature, featuresOf } from "./features.ts";
import { drawnBounds, outermost, roomOf } from "./room.ts";

/** A piece to be laid, with all that laying it asks, worked out once; piece coordinates, as drawn. */
export type Part = {
  readonly piece: Piece;
  readonly kept?: readonly Kept[];
  readonly room: Box;
  readonly bounds: Box;
  /** The outermost line; of a strap printed ends only its box, for the words in the gap lie inside it too. */
  readonly drawn: Path;
  /** Points to follow the outline by. */
  readonly trail: readonly Point[];
  /** What joints should miss. */
  readonly features: readonly Feature[];
};
export type Parts = ReadonlyMap<string, Part>;

/** Outlines are followed this closely when asking which sheets they touch; far less than an overlap. */
const FOLLOW_MM = 0.2;

const boxPath = (b: Box): Path => rectanglePath([b.minX, b.minY], b.maxX - b.minX, b.maxY - b.minY);

export function partOf(piece: Piece, kept: readonly Kept[] | undefined): Part {
  const bounds = drawnBounds(piece, kept);
  const drawn = kept ? boxPath(bounds) : outermost(piece);
  return {
    piece,
    room: roomOf(piece, kept),
    bounds,
    drawn,
    trail: flatten(drawn, FOLLOW_MM),
    features: featuresOf(piece, kept),
    ...(kept ? { kept } : {}),
  };
}
