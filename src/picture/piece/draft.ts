import type { Box, Point } from "../../geometry/path.ts";
import { NARROW_MM } from "../../layout/room.ts";
import type { Piece } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import type { Kept } from "../../model/sheet.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Item, Words } from "../picture.ts";
import { textBox } from "../words.ts";
import { type Block, blockBox, blockWords, type Reading } from "./block.ts";
import { areasWithin, CLEAR_MM, findPlace } from "./find.ts";
import { type Chord, grownBy, overlap, type Space, taken } from "./space.ts";

/** What words on a piece have to heed. */
export type Ground = {
  readonly piece: Piece;
  readonly units: Units;
  readonly kept?: readonly Kept[];
  /** The piece's room, and its outline's box, as drawn. */
  readonly room: Box;
  readonly bounds: Box;
  /** Whether a free box lies inside the outline and outside the cutouts. */
  readonly inside: (box: Box) => boolean;
  /** Which way words on it are read. */
  readonly reading: Reading;
  /** The parts of it that single sheets show. */
  readonly windows?: readonly Box[];
  /** Where sheets overlap: words keep out where they can. */
  readonly joints: readonly Box[];
  /** The ends of the overlaps: words never cross them, leaders only where they must. */
  readonly edges: readonly Chord[];
};

/** A strap to the eye: its words lie along it. */
export const isNarrow = ({ bounds }: Pick<Ground, "bounds">): boolean =>
  Math.min(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY) < NARROW_MM;

/** The same ground with its words turned by a quarter. */
export const turnedReading = (ground: Ground): Ground => ({
  ...ground,
  reading: ground.reading === 0 ? 90 : 0,
});

/** A drawing while words are put on it. */
export type Draft = {
  readonly space: Space;
  readonly items: readonly Item[];
  /** Words that found no room; they are said on the first sheet instead. */
  readonly unplaced: readonly string[];
  /** Where the piece's name stands: what belongs to the whole piece is written near it. */
  readonly focus: Point;
};

export const withItems = (draft: Draft, items: readonly Item[], space: Space): Draft => ({
  ...draft,
  space,
  items: [...draft.items, ...items],
});

/** Between the end of some words and the beginning of others on one line, mm: less reads as one sentence. */
const BETWEEN_MM = 3;

/** The box that words take: theirs, and a gap before and behind them as they are read. */
export function takenBy(words: Words): Box {
  const box = textBox(words);
  const upright = Math.abs(trig.cos(words.angle)) > 0.5;
  return upright
    ? { ...box, minX: box.minX - BETWEEN_MM, maxX: box.maxX + BETWEEN_MM }
    : { ...box, minY: box.minY - BETWEEN_MM, maxY: box.maxY + BETWEEN_MM };
}

/** Draws words and keeps their boxes taken. */
export function withWords(draft: Draft, words: readonly Words[]): Draft {
  return withItems(draft, words, taken(draft.space, { boxes: words.map(takenBy) }));
}

export const withoutRoom = (draft: Draft, words: string): Draft => ({
  ...draft,
  unplaced: [...draft.unplaced, words],
});

/** True when a free box lies on the leather: no line crosses it, so its middle decides. */
export function onLeather({ inside, kept }: Ground, box: Box): boolean {
  // A strap printed ends only has nothing but leather, and words, inside its box.
  return kept !== undefined || inside(box);
}

export type Wish = {
  readonly near: Point;
  /** On the leather, or anywhere in the piece's room. */
  readonly on: "leather" | "room";
  readonly within?: number;
  /** mm to keep clear of lines and words; CLEAR_MM unless said. */
  readonly clear?: number;
  readonly accept?: (box: Box) => boolean;
};

/** Words keep this far inside their piece's room, so that two pieces' words never run together; mm. */
const ROOM_EDGE_MM = 1.5;

type Size = { readonly width: number; readonly height: number };

/**
 * A free box for a block, all of it on one sheet. `joined` allows the strips where sheets overlap; the very
 * edges of sheets are lines like others and never crossed.
 */
function placeOnce(draft: Draft, ground: Ground, size: Size, wish: Wish, joined: boolean): Box | undefined {
  const area = wish.on === "leather" ? ground.bounds : grownBy(ground.room, -ROOM_EDGE_MM);
  const inStrip = (box: Box): boolean => ground.joints.some((j) => overlap(j, grownBy(box, CLEAR_MM)));
  const accept = (box: Box): boolean =>
    (wish.on !== "leather" || onLeather(ground, box)) &&
    (joined || !inStrip(box)) &&
    (wish.accept === undefined || wish.accept(box));
  return findPlace(draft.space, {
    ...size,
    near: wish.near,
    areas: areasWithin([area], ground.windows),
    accept,
    ...(wish.within === undefined ? {} : { within: wish.within }),
    ...(wish.clear === undefined ? {} : { clear: wish.clear }),
  });
}

/** A free box for a block: clear of the strips where sheets overlap, if it can be. */
export function placeFor(draft: Draft, ground: Ground, size: Size, wish: Wish): Box | undefined {
  const clear = ground.joints.length > 0 ? placeOnce(draft, ground, size, wish, false) : undefined;
  return clear ?? placeOnce(draft, ground, size, wish, true);
}

/** The draft with the block where it is wished; undefined when it finds no room. */
export function withBlock(draft: Draft, ground: Ground, block: Block, wish: Wish): Draft | undefined {
  const box = placeFor(draft, ground, blockBox(block, ground.reading), wish);
  return box && withWords(draft, blockWords(block, box, ground.reading));
}
