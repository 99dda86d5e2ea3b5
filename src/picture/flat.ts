import type { Box, Point } from "../geometry/path.ts";
import { type Placement, placed, placedPoint } from "../geometry/transform.ts";
import { roundMm } from "../units/round.ts";
import { LAYERS } from "./layers.ts";
import type { Group, Item, Picture, Stroke, Words } from "./picture.ts";
import { roundAngle, roundPath, roundPoint } from "./round.ts";
import { drawable } from "./words.ts";

/** A clip box where it lies: its four corners, in picture coordinates. */
export type Clip = readonly Point[];

/**
 * A stroke or words in picture coordinates, with the clips that hold for it, outermost first. Items that
 * share their clips share the very list, so that an output can set them once.
 */
export type FlatItem = { readonly item: Stroke | Words; readonly clips: readonly Clip[] };

const cornersOf = ({ minX, minY, maxX, maxY }: Box): Clip => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

const OTHER_END = { left: "right", centre: "centre", right: "left" } as const;

/**
 * Words laid by a placement. In a mirrored group they stay readable: they are turned by half a turn and
 * begin at the other end, which fills the very box that the mirrored words would.
 */
function placedWords(words: Words, placement: Placement): Words {
  const at = placedPoint(words.at, placement);
  if (!placement.mirrored) return { ...words, at, angle: placement.angle + words.angle };
  return { ...words, at, angle: placement.angle - words.angle + Math.PI, align: OTHER_END[words.align] };
}

const placedItem = (item: Stroke | Words, placement: Placement): Stroke | Words =>
  item.kind === "stroke" ? { ...item, path: placed(item.path, placement) } : placedWords(item, placement);

/** Ids of what a group holds begin with the group's: "cheek.outline". */
const inGroup = <T extends Stroke | Words>(item: T, group: Group): T =>
  group.id === undefined || item.id === undefined ? item : { ...item, id: `${group.id}.${item.id}` };

/** Maps lists by identity, so that a list that was shared stays shared. */
function sharing<T extends object, U>(map: (value: T) => U): (value: T) => U {
  const known = new Map<T, U>();
  return (value) => {
    if (!known.has(value)) known.set(value, map(value));
    return known.get(value)!;
  };
}

const NO_CLIPS: readonly Clip[] = [];

function flatGroup(group: Group): readonly FlatItem[] {
  const own = group.clip === undefined ? NO_CLIPS : [cornersOf(group.clip)];
  const clipsHere = sharing((inner: readonly Clip[]): readonly Clip[] => {
    const all = [...own, ...inner];
    return all.length === 0
      ? NO_CLIPS
      : all.map((clip) => clip.map((point) => placedPoint(point, group.placement)));
  });
  return flatItems(group.items).map(({ item, clips }) => ({
    item: inGroup(placedItem(item, group.placement), group),
    clips: clipsHere(clips),
  }));
}

const flatItems = (items: readonly Item[]): readonly FlatItem[] =>
  items.flatMap((item) => (item.kind === "group" ? flatGroup(item) : [{ item, clips: NO_CLIPS }]));

function roundItem(item: Stroke | Words): Stroke | Words {
  if (item.kind === "stroke") return { ...item, path: roundPath(item.path) };
  const { text } = drawable(item.text);
  return { ...item, text, at: roundPoint(item.at), size: roundMm(item.size), angle: roundAngle(item.angle) };
}

/**
 * A picture without groups, ready for an output: every item in picture coordinates, rounded once to
 * 0.001 mm, its text as it can be drawn; layer after layer in the order of LAYERS, within a layer in the
 * picture's order, later items on top.
 */
export function flattenPicture(picture: Picture): readonly FlatItem[] {
  const roundClips = sharing((clips: readonly Clip[]) => clips.map((clip) => clip.map(roundPoint)));
  const flat = flatItems(picture.items).map(({ item, clips }) => ({
    item: roundItem(item),
    clips: roundClips(clips),
  }));
  return LAYERS.flatMap((layer) => flat.filter(({ item }) => item.layer === layer));
}

/** Neighbours that share a key, in order. */
export function runsBy<T, K>(
  list: readonly T[],
  key: (value: T) => K,
): readonly { readonly key: K; readonly run: readonly T[] }[] {
  const runs: { key: K; run: T[] }[] = [];
  for (const value of list) {
    const k = key(value);
    const last = runs.at(-1);
    if (last && last.key === k) last.run.push(value);
    else runs.push({ key: k, run: [value] });
  }
  return runs;
}
