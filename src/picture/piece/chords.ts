import { flatten } from "../../geometry/flatten.ts";
import type { Path, Point } from "../../geometry/path.ts";
import { type Placement, placed, placedPoint } from "../../geometry/transform.ts";
import type { Kept } from "../../model/sheet.ts";
import type { Item } from "../picture.ts";
import { roundPoint } from "../round.ts";
import type { Chord } from "./space.ts";

/** Lines are followed this closely when words look for room; words keep further away from them. */
const FOLLOW_MM = 0.1;

/** The straight bits of a path, rounded: what is free must not hang on the last bit of a sine. */
export function chordsOf(path: Path): readonly Chord[] {
  const points = flatten(path, FOLLOW_MM).map(roundPoint);
  const ends = path.closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.map((to, i): Chord => [points[i]!, to]);
}

/** The straight bits of every stroke, groups placed. */
export function chordsOfItems(items: readonly Item[], placement?: Placement): readonly Chord[] {
  return items.flatMap((item): readonly Chord[] => {
    if (item.kind === "words") return [];
    if (item.kind === "stroke") return chordsOf(placement ? placed(item.path, placement) : item.path);
    const inner = chordsOfItems(item.items, item.placement);
    return placement
      ? inner.map(([a, b]): Chord => [placedPoint(a, placement), placedPoint(b, placement)])
      : inner;
  });
}

/** Chords are rounded and ends of stretches are not: what lies this near to an end belongs to it, mm. */
const END_SLACK_MM = 0.01;

/** The part of a chord whose x lies from `from` to `to`, if any. */
function between([a, b]: Chord, from: number, to: number): Chord | undefined {
  if (Math.max(a[0], b[0]) < from || Math.min(a[0], b[0]) > to) return undefined;
  const at = (x: number): Point =>
    a[0] === b[0] ? a : [x, a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
  const clip = (p: Point): Point => (p[0] < from ? at(from) : p[0] > to ? at(to) : p);
  return [clip(a), clip(b)];
}

/** What is drawn of chords when only stretches are kept, where it is drawn. */
export function keptChords(chords: readonly Chord[], kept?: readonly Kept[]): readonly Chord[] {
  if (!kept) return chords;
  return kept.flatMap(([from, to, moved]) =>
    chords.flatMap((c): readonly Chord[] => {
      const cut = between(c, from - END_SLACK_MM, to + END_SLACK_MM);
      return cut
        ? [
            [
              [cut[0][0] - moved, cut[0][1]],
              [cut[1][0] - moved, cut[1][1]],
            ],
          ]
        : [];
    }),
  );
}
