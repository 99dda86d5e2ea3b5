import type { Job } from "../model/job.ts";
import type { Piece } from "../model/piece.ts";
import { asPieceId, begunWith, noPiece } from "../model/pieceName.ts";

export type PiecesFound =
  | { readonly ok: true; readonly pieces: readonly Piece[] }
  | { readonly ok: false; readonly message: string };

/** The job's pieces of these names, each once; or what is wrong with the first that is no piece. */
export function piecesNamed(job: Job, names: readonly string[]): PiecesFound {
  const ids = job.made.pieces.map((p) => p.id);
  const wrong = names.find((name) => !ids.includes(asPieceId(name)));
  if (wrong !== undefined) {
    const many = begunWith(asPieceId(wrong), ids).length > 2;
    return { ok: false, message: noPiece(wrong, ids, ids, many ? ", or several of them" : ", or both") };
  }
  const asked = names.map(asPieceId);
  return { ok: true, pieces: job.made.pieces.filter(({ id }) => asked.includes(id)) };
}
