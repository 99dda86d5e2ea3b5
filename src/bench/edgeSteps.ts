import { pathLength } from "../geometry/length.ts";
import type { Piece, Zone } from "../model/piece.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  isLining,
  isPatch,
  namesOf,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { edgedLength } from "./edgeLengths.ts";
import { finishing } from "./finishSteps.ts";
import type { Phase } from "./phases.ts";
import { edgeBeside, type FlushSeam, flushSeams } from "./shell.ts";

// Taking the corners off edges, trimming them and finishing them.

const MM_PER_METRE = 1000;

/** Sizes of edging tools by the leather's thickness, mm; thinner leather has no corner to take off. Common practice, no source. */
const EDGING_TOOLS: readonly { readonly from: number; readonly size: string }[] = [
  { from: 4.8, size: "No. 4" },
  { from: 3.6, size: "No. 3" },
  { from: 2.4, size: "No. 2" },
  { from: 1.2, size: "No. 1" },
];

/** The edging tool for leather of a thickness, mm; undefined where the leather is too thin for any. */
export const edgingTool = (thickness: number): string | undefined =>
  EDGING_TOOLS.find((t) => thickness >= t.from)?.size;

const isShown = (p: Piece): boolean => !isPatch(p) && !isLining(p);
const trimsOf = (p: Piece): readonly Zone[] => p.zones.filter((z) => z.kind === "trim");

/** Pieces that are trimmed together with their mates, and those. */
function trimmedTogether(pieces: readonly Piece[], flush: readonly FlushSeam[]): ReadonlySet<string> {
  const trimmed = (id: string): boolean => pieces.some((p) => p.id === id && trimsOf(p).length > 0);
  const runs = flush.map((f) => f.runs.map((r) => r.piece.id)).filter((ids) => ids.some(trimmed));
  return new Set(runs.flat());
}

/** All work on edges: edging before sewing, or once they are trimmed; trimming; finishing. */
export function edgeSteps(input: WorkInput): readonly Draft[] {
  const flush = flushSeams(input.made);
  const shown = input.made.pieces.filter(isShown);
  const together = trimmedTogether(shown, flush);
  const early = shown.filter((p) => !together.has(p.id));
  const late = shown.filter((p) => together.has(p.id));
  return [
    ...edging(early, "edge", flush, input),
    ...edging(late, "edge trimmed", flush, input),
    ...trimming(input),
    ...finishing(shown, flush, input),
  ];
}

function edging(
  pieces: readonly Piece[],
  phase: Phase,
  flush: readonly FlushSeam[],
  input: WorkInput,
): readonly Draft[] {
  if (!input.finish.edged) return [];
  const edged = pieces.filter((p) => edgingTool(p.leather.thickness) !== undefined);
  return grouped(edged, (p) => edgingTool(p.leather.thickness)!).map((g) => {
    const size = edgingTool(g[0]!.leather.thickness)!;
    return {
      id: `${phase === "edge" ? "edge" : "edge.trimmed"}.${size}`,
      phase,
      does: "edge",
      says: `Take the corners off the edges of the ${namesOf(g)}`,
      pieces: idsOf(g),
      tool: "edging tool",
      setting: size,
      amount: sumOf(g.map((p) => countOf(p, input) * edgedLength(p, flush, input))) / MM_PER_METRE,
      after: [],
      serves: [],
    };
  });
}

/** Length that is trimmed at a zone: beside the seam that it is named after, or half of a lining's outline, mm. */
function trimLength(piece: Piece, zone: Zone): number {
  const name = zone.id.replace(/\.trim$/, "");
  const seams = piece.seams.filter((s) => s.id === name || s.id.startsWith(`${name}.`));
  if (seams.length > 0) return sumOf(seams.map((seam) => edgeBeside({ piece, seam })));
  return pathLength(piece.outline) / trimsOf(piece).length;
}

function trimming(input: WorkInput): readonly Draft[] {
  const step = (pieces: readonly Piece[], id: string, phase: Phase, says: string): readonly Draft[] =>
    pieces.length === 0
      ? []
      : [
          {
            id,
            phase,
            does: "trim",
            says,
            pieces: idsOf(pieces),
            tool: "sharp knife or scissors",
            setting: "",
            amount:
              sumOf(pieces.map((p) => countOf(p, input) * sumOf(trimsOf(p).map((z) => trimLength(p, z))))) /
              MM_PER_METRE,
            after: [],
            serves: pieces.flatMap((p) => served("zone", p.id, ...trimsOf(p).map((z) => z.id))),
          },
        ];
  const trimmed = input.made.pieces.filter((p) => trimsOf(p).length > 0);
  const [linings, shell] = [trimmed.filter(isLining), trimmed.filter((p) => !isLining(p))];
  return [
    ...step(linings, "trim.lining", "lining", `Trim the ${namesOf(linings)} flush`),
    ...step(shell, "trim", "trim", `Trim the sewn edges of the ${namesOf(shell)} flush`),
  ];
}
