import { quote } from "../units/quote.ts";
import { nearestWord, oneOf } from "./words.ts";

// The names of pieces as people type them.

/** A piece's name as a list has it, whichever letters and gaps it was typed with: "Keeper fixed" is keeper-fixed. */
export const asPieceId = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");

/** The pieces that have a word of their name begin so: "keeper", "fix". */
export const begunWith = (name: string, ids: readonly string[]): readonly string[] =>
  name === "" ? [] : ids.filter((id) => `-${id}`.includes(`-${name}`));

/** What to write instead of a name that is no piece's; `written` are the pieces as this command has them. */
export function noPiece(
  piece: string,
  ids: readonly string[],
  written: readonly string[],
  also = "",
): string {
  const name = asPieceId(piece);
  const near = nearestWord(name, ids);
  const begun = begunWith(name, ids);
  const meant = begun.length > 0 || near === undefined ? begun : [near];
  const words = meant.map((id) => written[ids.indexOf(id)] ?? id);
  const mend =
    words.length === 0 ? "write one of these" : `write ${oneOf(words)}${words.length > 1 ? also : ""}`;
  return `There is no piece ${quote(piece)}. The pieces are: ${ids.join(", ")}. To mend: ${mend}.`;
}
