// A bar that shows how long a true size is on a sheet at a reduced scale.
import type { Item } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { type Area, areasOn } from "../sheet/square.ts";

/** What the bar stands for, mm; the longer one where the shorter would be too small to see. */
const STANDS_FOR_MM = [50, 500] as const;
/** Further reduced than this, the longer one. */
const SHORT_UP_TO = 5;
const LINE_MM = 0.25;
const END_MM = 3;
const BEFORE_WORDS_MM = 2;
/** What the bar takes, mm. */
export const SCALE_BAR_MM = 5;

/** The bar and its words to the right, its upper left corner at the given place; true from outer to outer edge. */
export function scaleBar(left: number, top: number, reduced: number): readonly Item[] {
  const real = reduced <= SHORT_UP_TO ? STANDS_FOR_MM[0] : STANDS_FOR_MM[1];
  const length = real / reduced;
  const foot = top - SCALE_BAR_MM + (SCALE_BAR_MM - END_MM) / 2;
  const areas: readonly Area[] = [
    [0, (END_MM - LINE_MM) / 2, length, LINE_MM],
    [0, 0, LINE_MM, END_MM],
    [length - LINE_MM, 0, LINE_MM, END_MM],
  ];
  const block = [{ text: `${real} mm of the board at this scale`, size: PLAIN_MM }];
  const { width, height } = blockSize(block);
  const minX = left + length + BEFORE_WORDS_MM;
  const minY = foot + (END_MM - height) / 2;
  return [
    ...areasOn(areas, [left, foot], { x: 1, y: 1 }),
    ...blockWords(block, { minX, maxX: minX + width, minY, maxY: minY + height }),
  ];
}
