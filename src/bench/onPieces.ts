import type { Hole, Piece } from "../model/piece.ts";
import type { Shop } from "../model/shop.ts";
import { countOf, mm, sumOf, unique, type WorkInput } from "./draft.ts";
import { punchFor } from "./punchList.ts";

// Parts of pieces, each with the piece that it is on.

/** Sizes that print alike to a hundredth are made alike. */
const DECIMALS = 2;
/** Half way between two hundredths the arithmetic's last figure must not decide. */
const NUDGE = 1e-6;
export const rough = (n: number): string => (n + NUDGE).toFixed(DECIMALS);

export type On<T> = { readonly piece: Piece; readonly it: T };
export const onAll = <T>(input: WorkInput, of: (p: Piece) => readonly T[]): readonly On<T>[] =>
  input.made.pieces.flatMap((piece) => of(piece).map((it) => ({ piece, it })));
export const piecesOf = (list: readonly On<unknown>[]): readonly Piece[] => unique(list.map((o) => o.piece));
export const countAll = (list: readonly On<unknown>[], input: WorkInput): number =>
  sumOf(list.map((o) => countOf(o.piece, input)));

export const isStitch = (h: Hole): boolean => h.use === "stitch";

/** The punch for a hole, in words. */
export function sayPunch(size: number, shop: Shop): string {
  const punch = punchFor(size, shop);
  if (!punch) return `one of ${mm(size)}: no usual punch is near`;
  return punch.number ? `No. ${punch.number} (${mm(punch.size)})` : mm(punch.size);
}
