// The reference drawing by which a steel cutting die is ordered.
import type { Die } from "../../die/die.ts";
import { type Box, rectanglePath } from "../../geometry/path.ts";
import type { Finding } from "../../model/finding.ts";
import type { Units } from "../../model/say.ts";
import type { Item, Picture } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { heading } from "../sheet/flow.ts";
import { STAMP_SIZES_MM, stampItems, stampSize } from "../sheet/words.ts";
import { dieText } from "./dieText.ts";
import type { DieTitle } from "./dieTitle.ts";
import { overSheets, type Sheeted } from "./sheeted.ts";
import { isLong, trueStretches } from "./stretches.ts";
import { BLOCK_MM, blockHeight, titleBlock } from "./titleBlock.ts";
import { titleRows } from "./titleRows.ts";
import { type Paper, viewSheet } from "./viewSheet.ts";
import { sayDefinesOnly } from "./words.ts";

export type { DieTitle } from "./dieTitle.ts";

export type DieDrawingInput = {
  readonly die: Die;
  /** The paper as it is printed, mm; also used turned by a quarter. */
  readonly sheet: { readonly width: number; readonly height: number };
  /** mm round the frame that a printer can't reach. */
  readonly margin: number;
  readonly units: Units;
  readonly title: DieTitle;
  readonly findings: readonly Finding[];
};

const STAMP = "has errors";
/** Between the frame and what flows, and between two columns, mm. */
const PADDING_MM = 2;
const GAP_MM = 7;
/** Columns of text and tables are this wide, if the paper is, mm. */
const COLUMN_MM = { least: 165, most: 200 } as const;
/** The longest words of the title block's own: a scale and a number of sheets. */
const WIDEST_SCALE = 100;
const MANY = 99;
const WHOLE_MM = Number.POSITIVE_INFINITY;

/** A title block is as wide as it should be, where the paper is. */
const blockWidth = (width: number, margin: number): number => Math.min(BLOCK_MM, width - 2 * margin);

function paperOf(width: number, height: number, margin: number, block: number): Paper {
  const frame = { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin };
  const left = frame.maxX - blockWidth(width, margin);
  return { width, height, frame, block: { ...frame, minX: left, maxY: margin + block } };
}

type Columns = {
  /** No wider than this. */
  readonly most: number;
  /** What is kept free at the top, for a stamp. */
  readonly top: number;
};

function columnsOf({ frame, block }: Paper, { most, top }: Columns): readonly Box[] {
  const box = {
    minX: frame.minX + PADDING_MM,
    maxX: frame.maxX - PADDING_MM,
    minY: block.maxY + PADDING_MM,
    maxY: frame.maxY - PADDING_MM - top,
  };
  const whole = box.maxX - box.minX;
  const count =
    most === WHOLE_MM ? 1 : Math.max(1, Math.floor((whole + GAP_MM) / (COLUMN_MM.least + GAP_MM)));
  const width = Math.min(most, (whole - (count - 1) * GAP_MM) / count);
  return Array.from({ length: count }, (_, i) => {
    const minX = box.minX + i * (width + GAP_MM);
    return { ...box, minX, maxX: minX + width };
  });
}

/** Papers upright and turned of sheets that show the piece, and the paper of sheets of words. */
type Papers = { readonly views: readonly [Paper, Paper]; readonly words: Paper };

function papersFor(input: DieDrawingInput): Papers {
  const { sheet, margin } = input;
  const on = (width: number, height: number, brief: boolean): Paper => {
    const rows = titleRows(input, { scale: WIDEST_SCALE, sheet: MANY, of: MANY, brief });
    return paperOf(width, height, margin, blockHeight(rows, blockWidth(width, margin)));
  };
  return {
    views: [on(sheet.width, sheet.height, false), on(sheet.height, sheet.width, false)],
    words: on(sheet.width, sheet.height, true),
  };
}

type Body = { readonly paper: Paper; readonly scale: number | undefined; readonly items: readonly Item[] };

/** Blocks over as many sheets of a paper as they need; set tight where that takes fewer. */
function flowed(
  all: (width: number, tight: boolean) => readonly Sheeted[],
  { paper, scale }: Pick<Body, "paper" | "scale">,
  asked: Columns,
): readonly Body[] {
  const columns = columnsOf(paper, asked);
  const width = columns[0]!.maxX - columns[0]!.minX;
  const [usual, tight] = [false, true].map((how) => overSheets(all(width, how), () => columns));
  const sheets = tight!.length < usual!.length ? tight! : usual!;
  return sheets.map((items) => ({ paper, scale, items }));
}

/** What stands on the sheets: the view, its stretches at true scale, the words and tables. */
function bodiesOf(input: DieDrawingInput, { views: papers, words }: Papers, stamp?: string): readonly Body[] {
  const { die, units } = input;
  const size = stamp === undefined ? { width: 0, height: 0 } : stampSize(stamp, STAMP_SIZES_MM[0]);
  const first = sayDefinesOnly(input.title);
  const stamped = size.width === 0 ? 0 : size.width + PADDING_MM;
  const view = viewSheet({ die, units, papers, stamp: stamped, ...(first ? { first } : {}) });
  const stretches = (width: number): readonly Sheeted[] => [
    heading("Scale 1 : 1, in stretches from left to right, seen on the grain side"),
    { height: 4, keep: true, draw: () => [] },
    ...trueStretches(die, width, units),
  ];
  const top = size.height;
  const long = view.reduced > 1 && isLong(die);
  return [
    { paper: view.paper, scale: view.reduced, items: view.items },
    ...(long ? flowed(stretches, { paper: view.paper, scale: 1 }, { most: WHOLE_MM, top }) : []),
    ...flowed(
      (width, tight) => dieText(input, view.reduced, width, tight),
      { paper: words, scale: undefined },
      { most: COLUMN_MM.most, top },
    ),
  ];
}

/** The reference drawing of a die: the view first, then what it is defined by; one picture a sheet. */
export function dieDrawing(input: DieDrawingInput): readonly Picture[] {
  const { title, findings } = input;
  const stamp = findings.some(({ severity }) => severity === "error") ? STAMP : undefined;
  const bodies = bodiesOf(input, papersFor(input), stamp);
  return bodies.map(({ paper, scale, items }, i): Picture => {
    const { minX, minY, maxX, maxY } = paper.frame;
    const rows = titleRows(input, { scale, sheet: i + 1, of: bodies.length, brief: scale === undefined });
    return {
      title: `die of ${title.piece}, sheet ${i + 1} of ${bodies.length}`,
      width: paper.width,
      height: paper.height,
      items: [
        ...items,
        stroke("sheet", "01.2", rectanglePath([minX, minY], maxX - minX, maxY - minY)),
        ...titleBlock(rows, maxX, minY, paper.block.maxX - paper.block.minX),
        ...stampItems(stamp, { x: maxX - PADDING_MM, y: maxY - PADDING_MM }),
      ],
    };
  });
}
