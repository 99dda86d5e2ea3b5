import type { AssemblyStep, FixedJoin } from "../model/article.ts";
import type { Fitting } from "../model/fitting.ts";
import type { Piece } from "../model/piece.ts";
import { type FoldStep, foldAssembly } from "../trade/foldAssembly.ts";
import { isLining, unique, type WorkInput } from "./draft.ts";
import type { Sewing } from "./sewing.ts";

// What each step of putting together is about: pieces, holes, seams.

/** A step of putting together, and what of the pieces it is about. */
export type About = {
  readonly step: AssemblyStep;
  readonly fold?: FoldStep;
  readonly pieces: readonly string[];
  /** Holes, slots and turn-backs that fittings go through or round. */
  readonly parts: readonly string[];
  readonly sewings: readonly Sewing[];
};

const partKey = (piece: string, id: string): string => JSON.stringify([piece, id]);
export const partsOf = (f: Fitting): readonly string[] =>
  f.serves.flatMap((s) => s.ids.map((id) => partKey(s.piece, id)));

/** Steps of the article's assembly, those of folded ends first where it has none of them. */
export function assemblyOf({ made }: WorkInput): readonly { step: AssemblyStep; fold?: FoldStep }[] {
  const given = made.assembly ?? [];
  const folds = foldAssembly(made.pieces);
  const foldOf = (name: string): { fold?: FoldStep } => {
    const fold = folds.find((f) => f.step.name === name);
    return fold ? { fold } : {};
  };
  const own = folds.filter((f) => !given.some((s) => s.name === f.step.name));
  return [
    ...own.map((fold) => ({ step: fold.step, fold })),
    ...given.map((step) => ({ step, ...foldOf(step.name) })),
  ];
}

/** The step with what it is about. */
export function aboutOf(
  step: AssemblyStep,
  fold: FoldStep | undefined,
  sewings: readonly Sewing[],
  input: WorkInput,
): About {
  const { made } = input;
  if (fold) return aboutFold(step, fold, sewings, input);
  const fixed = made.joins.find((j): j is FixedJoin => j.kind === "fixed" && j.name === step.name);
  const own = step.does === "stitch" ? sewings.filter((s) => s.name === step.name) : [];
  const closed = step.does === "fix" ? (made.fittings ?? []).filter((f) => step.name.startsWith(f.kind)) : [];
  const glued = step.does === "glue" ? gluedIn(step, made.pieces) : [];
  const threaded = step.does === "thread" ? threadedBy(step, made.pieces) : [];
  const turned = step.does === "turn" ? step.after.flatMap((name) => piecesSewn(name, sewings)) : [];
  const rivets = step.does === "rivet" ? (fixed?.sides ?? []) : [];
  return {
    step,
    pieces: unique([
      ...own.flatMap((s) => s.lines.map((l) => l.piece)),
      ...(fixed?.sides ?? []).map((s) => s.piece),
      ...closed.flatMap((f) => f.pieces),
      ...glued,
      ...threaded,
      ...turned,
    ]),
    parts: [...rivets.flatMap((s) => s.holes.map((h) => partKey(s.piece, h))), ...closed.flatMap(partsOf)],
    sewings: own,
  };
}

const piecesSewn = (name: string, sewings: readonly Sewing[]): readonly string[] =>
  sewings.filter((s) => s.name === name).flatMap((s) => s.lines.map((l) => l.piece));

function aboutFold(
  step: AssemblyStep,
  fold: FoldStep,
  sewings: readonly Sewing[],
  { made }: WorkInput,
): About {
  const piece = made.pieces.find((p) => p.id === fold.piece);
  const pieces = unique([fold.piece, ...fold.keepers]);
  const sewn = (ids: readonly string[]): readonly Sewing[] =>
    sewings.filter((s) => s.lines.some((l) => l.piece === fold.piece && ids.includes(l.line)));
  const rows = piece?.seams ?? [];
  const holes = (of: (id: string, use: string) => boolean): readonly string[] =>
    (piece?.holes ?? []).filter((h) => of(h.id, h.use)).map((h) => partKey(fold.piece, h.id));
  const t = fold.turnBack ?? "";
  switch (fold.part) {
    case "fold":
      return { step, fold, pieces, parts: [partKey(fold.piece, t)], sewings: [] };
    case "close": {
      const ids = rows.filter((s) => s.turnBack === t).map((s) => s.id);
      const fixings = holes((id, use) => use !== "stitch" && id.startsWith(`${t}.${use}.`));
      return { step, fold, pieces, parts: fixings, sewings: sewn(ids) };
    }
    case "join keeper":
      return { step, fold, pieces, parts: [], sewings: sewn(rows.map((s) => s.id)) };
    case "staple keeper":
      return { step, fold, pieces, parts: holes((_, use) => use === "staple"), sewings: [] };
    case "slide keeper":
      return { step, fold, pieces, parts: [], sewings: [] };
  }
}

/** A patch and what it backs: the pieces that have its holes and slots by the same names; linings and what they line. */
function gluedIn(step: AssemblyStep, pieces: readonly Piece[]): readonly string[] {
  const patches = pieces.filter((p) => p.name === step.name);
  if (patches.length === 0) {
    const linings = pieces.filter(isLining).map((p) => p.id);
    return linings.flatMap((id) => [id, id.slice("lining-".length)]);
  }
  const ids = (p: Piece): readonly string[] => [...p.holes, ...p.cutouts].map(({ id }) => id);
  const held = patches.flatMap(ids);
  const backed = pieces.filter((p) => !p.id.startsWith("patch-") && ids(p).some((id) => held.includes(id)));
  return [...patches, ...backed].map((p) => p.id);
}

/** Pieces that a step names: "the ear piece on the crown". */
const threadedBy = (step: AssemblyStep, pieces: readonly Piece[]): readonly string[] =>
  pieces
    .filter(
      (p) =>
        ["crown", "ear"].some((word) => p.id.startsWith(word) && step.name.includes(word)) ||
        (p.id === "cheek" && step.name.includes("buckle")),
    )
    .map((p) => p.id);
