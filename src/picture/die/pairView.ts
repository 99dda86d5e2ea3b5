// The view of a nested die: the board with both pieces, its sizes, and signs with their words in free room.
import type { Die } from "../../die/die.ts";
import type { Nest } from "../../die/nest.ts";
import { type Box, type Point, polyline, rectanglePath } from "../../geometry/path.ts";
import { placed } from "../../geometry/transform.ts";
import { apart, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import type { Units } from "../../model/say.ts";
import type { Item, Stroke } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { chordsOf, chordsOfItems } from "../piece/chords.ts";
import { findPlace } from "../piece/find.ts";
import { type Chord, crossesNoBox, grownBy, insideOf, type Space, spaceOf, taken } from "../piece/space.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { textBox } from "../words.ts";
import { boardOf } from "./cutItems.ts";
import { auxiliary } from "./figures.ts";
import { OVERALL_MM, overallItems } from "./overall.ts";
import { datumSign, datumSize, gapMark, nearestPlaces, offsetItems } from "./pairMarks.ts";
import { partStrokes } from "./partLines.ts";
import { boxOfItems } from "./view.ts";

export type PairView = {
  readonly items: readonly Item[];
  /** All that is drawn, on paper, datum 1 at 0, 0. */
  readonly box: Box;
  readonly board: Box;
  /** Both outlines. */
  readonly outlines: readonly Chord[];
};

type Asked = { readonly die: Die; readonly nest: Nest; readonly units: Units };

/** From the words to the line that leads away from them, and from that line to a circle, mm. */
const OFF_WORDS_MM = 0.6;
/** Lines shorter than this lead nowhere, mm. */
const SHORT_MM = 1;
/** Arrows at the gap keep off datums and centre lines, mm on paper. */
const CLEAR_MM = 5;
/** Words may lie this far beyond the board's dimensions, mm. */
const BEYOND_MM = 5;
/** And so much further where nothing is free there, mm. */
const FURTHER_MM = 20;
/** A line from a datum is flat with less than this slope, and short enough to be seen all the same, mm. */
const FLAT = 0.3;
const SHORT_FLAT_MM = 5;

const boxTimes = ({ minX, minY, maxX, maxY }: Box, k: number): Box => ({
  minX: minX * k,
  minY: minY * k,
  maxX: maxX * k,
  maxY: maxY * k,
});

type Label = {
  readonly text: string;
  /** It is put as near to this as can be. */
  readonly near: Point;
  /** The line leads to the nearest of these, and ends so far off. */
  readonly ends: readonly Point[];
  readonly off: number;
  /** The line should lie slantwise if it can. */
  readonly steep: boolean;
};

const onBox = ({ minX, minY, maxX, maxY }: Box, [x, y]: Point): Point => [
  Math.min(Math.max(x, minX), maxX),
  Math.min(Math.max(y, minY), maxY),
];

/** From the words' box to what they name; undefined where they stand at it. */
function leaderOf(box: Box, { ends, off }: Label): Chord | undefined {
  const starts = ends.map((end) => ({ end, start: onBox(grownBy(box, OFF_WORDS_MM), end) }));
  const { start, end } = starts.reduce((a, b) => (apart(b.start, b.end) < apart(a.start, a.end) ? b : a));
  if (apart(start, end) < off + SHORT_MM) return undefined;
  return [start, minus(end, scaled(unit(minus(end, start)), off))];
}

/** Extension lines, centre lines and crosses lie along x or y: a line that leads away must not lie among them. */
function isFlat([[ax, ay], [bx, by]]: Chord): boolean {
  const [dx, dy] = [Math.abs(bx - ax), Math.abs(by - ay)];
  return Math.max(dx, dy) > SHORT_FLAT_MM && Math.min(dx, dy) < FLAT * Math.max(dx, dy);
}

type Labelled = { readonly items: readonly Item[]; readonly space: Space };

/** The label in free room off both pieces, its line over no other words; left out where there is no room. */
function labelled(so: Labelled, label: Label, area: Box, inside: (box: Box) => boolean): Labelled {
  const block = [{ text: label.text, size: PLAIN_MM }];
  const place = (steep: boolean, within = area): Box | undefined =>
    findPlace(so.space, {
      ...blockSize(block),
      areas: [within],
      near: label.near,
      accept: (b) => {
        if (inside(b)) return false;
        const leader = leaderOf(b, label);
        return !leader || (crossesNoBox(so.space, leader) && !(steep && isFlat(leader)));
      },
    });
  const box =
    (label.steep ? place(true) : undefined) ?? place(false) ?? place(false, grownBy(area, FURTHER_MM));
  if (!box) return so;
  const leader = leaderOf(box, label);
  return {
    items: [
      ...so.items,
      ...blockWords(block, box),
      ...(leader ? [stroke("mark", "01.1", polyline(leader))] : []),
    ],
    space: taken(so.space, { boxes: [box], chords: leader ? [leader] : [] }),
  };
}

/** All lines of both pieces; those of the second carry names of their own. */
function bothPieces({ die, nest }: Asked, k: number): readonly Stroke[] {
  const first = partStrokes({ ...die, features: [] }, k);
  const second = first.map(({ id, ...line }): Stroke => {
    const path = placed(line.path, { ...nest.second, at: scaled(nest.second.at, k) });
    return { ...line, path, ...(id === undefined ? {} : { id: `second.${id}` }) };
  });
  return [...first, ...second];
}

/** The view at one scale: `k` paper millimetres to a millimetre of the board. */
export function pairView(asked: Asked, k: number): PairView {
  const { die, nest, units } = asked;
  const real = boardOf(nest, die.settings.boardMargin.value);
  const board = boxTimes(real, k);
  const [length, width] = [real.maxX - real.minX, real.maxY - real.minY];
  const says = { length: `board ${auxiliary(length, units)}`, width: `board ${auxiliary(width, units)}` };
  const pieces = bothPieces(asked, k);
  const second = scaled(nest.second.at, k);
  const datum = datumSize(apart([0, 0], second));
  const gap = gapMark(nearestPlaces(die, nest, CLEAR_MM / k), k);
  const drawn: readonly Item[] = [
    stroke(
      "sheet",
      "01.1",
      rectanglePath([board.minX, board.minY], board.maxX - board.minX, board.maxY - board.minY),
      "board",
    ),
    ...overallItems(board, says, board.minY - OVERALL_MM),
    ...offsetItems({ ...asked, k, board, datum }),
    ...pieces,
    ...gap.items,
    ...datumSign([0, 0], "datum.1", datum),
    ...datumSign(second, "datum.2", datum),
  ];
  const outlines = pieces.flatMap((s) => (s.id?.endsWith("die.outline") ? chordsOf(s.path) : []));
  const words = drawn.flatMap((i) => (i.kind === "words" ? [textBox(i)] : []));
  const area = grownBy(boxOfItems(drawn), BEYOND_MM);
  const labels: readonly Label[] = [
    { text: "datum 1", near: [0, 0], ends: [[0, 0]], off: datum.radius, steep: true },
    { text: "datum 2", near: second, ends: [second], off: datum.radius, steep: true },
    {
      text: `least gap ${auxiliary(nest.gap, units)}`,
      near: gap.middle,
      ends: gap.ends,
      off: 0,
      steep: false,
    },
  ];
  const inside = insideOf(outlines);
  const { items } = labels.reduce((so, label) => labelled(so, label, area, inside), {
    items: drawn,
    space: spaceOf(chordsOfItems(drawn), words),
  } satisfies Labelled as Labelled);
  return { items, box: boxOfItems(items), board, outlines };
}

/** Chords moved. */
export const movedChords = (chords: readonly Chord[], by: Point): readonly Chord[] =>
  chords.map(([a, b]): Chord => [plus(a, by), plus(b, by)]);
