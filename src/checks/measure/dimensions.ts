import type { Made } from "../../model/article.ts";
import type { Cutout, Piece, TurnBack } from "../../model/piece.ts";

// Findings name the place in the order that mends them. Where a join names a dimension it is taken from
// there; a piece's own dimensions stand in its section of the order.

/** Pieces whose section is not `pieces.<their id>`. */
const SECTIONS: Readonly<Record<string, string>> = {
  "crown-and-off-cheek": "pieces.crown",
  "keeper-fixed": "pieces.keeper",
  "keeper-running": "pieces.running-keeper",
  front: "pieces.body",
  back: "pieces.body",
  "side-gusset": "pieces.gusset",
  "end-panel": "pieces.gusset",
};

/** Pieces of one kind share a section: all linings, all patches. */
const SHARED: readonly (readonly [begins: string, section: string])[] = [
  ["lining-", "pieces.lining"],
  ["patch-", "pieces.patch"],
];

/** The piece's section of the order, e.g. "pieces.cheek". */
export const sectionOf = ({ id }: Piece): string =>
  SECTIONS[id] ?? SHARED.find(([begins]) => id.startsWith(begins))?.[1] ?? `pieces.${id}`;

/** What sets a strap's width: the dimension its buckle's join names, or the piece's section. */
export function widthOf(job: Made, piece: Piece): string {
  const join = job.joins.find((j) => j.kind === "strap in buckle" && j.piece === piece.id);
  return join ? join.dimension : sectionOf(piece);
}

/** What sets the breadth of a tongue's slot: the tongue that the slot's join names. */
export function tongueOf(job: Made, piece: Piece, slot: Cutout): string {
  const join = job.joins.find(
    (j) => j.kind === "tongue in slot" && j.piece === piece.id && j.cutout === slot.id,
  );
  return join ? `${join.dimension}-breadth` : "hardware";
}

/** What sets a row of buckle holes: the dimension its adjustment names, or the piece's section. */
export function holesOf(job: Made, piece: Piece): string {
  const join = job.joins.find((j) => j.kind === "adjustment" && j.piece === piece.id);
  return join ? join.dimension : sectionOf(piece);
}

/** Pieces whose turn-backs follow from their hardware alone. */
const FOLLOWING = new Set(["crown-and-off-cheek"]);

/** What sets a turn-back's length, e.g. "pieces.cheek.bit-turn-back". */
export const turnBackOf = (piece: Piece, t: TurnBack): string =>
  FOLLOWING.has(piece.id) ? sectionOf(piece) : `${sectionOf(piece)}.${t.id}-turn-back`;

/** What sets the thickness left in a fold, e.g. "pieces.cheek.skive-at-bit" or "leather.strap.skive-to". */
export const skiveOf = (piece: Piece, t: TurnBack): string =>
  piece.id === "cheek" ? `pieces.cheek.skive-at-${t.id}` : `leather.${piece.leather.kind}.skive-to`;

export const PITCH = "stitching.pitch";
export const HOLE_SIZE = "stitching.hole-size";
export const INSET = "stitching.inset";
export const PAPER = "paper";
export const MARGIN = "margin";
