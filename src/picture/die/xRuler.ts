// A ruler along x under a row at true scale: it counts from the piece's datum, so that a place on the row is a
// place of the tables.
import { polyline } from "../../geometry/path.ts";
import { printNumber } from "../../units/index.ts";
import type { Item } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { SMALL_MM } from "../piece/title.ts";
import { CAPITAL, textWidth } from "../words.ts";

/** A tick each 10 mm, a longer one with its number each 50 mm. */
const TICK_EACH_MM = 10;
const NUMBER_EACH_MM = 50;
const TICK_MM = 1.6;
const LONG_TICK_MM = 2.8;
const ABOVE_NUMBER_MM = 0.5;
/** What the ruler takes below its line, mm. */
export const RULER_MM = LONG_TICK_MM + ABOVE_NUMBER_MM + SMALL_MM * CAPITAL;
/** Ends that are summed up come out so much off, mm. */
const HAIR_MM = 1e-6;

/** What of the axis is drawn, mm from the datum, and where across it the ruler's line lies. */
export type XRuler = { readonly from: number; readonly to: number; readonly line: number };

function tick(x: number, line: number): readonly Item[] {
  const numbered = x % NUMBER_EACH_MM === 0;
  const foot = line - (numbered ? LONG_TICK_MM : TICK_MM);
  const mark = stroke(
    "mark",
    "01.1",
    polyline([
      [x, line],
      [x, foot],
    ]),
    `ruler.${x}`,
  );
  if (!numbered) return [mark];
  const text = printNumber(x, 0);
  const at = [x - textWidth(text, SMALL_MM) / 2, foot - ABOVE_NUMBER_MM - SMALL_MM * CAPITAL] as const;
  return [mark, { kind: "words", layer: "text", at, size: SMALL_MM, text, align: "left", angle: 0 }];
}

/** The ruler in the piece's own frame: a line, its ticks below, their numbers below these. */
export function xRulerItems({ from, to, line }: XRuler): readonly Item[] {
  const first = Math.ceil((from - HAIR_MM) / TICK_EACH_MM);
  const last = Math.floor((to + HAIR_MM) / TICK_EACH_MM);
  // 0 + x is written for x, so that no −0 is counted.
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => 0 + (first + i) * TICK_EACH_MM);
  const base = stroke(
    "mark",
    "01.1",
    polyline([
      [from, line],
      [to, line],
    ]),
  );
  return [base, ...ticks.flatMap((x) => tick(x, line))];
}
