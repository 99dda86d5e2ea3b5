import { pathLength } from "../geometry/length.ts";
import { offsetPath } from "../geometry/offset.ts";
import { arc, line, openPath, type Path, type Point, SAME_POINT_MM, type Segment } from "../geometry/path.ts";
import { dot, leftOf, minus, plus, scaled, sizeOf, turnBetween, unit } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";

// The finished edge of a bag's panel: sides, base and its corners. x = 0 is its middle, y = 0 its lowest edge.

export const CORNERS = ["round", "clipped", "square"] as const;

export type PanelShape = {
  /** From the lowest point of the base to the top. */
  readonly height: number;
  readonly topWidth: number;
  /** Between the base's corners, as if they were square. */
  readonly baseWidth: number;
  readonly corners: (typeof CORNERS)[number];
  /** Radius of a round corner; of a clipped one what is cut off each edge. */
  readonly cornerSize: number;
  /** Radius that rounds both ends of a clipped corner; left out, they are sharp. */
  readonly clipRound?: number;
  /** How far the base's middle hangs below its corners, as an arc. */
  readonly baseSag: number;
};

/** A base that sags less than this is straight, a smaller round a sharp corner: a knife can't follow it. */
const NO_SAG_MM = 0.01;
const SHARP_MM = 0.01;
/** At least this much base is left between two corners, on each side of the middle. */
const BASE_LEFT_MM = 1;

/** Radius of a base through its corners and its lowest point; Infinity when it is straight. */
const baseRadius = ({ baseWidth, baseSag }: PanelShape): number =>
  baseSag < NO_SAG_MM ? Number.POSITIVE_INFINITY : (baseWidth ** 2 / 4 + baseSag ** 2) / (2 * baseSag);

/** The left corner: where it leaves the side, where it reaches the base, and what lies between. */
type Corner = { readonly side: Point; readonly base: Point; readonly between: readonly Segment[] };

/** Radius of a clip's ends, 0 for sharp ones. */
const roundOf = ({ corners, clipRound = 0 }: PanelShape): number =>
  corners === "clipped" && clipRound >= SHARP_MM ? clipRound : 0;

const mirrored = ([x, y]: Point): Point => [0 - x, y];
const sharpCorner = (s: PanelShape): Point => [-s.baseWidth / 2, s.baseSag < NO_SAG_MM ? 0 : s.baseSag];

/** Direction of the left side, downward. */
const sideWay = (s: PanelShape): Point => unit(minus(sharpCorner(s), [-s.topWidth / 2, s.height]));

/** A round that leads from a straight edge that ends at `corner`, on the base, smoothly into the base. */
function ontoBase(corner: Point, way: Point, r: number, radius: number): Corner {
  const inward = leftOf(way);
  // The fillet's middle lies r inside the edge, and r inside the base.
  const foot = plus(corner, scaled(inward, r));
  const found = (middle: Point, base: Point): Corner => ({
    side: minus(middle, scaled(inward, r)),
    base,
    between: [arc(base, middle, true)],
  });
  if (!Number.isFinite(radius)) {
    const middle = plus(foot, scaled(way, (r - foot[1]) / way[1]));
    return found(middle, [middle[0], 0]);
  }
  const centre: Point = [0, radius];
  const fromCentre = minus(foot, centre);
  const b = dot(fromCentre, way);
  const c = dot(fromCentre, fromCentre) - (radius - r) ** 2;
  const middle = minus(foot, scaled(way, b - Math.sqrt(b ** 2 - c)));
  return found(middle, plus(centre, scaled(minus(middle, centre), radius / (radius - r))));
}

/** Where a clip ends on the base, so far along it from the corner. */
function clipEnd(s: PanelShape): Point {
  const [corner, radius] = [sharpCorner(s), baseRadius(s)];
  if (!Number.isFinite(radius)) return [corner[0] + s.cornerSize, 0];
  const turn = s.cornerSize / radius;
  const [x, y] = minus(corner, [0, radius]);
  const [cos, sin] = [trig.cos(turn), trig.sin(turn)];
  return [x * cos - y * sin, radius + x * sin + y * cos];
}

function clippedCorner(s: PanelShape): Corner {
  const [way, r, end] = [sideWay(s), roundOf(s), clipEnd(s)];
  const side = minus(sharpCorner(s), scaled(way, s.cornerSize));
  if (r === 0) return { side, base: end, between: [line(end)] };
  const clip = unit(minus(end, side));
  const take = r * trig.tan(turnBetween(way, clip) / 2);
  const [from, to] = [minus(side, scaled(way, take)), plus(side, scaled(clip, take))];
  const low = ontoBase(end, clip, r, baseRadius(s));
  return {
    side: from,
    base: low.base,
    between: [arc(to, plus(from, scaled(leftOf(way), r)), true), line(low.side), ...low.between],
  };
}

function cornerOf(s: PanelShape): Corner {
  const sharp = sharpCorner(s);
  if (s.corners === "round") return ontoBase(sharp, sideWay(s), s.cornerSize, baseRadius(s));
  return s.corners === "clipped" ? clippedCorner(s) : { side: sharp, base: sharp, between: [] };
}

/** Draws the finished edge: an open path from the top left round the base to the top right. */
export function panelEdge(s: PanelShape): Path {
  const { side, base, between } = cornerOf(s);
  const radius = baseRadius(s);
  const other = mirrored(base);
  const along = Number.isFinite(radius) ? arc(other, [0, radius], true) : line(other);
  const starts = [side, ...between.map((b) => b.to)];
  const back = between.map((b, i): Segment => {
    const to = mirrored(starts[i]!);
    return b.kind === "arc" ? arc(to, mirrored(b.centre), true) : line(to);
  });
  const top: Point = [-s.topWidth / 2, s.height];
  return openPath(top, [line(side), ...between, along, ...back.reverse(), line(mirrored(top))]);
}

/** The base's corners that are meant to be corners, in order along the edge. */
export function panelCorners(s: PanelShape): readonly { readonly name: string; readonly at: Point }[] {
  const { side, base } = cornerOf(s);
  if (s.corners === "round" || roundOf(s) > 0) return [];
  if (s.corners === "square") {
    return [
      { name: "base left", at: base },
      { name: "base right", at: mirrored(base) },
    ];
  }
  return [
    { name: "clip left, side", at: side },
    { name: "clip left, base", at: base },
    { name: "clip right, base", at: mirrored(base) },
    { name: "clip right, side", at: mirrored(side) },
  ];
}

/**
 * The line at `inward` mm inside the finished edge (outside, where negative), ending at the height `top` on
 * both sides.
 */
export function panelOffset(s: PanelShape, inward: number, top: number): Path {
  return upTo(inside(lengthened(panelEdge(s)), inward), top);
}

/** The longest of what lies at the distance: near the ends crumbs may come off. Nearer than a knife it is the same. */
function inside(path: Path, by: number): Path {
  if (Math.abs(by) < SAME_POINT_MM) return path;
  const [first = path, ...rest] = offsetPath(path, by);
  return rest.reduce((a, b) => (pathLength(b) > pathLength(a) ? b : a), first);
}

/** Sides that run on upward, so that lines beside a sloping side still reach the top; mm. */
const LENGTHEN_MM = 20;

function lengthened(path: Path): Path {
  const first = path.segments[0]!.to;
  const last = path.segments.at(-1)!.to;
  const before = path.segments.at(-2)!.to;
  const start = plus(path.start, scaled(unit(minus(path.start, first)), LENGTHEN_MM));
  const end = plus(last, scaled(unit(minus(last, before)), LENGTHEN_MM));
  return openPath(start, [...path.segments.slice(0, -1), line(end)]);
}

/** Cuts both ends, which are straight, at a height. */
function upTo(path: Path, y: number): Path {
  const at = (a: Point, b: Point): Point => [a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]), y];
  const start = at(path.start, path.segments[0]!.to);
  const end = at(path.segments.at(-1)!.to, path.segments.at(-2)!.to);
  return openPath(start, [...path.segments.slice(0, -1), line(end)]);
}

/** What is left free of a corner: below the top on the side, and beside the middle on the base; mm. */
export type CornerRoom = { readonly below: number; readonly beside: number };

/** Between the two rounded ends of a clip at least this much is straight. */
const CLIP_LEFT_MM = 1;

/** True when corners of this size leave the sides and the base their room. */
function cornerFits(s: PanelShape, room: CornerRoom): boolean {
  const r = s.corners === "round" ? s.cornerSize : roundOf(s);
  if (r >= baseRadius(s)) return false;
  const { side, base, between } = cornerOf(s);
  const found = [...side, ...base].every(Number.isFinite);
  const [first, second] = between;
  const clip = second && first ? minus(second.to, first.to) : undefined;
  // Rounds that are too large for their clip pass each other on it.
  if (clip && dot(clip, minus(clipEnd(s), side)) < CLIP_LEFT_MM * sizeOf(minus(clipEnd(s), side)))
    return false;
  return found && side[1] <= s.height - room.below && base[0] <= -Math.max(BASE_LEFT_MM, room.beside);
}

const HALVINGS = 40;

/** The greatest size that fits, from 0 up to `most`; 0 when none does. */
function greatestFit(most: number, fits: (size: number) => boolean): number {
  let [low, high] = [0, most];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The greatest corner that fits, a clipped one with sharp ends, mm; 0 when none does. */
export const mostCorner = (s: Omit<PanelShape, "cornerSize" | "clipRound">, room: CornerRoom): number =>
  greatestFit(s.baseWidth + s.height, (cornerSize) => cornerFits({ ...s, cornerSize }, room));

/** The greatest radius at both ends of a clip that fits, mm. */
export const mostClipRound = (s: Omit<PanelShape, "clipRound">, room: CornerRoom): number =>
  greatestFit(s.baseWidth + s.height, (clipRound) => cornerFits({ ...s, clipRound }, room));
