import { type Box, circlePath, type Point, polyline } from "../../geometry/path.ts";
import { apart, cross, dot, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import { touches } from "../../layout/clip.ts";
import { keptPoint } from "../../layout/draw.ts";
import type { Item } from "../picture.ts";
import { blockBox, blockWords, paragraph } from "./block.ts";
import {
  type Draft,
  type Ground,
  isNarrow,
  placeFor,
  takenBy,
  turnedReading,
  withItems,
  withoutRoom,
} from "./draft.ts";
import {
  boxAround,
  type Chord,
  chordsIn,
  crossesNoBox,
  grownBy,
  isFree,
  type Space,
  taken,
} from "./space.ts";
import { CROSS_BEYOND_MM, stroke } from "./strokes.ts";
import { SAME_PLACE_MM, type Tag } from "./tag.ts";
import { tagsOf } from "./tags.ts";
import { SMALL_MM } from "./title.ts";

// Words that belong to one line or field of a piece, tied to it by a leader with a dot at its end.

const DOT_MM = 0.45;
/** Words this near to their point need no leader. */
const NO_LEADER_MM = 1.6;
const LONGEST_LEADER_MM = 45;
/** Of a tag's points the best few are tried. */
const TRIED = 6;
/** The point of a box nearest to p. */
const nearestOf = (box: Box, [x, y]: Point): Point => [
  Math.min(Math.max(x, box.minX), box.maxX),
  Math.min(Math.max(y, box.minY), box.maxY),
];

const holdsPoint = (b: Box, [x, y]: Point): boolean =>
  x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

/** Where holes with crosses lie as drawn: a leader that crosses one could be taken for its mark. */
function holeBoxes({ piece, kept }: Ground): readonly Box[] {
  return piece.holes.flatMap((h): readonly Box[] => {
    const at = h.kind === "awl" || h.use === "stitch" ? undefined : keptPoint(h.at, kept);
    const r = h.size / 2 + CROSS_BEYOND_MM;
    return at ? [{ minX: at[0] - r, minY: at[1] - r, maxX: at[0] + r, maxY: at[1] + r }] : [];
  });
}

type Tied = { readonly box: Box; readonly leader: Chord };

type Tie = {
  readonly size: { readonly width: number; readonly height: number };
  readonly anchor: Point;
  /** The leader may run from one sheet to another. */
  readonly across: boolean;
  /** The leader runs along no line, close by no words, and crosses this many lines at the most. */
  readonly most?: number;
};

/** A longer leader than this is no easier to read for crossing nothing, mm. */
const LONGEST_CLEAN_MM = 18;

/** Half the breadth of a line that a leader is not to cross, mm: any will do. */
const THIN_MM = 0.001;

/** Where the words of one anchor may stand, with a leader that crosses no other words and no hole. */
function tie(draft: Draft, ground: Ground, { size, anchor, across, most }: Tie): Tied | undefined {
  const edges = across ? [] : ground.edges.map((e) => grownBy(boxAround(e), THIN_MM));
  const others = holeBoxes(ground).filter((h) => !holdsPoint(grownBy(h, 0.1), anchor));
  const clear = (leader: Chord): boolean => ![...others, ...edges].some((b) => touches(b, ...leader));
  const leaderOf = (box: Box): Chord => [anchor, nearestOf(grownBy(box, 0.3), anchor)];
  const box = placeFor(draft, ground, size, {
    near: anchor,
    on: "room",
    within: (most === undefined ? LONGEST_LEADER_MM : LONGEST_CLEAN_MM) + size.width / 2,
    accept: (b) =>
      crossesNoBox(draft.space, leaderOf(b)) &&
      clear(leaderOf(b)) &&
      (most === undefined || isClean(draft.space, leaderOf(b), most)),
  });
  return box && { box, leader: leaderOf(box) };
}

/** A leader keeps this far from a line that runs its way, and from words that it passes, mm. */
const ALONG_MM = 1;
/** Lines that meet a leader at its dot belong to what it points at, mm. */
const AT_DOT_MM = 0.3;
/** What lies along a leader nearer to its dot than this is part of what it points at, mm. */
const FROM_DOT_MM = 1.5;
/** Sine of the angle below which two lines run the same way. */
const SAME_WAY = 0.25;

/** True when a line crosses a leader away from its dot. */
function crossed([a, b]: Chord, [p, q]: Chord): boolean {
  const [way, line] = [minus(b, a), minus(q, p)];
  const turn = cross(way, line);
  if (turn === 0) return false;
  const t = cross(minus(p, a), line) / turn;
  const u = cross(minus(p, a), way) / turn;
  return t * apart(a, b) > AT_DOT_MM && t <= 1 && u >= 0 && u <= 1;
}

/** A leader that is read at once: see `Tie.most`. */
function isClean(space: Space, leader: Chord, most: number): boolean {
  const [a, b] = leader;
  if (apart(a, b) < FROM_DOT_MM + NO_LEADER_MM) return true;
  const way = unit(minus(b, a));
  const side: Point = [-way[1] * ALONG_MM, way[0] * ALONG_MM];
  // Away from its dot, where a hole's cross may lie under it, and from its own words.
  const body: Chord = [plus(a, scaled(way, FROM_DOT_MM)), minus(b, scaled(way, 0.1))];
  const rails = [side, scaled(side, -1)].map((s): Chord => [plus(body[0], s), plus(body[1], s)]);
  if (!rails.every((r) => crossesNoBox(space, r))) return false;
  const near = chordsIn(space, grownBy(boxAround(leader), ALONG_MM));
  return !near.some((c) => runsAlong(body, c)) && near.filter((c) => crossed(leader, c)).length <= most;
}

/** True when a line runs nearly the same way close beside a leader, or crosses it at a slant. */
function runsAlong([a, b]: Chord, [p, q]: Chord): boolean {
  const way = unit(minus(b, a));
  if (Math.abs(cross(way, minus(q, p))) > SAME_WAY * apart(p, q)) return false;
  const [s, t] = [dot(minus(p, a), way), dot(minus(q, a), way)];
  if (s === t || Math.max(s, t) < 0 || Math.min(s, t) > apart(a, b)) return false;
  // How far aside the line lies where it passes the leader's two ends, or its own.
  const [u, v] = [cross(way, minus(p, a)), cross(way, minus(q, a))];
  const asideAt = (x: number): number => u + ((v - u) * (x - s)) / (t - s);
  const first = asideAt(Math.max(0, Math.min(s, t)));
  const last = asideAt(Math.min(apart(a, b), Math.max(s, t)));
  return first * last <= 0 || Math.min(Math.abs(first), Math.abs(last)) < ALONG_MM;
}

const pointBox = ([x, y]: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

/** Widths that a tag's words are folded to, mm, the most welcome first. */
const WIDTHS_MM = [70, 40, 26] as const;

/** What a leader is allowed, the best first. */
const CLEAN = [{ across: false, most: 1 }, { across: false, most: 3 }, { across: false }] as const;
const ACROSS = [{ across: true }] as const;

/** On a wide piece cut up by lines, words that find no room are folded narrower, or turned. */
const NARROWER_MM = [20] as const;

/** Points of a tag that its leader may go to, the best few. */
function bestOf(anchors: readonly Point[], space: Space): readonly Point[] {
  // A dot on a hole or a stitch would be taken for one.
  const bare = anchors.filter((a) => isFree(space, grownBy(pointBox(a), DOT_MM * 1.5)));
  return (bare.length > 0 ? bare : anchors).slice(0, TRIED);
}

/** The draft with a tag's words in this width, and its leader where that is shortest; undefined without room. */
function withWidth(
  draft: Draft,
  ground: Ground,
  words: string,
  best: readonly Point[],
  width: number,
  way: Pick<Tie, "across" | "most">,
): Draft | undefined {
  const block = paragraph(words, SMALL_MM, width);
  const size = blockBox(block, ground.reading);
  const tied = best
    .map((anchor) => tie(draft, ground, { size, anchor, ...way }))
    .filter((t) => t !== undefined)
    .sort((a, b) => apart(...a.leader) - apart(...b.leader))[0];
  if (!tied) return undefined;
  const text = blockWords(block, tied.box, ground.reading);
  const short = apart(...tied.leader) < NO_LEADER_MM;
  const line: readonly Item[] = short
    ? []
    : [
        stroke("text", "01.1", polyline(tied.leader)),
        { ...stroke("text", "01.1", circlePath(tied.leader[0], DOT_MM)), fill: "black" },
      ];
  const space = taken(draft.space, { boxes: text.map(takenBy), chords: short ? [] : [tied.leader] });
  return withItems(draft, [...line, ...text], space);
}

/** Draws a tag's words and leader where it is shortest; on one sheet if it can be. */
function withTag(draft: Draft, ground: Ground, tag: Tag): Draft {
  const { words, anchors, spare, short: fewer } = tag;
  const best = bestOf(anchors, draft.space);
  const first = (here: Ground, widths: readonly number[]): Draft | undefined => {
    for (const way of spare ? CLEAN : [...CLEAN, ...ACROSS])
      for (const width of widths) {
        const done = withWidth(draft, here, words, best, width, way);
        if (done) return done;
      }
    return undefined;
  };
  const done = first(ground, WIDTHS_MM);
  if (done) return done;
  if (fewer !== undefined) return withTag(draft, ground, { words: fewer, anchors });
  if (spare) return draft;
  const squeezed = isNarrow(ground)
    ? undefined
    : (first(ground, NARROWER_MM) ?? first(turnedReading(ground), WIDTHS_MM));
  return squeezed ?? withoutRoom(draft, words);
}

/** Says what every fold, cutout, zone, row of holes, seam and mark is. */
export function withTags(draft: Draft, ground: Ground): Draft {
  const said: Tag[] = [];
  return tagsOf(ground).reduce((before, tag) => {
    const anchors = tag.anchors.map((a) => keptPoint(a, ground.kept)).filter((a) => a !== undefined);
    const near = (t: Tag): boolean =>
      t.words === tag.words && apart(t.anchors[0]!, tag.anchors[0]!) < SAME_PLACE_MM;
    if (anchors.length === 0 || (!tag.each && said.some(near))) return before;
    said.push(tag);
    return withTag(before, ground, { ...tag, anchors });
  }, draft);
}
