import { type Path, type Point, polyline } from "../../geometry/path.ts";
import type { Kept } from "../../model/sheet.ts";
import { printLength } from "../../units/index.ts";
import { chordsOfItems } from "./chords.ts";
import { type Draft, type Ground, withBlock, withItems, withoutRoom } from "./draft.ts";
import { taken } from "./space.ts";
import { stroke } from "./strokes.ts";
import { PLAIN_MM, SMALL_MM } from "./title.ts";

// Break lines of a strap that is printed ends only: narrow continuous line with a zigzag, ISO 128-2 01.1.

/** A break line passes the strap's edges by this much. */
const BEYOND_MM = 2;
const ZIGZAG_MM = 1.4;

/** A break line across a strap whose edges lie at `low` and `high`. */
export function breakLine(
  x: number,
  low: number,
  high: number,
  { zigzag, beyond } = { zigzag: ZIGZAG_MM, beyond: BEYOND_MM },
): Path {
  const middle = (low + high) / 2;
  const zig: readonly Point[] = [
    [x, middle - 2 * zigzag],
    [x + zigzag, middle - zigzag],
    [x - zigzag, middle + zigzag],
    [x, middle + 2 * zigzag],
  ];
  return polyline([[x, low - beyond], ...zig, [x, high + beyond]]);
}

/** Draws the break lines, and between them the length that is left out. */
export function withBreaks(draft: Draft, ground: Ground, kept: readonly Kept[]): Draft {
  const { minY, maxY } = ground.bounds;
  return kept.slice(1).reduce((before, [from, , moved], i) => {
    const [near, farDrawn] = [kept[i]![1] - kept[i]![2], from - moved];
    const lines = [near, farDrawn].map((x) => stroke("mark", "01.1", breakLine(x, minY, maxY)));
    const lined = withItems(before, lines, taken(before.space, { chords: chordsOfItems(lines) }));
    // Nothing else is written where leather is left out.
    const gap = { ...ground.room, minX: near, maxX: farDrawn };
    const left = printLength(from - kept[i]![1], ground.units);
    const between = (b: { readonly minX: number; readonly maxX: number }): boolean =>
      b.minX > near && b.maxX < farDrawn;
    for (const size of [PLAIN_MM, SMALL_MM]) {
      const texts = [
        [`${left} of plain strap`, "between these lines"],
        [left, "left out here"],
        [`${left} here`],
      ];
      for (const lines of texts) {
        const block = lines.map((text) => ({ text, size }));
        const near0: Point = [(near + farDrawn) / 2, (minY + maxY) / 2];
        const done = withBlock(lined, { ...ground, joints: [] }, block, {
          near: near0,
          on: "room",
          accept: between,
        });
        if (done) return { ...done, space: taken(done.space, { boxes: [gap] }) };
      }
    }
    return withoutRoom(lined, `${left} of plain strap between the break lines`);
  }, draft);
}
