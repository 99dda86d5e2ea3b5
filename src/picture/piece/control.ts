import type { Box, Point } from "../../geometry/path.ts";
import { apart, cross, dot, minus, unit } from "../../geometry/vector.ts";
import { keptPoint } from "../../layout/draw.ts";
import type { ControlLength } from "../../model/piece.ts";
import type { Kept } from "../../model/sheet.ts";
import { printLength } from "../../units/index.ts";
import { DROP, RISE } from "../words.ts";
import { blockBox, blockWords, type Reading } from "./block.ts";
import { chordsOf, chordsOfItems } from "./chords.ts";
import { type Dimension, dimensionBeside, dimensionStrokes, middleOf } from "./dimension.ts";
import {
  type Draft,
  type Ground,
  isNarrow,
  placeFor,
  type Wish,
  withItems,
  withoutRoom,
  withWords,
} from "./draft.ts";
import { CLEAR_MM } from "./find.ts";
import { taken } from "./space.ts";
import { PLAIN_MM, SMALL_MM } from "./title.ts";

// Control lengths: measured on the joined paper before anything is cut.

/** How far beside a narrow piece's edge the lines of control lengths lie, in the order they are taken. */
const BESIDE_MM = [6, -6, 2.6, -2.6] as const;
/** On a wide piece they lie beside their own points. */
const INSIDE_MM = [7, -7, 14, -14] as const;
/** A direction within this of level is level. */
const LEVEL = 1e-6;

type Laid = Dimension & { readonly level: number };

/** 1 when the piece's middle lies to the left of from → to, else −1. */
function inward(from: Point, to: Point, { bounds }: Ground): 1 | -1 {
  const middle: Point = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  return cross(minus(to, from), minus(middle, from)) >= 0 ? 1 : -1;
}

/** The offset that puts a level control's line that far beside a lying piece. */
function offsetFor(from: Point, to: Point, level: number, ground: Ground): number {
  const level0 = Math.abs(from[1] - to[1]) < LEVEL;
  const lying = ground.bounds.maxX - ground.bounds.minX >= ground.bounds.maxY - ground.bounds.minY;
  if (!isNarrow(ground) || !level0 || !lying) return INSIDE_MM[level]! * inward(from, to, ground);
  const beside = BESIDE_MM[level]!;
  const y = beside > 0 ? ground.bounds.maxY + beside : ground.bounds.minY + beside;
  // The line lies to the left of from → to.
  return to[0] > from[0] ? y - from[1] : from[1] - y;
}

const spanOf = ({ lineFrom, lineTo }: Dimension): readonly [number, number] => [
  Math.min(lineFrom[0], lineTo[0]),
  Math.max(lineFrom[0], lineTo[0]),
];

/** Two dimensions on one level mustn't lie over each other; they may meet at an arrow. */
function collide(a: Laid, b: Laid): boolean {
  const [a0, a1] = spanOf(a);
  const [b0, b1] = spanOf(b);
  return a.level === b.level && a0 < b1 - 1 && b0 < a1 - 1;
}

/** The points of a control as drawn; undefined when what is left out lies between them. */
function drawnEnds({ from, to }: ControlLength, kept?: readonly Kept[]): readonly [Point, Point] | undefined {
  const [a, b] = [keptPoint(from, kept), keptPoint(to, kept)];
  if (!a || !b) return undefined;
  return Math.abs(apart(a, b) - apart(from, to)) < LEVEL ? [a, b] : undefined;
}

/** Of a dimension beside a narrow piece, extension lines begin at the outline: on it they'd hide a fold. */
function fromEdge(laid: Laid, ground: Ground): Laid {
  if (!isNarrow(ground) || laid.lineFrom[1] !== laid.lineTo[1]) return laid;
  const up = laid.lineFrom[1] > laid.from[1];
  const edge = (p: Point): Point => {
    const crossed = chordsOf(ground.piece.outline)
      .filter(
        ([a, b]) =>
          Math.min(a[0], b[0]) <= p[0] + EDGE_SLACK_MM && Math.max(a[0], b[0]) >= p[0] - EDGE_SLACK_MM,
      )
      .flatMap(([a, b]) => [a[1], b[1]]);
    return crossed.length === 0 ? p : [p[0], up ? Math.max(...crossed) : Math.min(...crossed)];
  };
  return ground.kept ? laid : { ...laid, from: edge(laid.from), to: edge(laid.to) };
}
/** A tip is found although its height is known only to a chord. */
const EDGE_SLACK_MM = 0.01;

/** Beside a seam there is room for its numbers, mm. */
const SEAM_ROOM_MM = 7;
/** A line that crosses a seam passes no more of its holes than this. */
const CROSSING_HOLES = 8;

/** True when a dimension line runs along a seam, so near that its numbers would have no room. */
function alongSeam({ lineFrom, lineTo }: Laid, { piece }: Ground): boolean {
  const [way, long] = [unit(minus(lineTo, lineFrom)), apart(lineFrom, lineTo)];
  const near = piece.holes.filter(({ use, at }) => {
    const to = minus(at, lineFrom);
    const along = dot(way, to);
    return use === "stitch" && Math.abs(cross(way, to)) < SEAM_ROOM_MM && along > 0 && along < long;
  });
  return near.length > CROSSING_HOLES;
}

/** The first level where a dimension meets no other; on a wide piece one that runs along no seam, if it can be. */
function laidBeside(a: Point, b: Point, ground: Ground, before: readonly Laid[]): Laid | undefined {
  const free = BESIDE_MM.map(
    (_, level): Laid => ({ ...dimensionBeside(a, b, offsetFor(a, b, level, ground)), level }),
  ).filter((laid) => !before.some((other) => collide(other, laid)));
  if (isNarrow(ground)) return free[0];
  return free.find((laid) => onPiece(laid, ground) && !alongSeam(laid, ground)) ?? free[0];
}

/** True when a dimension line lies beside nothing but leather: outside a wide piece its words have no room. */
const onPiece = ({ lineFrom, lineTo }: Laid, { bounds }: Ground): boolean =>
  [lineFrom, lineTo].every(
    ([x, y]) => x >= bounds.minX && x <= bounds.maxX && y >= bounds.minY && y <= bounds.maxY,
  );

/** Half a line of words and the gap between it and the dimension line. */
const BY_LINE_MM = 2.2;

/** Where words stand beside the line: those that are read upward could find no place a whole step away. */
function besideLine(laid: Laid, size: number, reading: Reading): Point {
  const [x, y] = middleOf(laid);
  return reading === 0 ? [x, y] : [x - (size * (RISE + DROP)) / 2 - CLEAR_MM - BARELY_MM, y];
}
/** Clear of a line is clear of it by more than rounding, mm. */
const BARELY_MM = 0.05;

/** A line that rises by more than this share of its run is read along neither axis. */
const SLANT_SHARE = 0.1;
/** Words beside a slanted line have a corner this near to it, and stand no further from its middle, mm. */
const BY_SLANT_MM = 2;
const FROM_MIDDLE_MM = 60;

const isSlanted = ([dx, dy]: Point): boolean =>
  Math.min(Math.abs(dx), Math.abs(dy)) > SLANT_SHARE * Math.max(Math.abs(dx), Math.abs(dy));

/** True when a corner of the box lies close by the line. */
function bySlant({ minX, minY, maxX, maxY }: Box, { lineFrom, lineTo }: Laid): boolean {
  const way = unit(minus(lineTo, lineFrom));
  const corners: readonly Point[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  return corners.some((c) => Math.abs(cross(way, minus(c, lineFrom))) < BY_SLANT_MM);
}

/** Where the words of a control may stand, and how they are read. */
function wishFor(laid: Laid, size: number, ground: Ground): Wish & { readonly reading: Reading } {
  const along = minus(laid.lineTo, laid.lineFrom);
  if (isSlanted(along))
    return {
      reading: ground.reading,
      near: middleOf(laid),
      on: "room",
      within: FROM_MIDDLE_MM,
      accept: (b) => bySlant(b, laid),
    };
  // On a piece that is turned on its sheet, 90 would stand on its head.
  const upward: Reading = ground.reading === -90 ? -90 : 90;
  const reading: Reading = Math.abs(along[0]) >= Math.abs(along[1]) ? 0 : upward;
  return {
    reading,
    near: besideLine(laid, size, reading),
    on: "room",
    accept: (b) => {
      const middle: Point = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
      const off =
        reading === 0 ? Math.abs(middle[1] - laid.lineFrom[1]) : Math.abs(middle[0] - laid.lineFrom[0]);
      return off < BY_LINE_MM + size / 2;
    },
  };
}

function withControlWords(draft: Draft, ground: Ground, laid: Laid, words: string): Draft {
  for (const size of [PLAIN_MM, SMALL_MM]) {
    const block = [{ text: words, size }];
    const wish = wishFor(laid, size, ground);
    const box = placeFor(draft, ground, blockBox(block, wish.reading), wish);
    if (box) return withWords(draft, blockWords(block, box, wish.reading));
  }
  return withoutRoom(draft, words);
}

/** Draws control lengths, each with an arrow at either end and its length in words. */
export function withControls(draft: Draft, ground: Ground, controls: readonly ControlLength[]): Draft {
  const laidAll: Laid[] = [];
  const said: { readonly laid: Laid; readonly words: string }[] = [];
  let after = draft;
  for (const control of controls) {
    const words = `check ${control.words}: ${printLength(apart(control.from, control.to), ground.units)}`;
    const ends = drawnEnds(control, ground.kept);
    if (!ends) continue;
    const laid = laidBeside(...ends, ground, laidAll);
    if (!laid) {
      after = withoutRoom(after, words);
      continue;
    }
    laidAll.push(laid);
    said.push({ laid, words });
    const strokes = dimensionStrokes("mark", fromEdge(laid, ground));
    after = withItems(after, strokes, taken(after.space, { chords: chordsOfItems(strokes) }));
  }
  return said.reduce((d, { laid, words }) => withControlWords(d, ground, laid, words), after);
}
