import { isMap, isScalar, type Node, type Pair, Scalar, type YAMLMap } from "yaml";

// Where the parts of an order stand in its text.

export const isEmptyNode = (node: unknown): boolean =>
  node === null || node === undefined || (isScalar(node) && node.type === Scalar.PLAIN && node.value === "");

export const startOf = (node: unknown): number => (node as Node | null)?.range?.[0] ?? 0;

export const nameOfPair = (pair: Pair): string => String((pair.key as Scalar).value);

export const keyEnd = (pair: Pair): number => (pair.key as Node).range?.[1] ?? 0;

/** The end of a pair's colon; undefined in `{ width }`, which has none. */
export const colonEnd = (pair: Pair): number | undefined => {
  const colon = pair.srcToken?.sep?.find((t) => t.type === "map-value-ind");
  return colon && colon.offset + colon.source.length;
};

/** The end of what a pair says, without spaces and comments after it. */
export function endOf(pair: Pair): number {
  const { value } = pair as Pair<Node, Node | null>;
  if (isEmptyNode(value)) return colonEnd(pair) ?? keyEnd(pair);
  if (isMap(value) && !value.flow) return endOf(value.items.at(-1)!);
  return value?.range?.[1] ?? keyEnd(pair);
}

export const lineStart = (text: string, offset: number): number => text.lastIndexOf("\n", offset - 1) + 1;

/** The beginning of the line after the one at an offset; the text's end after its last line. */
export function nextLineStart(text: string, offset: number): number {
  if (offset > 0 && text[offset - 1] === "\n") return offset;
  const end = text.indexOf("\n", offset);
  return end === -1 ? text.length : end + 1;
}

/** The spaces before a map's names. */
export function indentOf(map: YAMLMap, text: string): string {
  const first = startOf(map.items[0]!.key);
  return text.slice(lineStart(text, first), first).replace(/[^ ]/g, " ");
}

/** Where a text's lines end with CR LF, new ones do too. */
export const lineEnd = (text: string): string => (text.includes("\r\n") ? "\r\n" : "\n");
