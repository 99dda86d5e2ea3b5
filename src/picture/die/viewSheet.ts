// The sheet with the view: as large as a standard scale and the paper let it be, with the 50 mm square.

import type { Die } from "../../die/die.ts";
import type { Box, Point } from "../../geometry/path.ts";
import type { Units } from "../../model/say.ts";
import type { Item } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";
import { chordsOfItems } from "../piece/chords.ts";
import { findPlace } from "../piece/find.ts";
import { type Chord, insideOf, spaceOf } from "../piece/space.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { SQUARE_MM, squareAt } from "../sheet/square.ts";
import { textBox } from "../words.ts";
import { sayScale } from "./figures.ts";
import { outlineBox } from "./partLines.ts";
import { type Lettering, type View, viewOf } from "./view.ts";

/** A sheet's paper and what of it may be drawn on. */
export type Paper = {
  readonly width: number;
  readonly height: number;
  /** Within the frame. */
  readonly frame: Box;
  /** The frame without the title block at its lower right. */
  readonly block: Box;
};

export type ViewSheet = {
  readonly paper: Paper;
  /** How many times smaller than the piece the view is. */
  readonly reduced: number;
  readonly items: readonly Item[];
};

/** True scale, then the reduction scales of ISO 5455 (from memory). */
export const SCALES = [1, 2, 5, 10, 20, 50, 100] as const;
/** True scale is worth more than places that stand in the table; any letters are worth more than scale. */
const TRIED: readonly (readonly [reduced: number, lettering: Lettering])[] = [
  ...SCALES.flatMap((reduced) => (["places", "letters"] as const).map((l) => [reduced, l] as const)),
  ...SCALES.map((reduced) => [reduced, "none"] as const),
];
const HEADING_MM = 5;
/** Between the view, its heading and the frame, mm. */
const ROUND_MM = 2;
/** Where the view is tried within its area, as shares of what is left over. */
const PLACES: readonly Point[] = [
  [0.5, 0.5],
  [0.5, 1],
  [0, 1],
  [1, 1],
  [0, 0.5],
  [1, 0.5],
  [0.5, 0],
  [0, 0],
  [1, 0],
];

const GRAIN = "Seen on the grain side.";
const MIRROR = "Looking at the die's cutting edges, it is the mirror image of this view.";

function headingBlock({ notes }: View, reduced: number, width: number, first?: string): Block {
  const scale =
    reduced === 1 ? "Scale 1 : 1" : `Scale ${sayScale(reduced)}, reduced: do not measure this view`;
  const small = [`${GRAIN} ${MIRROR}`, ...notes].flatMap((text) => paragraph(text, PLAIN_MM, width));
  const bold = first === undefined ? [] : paragraph(first, PLAIN_MM, width, true);
  return [...paragraph(scale, HEADING_MM, width, true), ...bold, ...small];
}

const moved = (box: Box, [x, y]: Point): Box => ({
  minX: box.minX + x,
  maxX: box.maxX + x,
  minY: box.minY + y,
  maxY: box.maxY + y,
});

/** The square in free room, off the piece; undefined when there is none. */
function squarePlace(
  view: View,
  at: Point,
  paper: Paper,
  taken: readonly Box[],
  outline: readonly Chord[],
): Box | undefined {
  const shift = (c: Chord): Chord => [
    [c[0][0] + at[0], c[0][1] + at[1]],
    [c[1][0] + at[0], c[1][1] + at[1]],
  ];
  const words = view.items.flatMap((i) => (i.kind === "words" ? [moved(textBox(i), at)] : []));
  const space = spaceOf(chordsOfItems(view.items).map(shift), [...words, ...taken]);
  const inside = insideOf(outline.map(shift));
  return findPlace(space, {
    width: SQUARE_MM,
    height: SQUARE_MM,
    areas: [inner(paper.frame)],
    near: [paper.frame.minX, paper.frame.minY],
    clear: ROUND_MM,
    accept: (b) => !inside(b),
  });
}

const inner = ({ minX, minY, maxX, maxY }: Box): Box => ({
  minX: minX + ROUND_MM,
  minY: minY + ROUND_MM,
  maxX: maxX - ROUND_MM,
  maxY: maxY - ROUND_MM,
});

export type Asked = {
  readonly die: Die;
  readonly units: Units;
  /** The papers that may be used: as it lies, and turned. */
  readonly papers: readonly Paper[];
  /** Width at the upper right that is kept free for a stamp. */
  readonly stamp: number;
  /** Said first, below the scale. */
  readonly first?: string;
};

/** The view on one paper at one scale; undefined when it has no room. */
function onPaper(
  { die, units, stamp, first }: Asked,
  paper: Paper,
  reduced: number,
  lettering: Lettering,
  force = false,
): ViewSheet | undefined {
  const k = 1 / reduced;
  const view = viewOf({ die, units, k, lettering });
  const frame = inner(paper.frame);
  const head = headingBlock(view, reduced, frame.maxX - frame.minX - stamp, first);
  const { width: headWidth, height: headHeight } = blockSize(head);
  const headBox = {
    minX: frame.minX,
    maxX: frame.minX + headWidth,
    minY: frame.maxY - headHeight,
    maxY: frame.maxY,
  };
  const area = { ...frame, minY: paper.block.maxY + ROUND_MM, maxY: headBox.minY - ROUND_MM };
  const spare: Point = [
    area.maxX - area.minX - (view.box.maxX - view.box.minX),
    area.maxY - area.minY - (view.box.maxY - view.box.minY),
  ];
  if (!force && (spare[0] < 0 || spare[1] < 0)) return undefined;
  const outline = chordsOfItems(view.items.filter((i) => i.kind === "stroke" && i.id === "die.outline"));
  for (const [u, v] of PLACES) {
    const at: Point = [area.minX - view.box.minX + u * spare[0], area.minY - view.box.minY + v * spare[1]];
    const stamped = { ...headBox, maxX: stamp > 0 ? frame.maxX : headBox.maxX };
    const square = squarePlace(view, at, paper, [stamped, paper.block], outline);
    if (!square && !force) continue;
    const items: readonly Item[] = [
      ...blockWords(head, headBox),
      ...(square ? squareAt([square.minX, square.minY], { x: 1, y: 1 }) : []),
      { kind: "group", id: "view", placement: { at, angle: 0 }, items: view.items },
    ];
    return { paper, reduced, items };
  }
  return undefined;
}

/** The view at the largest scale that one of the papers has room for. */
export function viewSheet(asked: Asked): ViewSheet {
  for (const [reduced, lettering] of TRIED) {
    const { minX, maxX, minY, maxY } = outlineBox(asked.die, 1 / reduced);
    for (const paper of asked.papers) {
      const { frame } = paper;
      if (maxX - minX > frame.maxX - frame.minX || maxY - minY > frame.maxY - frame.minY) continue;
      const sheet = onPaper(asked, paper, reduced, lettering);
      if (sheet) return sheet;
    }
  }
  // Paper smaller than a postcard: drawn all the same, as small as it can be.
  return onPaper(asked, asked.papers[0]!, SCALES.at(-1)!, "none", true)!;
}
