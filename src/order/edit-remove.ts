import { isMap, type Pair, type YAMLMap } from "yaml";
import type { Found } from "./find.ts";
import { endOf, lineStart, nextLineStart, startOf } from "./layout.ts";
import type { Change } from "./splice.ts";

const cut = (from: number, to: number): Change => ({ from, to, insert: "" });

/** The offset of the comma that stands before a pair in brackets. */
const commaBefore = (pair: Pair | undefined): number | undefined =>
  pair?.srcToken?.start.find((t) => t.type === "comma")?.offset;

/** Cuts a pair and the comma it no longer needs; comments between the two stay. */
function fromBrackets(text: string, map: YAMLMap, pair: Pair): readonly Change[] {
  const at = map.items.indexOf(pair);
  const [from, to] = [startOf(pair.key), endOf(pair)];
  const before = commaBefore(pair);
  if (before !== undefined) {
    const between = text.slice(before + 1, from);
    return between.trim() === "" ? [cut(before, to)] : [cut(before, before + 1), cut(from, to)];
  }
  const next = map.items[at + 1];
  const after = commaBefore(next) ?? trailingComma(text, to);
  if (after === undefined) return [cut(from, to + /^ */.exec(text.slice(to))![0].length)];
  const behind = /^,[ \t]*/.exec(text.slice(after))![0].length;
  return text.slice(to, after).trim() === ""
    ? [cut(from, after + behind)]
    : [cut(from, to), cut(after, after + 1)];
}

/** `{ width: 5/8, }` has a comma after its last pair. */
function trailingComma(text: string, from: number): number | undefined {
  const found = /^\s*,/.exec(text.slice(from));
  return found ? from + found[0].length - 1 : undefined;
}

/** Cuts the lines of a pair, with the comment behind its value; comments on lines of their own stay. */
export function removal(text: string, { maps, pair }: Found): readonly Change[] | undefined {
  const map = maps.at(-1);
  if (!map || !pair || isMap(pair.value)) return undefined;
  if (map.flow) return fromBrackets(text, map, pair);
  return [cut(lineStart(text, startOf(pair.key)), nextLineStart(text, endOf(pair)))];
}
