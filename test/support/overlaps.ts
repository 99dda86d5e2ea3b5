// Finds words that lie on other words, or on lines, or half out of what is shown. It works on the picture
// as an output gets it (flattenPicture) and measures boxes and lines by itself, by sampling, so that it
// knows nothing of how the words were placed.
import { boundsOf } from "../../src/geometry/bounds.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import type { Point } from "../../src/geometry/path.ts";
import { type Clip, flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Stroke, Words } from "../../src/picture/picture.ts";
import { CAPITAL, textWidth } from "../../src/picture/words.ts";

export type Overlap = { readonly words: string; readonly with: string; readonly at: Point };

/** These letters hang below the base line by about this share of the size; other ink ends on it. */
const HANGING = /[gjpqyQ,;()@_|/[\]{}ŋçşţ]/;
const HANG = 0.24;
/** Boxes that touch within this don't overlap, mm. */
const SLACK_MM = 0.02;

type Inked = {
  readonly words: Words;
  readonly corners: readonly Point[];
  readonly clips: readonly Clip[];
  readonly reach: Reach;
};

/** The corners of a text's ink, as it is read. */
function inkOf(words: Words): readonly Point[] {
  const width = textWidth(words.text, words.size, words.bold);
  const left = words.align === "left" ? 0 : words.align === "centre" ? -width / 2 : -width;
  const [cos, sin] = [Math.cos(words.angle), Math.sin(words.angle)];
  const at = (x: number, y: number): Point => [
    words.at[0] + x * cos - y * sin,
    words.at[1] + x * sin + y * cos,
  ];
  const [low, high] = [HANGING.test(words.text) ? -HANG * words.size : 0, CAPITAL * words.size];
  return [at(left, low), at(left + width, low), at(left + width, high), at(left, high)];
}

const side = (a: Point, b: Point, p: Point): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** How deep a point lies inside a box given by its corners, anticlockwise; negative outside. */
function depth(corners: readonly Point[], p: Point): number {
  return Math.min(
    ...corners.map((a, i) => {
      const b = corners[(i + 1) % corners.length]!;
      return side(a, b, p) / Math.max(1e-9, Math.hypot(b[0] - a[0], b[1] - a[1]));
    }),
  );
}

const visible = (clips: readonly Clip[], p: Point): boolean =>
  clips.every((c) => depth(anticlockwise(c), p) >= -SLACK_MM);

function anticlockwise(c: Clip): readonly Point[] {
  const area = c.reduce(
    (sum, a, i) => sum + a[0] * c[(i + 1) % c.length]![1] - a[1] * c[(i + 1) % c.length]![0],
    0,
  );
  return area >= 0 ? c : [...c].reverse();
}

/** Points all over a box, `step` apart. */
function pointsIn(corners: readonly Point[], step: number): readonly Point[] {
  const [a, b, , d] = corners as readonly [Point, Point, Point, Point];
  const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / step));
  const m = Math.max(1, Math.ceil(Math.hypot(d[0] - a[0], d[1] - a[1]) / step));
  return Array.from({ length: (n + 1) * (m + 1) }, (_, i): Point => {
    const [u, v] = [(i % (n + 1)) / n, Math.floor(i / (n + 1)) / m];
    return [a[0] + (b[0] - a[0]) * u + (d[0] - a[0]) * v, a[1] + (b[1] - a[1]) * u + (d[1] - a[1]) * v];
  });
}

type Reach = { readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number };

function reachOf(points: readonly Point[]): Reach {
  let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, maxX, minY, maxY };
}

const near = (a: Reach, b: Reach): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Points along a stroke, close enough that none can cross a line of words unseen. */
function pointsAlong(stroke: Stroke): readonly Point[] {
  const flat = flatten(stroke.path, 0.05);
  const ends = stroke.path.closed ? [...flat, flat[0]!] : flat;
  return ends.flatMap((p, i): readonly Point[] => {
    const q = ends[i + 1];
    if (!q) return [p];
    const n = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 0.4));
    return Array.from(
      { length: n },
      (_, k): Point => [p[0] + ((q[0] - p[0]) * k) / n, p[1] + ((q[1] - p[1]) * k) / n],
    );
  });
}

/** Every place where visible words overlap words or lines. */
export function overlaps(picture: Picture): readonly Overlap[] {
  const flat = flattenPicture(picture);
  const texts = flat.flatMap(({ item, clips }): readonly Inked[] => {
    if (item.kind !== "words" || item.text === "") return [];
    const corners = inkOf(item);
    return [{ words: item, corners, clips, reach: reachOf(corners) }];
  });
  const found: Overlap[] = [];
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) {
      if (!near(a.reach, b.reach)) continue;
      const at = pointsIn(a.corners, 0.5).find(
        (p) => depth(b.corners, p) > SLACK_MM && visible(a.clips, p) && visible(b.clips, p),
      );
      if (at) found.push({ words: a.words.text, with: `"${b.words.text}"`, at });
    }
  });
  for (const { item, clips } of flat) {
    if (item.kind !== "stroke") continue;
    const reach = boundsOf(item.path);
    const close = texts.filter((a) => near(a.reach, reach));
    if (close.length === 0) continue;
    const points = pointsAlong(item);
    for (const a of close) {
      const at = points.find((p) => {
        const beside =
          p[0] < a.reach.minX || p[0] > a.reach.maxX || p[1] < a.reach.minY || p[1] > a.reach.maxY;
        return !beside && depth(a.corners, p) > SLACK_MM && visible(a.clips, p) && visible(clips, p);
      });
      if (at)
        found.push({
          words: a.words.text,
          with: `a line of ${item.layer}${item.id ? ` (${item.id})` : ""}`,
          at,
        });
    }
  }
  return found;
}

/** Visible words that pass the picture's edge, or are cut by a clip. */
export function cutWords(picture: Picture): readonly string[] {
  return flattenPicture(picture).flatMap(({ item, clips }) => {
    if (item.kind !== "words" || item.text === "") return [];
    const points = pointsIn(inkOf(item), 1);
    const seen = points.filter((p) => visible(clips, p));
    const off = seen.some(([x, y]) => x < 0 || y < 0 || x > picture.width || y > picture.height);
    return off || (seen.length > 0 && seen.length < points.length) ? [item.text] : [];
  });
}
