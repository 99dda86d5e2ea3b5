// A question on the measuring sheet: its name, what is asked, boxes to tick, and a line to write on.
import { CAPITAL, textWidth } from "../words.ts";
import { type Block, indented, rule, stacked, textBlock, together, words } from "./block.ts";
import type { Question } from "./drawing.ts";
import { BETWEEN_TICKS_MM, HOW_MM, NAME_MM, SMALL_MM, TICK_MM, tick } from "./measureTable.ts";

/** A line to write on is at least this long, and handwriting has this much more room over it, mm. */
const LINE_MM = 40;
const WRITING_MM = 1.6;
const AFTER_NAME_MM = 3;

/** Blocks side by side, in as many lines as they need; also how far the last line reaches. */
function flowed(ticks: readonly (Block & { readonly width: number })[], width: number) {
  const lines: Block[][] = [[]];
  let left = 0;
  for (const block of ticks) {
    if (left > 0 && left + block.width > width) {
      lines.push([]);
      left = 0;
    }
    lines.at(-1)!.push(indented(block, left));
    left += block.width + BETWEEN_TICKS_MM;
  }
  return { lines: lines.map((line) => together(...line)), reach: left };
}

const writingLine = (other: string, width: number): Block => ({
  height: TICK_MM,
  items: ([x, y]) => {
    const start = textWidth(other, SMALL_MM) + 1.6;
    return [
      words(other, [x, y - (TICK_MM + CAPITAL * SMALL_MM) / 2], SMALL_MM),
      rule([x + start, y - TICK_MM], width - start),
    ];
  },
});

/** What is asked stands on the name's base line, nearly: the name's letters are larger. */
const LOWER_MM = 0.6;

/** A question over the whole width; few choices stand beside it. */
export function questionRow({ measure, how, choices, other }: Question, width: number): Block {
  const beside = textWidth(measure, NAME_MM, true) + AFTER_NAME_MM;
  const lowered = (block: Block): Block => stacked([{ height: LOWER_MM, items: () => [] }, block], 0);
  const asked = together(
    textBlock(measure, { size: NAME_MM, width, bold: true }),
    indented(lowered(textBlock(how, { size: HOW_MM, width: width - beside })), beside),
  );
  const reached = beside + textWidth(how, HOW_MM) + BETWEEN_TICKS_MM;
  const few = flowed(choices.map(tick), width - reached);
  if (other === undefined && few.lines.length === 1 && reached + few.reach <= width)
    return together(asked, indented(lowered(few.lines[0]!), reached));
  const { lines, reach } = flowed(choices.map(tick), width);
  if (other === undefined) return stacked([asked, ...lines], 1);
  if (width - reach < LINE_MM) return stacked([asked, ...lines, writingLine(other, width)], WRITING_MM);
  const last = together(lines.at(-1)!, indented(writingLine(other, width - reach), reach));
  return stacked([asked, ...lines.slice(0, -1), last], WRITING_MM);
}
