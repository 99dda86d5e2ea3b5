// The sheet of a nested die: two of a piece on one board, and how the second lies.
import type { Die } from "../../die/die.ts";
import type { Nest } from "../../die/nest.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { polyline, rectanglePath } from "../../geometry/path.ts";
import { placed } from "../../geometry/transform.ts";
import { scaled } from "../../geometry/vector.ts";
import type { Units } from "../../model/say.ts";
import { sayForce } from "../../trade/force.ts";
import { printNumber } from "../../units/index.ts";
import type { Item, Picture, Stroke } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { STAMP_SIZES_MM, stampItems, stampSize } from "../sheet/words.ts";
import { boardOf } from "./cutItems.ts";
import { auxiliary, sayBoth, sayScale } from "./figures.ts";
import { OVERALL_MM, overallItems } from "./overall.ts";
import { partStrokes } from "./partLines.ts";
import { BLOCK_MM, blockHeight, titleBlock } from "./titleBlock.ts";
import { type DieTitle, titleRows } from "./titleRows.ts";
import { boxOfItems } from "./view.ts";
import { SCALES } from "./viewSheet.ts";

export type PairSheetInput = {
  readonly die: Die;
  readonly nest: Nest;
  /** The paper as it is printed, mm; also used turned by a quarter. */
  readonly sheet: { readonly width: number; readonly height: number };
  readonly margin: number;
  readonly units: Units;
  readonly title: DieTitle;
  /** Number of the drawing that defines each of the two. */
  readonly of: string;
  /** Name of the file with the true lines. */
  readonly file: string;
  readonly stamp?: string;
};

const HEADING_MM = 5;
const ROUND_MM = 2;
/** Half of the cross at a piece's datum, mm. */
const CROSS_MM = 3;

const figure = (mm: number): string => printNumber(mm, 3);

function saySecond({ nest: { second } }: PairSheetInput): string {
  const [x, y] = second.at;
  const over = second.mirrored ? ["turn it over about its x axis (y becomes −y)"] : [];
  const round = second.angle === 0 ? [] : ["turn it by 180° about its datum"];
  const steps = [
    ...over,
    ...round,
    `lay its datum at x ${figure(x)}, y ${figure(y)} mm from the first one's`,
  ];
  return `The second: ${steps.join(", then ")}.`;
}

function wordsFor(input: PairSheetInput, reduced: number): readonly string[] {
  const { die, nest, units, of, file } = input;
  const { minX, minY, maxX, maxY } = boardOf(nest, die.settings.boardMargin.value);
  const margin = die.settings.boardMargin.value;
  return [
    `Two of ${of} on one board, ${nest.second.mirrored ? "a left and a right" : "both alike"}. That drawing says what each is; here stands how they lie. Seen on the grain side; the crosses are the datums.`,
    "The first lies as in its drawing.",
    saySecond(input),
    `Cutting edges are ${sayBoth(nest.gap, units)} apart or more. Board ${sayBoth(maxX - minX, units)} × ${sayBoth(maxY - minY, units)}, ${sayBoth(margin, units)} beyond the outermost edges.`,
    `Press load of both together at least ${sayForce(2 * die.load.value, "kN")} (${sayForce(2 * die.load.value, "US short ton")}), an estimate: twice one die; rules that stand close together add to it.`,
    ...sayPress(die),
    `True lines: ${file}.${reduced === 1 ? "" : " Do not measure this view."}`,
  ];
}

/** Whether the press that the order names takes two at once. */
function sayPress({ press, load }: Die): readonly string[] {
  if (!press) return [];
  const has = sayForce(press.rating.newtons, press.rating.unit);
  return 2 * load.value > press.rating.newtons
    ? [`TOO MUCH for the press of the order, which is rated for ${has}: don't make this one for it.`]
    : [`The press of the order is rated for ${has}.`];
}

function crossAt([x, y]: Point): readonly Stroke[] {
  const arm = (dx: number, dy: number): Stroke =>
    stroke(
      "mark",
      "01.1",
      polyline([
        [x - dx, y - dy],
        [x + dx, y + dy],
      ]),
    );
  return [arm(CROSS_MM, 0), arm(0, CROSS_MM)];
}

function view({ die, nest, units }: PairSheetInput, k: number): readonly Item[] {
  const board = boardOf(nest, die.settings.boardMargin.value);
  const [length, width] = [board.maxX - board.minX, board.maxY - board.minY];
  const box: Box = {
    minX: board.minX * k,
    minY: board.minY * k,
    maxX: board.maxX * k,
    maxY: board.maxY * k,
  };
  const at = scaled(nest.second.at, k);
  const both = partStrokes({ ...die, features: [] }, k);
  const second = both.map(({ id, ...line }): Stroke => {
    const path = placed(line.path, { ...nest.second, at });
    return { ...line, path, ...(id === undefined ? {} : { id: `second.${id}` }) };
  });
  return [
    stroke("sheet", "01.1", rectanglePath([box.minX, box.minY], length * k, width * k), "board"),
    ...overallItems(
      box,
      { length: auxiliary(length, units), width: auxiliary(width, units) },
      box.minY - OVERALL_MM,
    ),
    ...both,
    ...second,
    ...crossAt([0, 0]),
    ...crossAt(at),
  ];
}

type Paper = { readonly width: number; readonly height: number; readonly frame: Box };

function onPaper(
  input: PairSheetInput,
  { width, height, frame }: Paper,
  reduced: number,
  force: boolean,
): Picture | undefined {
  const rows = titleRows(input, { scale: reduced, sheet: 1, of: 1 });
  const block = Math.min(BLOCK_MM, frame.maxX - frame.minX);
  const stampWidth = input.stamp === undefined ? 0 : stampSize(input.stamp, STAMP_SIZES_MM[0]).width;
  const wide = frame.maxX - frame.minX - 2 * ROUND_MM - stampWidth;
  const head: Block = [
    ...paragraph(`Scale ${sayScale(reduced)}`, HEADING_MM, wide, true),
    ...wordsFor(input, reduced).flatMap((text) => paragraph(text, PLAIN_MM, wide)),
  ];
  const size = blockSize(head);
  const [left, top] = [frame.minX + ROUND_MM, frame.maxY - ROUND_MM];
  const headBox = { minX: left, maxX: left + size.width, minY: top - size.height, maxY: top };
  const items = view(input, 1 / reduced);
  const box = boxOfItems(items);
  const low = frame.minY + blockHeight(rows) + ROUND_MM;
  const spare: Point = [
    frame.maxX - frame.minX - (box.maxX - box.minX),
    headBox.minY - ROUND_MM - low - (box.maxY - box.minY),
  ];
  if (!force && (spare[0] < 2 * ROUND_MM || spare[1] < 0)) return undefined;
  const at: Point = [frame.minX - box.minX + spare[0] / 2, low - box.minY + spare[1] / 2];
  return {
    title: `nested die of ${input.title.piece}`,
    width,
    height,
    items: [
      ...blockWords(head, headBox),
      { kind: "group", id: "view", placement: { at, angle: 0 }, items },
      stroke(
        "sheet",
        "01.2",
        rectanglePath([frame.minX, frame.minY], frame.maxX - frame.minX, frame.maxY - frame.minY),
      ),
      ...titleBlock(rows, frame.maxX, frame.minY, block),
      ...stampItems(input.stamp, { x: frame.maxX - ROUND_MM, y: frame.maxY - ROUND_MM }),
    ],
  };
}

/** The nested die on one sheet, at the largest standard scale that it has room for. */
export function pairSheet(input: PairSheetInput): Picture {
  const { sheet, margin } = input;
  const papers = [
    [sheet.width, sheet.height],
    [sheet.height, sheet.width],
  ].map(([width = 0, height = 0]): Paper => {
    const frame = { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin };
    return { width, height, frame };
  });
  for (const reduced of SCALES) {
    for (const paper of papers) {
      const found = onPaper(input, paper, reduced, false);
      if (found) return found;
    }
  }
  return onPaper(input, papers[0]!, SCALES.at(-1)!, true)!;
}
