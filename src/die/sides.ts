// Which dies a piece needs: one, or a left and a right.
import type { Piece } from "../model/piece.ts";
import { type Die, dieFor } from "./die.ts";
import { mirroredPiece } from "./mirrored.ts";
import type { DieSettings } from "./settings.ts";

export type Side = {
  /** As it stands in files' names. */
  readonly slug: "as-drawn" | "left" | "right" | "left-and-right";
  /** In words, for the drawing. */
  readonly says: string;
  readonly die: Die;
};

/** Of a single piece someone might think that its other side is wanted as well. */
const sayAlike = ({ count }: Piece): string =>
  count === 1 ? "one piece; no mirror image of it is wanted" : "no left or right";

/**
 * The dies that cut a piece: one when all are alike, or when a pair's die is its own mirror image; else the
 * left as drawn and the right turned over, which is what the templates call them.
 */
export function sidesOf(piece: Piece, settings: DieSettings): readonly Side[] {
  const die = dieFor(piece, settings);
  if (piece.hand === "same") return [{ slug: "as-drawn", says: sayAlike(piece), die }];
  if (die.axis) return [{ slug: "left-and-right", says: "left and right, one die for both", die }];
  const other = dieFor(mirroredPiece(piece), settings);
  return [
    { slug: "left", says: "left: template as drawn", die },
    { slug: "right", says: "right: template turned over", die: other },
  ];
}
