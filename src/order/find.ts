import { isMap, type Pair, type YAMLMap } from "yaml";
import { isEmptyNode, nameOfPair } from "./layout.ts";

/** As far down as an order goes along a path. */
export type Found = {
  /** The maps passed through, the top level first. */
  readonly maps: readonly YAMLMap[];
  /** The last pair that is there, and whether the path ends with it. */
  readonly pair: Pair | undefined;
  /** Names of the path that are not there. */
  readonly missing: readonly string[];
};

/** Goes down a path; undefined when something else than a section is in the way. */
export function find(top: YAMLMap, names: readonly string[]): Found | undefined {
  const maps = [top];
  let last: Pair | undefined;
  for (const [i, name] of names.entries()) {
    const map = maps.at(-1)!;
    const pair = map.items.find((p) => nameOfPair(p) === name);
    if (!pair) return { maps, pair: last, missing: names.slice(i) };
    last = pair;
    if (i === names.length - 1) return { maps, pair, missing: [] };
    if (isEmptyNode(pair.value)) return { maps, pair, missing: names.slice(i + 1) };
    if (!isMap(pair.value)) return undefined;
    maps.push(pair.value);
  }
  return undefined;
}
