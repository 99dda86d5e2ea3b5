import type { Fold, Piece } from "../model/piece.ts";
import { foldAssembly } from "../trade/foldAssembly.ts";
import { countOf, type Draft, idsOf, namesOf, sumOf, type WorkInput } from "./draft.ts";

// Damping what is folded.

/** A fold whose inside is rounder than the leather is thick bends dry; common practice, no source. */
const isSharp = ({ bend }: Fold): boolean => bend !== undefined && bend.inner <= bend.thickness;

/** Bent without a bar, sharply, or wet-moulded. */
const isBentDamp = (p: Piece, { made }: WorkInput): boolean =>
  p.folds.some(isSharp) || made.joins.some((j) => j.kind === "gather" && j.gusset === p.id && j.wetMoulded);

/** Pieces that are folded sharply, round a bar or wet-moulded are damped first; again where an end is hung later. */
export function dampSteps(input: WorkInput): readonly Draft[] {
  const { pieces } = input.made;
  const closes = foldAssembly(pieces).filter((f) => f.part === "close");
  const ends = (p: Piece, sewn: boolean): boolean =>
    closes.some((f) => f.piece === p.id && (f.step.does === "stitch") === sewn);
  return [
    ...dampStep(
      "damp",
      pieces.filter((p) => ends(p, true) || isBentDamp(p, input)),
      input,
    ),
    ...dampStep(
      "damp to hang",
      pieces.filter((p) => ends(p, false)),
      input,
    ),
  ];
}

function dampStep(
  phase: "damp" | "damp to hang",
  pieces: readonly Piece[],
  input: WorkInput,
): readonly Draft[] {
  if (pieces.length === 0) return [];
  const where = phase === "damp" ? "where it is folded" : "the ends that are folded last";
  return [
    {
      id: phase === "damp" ? "damp" : "damp.hang",
      phase,
      does: "case",
      says: `Damp ${where}: ${namesOf(pieces)}`,
      pieces: idsOf(pieces),
      tool: "sponge and water",
      setting: "",
      amount: sumOf(pieces.map((p) => countOf(p, input))),
      after: [],
      serves: [],
    },
  ];
}
