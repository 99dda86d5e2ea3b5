import type { Piece } from "../model/piece.ts";
import { countOf, type Draft, idsOf, isKeeper, namesOf, sumOf, type WorkInput } from "./draft.ts";
import { finishedLength } from "./edgeLengths.ts";
import type { Phase } from "./phases.ts";
import { type FlushSeam, isLinedFlush } from "./shell.ts";

// Burnishing or painting edges.

const MM_PER_METRE = 1000;

const FINISH = {
  burnished: { says: "Burnish", tool: "slicker, and water or gum" },
  painted: { says: "Paint", tool: "edge paint and roller" },
} as const;

/** Keepers before they are caught; parts once their own ends are sewn; pieces that are sewn edge to edge or lined to their edge at last. */
export function finishing(
  shown: readonly Piece[],
  flush: readonly FlushSeam[],
  input: WorkInput,
): readonly Draft[] {
  const { edges } = input.finish;
  if (edges === "raw") return [];
  const shell = new Set(flush.flatMap((f) => f.runs.map((r) => r.piece.id)));
  const step = (id: string, phase: Phase, pieces: readonly Piece[]): readonly Draft[] =>
    pieces.length === 0
      ? []
      : [
          {
            id,
            phase,
            does: "finish",
            says: `${FINISH[edges].says} the edges of the ${namesOf(pieces)}`,
            pieces: idsOf(pieces),
            tool: FINISH[edges].tool,
            setting: "",
            amount:
              sumOf(pieces.map((p) => countOf(p, input) * finishedLength(p, flush, input))) / MM_PER_METRE,
            after: [],
            serves: [],
          },
        ];
  const isLate = (p: Piece): boolean => shell.has(p.id) || isLinedFlush(p, input.made);
  const parts = shown.filter((p) => !isKeeper(p) && !isLate(p));
  return [
    ...step("finish.keepers", "finish keeper", shown.filter(isKeeper)),
    ...step("finish.parts", "finish part", parts),
    ...step("finish", "finish", shown.filter(isLate)),
  ];
}
