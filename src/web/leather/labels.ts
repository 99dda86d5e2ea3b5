import type { PagePicture, PagePiece } from "../../job.ts";
import { type Box, outlineOf, type Point, strokeNamed } from "./shapes.ts";

// A labelled picture has its own origin; here it is laid over the piece.

/** What is added to the picture's coordinates to have the piece's: their outlines start at one point. */
export function moveOnto(picture: PagePicture, piece: PagePiece): Point {
  const [there, here] = [strokeNamed(picture.items, "outline"), outlineOf(piece.lines)];
  if (there && here) {
    return [here.path.start[0] - there.path.start[0], here.path.start[1] - there.path.start[1]];
  }
  const { minX, maxX, minY, maxY } = piece.box;
  return [(minX + maxX - picture.width) / 2, (minY + maxY - picture.height) / 2];
}

/** The picture's sheet in the piece's coordinates. */
export function boxOnPiece(picture: PagePicture, piece: PagePiece): Box {
  const [x, y] = moveOnto(picture, piece);
  return { minX: x, minY: y, maxX: x + picture.width, maxY: y + picture.height };
}
