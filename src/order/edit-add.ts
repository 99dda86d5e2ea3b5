import { isMap, type Pair, type YAMLMap } from "yaml";
import type { Found } from "./find.ts";
import {
  colonEnd,
  endOf,
  indentOf,
  isEmptyNode,
  keyEnd,
  lineEnd,
  lineStart,
  nextLineStart,
  startOf,
} from "./layout.ts";
import { scalarText } from "./scalar.ts";
import type { Change } from "./splice.ts";

const STEP = "  ";

/** `a: { b: value }`, for names that come into brackets. */
function inBrackets(names: readonly string[], value: string): string {
  const [first, ...rest] = names;
  return rest.length === 0
    ? `${first}: ${scalarText(value, true)}`
    : `${first}: { ${inBrackets(rest, value)} }`;
}

/** Names that are missing, each on a line of its own, the value behind the last. */
function onLines(names: readonly string[], value: string, indent: string, end: string): string {
  const [first, ...rest] = names;
  if (rest.length === 0) return `${indent}${first}: ${scalarText(value, false)}${end}`;
  return `${indent}${first}:${end}${onLines(rest, value, indent + STEP, end)}`;
}

/** Lines that come in at the beginning of a line, or after a last line that has no end yet. */
function newLines(text: string, at: number, lines: string): Change {
  const open = at === text.length && text !== "" && !text.endsWith("\n");
  return { from: at, to: at, insert: open ? lineEnd(text) + lines : lines };
}

/** The end of a section: the next line with something in it that stands less deep. */
function sectionEnd(text: string, from: number, depth: number): number {
  for (let at = from; at < text.length; at = nextLineStart(text, at + 1)) {
    const line = /^( *)([^\s#])?/.exec(text.slice(at, at + 200))!;
    if (line[2] !== undefined && line[1]!.length < depth) return at;
  }
  return text.length;
}

type Spot = { readonly at: number; readonly indent: string };

/** The place under `#name: …`, a setting that was left out as a comment, where its spaces are right. */
function underComment(
  text: string,
  name: string,
  from: number,
  to: number,
  fits: (spot: Spot) => boolean,
): Spot | undefined {
  for (let at = from; at < to; at = nextLineStart(text, at + 1)) {
    const next = nextLineStart(text, at + 1);
    const [, indent, found] = /^( *)# ?([^\s:#]+):(?=\s|$)/.exec(text.slice(at, next)) ?? [];
    if (found === name && fits({ at, indent: indent! })) return { at: next, indent: indent! };
  }
  return undefined;
}

/** Adds to a map on lines. `head` is the pair that holds it; the top level has none. */
function toLines(
  text: string,
  map: YAMLMap,
  head: Pair | undefined,
  names: readonly string[],
  value: string,
): Change {
  const indent = indentOf(map, text);
  const from = head ? nextLineStart(text, keyEnd(head)) : 0;
  const inPair = (at: number): boolean => map.items.some((p) => at > startOf(p.key) && at < endOf(p));
  const fits = (spot: Spot): boolean => spot.indent === indent && !inPair(spot.at);
  const spot =
    names.length === 1
      ? underComment(text, names[0]!, from, sectionEnd(text, from, indent.length), fits)
      : undefined;
  const at = spot?.at ?? nextLineStart(text, endOf(map.items.at(-1)!));
  return newLines(text, at, onLines(names, value, indent, lineEnd(text)));
}

/** Adds the first lines of a section that is there and empty. */
function toEmpty(text: string, head: Pair, names: readonly string[], value: string): Change {
  const start = startOf(head.key);
  const outer = start - lineStart(text, start);
  const from = nextLineStart(text, endOf(head));
  const fits = (spot: Spot): boolean => spot.indent.length > outer;
  const spot =
    names.length === 1
      ? underComment(text, names[0]!, from, sectionEnd(text, from, outer + 1), fits)
      : undefined;
  const indent = spot?.indent ?? " ".repeat(outer) + STEP;
  return newLines(text, spot?.at ?? from, onLines(names, value, indent, lineEnd(text)));
}

function toBrackets(text: string, map: YAMLMap, names: readonly string[], value: string): Change {
  const last = map.items.at(-1);
  const written = inBrackets(names, value);
  if (last) {
    const at = endOf(last);
    return { from: at, to: at, insert: `, ${written}` };
  }
  const at = startOf(map) + 1;
  return { from: at, to: at, insert: ` ${written}${/\s/.test(text[at] ?? "") ? "" : " "}` };
}

/** Adds a value that is not there yet, with the sections it lies in. */
export function addition(
  text: string,
  { maps, pair, missing }: Found,
  value: string,
): readonly Change[] | undefined {
  const map = maps.at(-1);
  if (!map) return [newLines(text, text.length, onLines(missing, value, "", lineEnd(text)))];
  const empty = pair !== undefined && isEmptyNode(pair.value);
  if (maps.some((m) => m.flow))
    return empty ? [behindName(pair, missing, value)] : [toBrackets(text, map, missing, value)];
  if (empty) return [toEmpty(text, pair, missing, value)];
  return pair && !isMap(pair.value) ? undefined : [toLines(text, map, pair, missing, value)];
}

/** `{ hardware: }` and `{ hardware }` get their brackets. */
function behindName(pair: Pair, names: readonly string[], value: string): Change {
  const colon = colonEnd(pair);
  const at = colon ?? keyEnd(pair);
  return { from: at, to: at, insert: `${colon === undefined ? ":" : ""} { ${inBrackets(names, value)} }` };
}
