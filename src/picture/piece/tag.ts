import type { Path, Point } from "../../geometry/path.ts";
import { apart } from "../../geometry/vector.ts";
import { chordsOf } from "./chords.ts";

/** What is said, and the points that a leader may go to. */
export type Tag = {
  readonly words: string;
  readonly anchors: readonly Point[];
  /** Left out when it has no room on the point's own sheet: the row's first hole says the rest. */
  readonly spare?: true;
  /** Fewer words, for where these find no room. */
  readonly short?: string;
  /** Said of every one, also where another of the same words is near. */
  readonly each?: true;
};

/** Equal words on points nearer than this are said once. */
export const SAME_PLACE_MM = 60;

export const shares = (from: Point, to: Point, at: readonly number[]): readonly Point[] =>
  at.map((t): Point => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]);

/** Points on a path: the middles of its longest sides, then others along them. */
export function pointsOn(path: Path): readonly Point[] {
  const long = [...chordsOf(path)].sort((a, b) => apart(...b) - apart(...a)).slice(0, 4);
  return [0.5, 0.25, 0.75, 0.1, 0.9].flatMap((t) => long.flatMap(([a, b]) => shares(a, b, [t])));
}
