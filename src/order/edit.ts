import { isMap, isScalar } from "yaml";
import { addition } from "./edit-add.ts";
import { removal } from "./edit-remove.ts";
import { type Found, find } from "./find.ts";
import { colonEnd, isEmptyNode, keyEnd } from "./layout.ts";
import { parseText } from "./parse.ts";
import { scalarText } from "./scalar.ts";
import { type Change, splice } from "./splice.ts";
import { readTree, type Tree } from "./tree.ts";

/** Writes another value where one stands, or where one is wanted behind a colon. */
function replacement(text: string, { pair, maps }: Found, value: string): readonly Change[] | undefined {
  if (!pair || (!isScalar(pair.value) && pair.value !== null)) return undefined;
  const written = scalarText(
    value,
    maps.some((m) => m.flow),
  );
  if (isEmptyNode(pair.value)) {
    const at = colonEnd(pair);
    if (at !== undefined) return [{ from: at, to: at, insert: ` ${written}` }];
    return [{ from: keyEnd(pair), to: keyEnd(pair), insert: `: ${written}` }];
  }
  const [from, to] = pair.value!.range!;
  const end = /\r?\n$/.exec(text.slice(from, to))?.[0] ?? "";
  return [{ from, to, insert: written + end }];
}

function changes(text: string, path: string, value: string | undefined): readonly Change[] | undefined {
  const { document, faults } = parseText(text);
  if (!document || faults.length > 0) return undefined;
  const top: unknown = document.contents;
  const names = path.split(".");
  if (!isMap(top))
    return isEmptyNode(top) && value !== undefined
      ? addition(text, { maps: [], pair: undefined, missing: names }, value)
      : [];
  const found = find(top, names);
  if (!found) return undefined;
  if (found.missing.length === 0)
    return value === undefined ? removal(text, found) : replacement(text, found, value);
  return value === undefined ? [] : addition(text, found, value);
}

function valueAt(tree: Tree, path: string): string | undefined {
  let entries = tree.entries;
  const names = path.split(".");
  for (const name of names.slice(0, -1)) {
    const value = entries?.find((e) => e.key === name)?.value;
    entries = value?.kind === "map" ? value.entries : undefined;
  }
  const value = entries?.find((e) => e.key === names.at(-1))?.value;
  return value?.kind === "text" ? value.text : undefined;
}

/** Faults of a value alone: everybody can see where it begins and ends. */
const VALUE_FAULTS = ["several-lines", "too-long", "control-character"];

/** Whether it is unclear where a value stands, or whether the whole would still be read. */
const unclear = (tree: Tree): boolean =>
  tree.faults.some((f) => f.code !== "no-order" && !(f.key !== "" && VALUE_FAULTS.includes(f.code)));

/**
 * Sets or, with `undefined`, takes out one value of an order's text, in place. Everything else stays
 * to the byte: comments, spacing, quotes, line ends. Sections that are missing are added, and a value
 * whose line stands in the text as a comment (`#width: 5/8 in`) comes in right under it.
 * The text comes back as it was when the change can't be made in place: when it is no sound order yet
 * (its faults must be mended first), when the path names a section, or when the value can't be written.
 * `path` is that of the value, e.g. "hardware.cheek-buckle.inside".
 */
export function editOrder(text: string, path: string, value: string | undefined): string {
  if (unclear(readTree(text))) return text;
  const made = changes(text, path, value);
  if (!made || made.length === 0) return text;
  const edited = splice(text, made);
  const after = readTree(edited);
  // The last word has the reader: what it would read differently is not done.
  return valueAt(after, path) === value?.trim() && !unclear(after) ? edited : text;
}
