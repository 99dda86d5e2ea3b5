// The measuring sheet: one page to take along, with a pencil and a tape.
import type { Point } from "../../geometry/path.ts";
import type { Item, Picture } from "../picture.ts";
import { bagDrawing } from "./bagDrawing.ts";
import { type Block, boxStroke, rule, stacked, textBlock } from "./block.ts";
import { drawingItems, type MeasureDrawing, type Question } from "./drawing.ts";
import { headDrawing } from "./headDrawing.ts";
import { heading } from "./heading.ts";
import { measureTable } from "./measureTable.ts";
import { questionRow } from "./questionRow.ts";
import { SIDE_WIDTH_MM, sideColumn, sideHeight } from "./sideColumn.ts";
import { strapDrawing } from "./strapDrawing.ts";

/** What is measured for an article, as its definition says it. */
export type Measured = {
  readonly name: string;
  readonly means: string;
  readonly measuring: readonly { readonly measure: string; readonly how: string }[];
};

export type PaperSize = { readonly width: number; readonly height: number };

/** The drawings, by the name of the article. */
const DRAWINGS: ReadonlyMap<string, MeasureDrawing> = new Map([
  ["one-ear headstall", headDrawing],
  ["strap", strapDrawing],
  ["bag", bagDrawing],
]);

/** Where there is no drawing: what the boxes are for, and what to know. */
const PLAIN_BOXES = ["1st", "2nd", "other side"];
const PLAIN_NOTES = [
  "Tape snug, not pulled in.",
  "All twice, and on both sides where there are two.",
  "Write what you read.",
];

/** Free edge: 10 mm, and half of a thick line. */
const MARGIN_MM = 10.25;
const GAP_MM = 4;
/** On narrower paper too little room is left for words beside the boxes. */
const LEAST_WIDTH_MM = 200;
/** The sheet grows no further than this; on a roll the rest of the paper isn't used. */
const MOST_WIDTH_MM = 300;
const MOST_HEIGHT_MM = 450;
/** Smaller than this share of its size, a drawing is too small for the words in it; larger looks coarse. */
const LEAST_SCALE = 0.95;
const MOST_SCALE = 1.6;
/** Two lines of handwriting, or a small sketch. */
const LEAST_REMARKS_MM = 18;

/** What of a sheet is known once its width is: blocks, and the room for the drawing. */
type Parts = {
  readonly drawing: MeasureDrawing | undefined;
  readonly notes: readonly string[];
  readonly heading: Block;
  readonly table: Block;
  readonly width: number;
  readonly drawingWidth: number;
  /** The drawing's part of the page: least height and the height it would like. */
  readonly least: number;
  readonly liked: number;
  /** Everything but drawing and remarks. */
  readonly fixed: number;
};

/** What is measured, less what the drawing asks in words instead. */
const measured = ({ name, measuring }: Measured): Measured["measuring"] => {
  const asked = DRAWINGS.get(name)?.questions ?? [];
  return measuring.filter(({ measure }) => !asked.some((q) => q.measure === measure));
};

const QUESTION_GAP_MM = 2.4;

/** The questions below the table, each over a rule. */
function questionBlock(questions: readonly Question[], width: number): Block {
  const rows = questions.flatMap((q) => [
    questionRow(q, width),
    { height: 0.01, items: (corner: Point) => [rule(corner, width)] },
  ]);
  return stacked(rows, QUESTION_GAP_MM);
}

function partsOf(article: Measured, paperWidth: number): Parts {
  const { name, means } = article;
  const measuring = measured(article);
  const width = Math.min(paperWidth, MOST_WIDTH_MM) - 2 * MARGIN_MM;
  const drawing = DRAWINGS.get(name);
  const notes = drawing?.notes ?? PLAIN_NOTES;
  const rows = measuring.map(({ measure, how }) => {
    const ask = drawing?.asks[measure];
    return { measure, how, ...(ask ? { ask } : {}) };
  });
  const head = heading(name, means, width);
  const table = stacked(
    [
      measureTable(rows, drawing?.boxes ?? PLAIN_BOXES, width),
      questionBlock(drawing?.questions ?? [], width),
    ],
    QUESTION_GAP_MM,
  );
  const drawingWidth = width - SIDE_WIDTH_MM - GAP_MM;
  const [size, fits] = [drawing?.height ?? 0, drawingWidth / (drawing?.width ?? drawingWidth)];
  const least = Math.max(sideHeight(notes), LEAST_SCALE * size);
  const liked = Math.max(least, Math.min(MOST_SCALE, fits) * size);
  const fixed = 2 * MARGIN_MM + head.height + table.height + 3 * GAP_MM;
  return { drawing, notes, heading: head, table, width, drawingWidth, least, liked, fixed };
}

/** The least paper, mm, that holds an article's sheet: the least width, and the least height at this width. */
export function leastPaper(article: Measured, width: number): PaperSize {
  const { fixed, least } = partsOf(article, Math.max(width, LEAST_WIDTH_MM));
  return { width: LEAST_WIDTH_MM, height: fixed + least + LEAST_REMARKS_MM };
}

function writingFrame(title: string, corner: Point, width: number, height: number): readonly Item[] {
  const text = textBlock(title, { size: 3.4, width: width - 6 });
  return [boxStroke(corner, width, height), ...text.items([corner[0] + 3, corner[1] - 1.6])];
}

/** The drawing in the middle of its room; without one, a frame to sketch in. */
function drawingPart(
  { drawing, drawingWidth: width }: Parts,
  measures: readonly string[],
  [x, y]: Point,
  height: number,
): readonly Item[] {
  if (!drawing) return writingFrame("Sketch what you measure, with its number", [x, y], width, height);
  const scale = Math.min(width / drawing.width, height / drawing.height, MOST_SCALE);
  const [spareX, spareY] = [width - scale * drawing.width, height - scale * drawing.height];
  return drawingItems(drawing, measures, { corner: [x + spareX / 2, y - height + spareY / 2], scale });
}

/** Drawing and remarks share what is left over, until the drawing is as large as it likes. */
const middleHeight = ({ fixed, least, liked }: Parts, height: number): number =>
  Math.min(liked, least + (height - fixed - least - LEAST_REMARKS_MM) / 2);

/** Everything on the sheet, from the top of the page down. */
function sheetItems(parts: Parts, measures: readonly string[], height: number): readonly Item[] {
  const { width, drawingWidth, notes, heading: head, table } = parts;
  const middle = middleHeight(parts, height);
  const left = MARGIN_MM;
  const headTop = height - MARGIN_MM;
  const middleTop = headTop - head.height - GAP_MM;
  const tableTop = middleTop - middle - GAP_MM;
  const remarksTop = tableTop - table.height - GAP_MM;
  return [
    ...head.items([left, headTop]),
    ...drawingPart(parts, measures, [left, middleTop], middle),
    ...sideColumn(notes, middle).items([left + drawingWidth + GAP_MM, middleTop]),
    ...table.items([left, tableTop]),
    ...writingFrame("Remarks and sketches", [left, remarksTop], width, remarksTop - MARGIN_MM),
  ];
}

/**
 * The one-page measuring sheet of an article, for a paper of this size in mm. The drawing is found by the
 * article's name and its arrows by the measures' names; without a drawing there are words and boxes alone.
 * A roll's page ends where the sheet ends. Throws a RangeError when the paper is smaller than `leastPaper`
 * says: ask that first.
 */
export function measuringSheet(article: Measured, paper: PaperSize): Picture {
  const least = leastPaper(article, paper.width);
  if (paper.width < least.width || paper.height < least.height)
    throw new RangeError(
      `measuringSheet: needs ${least.width} × ${least.height} mm, not ${paper.width} × ${paper.height}`,
    );
  const height = Math.min(paper.height, Math.max(MOST_HEIGHT_MM, least.height));
  const measures = measured(article).map(({ measure }) => measure);
  return {
    title: `Measuring sheet: ${article.name}`,
    width: paper.width,
    height,
    items: sheetItems(partsOf(article, paper.width), measures, height),
  };
}
