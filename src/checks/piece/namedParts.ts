import type { Join, Made } from "../../model/article.ts";
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

/** One piece that a join names, and the parts of it. */
type Named = {
  readonly piece: string;
  readonly seams?: readonly string[];
  readonly holes?: readonly string[];
  readonly cutouts?: readonly string[];
};

/** Every piece a join names, with what it names of it; a turn-back may lie on any piece. */
function namedBy(join: Join): readonly Named[] {
  switch (join.kind) {
    case "seam":
      return join.sides.map(({ piece, seam }) => ({ piece, seams: [seam] }));
    case "fixed":
      return join.sides;
    case "gather":
      return [{ piece: join.gusset }, { piece: join.body, seams: join.seams }];
    case "closure":
      return [{ piece: join.flap.piece }, { piece: join.front.piece }];
    default:
      return [{ piece: join.piece, ...("cutout" in join ? { cutouts: [join.cutout] } : {}) }];
  }
}

/** What a join is called in a message. */
const called = (join: Join): string => ("name" in join ? `${join.kind} ${join.name}` : join.kind);

/** What a join names and the pieces lack. */
function lackedBy(job: Made, join: Join): readonly Remark[] {
  const lacks = (id: string, what: string, of: string): Remark =>
    fault(
      id,
      join.kind,
      `The join "${called(join)}" names the ${what}, which ${of}.`,
      "missing",
      what.replace(/^piece /, ""),
    );
  return namedBy(join).flatMap((named) => {
    const piece = job.pieces.find((p) => p.id === named.piece);
    if (!piece) return [lacks(named.piece, `piece ${named.piece}`, "is not made")];
    const missingOf = (
      kind: string,
      names: readonly string[] = [],
      parts: readonly { readonly id: string }[],
    ): readonly Remark[] =>
      names
        .filter((name) => !parts.some((part) => part.id === name))
        .map((name) => lacks(piece.id, `${kind} ${name}`, `${piece.name} lacks`));
    return [
      ...missingOf("seam", named.seams, piece.seams),
      ...missingOf("hole", named.holes, piece.holes),
      ...missingOf("cutout", named.cutouts, piece.cutouts),
    ];
  });
}

/** A tongue's slot lies on a turn-back of some piece. */
function turnBackMissing(job: Made, join: Join): readonly Remark[] {
  if (!("turnBack" in join) || job.pieces.some((p) => p.turnBacks.some((t) => t.id === join.turnBack)))
    return [];
  const piece = job.pieces.find((p) => p.id === join.piece);
  if (!piece) return [];
  const what = `turn-back ${join.turnBack}`;
  return [
    fault(
      piece.id,
      join.kind,
      `The join "${join.kind}" names the ${what}, which ${piece.name} lacks.`,
      "missing",
      what,
    ),
  ];
}

/** A seam line that is one side of a join is named by that join. */
function unjoined(job: Made): readonly Remark[] {
  const sides = new Set(
    job.joins.flatMap((j) =>
      j.kind === "seam" ? j.sides.map((s) => JSON.stringify([j.name, s.piece, s.seam])) : [],
    ),
  );
  return job.pieces.flatMap((piece) =>
    piece.seams
      .filter((s) => s.joins !== undefined && !sides.has(JSON.stringify([s.joins, piece.id, s.id])))
      .map((s) =>
        fault(
          piece.id,
          `seam ${s.id}`,
          `The seam ${s.id} of ${piece.name} is one side of "${s.joins}", which doesn't join it.`,
          "missing",
          s.joins ?? "",
        ),
      ),
  );
}

/** Whatever is named exists, once: holes of seams, mates, folds of turn-backs, parts that join. */
export const namedParts = rule("named-parts", "whatever a part names exists, once", (job) => [
  ...twice(job.pieces.map((p) => p.id)).map((id) =>
    fault(id, "piece", `Two pieces have the name ${id}.`, "2", "1"),
  ),
  ...job.pieces.flatMap((piece) => [...givenTwice(piece), ...missing(piece)]),
  ...job.joins.flatMap((join) => [...lackedBy(job, join), ...turnBackMissing(job, join)]),
  ...unjoined(job),
]);
