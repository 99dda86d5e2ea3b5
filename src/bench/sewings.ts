import type { Made } from "../model/article.ts";
import type { Piece, SeamLine } from "../model/piece.ts";
import { ownSewings } from "./ownSewings.ts";
import { seamSewings } from "./seamSewings.ts";
import { keyOf, type Sewing } from "./sewing.ts";

// What is sewn: every line of stitches of every piece belongs to one sewing.

/**
 * Everything that is sewn: the article's seams by their names, with what is caught in them; then, piece by
 * piece, the rows of its turn-backs, a keeper's ends, and any other row.
 */
export function sewingsOf(made: Made): readonly Sewing[] {
  const seams = seamSewings(made);
  const taken = new Set(seams.flatMap((s) => s.lines.map(keyOf)));
  const free = (p: Piece): readonly SeamLine[] =>
    p.seams.filter((s) => !taken.has(keyOf({ piece: p.id, line: s.id })));
  return [...seams, ...made.pieces.flatMap((p) => ownSewings(made, p, free(p)))];
}
