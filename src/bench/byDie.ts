import type { Finding } from "../model/finding.ts";
import { asPieceId, begunWith } from "../model/pieceName.ts";
import { nearestWord, oneOf } from "../model/words.ts";
import { quote } from "../units/quote.ts";

// Which pieces an order has cut with a die.

/** So many letters tell which pieces were meant by the beginning of a word of theirs. */
const LEAST_BEGUN = 3;

/**
 * The pieces that the names in `finish.by-die`, parted by commas, mean: by their ids, whichever letters and gaps
 * they are typed with, or by a word of them, as "keeper" for every keeper. A finding for each name that is none.
 */
export function piecesByDie(
  text: string,
  pieces: readonly string[],
): { readonly ids: readonly string[]; readonly findings: readonly Finding[] } {
  const names = [...new Set(text.split(",").map((n) => n.trim()))].filter((n) => n !== "");
  const meant = new Map(names.map((name) => [name, meantBy(asPieceId(name), pieces)]));
  return {
    ids: pieces.filter((id) => [...meant.values()].some((ids) => ids.includes(id))),
    findings: names.filter((n) => meant.get(n)!.length === 0).map((n) => unknown(n, names, pieces)),
  };
}

function meantBy(name: string, pieces: readonly string[]): readonly string[] {
  if (pieces.includes(name)) return [name];
  return name.length < LEAST_BEGUN ? [] : begunWith(name, pieces);
}

function unknown(name: string, names: readonly string[], pieces: readonly string[]): Finding {
  const near = nearestWord(asPieceId(name), pieces);
  const value = names.flatMap((n) => (n !== name ? [n] : near === undefined ? [] : [near])).join(", ");
  return {
    rule: "cut-by-die",
    severity: "error",
    piece: "",
    place: "finish.by-die",
    message: `there is no piece ${quote(name)} to cut with a die`,
    value: name,
    limit: oneOf(pieces),
    mend: `${near === undefined ? "take it out of" : `write ${near} in`} finish.by-die`,
    ...(value === "" ? {} : { change: { dimension: "finish.by-die", value } }),
  };
}
