import type { AssemblyStep } from "../model/article.ts";
import type { Piece } from "../model/piece.ts";
import { inOrder } from "../trade/assembly.ts";
import { foldAssembly } from "../trade/foldAssembly.ts";

/** The order in which a strap's ends are folded and closed; nothing where neither end is folded. */
export const strapAssembly = (pieces: readonly Piece[]): readonly AssemblyStep[] =>
  inOrder(foldAssembly(pieces).map((s) => s.step));
