import type { Piece } from "../../model/piece.ts";
import { type Flowing, heading, text } from "./flow.ts";

// The words that the pieces use, for who folds, skives and punches. Only those that this job needs.

/** A short list of the bench's words; nothing when the pieces use none of them. */
export function benchWords(pieces: readonly Piece[], width: number): readonly Flowing[] {
  const folded = pieces.some((p) => p.turnBacks.length > 0);
  const mated = pieces.some((p) => p.turnBacks.some((t) => t.mates.length > 0));
  const skived = pieces.some((p) => p.zones.some((z) => z.kind === "skive"));
  const says = [
    ...(folded
      ? ["Front leg: the strap itself. Back leg: the end folded behind it. Fold with the grain side out."]
      : []),
    ...(mated
      ? ["Holes “front 1” and “back 1” meet when the strap is folded; so do “front 2” and “back 2”."]
      : []),
    ...(skived
      ? ["Skive on the flesh side, over the field that thin strokes fill. Feather: thin it out to nothing."]
      : []),
    "Backbone: the arrow lies along the hide's back line.",
  ];
  return [heading("Words"), ...says.map((s) => text(s, width))];
}
