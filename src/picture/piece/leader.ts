import { boundsOf } from "../../geometry/bounds.ts";
import { containsPoint } from "../../geometry/contains.ts";
import { type Box, circlePath, type Path, type Point, polyline } from "../../geometry/path.ts";
import { apart } from "../../geometry/vector.ts";
import { touches } from "../../layout/clip.ts";
import { keptPoint } from "../../layout/draw.ts";
import type { Hole, Piece, SeamLine } from "../../model/piece.ts";
import type { Item } from "../picture.ts";
import { blockBox, blockWords, paragraph } from "./block.ts";
import { chordsOf } from "./chords.ts";
import { type Draft, type Ground, placeFor, takenBy, withItems, withoutRoom } from "./draft.ts";
import { sayCutout, sayHoleSize, sayId, saySeam, sayZone } from "./say.ts";
import { boxAround, type Chord, crossesNoBox, grownBy, isFree, taken } from "./space.ts";
import { CROSS_BEYOND_MM, stroke } from "./strokes.ts";
import { SMALL_MM } from "./title.ts";

// Words that belong to one line or field of a piece, tied to it by a leader with a dot at its end.

/** What is said, and the points that a leader may go to. */
export type Tag = {
  readonly words: string;
  readonly anchors: readonly Point[];
  /** Left out when it has no room on the point's own sheet: the row's first hole says the rest. */
  readonly spare?: true;
};

const DOT_MM = 0.45;
/** Words this near to their point need no leader. */
const NO_LEADER_MM = 1.6;
const LONGEST_LEADER_MM = 45;
/** Of a tag's points the best few are tried. */
const TRIED = 6;
/** Equal words on points nearer than this are said once. */
const SAME_PLACE_MM = 60;

const shares = (from: Point, to: Point, at: readonly number[]): readonly Point[] =>
  at.map((t): Point => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]);

/** Points on a path: the middles of its longest sides, then others along them. */
function pointsOn(path: Path): readonly Point[] {
  const long = [...chordsOf(path)].sort((a, b) => apart(...b) - apart(...a)).slice(0, 4);
  return [0.5, 0.25, 0.75, 0.1, 0.9].flatMap((t) => long.flatMap(([a, b]) => shares(a, b, [t])));
}

/** Points inside a closed path and on leather, the middle first. */
function pointsIn(path: Path, piece: Piece): readonly Point[] {
  const box = boundsOf(path);
  const at = [0.5, 0.25, 0.75, 0.12, 0.88];
  const points = at.flatMap((v) =>
    at.map((u): Point => [box.minX + (box.maxX - box.minX) * u, box.minY + (box.maxY - box.minY) * v]),
  );
  const inSlot = (p: Point): boolean => piece.cutouts.some((c) => containsPoint(c.outline, p));
  return points.filter((p) => containsPoint(path, p) && !inSlot(p));
}

const beside = (h: Hole): readonly Point[] => {
  const r = h.size / 2;
  return [
    [h.at[0], h.at[1] + r],
    [h.at[0], h.at[1] - r],
    [h.at[0] + r, h.at[1]],
    [h.at[0] - r, h.at[1]],
  ];
};

/** The first and last hole of every row that is punched. */
function holeTags({ piece, units }: Ground): readonly Tag[] {
  const rows = new Map<string, Hole[]>();
  for (const hole of piece.holes) {
    if (hole.kind === "awl") continue;
    const row = hole.id.replace(/\.[^.]*$/, "");
    rows.set(row, [...(rows.get(row) ?? []), hole]);
  }
  return [...rows.values()].flatMap((row): readonly Tag[] => {
    const [first, last] = [row[0]!, row.at(-1)!];
    const tag = (h: Hole, words: string): Tag => ({ words, anchors: beside(h) });
    const one = tag(first, `${sayId(first.id)}: ${sayHoleSize(first, units)}`);
    if (row.length === 1) return [one];
    const sameSize = last.size === first.size;
    if (sameSize) return [one, { ...tag(last, sayId(last.id)), spare: true }];
    return [one, tag(last, `${sayId(last.id)}: ${sayHoleSize(last, units)}`)];
  });
}

const seamPoints = (s: SeamLine, piece: Piece): readonly Point[] => {
  const marks = piece.holes.filter((h) => s.holes.includes(h.id)).map((h) => h.at);
  return marks.length > 0
    ? [marks[Math.floor(marks.length / 2)]!, marks[0]!, marks.at(-1)!]
    : pointsOn(s.path);
};

/** Everything on a piece that has words of its own, the most needed first. */
export function tagsOf(ground: Ground): readonly Tag[] {
  const { piece, units } = ground;
  return [
    ...piece.folds.map(
      (f): Tag => ({ words: f.label, anchors: [f.to, f.from, ...shares(f.from, f.to, [0.8, 0.2])] }),
    ),
    ...(piece.rough ? [{ words: "cut roughly here first", anchors: pointsOn(piece.rough) }] : []),
    ...piece.cutouts.map((c): Tag => ({ words: sayCutout(c, units), anchors: pointsOn(c.outline) })),
    ...holeTags(ground),
    ...piece.zones.map((z): Tag => ({ words: sayZone(z), anchors: pointsIn(z.outline, piece) })),
    ...piece.seams.map((s): Tag => ({ words: saySeam(s), anchors: seamPoints(s, piece) })),
    ...piece.seams.flatMap((s): readonly Tag[] =>
      s.note === undefined ? [] : [{ words: s.note, anchors: seamPoints(s, piece) }],
    ),
    ...piece.marks
      .filter((m) => m.label !== "")
      .map((m): Tag => ({ words: m.label, anchors: pointsOn(m.path) })),
  ];
}

/** The point of a box nearest to p. */
const nearestOf = (box: Box, [x, y]: Point): Point => [
  Math.min(Math.max(x, box.minX), box.maxX),
  Math.min(Math.max(y, box.minY), box.maxY),
];

const holdsPoint = (b: Box, [x, y]: Point): boolean =>
  x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

/** Where holes to be punched lie as drawn: a leader that crosses one could be taken for its mark. */
function holeBoxes({ piece, kept }: Ground): readonly Box[] {
  return piece.holes.flatMap((h): readonly Box[] => {
    const at = h.kind === "awl" ? undefined : keptPoint(h.at, kept);
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
};

/** Half the breadth of a line that a leader is not to cross, mm: any will do. */
const THIN_MM = 0.001;

/** Where the words of one anchor may stand, with a leader that crosses no other words and no hole. */
function tie(draft: Draft, ground: Ground, { size, anchor, across }: Tie): Tied | undefined {
  const edges = across ? [] : ground.edges.map((e) => grownBy(boxAround(e), THIN_MM));
  const others = holeBoxes(ground).filter((h) => !holdsPoint(grownBy(h, 0.1), anchor));
  const clear = (leader: Chord): boolean => ![...others, ...edges].some((b) => touches(b, ...leader));
  const leaderOf = (box: Box): Chord => [anchor, nearestOf(grownBy(box, 0.3), anchor)];
  const box = placeFor(draft, ground, size, {
    near: anchor,
    on: "room",
    within: LONGEST_LEADER_MM + size.width / 2,
    accept: (b) => crossesNoBox(draft.space, leaderOf(b)) && clear(leaderOf(b)),
  });
  return box && { box, leader: leaderOf(box) };
}

const pointBox = ([x, y]: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

/** Widths that a tag's words are folded to, mm, the most welcome first. */
const WIDTHS_MM = [70, 40, 26] as const;

/** Draws a tag's words and leader where it is shortest; on one sheet if it can be. */
function withTag(draft: Draft, ground: Ground, { words, anchors, spare }: Tag): Draft {
  // A dot on a hole or a stitch would be taken for one.
  const bare = anchors.filter((a) => isFree(draft.space, grownBy(pointBox(a), DOT_MM * 1.5)));
  const best = (bare.length > 0 ? bare : anchors).slice(0, TRIED);
  for (const [across, width] of (spare ? [false] : [false, true]).flatMap((a) =>
    WIDTHS_MM.map((w) => [a, w] as const),
  )) {
    const block = paragraph(words, SMALL_MM, width);
    const size = blockBox(block, ground.reading);
    const tied = best
      .map((anchor) => tie(draft, ground, { size, anchor, across }))
      .filter((t) => t !== undefined)
      .sort((a, b) => apart(...a.leader) - apart(...b.leader))[0];
    if (!tied) continue;
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
  return spare ? draft : withoutRoom(draft, words);
}

/** Says what every fold, cutout, zone, row of holes, seam and mark is. */
export function withTags(draft: Draft, ground: Ground): Draft {
  const said: Tag[] = [];
  return tagsOf(ground).reduce((before, tag) => {
    const anchors = tag.anchors.map((a) => keptPoint(a, ground.kept)).filter((a) => a !== undefined);
    const near = (t: Tag): boolean =>
      t.words === tag.words && apart(t.anchors[0]!, tag.anchors[0]!) < SAME_PLACE_MM;
    if (anchors.length === 0 || said.some(near)) return before;
    said.push(tag);
    return withTag(before, ground, { ...tag, anchors });
  }, draft);
}
