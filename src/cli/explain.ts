import { basename } from "node:path";
import { asPieceId, DIE_PREFIX, explainDie, explainJob, makeJob, sayFault } from "../job.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { type Ending, refused } from "./terminal.ts";

/** Prints how each size of a piece, or the press load of its die ("die-cheek"), came about, in the order's units. */
export function explain(file: string, piece: string | undefined): Ending {
  const read = readOrderFile(file);
  if (!read.ok) return refused(read.message);
  const result = makeJob(read.text, basename(file));
  if (!result.made)
    return { status: result.status, out: [], err: result.faults.map((f) => sayFault(f, file)) };
  const name = asPieceId(piece ?? "");
  const lines = name.startsWith(DIE_PREFIX)
    ? explainDie(result.job, result.die, name.slice(DIE_PREFIX.length))
    : explainJob(result.job, piece);
  return lines.ok ? { status: 0, out: lines.lines, err: [] } : refused(lines.message);
}
