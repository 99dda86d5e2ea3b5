// The sheet of a nested die: two of a piece on one board, and how the second lies.
import type { Die } from "../../die/die.ts";
import type { Nest } from "../../die/nest.ts";
import { priceOf } from "../../die/price.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { rectanglePath } from "../../geometry/path.ts";
import type { Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import type { Item, Picture } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";
import { chordsOfItems } from "../piece/chords.ts";
import { findPlace } from "../piece/find.ts";
import { grownBy, insideOf, overlap, spaceOf } from "../piece/space.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { SQUARE_MM, squareAt } from "../sheet/square.ts";
import { STAMP_SIZES_MM, stampItems, stampSize } from "../sheet/words.ts";
import { textBox } from "../words.ts";
import { boardOf } from "./cutItems.ts";
import type { DieTitle } from "./dieTitle.ts";
import { sayBoth, sayScale } from "./figures.ts";
import { loadWords } from "./pairLoad.ts";
import { movedChords, type PairView, pairView } from "./pairView.ts";
import { SCALE_BAR_MM, scaleBar } from "./scaleBar.ts";
import { BLOCK_MM, blockHeight, titleBlock } from "./titleBlock.ts";
import { titleRows } from "./titleRows.ts";
import { SCALES } from "./viewSheet.ts";
import { BOARD, JOINTS, RUBBER, sayPriceOf, sayRules, sayWhomToAsk } from "./words.ts";

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

/** With what is the same on every paper that is tried. */
type Prepared = PairSheetInput & { readonly load: readonly string[] };

const HEADING_MM = 5;
/** Words keep this far from the stamp, mm. */
const OFF_STAMP_MM = 4;
const ROUND_MM = 2;
/** Where the view is tried within its area, as shares of what is left over: so that the square finds room. */
const PLACES: readonly Point[] = [
  [0.5, 0.5],
  [0.5, 1],
  [0, 1],
  [1, 1],
  [0, 0.5],
  [1, 0.5],
  [1, 0],
  [0, 0],
];

const figure = (mm: number): string => printNumber(mm, 3);

/** What the two are: for the title block and the words. */
export const sayBothSides = ({ second }: Nest): string =>
  second.mirrored ? "one left, one right" : "both alike";

function saySecond({ nest: { second } }: PairSheetInput): string {
  const [x, y] = second.at;
  const over = second.mirrored ? ["turn it over about its x axis (y becomes −y)"] : [];
  const round = second.angle === 0 ? [] : ["turn it by 180° about its datum"];
  const steps = [
    ...over,
    ...round,
    `lay its datum, datum 2, at x ${figure(x)}, y ${figure(y)} mm from datum 1`,
  ];
  return `The second: ${steps.join(", then ")}.`;
}

function wordsFor(input: Prepared, reduced: number): readonly string[] {
  const { die, nest, units, of, file, title } = input;
  const price = sayPriceOf(die, priceOf(die.rules, die.settings, 2));
  const whom = sayWhomToAsk(title);
  const margin = die.settings.boardMargin.value;
  const { minX, minY, maxX, maxY } = boardOf(nest, margin);
  return [
    ...(title.instead
      ? [`Make 1 of this board instead of single dies: drawing ${of} defines the outline.`]
      : []),
    `2 pieces on one board: ${sayBothSides(nest)}. Each is as the drawing ${of} says; this sheet says how they lie. Seen on the grain side. The datums are the circles with black quarters.`,
    "The first lies as in its drawing.",
    saySecond(input),
    `Cutting edges are ${sayBoth(nest.gap, units)} apart or more. Board ${sayBoth(maxX - minX, units)} × ${sayBoth(maxY - minY, units)}, ${sayBoth(margin, units)} beyond the outermost edges.`,
    `Rule in all: ${sayRules(die, units, 2)}. Tubes, slots and tolerance as in that drawing.`,
    ...(price === undefined ? [] : [`Estimated price of the board: ${price}`]),
    `Board: ${BOARD}. Rubber: ${RUBBER}. ${JOINTS}`,
    ...(whom === undefined ? [] : [whom]),
    ...input.load,
    `True lines: ${file}.${reduced === 1 ? "" : " This view is reduced: do not measure it."}`,
  ];
}

type Paper = { readonly width: number; readonly height: number; readonly frame: Box };

/** Heading, bar and words at the top of the sheet; `low` is where they end. */
type Head = { readonly items: readonly Item[]; readonly box: Box };

function headOf(input: Prepared, { frame }: Paper, reduced: number): Head {
  const stampWidth =
    input.stamp === undefined ? 0 : stampSize(input.stamp, STAMP_SIZES_MM[0]).width + OFF_STAMP_MM;
  const wide = frame.maxX - frame.minX - 2 * ROUND_MM - stampWidth;
  const [minX, maxY] = [frame.minX + ROUND_MM, frame.maxY - ROUND_MM];
  const scale = paragraph(`Scale ${sayScale(reduced)}`, HEADING_MM, wide, true);
  const words: Block = wordsFor(input, reduced).flatMap((text) => paragraph(text, PLAIN_MM, wide));
  const [high, low] = [blockSize(scale), blockSize(words)];
  const bar = reduced === 1 ? 0 : SCALE_BAR_MM;
  const below = maxY - high.height;
  const minY = below - bar - low.height;
  return {
    items: [
      ...blockWords(scale, { minX, maxX: minX + high.width, minY: below, maxY }),
      ...(bar > 0 ? scaleBar(minX, below, reduced) : []),
      ...blockWords(words, { minX, maxX: minX + low.width, minY, maxY: below - bar }),
    ],
    // A stamp at the upper right is its own; what lies under it is free for nothing.
    box: { minX, maxX: frame.maxX, minY, maxY: frame.maxY },
  };
}

const moved = (box: Box, [x, y]: Point): Box => ({
  minX: box.minX + x,
  minY: box.minY + y,
  maxX: box.maxX + x,
  maxY: box.maxY + y,
});

/** Room for the 50 mm square off the pieces, off the board if it can be; undefined when there is none. */
function squarePlace(view: PairView, at: Point, { frame }: Paper, others: readonly Box[]): Box | undefined {
  const words = view.items.flatMap((i) => (i.kind === "words" ? [moved(textBox(i), at)] : []));
  const space = spaceOf(movedChords(chordsOfItems(view.items), at), [...words, ...others]);
  const inside = insideOf(movedChords(view.outlines, at));
  const board = moved(view.board, at);
  const place = (off: boolean): Box | undefined =>
    findPlace(space, {
      width: SQUARE_MM,
      height: SQUARE_MM,
      areas: [grownBy(frame, -ROUND_MM)],
      near: [frame.minX, frame.minY],
      clear: ROUND_MM,
      accept: (b) => !inside(b) && !(off && overlap(b, board)),
    });
  return place(true) ?? place(false);
}

/** The view, and at true scale the square, between the head and the title block; undefined without room. */
function bodyOf(
  view: PairView,
  paper: Paper,
  head: Box,
  block: Box,
  whole: boolean,
): readonly Item[] | undefined {
  const { frame } = paper;
  const low = block.maxY + ROUND_MM;
  const spare: Point = [
    frame.maxX - frame.minX - (view.box.maxX - view.box.minX) - 2 * ROUND_MM,
    head.minY - ROUND_MM - low - (view.box.maxY - view.box.minY),
  ];
  if (spare[0] < 0 || spare[1] < 0) return undefined;
  for (const [u, v] of PLACES) {
    const at: Point = [
      frame.minX + ROUND_MM - view.box.minX + spare[0] * u,
      low - view.box.minY + spare[1] * v,
    ];
    const group: Item = { kind: "group", id: "view", placement: { at, angle: 0 }, items: view.items };
    if (!whole) return [group];
    const square = squarePlace(view, at, paper, [head, block]);
    if (square) return [group, ...squareAt([square.minX, square.minY], { x: 1, y: 1 })];
  }
  return undefined;
}

type Sheet = { readonly paper: Paper; readonly reduced: number };

/** The sheet on one paper at one scale; undefined when it has no room. With `force` the view is there all the same. */
function onPaper(
  input: Prepared,
  view: PairView,
  { paper, reduced }: Sheet,
  force: boolean,
): Picture | undefined {
  const { width, height, frame } = paper;
  const title = { ...input.title, side: sayBothSides(input.nest), hand: "2 on one board" };
  const rows = titleRows({ ...input, title }, { scale: reduced, sheet: 1, of: 1 });
  const wide = Math.min(BLOCK_MM, frame.maxX - frame.minX);
  const block = { ...frame, minX: frame.maxX - wide, maxY: frame.minY + blockHeight(rows, wide) };
  const head = headOf(input, paper, reduced);
  const at: Point = [frame.minX + ROUND_MM - view.box.minX, block.maxY + ROUND_MM - view.box.minY];
  const forced: readonly Item[] = [
    { kind: "group", id: "view", placement: { at, angle: 0 }, items: view.items },
  ];
  const body = bodyOf(view, paper, head.box, block, reduced === 1) ?? (force ? forced : undefined);
  if (!body) return undefined;
  return {
    title: `nested die of ${input.title.piece}`,
    width,
    height,
    items: [
      ...head.items,
      ...body,
      stroke(
        "sheet",
        "01.2",
        rectanglePath([frame.minX, frame.minY], frame.maxX - frame.minX, frame.maxY - frame.minY),
      ),
      ...titleBlock(rows, frame.maxX, frame.minY, wide),
      ...stampItems(input.stamp, { x: frame.maxX - ROUND_MM, y: frame.maxY - ROUND_MM }),
    ],
  };
}

/** Whether the bare board goes on the paper at all: what doesn't is not drawn to see. */
function mayFit({ die, nest }: PairSheetInput, { frame }: Paper, reduced: number): boolean {
  const { minX, minY, maxX, maxY } = boardOf(nest, die.settings.boardMargin.value);
  return (
    (maxX - minX) / reduced <= frame.maxX - frame.minX && (maxY - minY) / reduced <= frame.maxY - frame.minY
  );
}

/**
 * The nested die on one sheet, at the largest standard scale that it has room for: at true scale with the
 * 50 mm square, reduced with a bar of its scale.
 */
export function pairSheet(asked: PairSheetInput): Picture {
  const input: Prepared = { ...asked, load: loadWords(asked) };
  const { sheet, margin } = input;
  const papers = [
    [sheet.width, sheet.height],
    [sheet.height, sheet.width],
  ].map(([width = 0, height = 0]): Paper => {
    const frame = { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin };
    return { width, height, frame };
  });
  for (const reduced of SCALES) {
    const possible = papers.filter((paper) => mayFit(input, paper, reduced));
    if (possible.length === 0) continue;
    const view = pairView(input, 1 / reduced);
    for (const paper of possible) {
      const found = onPaper(input, view, { paper, reduced }, false);
      if (found) return found;
    }
  }
  const reduced = SCALES.at(-1)!;
  return onPaper(input, pairView(input, 1 / reduced), { paper: papers[0]!, reduced }, true)!;
}
