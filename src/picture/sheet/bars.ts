import type { Point } from "../../geometry/path.ts";
import { barLengths, frontPage } from "../../layout/printer.ts";
import type { Layout } from "../../model/sheet.ts";
import { MM_PER_INCH, printNumber } from "../../units/index.ts";
import type { Item } from "../picture.ts";
import { blockBox, blockWords } from "../piece/block.ts";
import { SMALL_MM } from "../piece/title.ts";
import type { Scale } from "./scale.ts";
import { type Area, areasOn } from "./square.ts";

// The measuring bars: one along each paper edge, true from outer edge to outer edge of their end marks.

const LINE_MM = 0.5;
const DIVISION_LINE_MM = 0.25;
/** Heights of the end marks and of the divisions every 10 mm, mm. */
const END_MM = 6;
const DIVISION_MM = 1.8;
/** A bar begins this far from the printable corner, clear of the other bar. */
const START_MM = 7.5;
/** What the bars take of the printable page along its edges, with their words. */
export const BARS_MM = 11;

/** A bar's areas along x from 0, standing on 0; `along` swaps them for a bar that runs up. */
function barAreas(length: number): readonly Area[] {
  const divisions = Array.from(
    { length: length / 10 - 1 },
    (_, i): Area => [
      (i + 1) * 10 - DIVISION_LINE_MM / 2,
      0,
      DIVISION_LINE_MM,
      (i + 1) % 5 === 0 ? DIVISION_MM * 1.6 : DIVISION_MM,
    ],
  );
  return [
    [0, 0, length, LINE_MM],
    [0, 0, LINE_MM, END_MM],
    [length - LINE_MM, 0, LINE_MM, END_MM],
    ...divisions,
  ];
}

const swapped = ([x, y, w, h]: Area): Area => [y, x, h, w];

const sayBar = (length: number): string =>
  `this bar measures ${printNumber(length, 1)} mm (${printNumber(length / MM_PER_INCH, 3)} in) from outer edge to outer edge`;

/** Both bars with their words, along the lower and the left edge of a page with that margin. */
export function measuringBars({
  paper,
  margin,
  factor,
}: Pick<Layout, "paper" | "margin" | "factor">): readonly Item[] {
  const lengths = barLengths(paper, margin);
  const scale: Scale = { x: 1 / factor.x, y: 1 / factor.y };
  const foot: Point = [margin + START_MM, margin];
  const side: Point = [margin, margin + START_MM];
  const below = [{ text: sayBar(lengths.x), size: SMALL_MM }];
  const beside = [{ text: sayBar(lengths.y), size: SMALL_MM }];
  const [a, b] = [blockBox(below, 0), blockBox(beside, 90)];
  const over = DIVISION_MM * 1.6 + 0.6;
  const [x, y] = [
    foot[0] + (lengths.x * scale.x - a.width) / 2,
    side[1] + (lengths.y * scale.y - b.height) / 2,
  ];
  return [
    ...areasOn(barAreas(lengths.x), foot, { x: scale.x, y: 1 }),
    ...areasOn(barAreas(lengths.y).map(swapped), side, { x: 1, y: scale.y }),
    ...blockWords(below, { minX: x, maxX: x + a.width, minY: margin + over, maxY: margin + over + a.height }),
    ...blockWords(
      beside,
      { minX: margin + over, maxX: margin + over + b.width, minY: y, maxY: y + b.height },
      90,
    ),
  ];
}

/** The front page's size and what the bars leave of it. */
export function frontFrame({ paper, margin }: Pick<Layout, "paper" | "margin">): {
  readonly width: number;
  readonly height: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
} {
  const page = frontPage(paper);
  return {
    ...page,
    minX: margin + BARS_MM,
    minY: margin + BARS_MM,
    maxX: page.width - margin,
    maxY: page.height - margin,
  };
}
