// A long narrow piece that no sheet holds at true scale is shown again at true scale in stretches, row by row:
// each row goes on past the line where it joins the next one, and has a ruler that counts from the datum.
import type { Die } from "../../die/die.ts";
import { holeTable } from "../../die/holeTable.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { polyline } from "../../geometry/path.ts";
import type { Units } from "../../model/say.ts";
import type { Group, Item, Stroke } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { text } from "../sheet/flow.ts";
import { SQUARE_MM, squareAt } from "../sheet/square.ts";
import { textBox } from "../words.ts";
import { bothUnits, sayLetters } from "./figures.ts";
import { BEND_MM, ordinateItems, type Row } from "./ordinates.ts";
import { outlineBox, partStrokes } from "./partLines.ts";
import type { Sheeted } from "./sheeted.ts";
import { boxWithin, type Stretch, stretchesOf } from "./stretchPlan.ts";
import { BLOCK_MM, blockHeight } from "./titleBlock.ts";
import { titleRows } from "./titleRows.ts";
import { RULER_MM, xRulerItems } from "./xRuler.ts";

/** A piece wider than this is better looked at on the true-scale template, mm. */
const WIDEST_MM = 70;
/** Round the outline within a row, mm: what the centre line needs. */
const ROUND_MM = 5;
/** Labels of holes may be moved aside past a row's ends, mm. */
const ASIDE_MM = 5;
const BETWEEN_ROWS_MM = 4;
/** How far the piece is drawn past a line where two rows join, mm. */
export const OVERLAP_MM = 8;
/** From what is drawn of the piece to the column's side, for a figure of the ruler, mm. */
const SIDE_MM = 4;
/** Between the words under a row and its ruler, mm. */
const ABOVE_RULER_MM = 0.6;
/** Round the square, mm. */
const CLEAR_MM = 2;
/** Size of the zigzag where the piece goes on (ISO 128-2: break line, from memory), mm. */
const ZIGZAG_MM = 1.2;

/** Where the row's drawing of the piece ends. */
function breakLine(x: number, { minY, maxY }: Box): Stroke {
  const middle = (minY + maxY) / 2;
  const way: readonly Point[] = [
    [x, minY - ROUND_MM / 2],
    [x, middle - ZIGZAG_MM],
    [x - ZIGZAG_MM, middle - ZIGZAG_MM / 2],
    [x + ZIGZAG_MM, middle + ZIGZAG_MM / 2],
    [x, middle + ZIGZAG_MM],
    [x, maxY + ROUND_MM / 2],
  ];
  return stroke("mark", "01.1", polyline(way));
}

const sayJoin = (letter: string): string => `${letter}–${letter}`;

function rowOf(die: Die, box: Box, { from, to }: Stretch): Row {
  const rows = holeTable(die.features).filter(({ x }) => x >= from && x < to);
  const xs = [...new Set(rows.map(({ x }) => x))];
  return {
    along: "x",
    bare: true,
    line: box.maxY + ROUND_MM,
    labelsFrom: box.maxY + ROUND_MM + BEND_MM,
    ordinates: xs.map((x) => ({
      at: x,
      text: sayLetters(rows.filter((r) => r.x === x).map(({ letter }) => letter)),
      from: Math.min(...rows.filter((r) => r.x === x).map(({ y }) => y)),
    })),
  };
}

/** The row's letters along it, turned where there are many, or none where even so they pass its ends. */
function labelsOf(die: Die, box: Box, stretch: Stretch): readonly Item[] {
  const row = rowOf(die, box, stretch);
  const fits = (items: readonly Item[]): boolean =>
    items.every((item) => {
      if (item.kind !== "words") return true;
      const { minX, maxX } = textBox(item);
      return minX >= stretch.from - ASIDE_MM && maxX <= stretch.to + ASIDE_MM;
    });
  return [row, { ...row, turned: true }].map(ordinateItems).find(fits) ?? [];
}

/** What of x a row draws: its own stretch, and past the lines where it joins others. */
const shownOf = ({ from, to, before, after }: Stretch): { readonly from: number; readonly to: number } => ({
  from: before === undefined ? from : from - OVERLAP_MM,
  to: after === undefined ? to : to + OVERLAP_MM,
});

/** The lines where rows join, each with its letters below. */
function joinItems({ from, to, before, after }: Stretch, { minY, maxY }: Box, foot: number): readonly Item[] {
  const join = (x: number, letter: string): readonly Item[] => {
    const block = [{ text: sayJoin(letter), size: PLAIN_MM, bold: true }];
    const { width, height } = blockSize(block);
    const words = { minX: x - width / 2, maxX: x + width / 2, minY: foot, maxY: foot + height };
    const line = polyline([
      [x, minY - ROUND_MM],
      [x, maxY + ROUND_MM / 2],
    ]);
    return [stroke("mark", "01.1", line, `join.${letter}`), ...blockWords(block, words)];
  };
  return [
    ...(before === undefined ? [] : join(from, before)),
    ...(after === undefined ? [] : join(to, after)),
  ];
}

/** Which stretch it is, between the letters of its lines, `foot` being the words' lower edge. */
function captionOf({ from, to, before }: Stretch, units: Units, foot: number): readonly Item[] {
  const says = `x from ${bothUnits(from, units)} to ${bothUnits(to, units)}; the ruler is x in mm`;
  const block = [{ text: says, size: PLAIN_MM }];
  const { width, height } = blockSize(block);
  const minX = before === undefined ? from : from + OVERLAP_MM;
  return blockWords(block, { minX, maxX: minX + width, minY: foot, maxY: foot + height });
}

/** The piece itself within a row: as much of it as the row shows. */
function partOf(die: Die, stretch: Stretch, box: Box, at: Point): Group {
  const { from, to } = shownOf(stretch);
  const clip = {
    minX: from - (stretch.before === undefined ? ROUND_MM : 0),
    maxX: to + (stretch.after === undefined ? ROUND_MM : 0),
    minY: box.minY - ROUND_MM,
    maxY: box.maxY + ROUND_MM,
  };
  const id = `from-${Math.round(stretch.from)}`;
  return { kind: "group", id, placement: { at, angle: 0 }, clip, items: partStrokes(die, 1) };
}

/** One stretch as a block that flows, what it shows beginning a little right of the block's left end. */
function stretchBlock(die: Die, stretch: Stretch, units: Units): Sheeted {
  const shown = shownOf(stretch);
  const box = boxWithin(die, shown.from, shown.to);
  const labels = labelsOf(die, box, stretch);
  const tops = labels.flatMap((i) => (i.kind === "words" ? [textBox(i).maxY] : []));
  const top = Math.max(box.maxY + ROUND_MM, ...tops);
  const words = box.minY - ROUND_MM - blockSize([{ text: sayJoin("A"), size: PLAIN_MM }]).height;
  const line = words - ABOVE_RULER_MM;
  const items: readonly Item[] = [
    ...labels,
    ...joinItems(stretch, box, words),
    ...(stretch.before === undefined ? [] : [breakLine(shown.from, box)]),
    ...(stretch.after === undefined ? [] : [breakLine(shown.to, box)]),
    ...captionOf(stretch, units, words),
    ...xRulerItems({ ...shown, line }),
  ];
  return {
    height: top - line + RULER_MM + BETWEEN_ROWS_MM,
    draw: (left, above) => {
      const at: Point = [left + SIDE_MM - shown.from, above - top];
      return [partOf(die, stretch, box, at), { kind: "group", placement: { at, angle: 0 }, items }];
    },
  };
}

/** Names without letters: the block's height hangs on none of them. */
const NO_TITLE = {
  owner: "",
  article: "",
  forWhom: "",
  piece: "",
  number: "",
  revision: "",
  date: "",
  side: "",
  hand: "",
};

/** The 50 mm square at the foot of each sheet: left of the title block where there is room, else above it. */
function squareFoot(die: Die, width: number, units: Units): NonNullable<Sheeted["foot"]> {
  const beside = width - BLOCK_MM >= SQUARE_MM + CLEAR_MM;
  const block = blockHeight(titleRows({ die, units, title: NO_TITLE }, { scale: 1, sheet: 1, of: 1 }));
  const sunk = beside ? Math.min(block, SQUARE_MM) : 0;
  return {
    height: SQUARE_MM + CLEAR_MM - sunk,
    draw: (left, top) => squareAt([left, top - CLEAR_MM - SQUARE_MM], { x: 1, y: 1 }),
  };
}

/** Whether a piece is shown in stretches when its view is reduced. */
export function isLong(die: Die): boolean {
  const { minX, maxX, minY, maxY } = outlineBox(die, 1);
  return maxY - minY <= WIDEST_MM && maxX - minX > maxY - minY;
}

/** The stretches of a piece at true scale, for a column of this width; each sheet has the 50 mm square. */
export function trueStretches(die: Die, width: number, units: Units): readonly Sheeted[] {
  const stretches = stretchesOf(die, width - 2 * (SIDE_MM + OVERLAP_MM));
  const foot = squareFoot(die, width, units);
  const [first] = stretches;
  const how =
    first?.after === undefined
      ? []
      : [
          {
            ...text(
              `Each row goes on ${OVERLAP_MM} mm past the line where it joins the next: lay ${sayJoin(first.after)} on ${sayJoin(first.after)}, and so on. Measure the 50 mm square before use.`,
              width,
            ),
            keep: true,
          },
          { height: 2, keep: true, draw: () => [] },
        ];
  return [...how, ...stretches.map((stretch) => ({ ...stretchBlock(die, stretch, units), foot }))];
}
