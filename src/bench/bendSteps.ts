import type { Fold, Piece, Zone } from "../model/piece.ts";
import {
  counted,
  countOf,
  type Draft,
  grouped,
  idsOf,
  namesOf,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { joinId } from "./joinSteps.ts";
import type { Sewing } from "./sewing.ts";
import { sewingsOf } from "./sewings.ts";

// Bends that no bar is in: flanges, bases, flaps; and the glue along edges that are sewn.

const bendsOf = (p: Piece): readonly Fold[] =>
  p.folds.filter((f) => !p.turnBacks.some((t) => t.fold === f.id));

/** Folds of a piece that nothing hangs in: one step for each piece. */
export function bendSteps(input: WorkInput): readonly Draft[] {
  const bent = input.made.pieces.filter((p) => bendsOf(p).length > 0);
  return bent.map((p): Draft => {
    const folds = bendsOf(p);
    const kinds = grouped(folds, (f) => f.label.split(";")[0]!).map((g) => g[0]!.label.split(";")[0]!);
    return {
      id: `fold.${p.id}`,
      phase: "fold",
      does: "fold",
      says: `Fold the ${namesOf([p])}, ${counted(folds.length, "fold")}: ${kinds.join("; ")}`,
      pieces: [p.id],
      tool: "hands, bone folder",
      setting: "",
      amount: countOf(p, input) * folds.length,
      after: [],
      serves: served("fold", p.id, ...folds.map((f) => f.id)),
    };
  });
}

/** A zone of glue is named after its seam: "front.glue", "glue.left.1", "glue". */
const seamNamed = (zone: Zone): string =>
  zone.id
    .split(".")
    .filter((part) => part !== "glue")
    .join(".");

/** The sewing along a zone of glue: of the seam that it is named after, else the first that the piece has. */
function sewingAt(piece: Piece, zone: Zone, sewings: readonly Sewing[]): Sewing | undefined {
  const name = seamNamed(zone);
  const named = (line: string): boolean =>
    name === line || line.startsWith(`${name}.`) || name.startsWith(`${line}.`);
  const of = (test: (line: string) => boolean): Sewing | undefined =>
    sewings.find((s) => s.lines.some((l) => l.piece === piece.id && test(l.line)));
  return (name === "" ? undefined : of(named)) ?? of((line) => line.startsWith("seam")) ?? of(() => true);
}

type Glued = { readonly piece: Piece; readonly zone: Zone; readonly sewing: Sewing | undefined };

/** Glue along the edges of a seam, right before it is sewn: after all that its sewing waits for. */
export function glueEdgeSteps(input: WorkInput, joins: readonly Draft[]): readonly Draft[] {
  const sewings = sewingsOf(input.made);
  const glued = input.made.pieces.flatMap((piece) =>
    piece.zones
      .filter((z) => z.kind === "glue")
      .map((zone): Glued => ({ piece, zone, sewing: sewingAt(piece, zone, sewings) })),
  );
  return grouped(glued, (g) => g.sewing?.name ?? "").map((g) => {
    const name = g[0]!.sewing?.name ?? "";
    const pieces = g.map((one) => one.piece);
    return {
      id: glueId(name),
      phase: "glue edges",
      does: "glue",
      says: `Glue the edges of the ${namesOf(pieces)} for the seam ${name}; fresh air, and as its maker says`,
      pieces: idsOf(pieces),
      tool: "glue and spreader",
      setting: "",
      amount: sumOf(pieces.map((p) => countOf(p, input))),
      after: joins.find((j) => j.id === joinId(name))?.after ?? [],
      serves: g.flatMap((one) => served("zone", one.piece.id, one.zone.id)),
    };
  });
}

/** The id of the step that glues a seam's edges. */
export const glueId = (seam: string): string => `glue.${seam}`;
