import type { AssemblyStep } from "../model/article.ts";
import type { Piece, SeamLine } from "../model/piece.ts";
import {
  countOf,
  type Draft,
  idsOf,
  isLining,
  listed,
  namesOf,
  sumOf,
  unique,
  type WorkInput,
} from "./draft.ts";
import { TRIM_LINING } from "./edgeSteps.ts";
import { sewingsOf } from "./sewings.ts";

// Linings: how they are glued in, and their stitch holes.

/** The step of putting together that glues them in. */
export const LININGS = "linings";

/** What a lining lines. */
const linedBy = (lining: Piece, pieces: readonly Piece[]): readonly Piece[] =>
  pieces.filter((p) => lining.id === `lining-${p.id}`);

const isTrimmed = (p: Piece): boolean => p.zones.some((z) => z.kind === "trim");

/** How the linings are glued in, as their templates say, and that glue alone holds them at free edges. */
export function sayGlueLinings({ made: { pieces } }: WorkInput): string {
  const linings = pieces.filter(isLining);
  const lined = linings.flatMap((l) => linedBy(l, pieces));
  const folded = lined.filter((p) => p.folds.length > 0);
  return [
    `Glue in the linings of the ${namesOf(lined)}, flesh to flesh`,
    ...(folded.length > 0
      ? [`the ${namesOf(folded)} bent as in use: laid flat the lining wrinkles in the folds`]
      : []),
    "right up to the edges: where no seam holds them they are glued only",
    "fresh air, and as its maker says",
  ].join("; ");
}

/** Names of the steps that come after one, at any remove. */
function namesAfter(name: string, assembly: readonly AssemblyStep[]): ReadonlySet<string> {
  const after = new Set([name]);
  for (;;) {
    const more = assembly.filter((s) => !after.has(s.name) && s.after.some((a) => after.has(a)));
    if (more.length === 0) break;
    for (const s of more) after.add(s.name);
  }
  return after;
}

/** Lines of stitches that are sewn once the linings are in. */
function linesSewnAfter({ made }: WorkInput): (p: Piece) => readonly SeamLine[] {
  const later = namesAfter(LININGS, made.assembly ?? []);
  const lines = sewingsOf(made)
    .filter((s) => later.has(s.name))
    .flatMap((s) => s.lines);
  return (p) => p.seams.filter((s) => lines.some((l) => l.piece === p.id && l.line === s.id));
}

/** Stitch holes that a lining gets through those of what it lines: of all seams that are sewn later. */
export function liningPrickSteps(input: WorkInput): readonly Draft[] {
  const { pieces } = input.made;
  const linesOf = linesSewnAfter(input);
  const holes = (lining: Piece): number =>
    sumOf(linedBy(lining, pieces).map((p) => unique(linesOf(p).flatMap((s) => s.holes)).length));
  const linings = pieces.filter((p) => isLining(p) && isTrimmed(p) && holes(p) > 0);
  if (linings.length === 0) return [];
  const lined = linings.flatMap((l) => linedBy(l, pieces));
  return [
    {
      id: "prick.lining",
      phase: "lining",
      does: "prick",
      says: `Make the stitch holes of the ${listed(linings.map((l) => namesOf([l])))} through those of the ${namesOf(lined)}`,
      pieces: idsOf(linings),
      tool: "awl",
      setting: "",
      amount: sumOf(linings.map((l) => countOf(l, input) * holes(l))),
      after: [TRIM_LINING],
      serves: [],
    },
  ];
}
