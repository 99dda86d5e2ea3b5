import type { AssemblyStep } from "../model/article.ts";
import type { Piece } from "../model/piece.ts";
import { inOrder } from "../trade/assembly.ts";
import { foldAssembly } from "../trade/foldAssembly.ts";

/**
 * The order in which a one-ear headstall is put together: the ends of its cheeks, the ear piece on the crown, and
 * last the crown in the buckles, once these are closed in.
 */
export function headstallAssembly(pieces: readonly Piece[]): readonly AssemblyStep[] {
  const ends = foldAssembly(pieces);
  const ear = { name: "thread the ear piece on the crown", does: "thread", reaches: [], shuts: [] } as const;
  const cheeks = pieces.find((p) => p.id === "cheek")?.count ?? 1;
  const points =
    cheeks > 1 ? "points of the crown through the buckles" : "point of the crown through the buckle";
  const kept = pieces.some((p) => p.id.startsWith("keeper-")) ? " and keepers" : "";
  const closed = ends.filter((s) => s.part === "close").map((s) => s.step.name);
  return inOrder([
    ...ends.map((s) => s.step),
    { ...ear, after: [] },
    {
      name: `thread the ${points}${kept}`,
      does: "thread",
      after: [ear.name, ...closed],
      reaches: [],
      shuts: [],
    },
  ]);
}
