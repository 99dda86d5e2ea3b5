import type { Gather } from "../model/article.ts";
import type { Fold, Piece, Zone } from "../model/piece.ts";
import { LET_DRY } from "./dampSteps.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  namesOf,
  sayLength,
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

/** "flap's back fold, grain side out, to an inner radius of 5 mm" */
function sayBend({ label, bend }: Fold, input: WorkInput): string {
  if (!bend) return label;
  const side = bend.inside === "flesh" ? "out" : "in";
  return `${label}, grain side ${side}, to an inner radius of ${sayLength(bend.inner, input)}`;
}

/** Folds of a piece that nothing hangs in: one step for each piece; a bend of known radius is bent damp. */
export function bendSteps(input: WorkInput): readonly Draft[] {
  const bent = input.made.pieces.filter((p) => bendsOf(p).length > 0);
  return bent.map((p): Draft => {
    const folds = bendsOf(p);
    const kinds = grouped(folds, (f) => sayBend(f, input)).map((g) =>
      g.length === 1 ? sayBend(g[0]!, input) : `${sayBend(g[0]!, input)} (${g.length} times)`,
    );
    const damp = folds.some((f) => f.bend !== undefined);
    return {
      id: `fold.${p.id}`,
      phase: "fold",
      does: "fold",
      says: `Fold the ${namesOf([p])}: ${kinds.join("; ")}${damp ? `; ${LET_DRY}` : ""}`,
      pieces: [p.id],
      tool: "hands, bone folder",
      setting: "",
      amount: countOf(p, input) * folds.length,
      after: [],
      serves: served("fold", p.id, ...folds.map((f) => f.id)),
      ...(damp
        ? { damp: `Damp the ${namesOf([p])} along its ${folds.length === 1 ? "fold" : "folds"}` }
        : {}),
    };
  });
}

/** The two corners of the base. */
const CORNERS = 2;

/** A gusset that is moulded wet round the corners of front and back before it is sewn to them. */
export function mouldSteps({ made, ...rest }: WorkInput): readonly Draft[] {
  const input = { made, ...rest };
  const gathers = made.joins.filter((j): j is Gather => j.kind === "gather" && j.wetMoulded);
  const pieceOf = (id: string): readonly Piece[] => made.pieces.filter((p) => p.id === id);
  return grouped(gathers, (g) => g.gusset).flatMap((g) =>
    pieceOf(g[0]!.gusset).map((p): Draft => {
      const round = namesOf(g.flatMap((one) => pieceOf(one.body)));
      return {
        id: `mould.${p.id}`,
        phase: "mould",
        does: "fold",
        says: `Mould the corners of the ${namesOf([p])} to those of the ${round}; ${LET_DRY}`,
        pieces: [p.id],
        tool: "hands, bone folder",
        setting: "",
        amount: CORNERS * countOf(p, input),
        after: [],
        serves: [],
        damp: `Wet the ${namesOf([p])} where it goes round the corners`,
      };
    }),
  );
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

/** A hem is folded back and glued down by itself. */
const isHem = (z: Zone): boolean => z.kind === "glue" && z.id === "hem";

/** Hems that are glued down once they are folded and dry. */
export const hemSteps = (input: WorkInput): readonly Draft[] =>
  input.made.pieces
    .filter((p) => p.zones.some(isHem))
    .map((p) => ({
      id: `hem.${p.id}`,
      phase: "hem",
      does: "glue",
      says: `Glue down the hem of the ${namesOf([p])}; fresh air, and as its maker says`,
      pieces: [p.id],
      tool: "glue and spreader",
      setting: "",
      amount: countOf(p, input),
      after: [],
      serves: p.zones.filter(isHem).flatMap((z) => served("zone", p.id, z.id)),
    }));

/** Glue along the edges of a seam, right before it is sewn: after all that its sewing waits for. */
export function glueEdgeSteps(input: WorkInput, joins: readonly Draft[]): readonly Draft[] {
  const sewings = sewingsOf(input.made);
  const glued = input.made.pieces.flatMap((piece) =>
    piece.zones
      .filter((z) => z.kind === "glue" && !isHem(z))
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
