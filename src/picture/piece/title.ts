import { unionBox } from "../../geometry/bounds.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { type Block, paragraph } from "./block.ts";
import {
  type Draft,
  type Ground,
  isNarrow,
  turnedReading,
  type Wish,
  withBlock,
  withoutRoom,
} from "./draft.ts";
import { GRAIN_UP, sayCount, sayCutSize, sayLeather } from "./say.ts";
import { within } from "./space.ts";

// The words that name a piece: on the leather where there is room, else beside it.

/** Sizes of words, mm: to be read at arm's length; on the bench; at the least. */
export const LARGE_MM = 3.4;
export const PLAIN_MM = 2.8;
export const SMALL_MM = 2.4;

/** A piece's name stands this clear of everything where it can, mm. */
const AIRY_MM = 1.6;

type Facts = { readonly name: string; readonly count: string; readonly rest: readonly string[] };

function factsOf({ piece, units }: Ground): Facts {
  return {
    name: piece.name,
    count: sayCount(piece),
    rest: [sayCutSize(piece, units), sayLeather(piece, units), GRAIN_UP],
  };
}

const head = ({ name, count }: Facts, size: number): Block => [
  { text: `${name}: ${count}`, size, bold: true },
];

/** Every line by itself. */
const stacked = (facts: Facts, size: number): Block => [
  ...head(facts, size),
  ...facts.rest.map((text) => ({ text, size })),
];

/** The name, and the rest run together. */
const paired = (facts: Facts, size: number): Block => [
  ...head(facts, size),
  { text: facts.rest.join("; "), size },
];

/** The name, the size, and the rest run together. */
const sized = (facts: Facts, size: number): Block => [
  ...head(facts, size),
  { text: facts.rest[0]!, size },
  { text: facts.rest.slice(1).join("; "), size },
];

/** All of it within a width. */
const folded = (facts: Facts, size: number, width: number): Block => [
  ...paragraph(`${facts.name}: ${facts.count}`, size, width, true),
  ...facts.rest.flatMap((text) => paragraph(text, size, width)),
];

/** All in one line, in bold: a line has one weight, and the name must stand out. */
const single = (facts: Facts, size: number): Block => [
  { text: [`${facts.name}: ${facts.count}`, ...facts.rest].join("; "), size, bold: true },
];

function middleOf(boxes: readonly Box[]): Point {
  const all = unionBox(boxes);
  return [(all.minX + all.maxX) / 2, (all.minY + all.maxY) / 2];
}

const centre = ({ bounds }: Ground): Point => [
  (bounds.minX + bounds.maxX) / 2,
  (bounds.minY + bounds.maxY) / 2,
];

/** Ways to write it, each with where it may stand, the best first. */
function ways(facts: Facts): readonly (readonly [Block, Wish["on"]])[] {
  const shapes = (size: number): readonly Block[] => [
    stacked(facts, size),
    sized(facts, size),
    paired(facts, size),
    single(facts, size),
  ];
  const narrow = [60, 45, 34, 26].map((width) => folded(facts, SMALL_MM, width));
  return [
    ...[LARGE_MM, PLAIN_MM, SMALL_MM].flatMap((size) => shapes(size).map((b) => [b, "leather"] as const)),
    ...[PLAIN_MM, SMALL_MM].flatMap((size) => shapes(size).map((b) => [b, "room"] as const)),
    ...narrow.flatMap((b) => [[b, "leather"] as const, [b, "room"] as const]),
  ];
}

/** The name alone, where nothing more has room. */
const nameWays = ({ name, count }: Facts): readonly (readonly [Block, Wish["on"]])[] =>
  [84, 40, 20].flatMap((width) => {
    const block = paragraph(`${name}: ${count}`, SMALL_MM, width, true);
    return [[block, "leather"] as const, [block, "room"] as const];
  });

/** The first way that finds room: airy where it can be. */
function firstOf(
  draft: Draft,
  ground: Ground,
  all: readonly (readonly [Block, Wish["on"]])[],
): Draft | undefined {
  for (const [block, on] of all) {
    const wish = { near: centre(ground), on };
    const tight = withBlock(draft, ground, block, wish);
    const done = tight && (withBlock(draft, ground, block, { ...wish, clear: AIRY_MM }) ?? tight);
    if (done) return { ...done, focus: middleOf(done.space.boxes.slice(-block.length)) };
  }
  return undefined;
}

/** Puts name, count, cut size, leather and the side that is up on the drawing. */
export function withTitle(draft: Draft, ground: Ground): Draft {
  const facts = factsOf(ground);
  const turned = isNarrow(ground) ? undefined : turnedReading(ground);
  const whole = firstOf(draft, ground, ways(facts)) ?? (turned && firstOf(draft, turned, ways(facts)));
  if (whole) return whole;
  const rest = facts.rest.join("; ");
  const named = firstOf(draft, ground, nameWays(facts));
  return named ? withoutRoom(named, rest) : withoutRoom(draft, `${facts.name}: ${facts.count}; ${rest}`);
}

const holds = (b: Box, [x, y]: Point): boolean => x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

/** A part of a piece smaller than this, along it and across, needs no name of its own; mm. */
const PART_MM = { along: 30, across: 5 } as const;

/** Puts the piece's name on every sheet that shows a part of it without its title, where there is room. */
export function withNameAgain(draft: Draft, ground: Ground): Draft {
  return (ground.windows ?? []).reduce((before, window) => {
    const part: Box = {
      minX: Math.max(window.minX, ground.bounds.minX),
      minY: Math.max(window.minY, ground.bounds.minY),
      maxX: Math.min(window.maxX, ground.bounds.maxX),
      maxY: Math.min(window.maxY, ground.bounds.maxY),
    };
    const [w, h] = [part.maxX - part.minX, part.maxY - part.minY];
    if (holds(window, draft.focus) || Math.max(w, h) < PART_MM.along || Math.min(w, h) < PART_MM.across)
      return before;
    const near: Point = [(part.minX + part.maxX) / 2, (part.minY + part.maxY) / 2];
    const block: Block = [{ text: ground.piece.name, size: PLAIN_MM, bold: true }];
    const here = { ...ground, windows: [window] };
    return (
      withBlock(before, here, block, { near, on: "leather", accept: (b) => within(window, b) }) ?? before
    );
  }, draft);
}

/** The draft with a note in the widest of these that finds room, on the leather if it can be. */
function withNote(draft: Draft, ground: Ground, note: string, widths: readonly number[]): Draft | undefined {
  for (const width of widths) {
    const block = paragraph(note, SMALL_MM, width);
    for (const on of ["leather", "room"] as const) {
      const done = withBlock(draft, ground, block, { near: draft.focus, on });
      if (done) return done;
    }
  }
  return undefined;
}

const NOTE_WIDTHS_MM = [120, 84, 60, 40] as const;
const NARROWER_MM = [28, 20] as const;

/** Puts what is to be done to the piece on it, where there is room; on a wide piece turned, if it must be. */
export function withNotes(draft: Draft, ground: Ground): Draft {
  return ground.piece.notes.reduce((before, note) => {
    const done = withNote(before, ground, note, NOTE_WIDTHS_MM);
    if (done || isNarrow(ground)) return done ?? withoutRoom(before, note);
    return (
      withNote(before, ground, note, NARROWER_MM) ??
      withNote(before, turnedReading(ground), note, NOTE_WIDTHS_MM) ??
      withoutRoom(before, note)
    );
  }, draft);
}
