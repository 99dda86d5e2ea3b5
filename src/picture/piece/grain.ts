import { type Box, type Point, polyline } from "../../geometry/path.ts";
import { minus, plus, scaled, unit } from "../../geometry/vector.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Item } from "../picture.ts";
import { textBox } from "../words.ts";
import { blockBox, blockWords, type Reading } from "./block.ts";
import { arrow } from "./dimension.ts";
import { type Draft, type Ground, placeFor, withItems, withoutRoom } from "./draft.ts";
import { taken } from "./space.ts";
import { stroke } from "./strokes.ts";
import { SMALL_MM } from "./title.ts";

/** Lengths that the arrow along the backbone may have, mm. */
const LENGTHS_MM = [40, 24, 14, 9] as const;
const WORDS = [{ text: "backbone", size: SMALL_MM }];
/** From the arrow to its words. */
const GAP_MM = 1;
/** Half the breadth of an arrow's head, and a little. */
const HALF_HEAD_MM = 0.6;

/** The arrow's box and its words', one beside the other or one under the other. */
type Spread = { readonly width: number; readonly height: number; readonly side: boolean };

function spreadOf(reach: Point, reading: Reading): readonly Spread[] {
  const words = blockBox(WORDS, reading);
  const [w, h] = [Math.max(reach[0], 2 * HALF_HEAD_MM), Math.max(reach[1], 2 * HALF_HEAD_MM)];
  return [
    { width: w + GAP_MM + words.width, height: Math.max(h, words.height), side: true },
    { width: Math.max(w, words.width), height: h + GAP_MM + words.height, side: false },
  ];
}

function drawn(box: Box, spread: Spread, reach: Point, angle: number, reading: Reading): readonly Item[] {
  const words = blockBox(WORDS, reading);
  const low: Point = spread.side
    ? [box.minX + reach[0] + GAP_MM, (box.minY + box.maxY - words.height) / 2]
    : [(box.minX + box.maxX - words.width) / 2, box.minY];
  const middle: Point = spread.side
    ? [box.minX + reach[0] / 2, (box.minY + box.maxY) / 2]
    : [(box.minX + box.maxX) / 2, box.maxY - reach[1] / 2];
  const way = unit([trig.cos(angle), trig.sin(angle)]);
  const half = scaled(way, Math.sqrt(reach[0] ** 2 + reach[1] ** 2) / 2);
  const [a, b] = [minus(middle, half), plus(middle, half)];
  return [
    stroke("text", "01.1", polyline([a, b])),
    arrow("text", a, scaled(way, -1)),
    arrow("text", b, way),
    ...blockWords(
      WORDS,
      { minX: low[0], minY: low[1], maxX: low[0] + words.width, maxY: low[1] + words.height },
      reading,
    ),
  ];
}

/** An arrow that lies along the hide's backbone when the piece is laid on the hide. */
export function withBackbone(draft: Draft, ground: Ground): Draft {
  const angle = ground.piece.grain;
  const near = draft.focus;
  for (const on of ["leather", "room"] as const) {
    for (const length of LENGTHS_MM) {
      const reach: Point = [length * Math.abs(trig.cos(angle)), length * Math.abs(trig.sin(angle))];
      for (const spread of spreadOf(reach, ground.reading)) {
        const box = placeFor(draft, ground, spread, { near, on });
        if (!box) continue;
        const items = drawn(box, spread, reach, angle, ground.reading);
        const words = items.flatMap((i) => (i.kind === "words" ? [textBox(i)] : []));
        return withItems(draft, items, taken(draft.space, { boxes: [box, ...words] }));
      }
    }
  }
  return withoutRoom(draft, "backbone along the piece");
}
