import type { Box, Point } from "../geometry/path.ts";
import { drawnBounds, NARROW_MM, roomOf } from "../layout/room.ts";
import type { ControlLength, Piece } from "../model/piece.ts";
import type { Units } from "../model/say.ts";
import type { Kept } from "../model/sheet.ts";
import { roundMm } from "../units/index.ts";
import type { Item, Picture } from "./picture.ts";
import { blockSize, blockWords, paragraph, type Reading } from "./piece/block.ts";
import { withBreaks } from "./piece/breaks.ts";
import { chordsOf, chordsOfItems, keptChords } from "./piece/chords.ts";
import { withControls } from "./piece/control.ts";
import type { Draft, Ground } from "./piece/draft.ts";
import { withBackbone } from "./piece/grain.ts";
import { withHatching } from "./piece/hatch.ts";
import { withTags } from "./piece/leader.ts";
import { isMated, withTenths } from "./piece/numbers.ts";
import { withOuterDimensions } from "./piece/outer.ts";
import { type Chord, grownBy, insideOf, overlap, spaceOf, within } from "./piece/space.ts";
import { strokesOf } from "./piece/strokes.ts";
import { SMALL_MM, withNameAgain, withNotes, withTitle } from "./piece/title.ts";
import { textBox } from "./words.ts";

export type PieceDrawing = {
  readonly units: Units;
  /** Of a strap printed ends only: the stretches that are drawn. */
  readonly kept?: readonly Kept[];
  /** The control lengths to draw; none unless said. */
  readonly controls?: readonly ControlLength[];
  /** Where sheets overlap, in the piece as drawn: words keep out where they can. */
  readonly joints?: readonly Box[];
  /** The ends of the overlaps, in the piece as drawn: no words cross them. */
  readonly edges?: readonly Chord[];
  /** What single sheets show, in the piece as drawn: words lie on one where they can. */
  readonly windows?: readonly Box[];
  /** How the words of a wide piece are read; a narrow one's words lie along it. */
  readonly reading?: Reading;
};

export type DrawnPiece = {
  /** In piece coordinates; with `kept`, later stretches lie nearer. */
  readonly items: readonly Item[];
  /** Words that found no room. */
  readonly unplaced: readonly string[];
  /** Its drawn lines as straight bits, for what else is to lie on the same paper. */
  readonly lines: readonly Chord[];
  /** The boxes of its words. */
  readonly words: readonly Box[];
};

/** Everything outside a stretch is cut off; generous across the strap. */
const stretchClip = (bounds: Box, [from, to]: Kept): Box => ({
  ...grownBy(bounds, 1000),
  minX: from,
  maxX: to,
});

function linesOf(piece: Piece, bounds: Box, kept?: readonly Kept[]): readonly Item[] {
  const strokes = strokesOf(piece);
  if (!kept) return strokes;
  return kept.map((stretch, i): Item => {
    const at: Point = [-stretch[2], 0];
    return {
      kind: "group",
      id: `stretch-${i + 1}`,
      placement: { at, angle: 0 },
      clip: stretchClip(bounds, stretch),
      items: strokes,
    };
  });
}

function readingOf(bounds: Box, asked: Reading): Reading {
  const [width, height] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  if (Math.min(width, height) >= NARROW_MM) return asked;
  return width >= height ? 0 : 90;
}

/** What words are placed by is rounded: a place must not hang on the last bit of a sine. */
function roundBox({ minX, minY, maxX, maxY }: Box): Box {
  return { minX: roundMm(minX), minY: roundMm(minY), maxX: roundMm(maxX), maxY: roundMm(maxY) };
}

function groundOf(piece: Piece, drawing: PieceDrawing): Ground {
  const bounds = roundBox(drawnBounds(piece, drawing.kept));
  const room = roundBox(roomOf(piece, drawing.kept));
  // A piece that one sheet shows whole needs no heed of sheets.
  const windows = drawing.windows?.some((w) => within(w, room)) ? undefined : drawing.windows;
  return {
    piece,
    units: drawing.units,
    room,
    bounds,
    inside: insideOf([piece.outline, ...piece.cutouts.map((c) => c.outline)].flatMap(chordsOf)),
    reading: readingOf(bounds, drawing.reading ?? 0),
    joints: (drawing.joints ?? []).filter((j) => overlap(j, room)),
    edges: drawing.edges ?? [],
    ...(drawing.kept ? { kept: drawing.kept } : {}),
    ...(windows ? { windows } : {}),
  };
}

/** The lines of a piece, and what they take of its room. */
function bareDraft(ground: Ground): Draft {
  const { piece, bounds, kept, edges } = ground;
  const chords = chordsOfItems(strokesOf(piece));
  const focus: Point = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  return {
    items: linesOf(piece, bounds, kept),
    space: spaceOf([...keptChords(chords, kept), ...edges]),
    unplaced: [],
    focus,
  };
}

/** Puts words on the lines in the order of their need; each keeps clear of all before it. */
function worded(bare: Draft, ground: Ground, controls: readonly ControlLength[]): Draft {
  const broken = ground.kept ? withBreaks(bare, ground, ground.kept) : bare;
  const checked = withControls(broken, ground, controls);
  // Two mates are counted against each other by their numbers: these need their places first.
  const numbered = withTenths(checked, ground, isMated);
  const titled = withBackbone(withTitle(numbered, ground), ground);
  const tagged = withNameAgain(withTags(titled, ground), ground);
  const noted = withNotes(tagged, ground);
  return withHatching(
    withTenths(noted, ground, (s) => !isMated(s)),
    ground,
  );
}

/**
 * Draws one piece, grain side up, in its own coordinates: its lines, and its words inside the room that
 * the layout keeps for it (`roomOf`). No words lie on a line or on other words.
 */
export function pictureOfPiece(piece: Piece, drawing: PieceDrawing): DrawnPiece {
  const ground = groundOf(piece, drawing);
  const bare = bareDraft(ground);
  const { items, unplaced } = worded(bare, ground, drawing.controls ?? []);
  const added = items.slice(bare.items.length);
  const lines = [...keptChords(chordsOfItems(strokesOf(piece)), drawing.kept), ...chordsOfItems(added)];
  return { items, unplaced, lines, words: added.flatMap((i) => (i.kind === "words" ? [textBox(i)] : [])) };
}

/** Paper round a piece in a file of its own, mm: outside its room lie the dimensions. */
const ROUND_MM = 16;
/** Words that found no room on the piece stand below it, in lines no longer than this at the least, mm. */
const BELOW_MM = 80;

/** What found no room, as lines below the dimensions. */
function leftOver(
  unplaced: readonly string[],
  { room }: Ground,
): { readonly items: readonly Item[]; readonly height: number } {
  if (unplaced.length === 0) return { items: [], height: 0 };
  const width = Math.max(BELOW_MM, room.maxX - room.minX);
  const block = unplaced.flatMap((words) => paragraph(words, SMALL_MM, width));
  const { height } = blockSize(block);
  const top = room.minY - ROUND_MM;
  const box: Box = { minX: room.minX, maxX: room.minX + width, minY: top - height, maxY: top };
  return { items: blockWords(block, box), height: height + SMALL_MM };
}

/** A picture of one piece by itself, with its length and width as dimensions. */
export function piecePicture(piece: Piece, units: Units): Picture {
  const ground = groundOf(piece, { units });
  const draft = worded(withOuterDimensions(bareDraft(ground), ground), ground, piece.controls);
  const below = leftOver(draft.unplaced, ground);
  const sheet = grownBy(ground.room, ROUND_MM);
  const at: Point = [-sheet.minX, below.height - sheet.minY];
  return {
    title: piece.name,
    width: Math.max(sheet.maxX - sheet.minX, below.height > 0 ? BELOW_MM + 2 * ROUND_MM : 0),
    height: sheet.maxY - sheet.minY + below.height,
    items: [{ kind: "group", placement: { at, angle: 0 }, items: [...draft.items, ...below.items] }],
  };
}
