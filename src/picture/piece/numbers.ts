import { keptPoint } from "../../layout/draw.ts";
import type { SeamLine } from "../../model/piece.ts";
import { blockBox, blockWords } from "./block.ts";
import { type Draft, type Ground, placeFor, withWords } from "./draft.ts";
import { tenthsOf } from "./tenths.ts";
import { SMALL_MM } from "./title.ts";

/** A number further than this from its hole could belong to another. */
const NEAR_MM = 5;

/** True for a seam with a mate on another piece: its numbers are counted against the mate's. */
export const isMated = ({ joins }: SeamLine): boolean => joins !== undefined;

/**
 * Numbers every tenth stitch hole of the seams asked for; where there is no room the tick alone has to do.
 */
export function withTenths(draft: Draft, ground: Ground, asked: (seam: SeamLine) => boolean): Draft {
  return tenthsOf(ground.piece, asked).reduce((before, { hole, number }) => {
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
