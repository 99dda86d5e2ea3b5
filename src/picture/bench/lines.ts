// Lines of words that flow over pages: long texts may be parted between any of their lines.
import { polyline, rectanglePath } from "../../geometry/path.ts";
import type { Sheeted } from "../die/sheeted.ts";
import type { Item } from "../picture.ts";
import { blockSize, blockWords, type TextLine, wrapped } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { textWidth } from "../words.ts";
import type { StepItem } from "./document.ts";
import { foldable, unbound } from "./foldable.ts";

/** How wide the lines are and the size of their type, mm. */
export type Setting = {
  readonly width: number;
  readonly size: number;
  readonly bold?: boolean;
  /** Room on a page, mm, where something is to be kept on one; absent: nothing is. */
  readonly height?: number;
};

/** Headings and the title are so much larger than the rest. */
const HEADING = 1.25;
const TITLE = 1.7;
const STEP = 1.1;
/** So many lines are kept together; a text with more may go on on the next page. */
export const TOGETHER = 12;

/** Words in lines no wider than the setting; none for no words. */
export function linesOf(text: string, { width, size, bold }: Setting): readonly TextLine[] {
  const words = foldable(text);
  if (words === "") return [];
  return wrapped(words, size, width, bold).map((line) => ({
    text: unbound(line),
    size,
    ...(bold ? { bold } : {}),
  }));
}

/** A list in parts of so many. */
export const inParts = <T>(all: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, i) => all.slice(i * size, (i + 1) * size));

/** An empty distance. */
export const gap = (height: number): Sheeted => ({ height, draw: () => [] });

/** Lines set in by `indent`, below an empty distance. */
function part(lines: readonly TextLine[], above: number, indent: number): Sheeted {
  const { width, height } = blockSize(lines);
  return {
    height: above + height,
    draw: (left, top) => {
      const [minX, maxY] = [left + indent, top - above];
      return blockWords(lines, { minX, maxX: minX + width, minY: maxY - height, maxY });
    },
  };
}

/** Lines that flow, `above` below what comes before. */
export const flowingLines = (lines: readonly TextLine[], above: number, indent = 0): readonly Sheeted[] =>
  inParts(lines, TOGETHER).map((some, i) => part(some, i === 0 ? above : 0, indent));

/** The same, kept together with what follows. */
export const kept = (all: readonly Sheeted[]): readonly Sheeted[] =>
  all.map((each) => ({ ...each, keep: true }));

const ABOVE_HEADING_MM = 4.5;
const ABOVE_TEXT_MM = 1.4;

export const titleLines = (text: string, { width, size }: Setting): readonly Sheeted[] =>
  kept(flowingLines(linesOf(text, { width, size: size * TITLE, bold: true }), 0));

export const headingLines = (text: string, { width, size }: Setting): readonly Sheeted[] =>
  kept(flowingLines(linesOf(text, { width, size: size * HEADING, bold: true }), ABOVE_HEADING_MM));

export const textLines = (text: string, setting: Setting): readonly Sheeted[] =>
  flowingLines(linesOf(text, setting), ABOVE_TEXT_MM);

/** The first part of something, with more drawn beside it, from the same top. */
function withBeside(parts: readonly Sheeted[], beside: Sheeted["draw"]): readonly Sheeted[] {
  const [first, ...rest] = parts;
  if (!first) return [];
  const draw: Sheeted["draw"] = (left, top) => [...beside(left, top), ...first.draw(left, top)];
  return [{ ...first, draw }, ...rest];
}

const LIST_INDENT_MM = 4;

/** A remark of a list, after its dash. */
export function itemLines(text: string, { width, size }: Setting): readonly Sheeted[] {
  const lines = linesOf(text, { width: width - LIST_INDENT_MM, size });
  return withBeside(
    flowingLines(lines, ABOVE_TEXT_MM, LIST_INDENT_MM),
    part([{ text: "–", size }], ABOVE_TEXT_MM, 0).draw,
  );
}

const TICK_MM = 3.8;
const NUMBER_END_MM = 11;
const STEP_INDENT_MM = 13;
const TIME_MM = 22;
const ABOVE_STEP_MM = 2.2;

const tickBox = (left: number, top: number): Item =>
  stroke("sheet", "01.1", rectanglePath([left + 0.2, top - ABOVE_STEP_MM - TICK_MM], TICK_MM, TICK_MM));

/** Words whose end is given. */
const endingAt = (line: TextLine, right: number): Sheeted["draw"] =>
  part([line], ABOVE_STEP_MM, right - textWidth(line.text, line.size, line.bold)).draw;

/** A step with its box to tick, its number, and its minutes to the right. */
export function stepLines(
  { text, detail, time }: StepItem,
  number: number,
  { width, size }: Setting,
): readonly Sheeted[] {
  const large = size * STEP;
  const room = width - STEP_INDENT_MM - TIME_MM;
  const lines = [...linesOf(text, { width: room, size: large }), ...linesOf(detail, { width: room, size })];
  const said: TextLine = { text: `${number}`, size: large, bold: true };
  const times = linesOf(time, { width: TIME_MM, size: large }).slice(0, 1);
  return withBeside(flowingLines(lines, ABOVE_STEP_MM, STEP_INDENT_MM), (left, top) => [
    tickBox(left, top),
    ...endingAt(said, NUMBER_END_MM)(left, top),
    ...times.flatMap((t) => endingAt(t, width)(left, top)),
  ]);
}

const ABOVE_BLANK_MM = 6;
const BLANK_FROM_MM = 24;
const BLANK_MM = 90;

/** A word and a line to write on. */
export function blankLines(label: string, { width, size }: Setting): readonly Sheeted[] {
  const lines = linesOf(`${label}:`, { width: width / 2, size });
  const words = blockSize(lines);
  const from = Math.max(BLANK_FROM_MM, words.width + 2);
  const to = Math.min(width, from + BLANK_MM);
  return withBeside(kept(flowingLines(lines, ABOVE_BLANK_MM)), (left, top) => {
    const y = top - ABOVE_BLANK_MM - words.height;
    const line = polyline([
      [left + from, y],
      [left + to, y],
    ]);
    return [stroke("sheet", "01.1", line)];
  });
}
