import { boundsOf } from "../geometry/bounds.ts";
import type { Box, Path } from "../geometry/path.ts";
import type { Piece } from "../model/piece.ts";
import type { Kept } from "../model/sheet.ts";

// The room a piece takes on a plate: its outline, and beside it what is written about it. The picture
// of a piece keeps its words and dimensions inside this room, so that no two pieces' words meet.

/** A piece narrower than this is a strap to the eye: its words may have to stand beside it. */
export const NARROW_MM = 60;
/** Room along each long side of a narrow piece: a control length, or two lines of words. */
export const BESIDE_MM = 10;
/** Room round everything else: a clear finger's breadth less would let two cut lines run together. */
export const AROUND_MM = 4;
/** A narrow piece's words need at least this length along it. */
export const WORDS_LENGTH_MM = 84;
/** A narrow piece shorter than this has its words under each other below it, and needs more room there. */
export const SHORT_MM = 170;
export const BELOW_SHORT_MM = 15;

const grown = (box: Box, x: number, y: number): Box => ({
  minX: box.minX - x,
  minY: box.minY - y,
  maxX: box.maxX + x,
  maxY: box.maxY + y,
});

/** The outermost line that is drawn: where to cut roughly first, if the order asks for that, or the outline. */
export const outermost = (piece: Piece): Path => piece.rough ?? piece.outline;

/** The box of the outermost line as it is drawn: shorter by what `kept` leaves out; piece coordinates. */
export function drawnBounds(piece: Piece, kept?: readonly Kept[]): Box {
  const box = boundsOf(outermost(piece));
  const last = kept?.at(-1);
  return last ? { ...box, maxX: box.maxX - last[2] } : box;
}

/** The whole room of a piece, in piece coordinates. */
export function roomOf(piece: Piece, kept?: readonly Kept[]): Box {
  const box = drawnBounds(piece, kept);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  if (Math.min(width, height) >= NARROW_MM) return grown(box, AROUND_MM, AROUND_MM);
  const short = Math.max(width, height) < SHORT_MM ? BELOW_SHORT_MM - BESIDE_MM : 0;
  if (width >= height) {
    const room = grown(box, AROUND_MM, BESIDE_MM);
    return { ...room, minY: room.minY - short, maxX: Math.max(room.maxX, room.minX + WORDS_LENGTH_MM) };
  }
  const room = grown(box, BESIDE_MM, AROUND_MM);
  return { ...room, maxX: room.maxX + short, maxY: Math.max(room.maxY, room.minY + WORDS_LENGTH_MM) };
}
