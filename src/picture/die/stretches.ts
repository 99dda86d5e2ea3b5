// A long narrow piece that no sheet holds at true scale is shown again at true scale in stretches, row by row.
import type { Die } from "../../die/die.ts";
import { holeTable } from "../../die/holeTable.ts";
import { type Box, type Point, polyline } from "../../geometry/path.ts";
import type { Units } from "../../model/say.ts";
import type { Item } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { textBox } from "../words.ts";
import { bothUnits, sayLetters } from "./figures.ts";
import { BEND_MM, ordinateItems, type Row } from "./ordinates.ts";
import { outlineBox, partStrokes } from "./partLines.ts";
import type { Sheeted } from "./sheeted.ts";

/** A piece wider than this is better looked at on the true-scale template, mm. */
const WIDEST_MM = 70;
/** Round the outline within a row, mm: what the centre line needs. */
const ROUND_MM = 6;
/** On both sides of a row, for labels that are moved aside, mm. */
const ASIDE_MM = 5;
const BETWEEN_ROWS_MM = 3;
/** Ends that are summed up come out so much off, mm. */
const HAIR_MM = 1e-6;
/** Size of the zigzag where the piece goes on (ISO 128-2: break line, from memory), mm. */
const ZIGZAG_MM = 1.2;

type Stretch = { readonly from: number; readonly to: number };

function stretchesOf({ minX, maxX }: Box, width: number): readonly Stretch[] {
  const count = Math.max(1, Math.ceil((maxX - minX) / width));
  const each = (maxX - minX) / count;
  return Array.from({ length: count }, (_, i) => ({ from: minX + i * each, to: minX + (i + 1) * each }));
}

/** Where the piece is cut between two rows. */
function breakLine(x: number, { minY, maxY }: Box): Item {
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

/** One stretch as a block that flows, its left end under the block's. */
function stretchBlock(die: Die, stretch: Stretch, units: Units): Sheeted {
  const box = outlineBox(die, 1);
  const { from, to } = stretch;
  const labels = labelsOf(die, box, stretch);
  const tops = labels.flatMap((i) => (i.kind === "words" ? [textBox(i).maxY] : []));
  const top = Math.max(box.maxY + ROUND_MM, ...tops);
  const said = [{ text: `x from ${bothUnits(from, units)} to ${bothUnits(to, units)}`, size: PLAIN_MM }];
  const words = blockSize(said);
  const foot = box.minY - ROUND_MM - words.height - BETWEEN_ROWS_MM;
  const ends = [from, to].filter((x) => x > box.minX + HAIR_MM && x < box.maxX - HAIR_MM);
  const clip = {
    minX: from - (from <= box.minX + HAIR_MM ? ROUND_MM : 0),
    maxX: to + (to >= box.maxX - HAIR_MM ? ROUND_MM : 0),
    minY: box.minY - ROUND_MM,
    maxY: box.maxY + ROUND_MM,
  };
  return {
    height: top - foot + BETWEEN_ROWS_MM,
    draw: (left, above) => {
      const at: Point = [left + ASIDE_MM - from, above - top];
      const captionBox = {
        minX: from,
        maxX: from + words.width,
        minY: foot + BETWEEN_ROWS_MM,
        maxY: foot + BETWEEN_ROWS_MM + words.height,
      };
      return [
        {
          kind: "group",
          id: `from-${Math.round(from)}`,
          placement: { at, angle: 0 },
          clip,
          items: partStrokes(die, 1),
        },
        {
          kind: "group",
          placement: { at, angle: 0 },
          items: [...labels, ...ends.map((x) => breakLine(x, box)), ...blockWords(said, captionBox)],
        },
      ];
    },
  };
}

/** Whether a piece is shown in stretches when its view is reduced. */
export function isLong(die: Die): boolean {
  const { minX, maxX, minY, maxY } = outlineBox(die, 1);
  return maxY - minY <= WIDEST_MM && maxX - minX > maxY - minY;
}

/** The stretches of a piece at true scale, for a column of this width. */
export const trueStretches = (die: Die, width: number, units: Units): readonly Sheeted[] =>
  stretchesOf(outlineBox(die, 1), width - 2 * ASIDE_MM).map((stretch) => stretchBlock(die, stretch, units));
