import type { Piece } from "../model/piece.ts";

/** The two ends of a strap are folded alike: its turn-backs say which. */
const SIDES: readonly string[] = ["left", "right"];

/**
 * A turn-back in words, by its id: "fold round the buckle bar", "left fold round the strap". From the label of
 * its fold, up to what is said there of how to fold. Undefined when the piece has no such turn-back.
 */
export function foldWords(piece: Piece, turnBack: string): string | undefined {
  const fold = piece.turnBacks.find((t) => t.id === turnBack)?.fold;
  const label = piece.folds
    .find((f) => f.id === fold)
    ?.label.split(";")[0]
    ?.trim();
  if (label === undefined) return undefined;
  return SIDES.includes(turnBack) ? `${turnBack} ${label}` : label;
}
