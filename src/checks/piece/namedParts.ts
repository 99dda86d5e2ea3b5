import type { Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { type Remark, rule } from "../rule.ts";

const MEND = "Don't cut: the drawing is incomplete. Report it with the order.";

const fault = (piece: string, place: string, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece,
  place,
  message,
  value,
  limit,
  mend: MEND,
});

/** Names that are given twice. */
function twice(names: readonly string[]): readonly string[] {
  return [...new Set(names.filter((name, i) => names.indexOf(name) !== i))];
}

function givenTwice(piece: Piece): readonly Remark[] {
  const kinds: readonly (readonly [string, readonly { readonly id: string }[]])[] = [
    ["hole", piece.holes],
    ["cutout", piece.cutouts],
    ["seam", piece.seams],
    ["fold", piece.folds],
    ["turn-back", piece.turnBacks],
    ["zone", piece.zones],
  ];
  return kinds.flatMap(([kind, parts]) =>
    twice(parts.map((p) => p.id)).map((id) =>
      fault(piece.id, `${kind} ${id}`, `${piece.name} has two ${kind}s of the name ${id}.`, "2", "1"),
    ),
  );
}

/** What a piece's seams and turn-backs name and the piece lacks. */
function missing(piece: Piece): readonly Remark[] {
  const holes = new Set(piece.holes.map((h) => h.id));
  const folds = new Set(piece.folds.map((f) => f.id));
  const lacks = (by: string, what: string): Remark =>
    fault(
      piece.id,
      by,
      `The ${by} of ${piece.name} names the ${what}, which the piece lacks.`,
      "missing",
      what,
    );
  return [
    ...piece.seams.flatMap((s) =>
      s.holes.filter((h) => !holes.has(h)).map((h) => lacks(`seam ${s.id}`, `hole ${h}`)),
    ),
    ...piece.seams
      .filter((s) => s.turnBack !== undefined && !piece.turnBacks.some((t) => t.id === s.turnBack))
      .map((s) => lacks(`seam ${s.id}`, `turn-back ${s.turnBack}`)),
    ...piece.turnBacks.flatMap((t) => [
      ...(folds.has(t.fold) ? [] : [lacks(`turn-back ${t.id}`, `fold ${t.fold}`)]),
      ...t.mates
        .flat()
        .filter((h) => !holes.has(h))
        .map((h) => lacks(`turn-back ${t.id}`, `hole ${h}`)),
    ]),
  ];
}

/** What the joins name and the pieces lack. */
function joinsMissing(job: Made): readonly Remark[] {
  return job.joins.flatMap((join) => {
    const piece = job.pieces.find((p) => p.id === join.piece);
    if (!piece)
      return [
        fault(
          join.piece,
          join.kind,
          `The join "${join.kind}" names the piece ${join.piece}, which is not made.`,
          "missing",
          join.piece,
        ),
      ];
    const lacks = (what: string): Remark =>
      fault(
        piece.id,
        join.kind,
        `The join "${join.kind}" names the ${what}, which ${piece.name} lacks.`,
        "missing",
        what,
      );
    const cutout =
      "cutout" in join && !piece.cutouts.some((c) => c.id === join.cutout)
        ? [lacks(`cutout ${join.cutout}`)]
        : [];
    const turnBack =
      "turnBack" in join && !job.pieces.some((p) => p.turnBacks.some((t) => t.id === join.turnBack))
        ? [lacks(`turn-back ${join.turnBack}`)]
        : [];
    return [...cutout, ...turnBack];
  });
}

/** Whatever is named exists, once: holes of seams, mates, folds of turn-backs, parts that join. */
export const namedParts = rule("named-parts", "whatever a part names exists, once", (job) => [
  ...twice(job.pieces.map((p) => p.id)).map((id) =>
    fault(id, "piece", `Two pieces have the name ${id}.`, "2", "1"),
  ),
  ...job.pieces.flatMap((piece) => [...givenTwice(piece), ...missing(piece)]),
  ...joinsMissing(job),
]);
