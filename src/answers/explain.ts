import { dieDerivations } from "../die/about.ts";
import { PRESS_CAUTIONS } from "../die/checks/index.ts";
import { dieFor } from "../die/die.ts";
import { pairDie, pairLoad } from "../die/pairDie.ts";
import type { DieSettings } from "../die/settings.ts";
import { type Explained, explainPiece } from "../model/explain.ts";
import { fitLines } from "../model/fit.ts";
import type { Job } from "../model/job.ts";
import { asPieceId, begunWith, noPiece } from "../model/pieceName.ts";

/** How the sizes of one piece came about; without a piece, of the whole article and the list of pieces. */
export function explainJob(job: Job, piece: string | undefined): Explained {
  const ids = job.made.pieces.map((p) => p.id);
  const { units } = job.order;
  if (piece === undefined) {
    return {
      ok: true,
      lines: [
        ...explainPiece(job.derivations, "", units),
        ...(job.made.fit ? ["", ...fitLines(job.made.fit, units)] : []),
        "",
        `The pieces: ${ids.join(", ")}. Add a piece's name to see how its sizes came about.`,
      ],
    };
  }
  const name = asPieceId(piece);
  const begun = begunWith(name, ids);
  const id = ids.includes(name) ? name : begun.length === 1 ? begun[0] : undefined;
  if (id === undefined) return { ok: false, message: noPiece(piece, ids, ids) };
  return { ok: true, lines: explainPiece(job.derivations, id, units) };
}

/** What `explain` calls the die of a piece: this, and the piece's name. */
export const DIE_PREFIX = "die-";

/** How the press load of a piece's die came about, and the pieces for each stroke. */
export function explainDie(job: Job, settings: DieSettings, piece: string): Explained {
  const ids = job.made.pieces.map((p) => p.id);
  const found = job.made.pieces.find(({ id }) => id === asPieceId(piece));
  if (!found) {
    const written = ids.map((id) => `${DIE_PREFIX}${id}`);
    return { ok: false, message: noPiece(piece, ids, written) };
  }
  const die = dieFor(found, settings);
  const derivations = dieDerivations(die, found.id, pairLoad(die, pairDie(die)));
  return {
    ok: true,
    lines: [...explainPiece(derivations, found.id, job.order.units), "", ...PRESS_CAUTIONS],
  };
}
