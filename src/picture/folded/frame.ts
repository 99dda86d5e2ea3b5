import { boundsOf, unionBox } from "../../geometry/bounds.ts";
import { type Point, polyline } from "../../geometry/path.ts";
import type { Item, Picture, Words } from "../picture.ts";
import { blockSize, blockWords, paragraph } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { textBox } from "../words.ts";

// The words round a folded drawing, and its frame.

/** A picture, and the same in words. */
export type FoldedPicture = { readonly picture: Picture; readonly says: string };

export const AROUND_MM = 6;
export const WORD_MM = 2.6;
/** Room between a line and the words beside it, mm. */
export const GAP_MM = 1.2;

export const words = (text: string, at: Point, align: Words["align"]): Words => ({
  kind: "words",
  layer: "text",
  at,
  size: WORD_MM,
  text,
  align,
  angle: 0,
});

/** A length along the strap, between two thin lines; `y` below the legs. */
export function measured(from: number, to: number, y: number, text: string): readonly Item[] {
  const tick = (x: number): Item =>
    stroke(
      "mark",
      "01.1",
      polyline([
        [x, y - 1],
        [x, y + 1],
      ]),
    );
  return [
    stroke(
      "mark",
      "01.1",
      polyline([
        [from, y],
        [to, y],
      ]),
    ),
    tick(from),
    tick(to),
    words(text, [to + GAP_MM, y - WORD_MM / 3], "left"),
  ];
}

/** Least width of the lines of words below a picture, mm. */
const WORDS_WIDE_MM = 90;

/** The items with words below them, as a picture of its own. */
export function framed(
  title: string,
  drawn: readonly Item[],
  said: readonly string[],
  below: number,
  seen: string,
): FoldedPicture {
  const boxes = drawn.map((i) =>
    i.kind === "stroke" ? boundsOf(i.path) : i.kind === "words" ? textBox(i) : undefined,
  );
  const box = unionBox(boxes.filter((b) => b !== undefined));
  const width = Math.max(WORDS_WIDE_MM, box.maxX - box.minX);
  const block = said.flatMap((s) => paragraph(s, WORD_MM, width));
  const { height } = blockSize(block);
  const lines = blockWords(block, {
    minX: box.minX,
    maxX: box.minX + width,
    minY: below - height,
    maxY: below,
  });
  const at: Point = [AROUND_MM - box.minX, AROUND_MM + height - below];
  return {
    picture: {
      title,
      width: width + 2 * AROUND_MM,
      height: box.maxY - below + height + 2 * AROUND_MM,
      items: [{ kind: "group", placement: { at, angle: 0 }, items: [...drawn, ...lines] }],
    },
    says: [`${title}, ${seen}.`, ...said].join(" "),
  };
}
