import { boundsOf, unionBox } from "../geometry/bounds.ts";
import { outermost } from "../layout/room.ts";
import type { Piece } from "../model/piece.ts";
import { flattenPicture } from "../picture/flat.ts";
import { sayCount, sayLeather } from "../picture/piece/say.ts";
import { strokesOf } from "../picture/piece/strokes.ts";
import type { PagePiece } from "./pageData.ts";
import { partsOf } from "./pageParts.ts";
import { pageSize, type Telling } from "./pageSizes.ts";

/** A piece as lines, with what stands on it and its sizes; labels would take a hundred times as long. */
export function pagePieceOf(piece: Piece, tell: Telling): PagePiece {
  const strokes = strokesOf(piece);
  // The flags of notches stand outside the outline.
  const marks = strokes.filter(({ layer }) => layer === "mark").map(({ path }) => boundsOf(path));
  return {
    id: piece.id,
    name: piece.name,
    count: sayCount(piece).replace(/^cut /, ""),
    leather: sayLeather(piece, tell.units),
    box: unionBox([boundsOf(outermost(piece)), ...marks]),
    lines: flattenPicture({ title: piece.name, width: 0, height: 0, items: strokes }),
    sizes: piece.sizes.map((q) => pageSize(q, tell)),
    parts: partsOf(piece, tell.units),
  };
}
