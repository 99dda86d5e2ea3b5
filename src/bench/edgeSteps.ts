import { pathLength } from "../geometry/length.ts";
import type { Piece, Zone } from "../model/piece.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  isLining,
  isPatch,
  listed,
  namesOf,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { edgedLength } from "./edgeLengths.ts";
import { finishing } from "./finishSteps.ts";
import type { Phase } from "./phases.ts";
import { besideAll, edgeBeside, type FlushSeam, flushSeams, isLinedFlush, isTurnedOut } from "./shell.ts";

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

/** The step that trims linings. */
export const TRIM_LINING = "trim.lining";

const isShown = (p: Piece): boolean => !isPatch(p) && !isLining(p);
const trimsOf = (p: Piece): readonly Zone[] => p.zones.filter((z) => z.kind === "trim");

/** All work on edges: edging what is free; trimming, truing and edging what is sewn; finishing. */
export function edgeSteps(input: WorkInput): readonly Draft[] {
  const flush = flushSeams(input.made);
  const shown = input.made.pieces.filter(isShown);
  return [
    ...edging(shown, flush, input),
    ...trimming(input),
    ...truing(flush, input),
    ...finishing(shown, flush, input),
  ];
}

/** An edge that is worked: of a piece, or of two that are sewn to one. */
type Edge = {
  readonly pieces: readonly Piece[];
  readonly kind: "whole" | "free" | "sewn";
  readonly thickness: number;
  /** Of the whole order, mm. */
  readonly length: number;
  readonly phase: "edge" | "edge sewn";
};

/** Less than this is no edge, mm. */
const NO_EDGE_MM = 1;

/** The free edges of pieces, then the sewn ones: two layers are one edge, and its corners are taken off once sewn. */
function edgesOf(shown: readonly Piece[], flush: readonly FlushSeam[], input: WorkInput): readonly Edge[] {
  const sewn = isTurnedOut(input.made) ? [] : flush;
  const own = shown.map((p): Edge => {
    const beside = besideAll(sewn.flatMap((f) => f.runs.filter((r) => r.piece.id === p.id)));
    return {
      pieces: [p],
      kind: beside > 0 ? "free" : "whole",
      thickness: p.leather.thickness,
      length: countOf(p, input) * (edgedLength(p, flush, input) - beside),
      phase: isLinedFlush(p, input.made) ? "edge sewn" : "edge",
    };
  });
  const joined = sewn.map(({ runs }): Edge => {
    const pieces = runs.map((r) => r.piece);
    const thickness = sumOf(pieces.map((p) => p.leather.thickness));
    const length = countOf(pieces[0]!, input) * edgeBeside(runs[0]!);
    return { pieces, kind: "sewn", thickness, length, phase: "edge sewn" };
  });
  return [...own, ...joined].filter((e) => e.length > NO_EDGE_MM);
}

/** Each once, as the article names them. */
const inOrder = (pieces: readonly Piece[], { made }: WorkInput): readonly Piece[] =>
  made.pieces.filter((p) => pieces.includes(p));

const KIND_WORDS = { whole: "edges", free: "free edges", sewn: "sewn edges" } as const;

/** Corners are taken off: one step for each tool, of free edges and of sewn ones. */
function edging(shown: readonly Piece[], flush: readonly FlushSeam[], input: WorkInput): readonly Draft[] {
  if (!input.finish.edged) return [];
  const edges = edgesOf(shown, flush, input).filter((e) => edgingTool(e.thickness) !== undefined);
  return grouped(edges, (e) => `${e.phase}.${edgingTool(e.thickness)!}`).map((g) => {
    const size = edgingTool(g[0]!.thickness)!;
    const { phase } = g[0]!;
    const says = grouped(g, (e) => e.kind).map(
      (same) =>
        `the ${KIND_WORDS[same[0]!.kind]} of the ${namesOf(
          inOrder(
            same.flatMap((e) => e.pieces),
            input,
          ),
        )}`,
    );
    return {
      id: `${phase.replace(" ", ".")}.${size}`,
      phase,
      does: "edge",
      says: `Take the corners off ${listed(says)}`,
      pieces: idsOf(g.flatMap((e) => e.pieces)),
      tool: "edging tool",
      setting: size,
      amount: sumOf(g.map((e) => e.length)) / MM_PER_METRE,
      after: [],
      serves: [],
    };
  });
}

/** Edges that are sewn flush are made one, before their corners are taken off. */
function truing(flush: readonly FlushSeam[], input: WorkInput): readonly Draft[] {
  if (isTurnedOut(input.made) || flush.length === 0) return [];
  const pieces = inOrder(
    flush.flatMap((f) => f.runs.map((r) => r.piece)),
    input,
  );
  const length = sumOf(flush.map(({ runs }) => countOf(runs[0]!.piece, input) * edgeBeside(runs[0]!)));
  return [
    {
      id: "true",
      phase: "true",
      does: "trim",
      says: `True the sewn edges of the ${namesOf(pieces)} together`,
      pieces: idsOf(pieces),
      tool: "sharp knife, then a sanding block",
      setting: "",
      amount: length / MM_PER_METRE,
      after: [],
      serves: [],
    },
  ];
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
    ...step(linings, TRIM_LINING, "lining", `Trim the ${namesOf(linings)} flush`),
    ...step(shell, "trim", "trim", `Trim the sewn edges of the ${namesOf(shell)} flush`),
  ];
}
