import type { Finding } from "../../model/finding.ts";
import type { Piece } from "../../model/piece.ts";

// What the checks found, for the paper: whoever cuts may never have seen the screen.

const bare = (sentence: string): string => sentence.replace(/[.\s]+$/, "");

const TWIN = /\b(near|off)\b/g;
/** Equal for what is the same on the near and on the off side. */
const twinKey = ({ rule, severity, piece, message, mend }: Finding): string =>
  [rule, severity, piece, message, mend].join("|").replaceAll(TWIN, "side");

/** One finding as a short paragraph: piece, what, how to mend it if asked; a twin's other side is not said again. */
function sayLook(f: Finding, pieces: readonly Piece[], twins: boolean, mends: boolean): string {
  const name = pieces.find((p) => p.id === f.piece)?.name ?? "";
  const words = [
    ...(f.severity === "error" ? ["Error, do not cut"] : []),
    ...(name === "" ? [] : [name]),
    `${bare(f.message)}.${mends ? ` To mend: ${bare(f.mend)}.` : ""}`,
  ].join(": ");
  return twins ? `${words} The same on the other side.` : words;
}

/** Errors and cautions, each once, in the order given; with what mends them, unless the reader has no order to mend. */
export function looks(
  findings: readonly Finding[],
  pieces: readonly Piece[],
  mends = true,
): readonly string[] {
  const grave = findings.filter((f) => f.severity !== "note");
  const keys = grave.map(twinKey);
  return grave.flatMap((f, i) => {
    if (keys.indexOf(keys[i]!) !== i) return [];
    const twins = grave.some((other, k) => keys[k] === keys[i] && other.message !== f.message);
    return [sayLook(f, pieces, twins, mends)];
  });
}
