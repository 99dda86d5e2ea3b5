import { boundsOf } from "../../geometry/bounds.ts";
import { containsPoint } from "../../geometry/contains.ts";
import { distanceToPath } from "../../geometry/distance.ts";
import { endPoint, type Path, type Point } from "../../geometry/path.ts";
import { apart, leftOf, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import type { Hole, Mark, Piece, Zone } from "../../model/piece.ts";
import { chordsOf } from "./chords.ts";
import type { Ground } from "./draft.ts";
import { sayCutout, sayFold, sayHoleSize, sayId, sayZone, sayZoneShort } from "./say.ts";
import { seamTags } from "./seamTags.ts";
import { pointsOn, shares, type Tag } from "./tag.ts";

// What on a piece has words of its own.

/** How far beside a band's edge a point is looked for, mm. */
const BAND_MM = [1.2, 0.8, 2.4] as const;
/** A leader's dot beyond a short cut stands clear of it, mm. */
const PAST_CUT_MM = 1;

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
  const sewn = new Set(piece.seams.flatMap((s) => s.holes));
  for (const hole of piece.holes) {
    // A seam's holes are said with it.
    if (hole.kind === "awl" || (hole.use === "stitch" && sewn.has(hole.id))) continue;
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

/** Points inside a band that follows an edge, beside its longest sides. */
function pointsInBand(path: Path): readonly Point[] {
  const long = [...chordsOf(path)].sort((a, b) => apart(...b) - apart(...a)).slice(0, 6);
  const inside = BAND_MM.flatMap((aside) =>
    long.flatMap(([a, b]) => {
      const inward = scaled(leftOf(unit(minus(b, a))), aside);
      return shares(a, b, [0.5, 0.3, 0.7]).flatMap((p) => [plus(p, inward), minus(p, inward)]);
    }),
  ).filter((p) => containsPoint(path, p));
  return inside.length > 0 ? inside : pointsOn(path);
}

const isBand = ({ kind }: Zone): boolean => kind === "glue" || kind === "trim";

/** What fields are for; a band is named once, however many fields it consists of. */
function zoneTags(piece: Piece): readonly Tag[] {
  const bands = piece.zones.filter(isBand);
  const labels = [...new Set(bands.map((z) => z.label))];
  return [
    ...piece.zones
      .filter((z) => !isBand(z))
      .map(
        (z): Tag => ({
          words: sayZone(z),
          anchors: pointsIn(z.outline, piece),
          ...(z.kind === "skive" ? { short: sayZoneShort(z), each: true } : {}),
        }),
      ),
    ...labels.map(
      (words): Tag => ({
        words,
        anchors: bands.filter((z) => z.label === words).flatMap((z) => pointsInBand(z.outline)),
      }),
    ),
  ];
}

/** Points past the inner ends of short cuts, then beside them; those nearest to a row's middle first. */
function pointsAt(marks: readonly Mark[], outline: Path): readonly Point[] {
  const middle = Math.floor(marks.length / 2);
  const inOrder = [...marks.slice(middle), ...marks.slice(0, middle)];
  const ends = inOrder.map(({ path }) => {
    const [a, b] = [path.start, endPoint(path)];
    return distanceToPath(a, outline) <= distanceToPath(b, outline) ? [a, b] : [b, a];
  });
  const way = ([edge, inner]: readonly Point[]): Point => unit(minus(inner!, edge!));
  return [
    ...ends.map((e) => plus(e[1]!, scaled(way(e), PAST_CUT_MM))),
    ...ends.flatMap((e) => [1, -1].map((side) => plus(e[1]!, scaled(leftOf(way(e)), side * PAST_CUT_MM)))),
  ];
}

const CLIP_WORDS = "clip here, stop before the stitches";

/** What marks are for; equal notches are named once on a piece, and clips all together. */
function markTags({ marks, outline }: Piece): readonly Tag[] {
  const clips = marks.filter((m) => m.kind === "clip");
  const notches = marks.filter((m) => m.kind === "notch" && m.label !== "");
  const others = marks.filter((m) => m.kind !== "clip" && m.kind !== "notch" && m.label !== "");
  const labels = [...new Set(notches.map((m) => m.label))];
  return [
    ...(clips.length > 0 ? [{ words: CLIP_WORDS, anchors: pointsAt(clips, outline) }] : []),
    ...labels.map(
      (label): Tag => ({
        words: /notch/i.test(label) ? label : `${label} notch`,
        anchors: pointsAt(
          notches.filter((m) => m.label === label),
          outline,
        ),
      }),
    ),
    ...others.map((m): Tag => ({ words: m.label, anchors: pointsOn(m.path) })),
  ];
}

/** Everything on a piece that has words of its own, the most needed first. */
export function tagsOf(ground: Ground): readonly Tag[] {
  const { piece } = ground;
  return [
    ...piece.folds.map(
      (f): Tag => ({ words: sayFold(f), anchors: [f.to, f.from, ...shares(f.from, f.to, [0.8, 0.2])] }),
    ),
    ...(piece.rough ? [{ words: "cut roughly here first", anchors: pointsOn(piece.rough) }] : []),
    ...piece.cutouts.map((c): Tag => ({ words: sayCutout(c), anchors: pointsOn(c.outline) })),
    ...holeTags(ground),
    ...zoneTags(piece),
    ...seamTags(piece),
    ...markTags(piece),
  ];
}
