import { keptPoint } from "../../layout/draw.ts";
import { blockBox, blockWords } from "./block.ts";
import { type Draft, type Ground, placeFor, withWords } from "./draft.ts";
import { holesById, tenths } from "./strokes.ts";
import { SMALL_MM } from "./title.ts";

/** A number further than this from its hole could belong to another. */
const NEAR_MM = 5;

/** Numbers every tenth stitch hole; where there is no room the tick alone has to do. */
export function withTenths(draft: Draft, ground: Ground): Draft {
  const holes = holesById(ground.piece);
  const ticks = ground.piece.seams.flatMap((s) => tenths(s, holes));
  return ticks.reduce((before, { hole, number }) => {
    const near = keptPoint(hole.at, ground.kept);
    if (!near) return before;
    const block = [{ text: String(number), size: SMALL_MM }];
    const box = placeFor(before, ground, blockBox(block, ground.reading), {
      near,
      on: "room",
      within: NEAR_MM,
    });
    return box ? withWords(before, blockWords(block, box, ground.reading)) : before;
  }, draft);
}
