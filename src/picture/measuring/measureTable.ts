// The measures, one below the other: number, name, how to take it, what to tick, boxes to write in.
import { CAPITAL, textWidth } from "../words.ts";
import { NUMBER_RADIUS_MM, numberRing } from "./arrow.ts";
import { type Block, boxStroke, indented, rule, stacked, textBlock, together, words } from "./block.ts";
import type { Ask } from "./drawing.ts";

/** A measure as the sheet shows it. */
export type TableRow = { readonly measure: string; readonly how: string; readonly ask?: Ask };

export const NAME_MM = 4;
export const HOW_MM = 3.2;
export const SMALL_MM = 3.2;
/** Space over and under what stands in a row, mm. */
const PADDING_MM = 1.6;
/** From the row's left end to its words: the number's ring, and a little. */
const WORDS_LEFT_MM = 2 * NUMBER_RADIUS_MM + 2.4;
const GAP_MM = 2;
/** A box is high and broad enough for 41 1/2 in pencil, with cold fingers. */
const BOX_HEIGHT_MM = 12;
const BOX_LEAST_MM = 22;
const BOX_MOST_MM = 30;
/** A box's share of the sheet's width. */
const BOX_SHARE = 0.115;
/** A small box to tick, and the column for the two units. */
export const TICK_MM = 3.6;
const UNITS_MM = 11;
export const BETWEEN_TICKS_MM = 3;
const UNITS = ["in", "cm"] as const;

type Columns = {
  readonly width: number;
  /** Width for words, of one box, and where the boxes and the units begin. */
  readonly words: number;
  readonly box: number;
  readonly boxesAt: number;
  readonly unitsAt: number;
};

function columnsOf(width: number, boxes: number): Columns {
  const box = Math.min(BOX_MOST_MM, Math.max(BOX_LEAST_MM, BOX_SHARE * width));
  const unitsAt = width - UNITS_MM;
  const boxesAt = unitsAt - boxes * (box + GAP_MM);
  return { width, words: boxesAt - WORDS_LEFT_MM - 2 * GAP_MM, box, boxesAt, unitsAt };
}

/** A box to tick with its words. */
export const tick = (text: string): Block & { readonly width: number } => ({
  height: TICK_MM,
  width: TICK_MM + 1.2 + textWidth(text, SMALL_MM),
  items: ([x, y]) => [boxStroke([x, y], TICK_MM, TICK_MM), words(text, [x + TICK_MM + 1.2, y - (TICK_MM + CAPITAL * SMALL_MM) / 2], SMALL_MM)],
});

/** The choices side by side, after the question where there is room, else below it. */
function askBlock({ question, choices }: Ask, width: number): Block {
  const ticks = choices.map(tick);
  const asked = textWidth(question, HOW_MM) + BETWEEN_TICKS_MM;
  const all = ticks.reduce((sum, block) => sum + block.width + BETWEEN_TICKS_MM, 0);
  const beside = asked + all - BETWEEN_TICKS_MM <= width;
  let left = beside ? asked : 0;
  const laid = ticks.map((block) => {
    const placed = indented(block, left);
    left += block.width + BETWEEN_TICKS_MM;
    return placed;
  });
  const text = textBlock(question, { size: HOW_MM, width });
  return beside ? together(text, ...laid) : stacked([text, together(...laid)], 0.4);
}

const boxesBlock = ({ box }: Columns, boxes: number): Block => ({ height: BOX_HEIGHT_MM, items: ([x, y]) => Array.from({ length: boxes }, (_, i) => boxStroke([x + i * (box + GAP_MM), y], box, BOX_HEIGHT_MM)) });

const numberBlock = (number: number): Block => ({ height: 2 * NUMBER_RADIUS_MM, items: ([x, y]) => numberRing(number, [x + NUMBER_RADIUS_MM, y - NUMBER_RADIUS_MM]) });

const unitsBlock = stacked(UNITS.map(tick), 2.6);

function rowBlock(row: TableRow, number: number, columns: Columns, boxes: number): Block {
  const { words: width, boxesAt, unitsAt } = columns;
  const ask = row.ask ? [askBlock(row.ask, width)] : [];
  const said = stacked([textBlock(row.measure, { size: NAME_MM, width, bold: true }), textBlock(row.how, { size: HOW_MM, width }), ...ask], 0.4);
  return together(numberBlock(number), indented(said, WORDS_LEFT_MM), indented(boxesBlock(columns, boxes), boxesAt), indented(unitsBlock, unitsAt));
}

const ruleBlock = (width: number, line: "01.1" | "01.2"): Block => ({ height: 0.01, items: (corner) => [rule(corner, width, line)] });

function headBlock({ words: width, box, boxesAt, unitsAt }: Columns, boxes: readonly string[]): Block {
  const heads = boxes.map((name, i) => indented(textBlock(name, { size: SMALL_MM, width: box, bold: true }), boxesAt + i * (box + GAP_MM)));
  const unit = indented(textBlock("unit", { size: SMALL_MM, width: UNITS_MM, bold: true }), unitsAt);
  const first = textBlock("what to measure, and how", { size: SMALL_MM, width: width + WORDS_LEFT_MM, bold: true });
  return together(first, ...heads, unit);
}

/** The table of all measures, numbered from 1. `boxes` names the columns to write in. */
export function measureTable(rows: readonly TableRow[], boxes: readonly string[], width: number): Block {
  const columns = columnsOf(width, boxes.length);
  const ruled = rows.flatMap((row, i) => [ruleBlock(width, i === 0 ? "01.2" : "01.1"), rowBlock(row, i + 1, columns, boxes.length)]);
  return stacked([headBlock(columns, boxes), ...ruled, ruleBlock(width, "01.2")], PADDING_MM);
}
