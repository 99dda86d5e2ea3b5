import type { Point } from "../../geometry/path.ts";
import { barLengths, TRUE_FACTOR } from "../../layout/printer.ts";
import type { Paper } from "../../model/sheet.ts";
import { printNumber } from "../../units/index.ts";
import type { Picture } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { frontFrame, measuringBars } from "./bars.ts";
import { flowInto, heading, step, text } from "./flow.ts";
import { RULERS, rulerAt, rulerSize } from "./ruler.ts";
import { SQUARE_MM, squareAt } from "./square.ts";

// One page by itself, to learn how a printer strays before paper is spent on templates. It is never corrected:
// a correction is always reckoned from what an uncorrected page measures, or a second would undo the first.

const TITLE_MM = 7;
const GAP_MM = 8;
/** Lines of words are no longer than this, mm: longer ones are hard to read. */
const WIDEST_MM = 150;

/** The file that carries the check. */
export const printerCheckFile = (paper: Paper): string =>
  `printer-check-${paper.name.replaceAll(" ", "-")}.pdf`;

const UNCORRECTED = "Always uncorrected: measure this one for --printed.";

function steps(paper: Paper, margin: number, width: number) {
  const { x, y } = barLengths(paper, margin);
  const example = `${printNumber(x - 0.8, 1)}x${printNumber(y - 0.5, 1)}`;
  return [
    text(UNCORRECTED, width, true),
    heading("How to check"),
    ...[
      "Print this page at actual size: no “fit to page”, no scaling.",
      `Measure both bars with a steel rule, from outer edge to outer edge of their end marks. They should measure ${printNumber(x, 1)} mm and ${printNumber(y, 1)} mm.`,
      `When both agree within half a millimetre, the printer is true. When not, give what you measured, the short edge first, as in --printed ${example}; the templates are then drawn to come out true.`,
      "More than 3 % off is no printer's fault: the viewer has scaled the page. Look for its scaling and print again.",
      "The 50 mm square is on every sheet of a template. It shows gross faults only; the bars are the measure.",
    ].map((s, i) => step(i + 1, s, width)),
  ];
}

/** The page for `printer-check-<paper>.pdf`: both bars, the square, a ruler, and what to do with them. */
export function printerCheck(paper: Paper, margin: number): Picture {
  const frame = frontFrame({ paper, margin });
  const scale = TRUE_FACTOR;
  const title = [{ text: `Printer check, ${paper.name} paper`, size: TITLE_MM, bold: true }];
  const head = blockSize(title);
  const column = { ...frame, minX: frame.minX + 4, maxY: frame.maxY - head.height };
  const width = Math.min(WIDEST_MM, column.maxX - column.minX);
  const said = steps(paper, margin, width);
  const height = said.reduce((sum, s) => sum + s.height, 0);
  const square: Point = [column.minX, column.maxY - height - GAP_MM - SQUARE_MM * scale.y];
  const ruler = RULERS.find((r) => rulerSize(r, scale).width <= column.maxX - column.minX) ?? RULERS.at(-1)!;
  const low: Point = [column.minX, square[1] - GAP_MM - rulerSize(ruler, scale).height];
  return {
    title: `printer check, ${paper.name}`,
    width: frame.width,
    height: frame.height,
    items: [
      ...measuringBars({ paper, margin, factor: TRUE_FACTOR }),
      ...blockWords(title, {
        minX: column.minX,
        maxX: column.maxX,
        minY: frame.maxY - head.height,
        maxY: frame.maxY,
      }),
      ...flowInto(said, [column]).items,
      ...squareAt(square, scale),
      ...rulerAt(low, ruler, scale),
    ],
  };
}
