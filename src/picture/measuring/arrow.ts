// Arrows that show where the tape runs, each with its measure's number.
import { pathLength, pointAt, subPath } from "../../geometry/length.ts";
import { circlePath, type Path, type Point, polyline } from "../../geometry/path.ts";
import { leftOf, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import type { Item, Stroke, Words } from "../picture.ts";
import { CAPITAL } from "../words.ts";
import { penned, smooth } from "./pen.ts";
import type { Lay } from "./sketch.ts";

/** Where one measure's tape runs, in the units of the sketch that it lies on. */
export type Arrow = {
  /** The way of the tape, through these points, as far as it is seen. */
  readonly points: readonly Point[];
  readonly heads: "both" | "end";
  /** Where the number stands: at a share of the way along the arrow, or beside it at a point. */
  readonly number: number | Point;
  /** How it goes on where it isn't seen: a dashed line. */
  readonly hidden?: readonly Point[];
  /** Thin lines from what is measured to the arrow. */
  readonly guides?: readonly (readonly Point[])[];
};

/** Breadth of an arrow's line, twice that of the widest pen line, so that the two are not mixed up; mm. */
const LINE_MM = 0.9;
/** Length of its head, mm, and the most of a short arrow that one head takes. */
const HEAD_MM = 3.6;
const HEAD_SHARE = 0.38;
/** Half of a head's breadth as a share of its length. */
const HEAD_SLENDER = 0.38;
/** The line runs into its head by a quarter, so that no gap shows. */
const COVERED_SHARE = 0.75;
/** Radius of the ring round a number, mm: its letters' whole box has room in it. */
export const NUMBER_RADIUS_MM = 3.2;
const NUMBER_SIZE_MM = 4;
/** Two figures stand in the same ring. */
const SMALLER_SIZE_MM = 3;

const mark = (path: Path, more: Partial<Stroke> = {}): Stroke => ({
  kind: "stroke",
  layer: "mark",
  line: "01.1",
  path,
  ...more,
});

/** A measure's number in a ring that hides what lies below. */
export function numberRing(number: number, at: Point): readonly [Stroke, Words] {
  const size = number > 9 ? SMALLER_SIZE_MM : NUMBER_SIZE_MM;
  const words: Words = {
    kind: "words",
    layer: "text",
    at: [at[0], at[1] - (CAPITAL * size) / 2],
    size,
    text: `${number}`,
    align: "centre",
    angle: 0,
    bold: true,
  };
  return [mark(circlePath(at, NUMBER_RADIUS_MM), { line: "01.2", fill: "white" }), words];
}

/** A filled head of a length, its tip at `tip`, coming from `from`. */
function head(tip: Point, from: Point, length: number): Stroke {
  const along = unit(minus(tip, from));
  const base = minus(tip, scaled(along, length));
  const side = scaled(leftOf(along), HEAD_SLENDER * length);
  return mark(polyline([tip, plus(base, side), minus(base, side)], true), { fill: "black" });
}

const ruled = (path: Path): Stroke =>
  mark(penned(path, { start: LINE_MM, full: LINE_MM, end: LINE_MM }), { fill: "black" });

function bodyAndHeads(path: Path, heads: Arrow["heads"]): readonly Stroke[] {
  const total = pathLength(path);
  const length = Math.min(HEAD_MM, HEAD_SHARE * total);
  const covered = COVERED_SHARE * length;
  const body = ruled(subPath(path, heads === "both" ? covered : 0, total - covered));
  const last = head(pointAt(path, total), pointAt(path, total - length), length);
  return heads === "both" ? [body, head(path.start, pointAt(path, length), length), last] : [body, last];
}

function numberAt(path: Path, number: Arrow["number"], to: Lay["to"]): Point {
  return typeof number === "number" ? pointAt(path, number * pathLength(path)) : to(number);
}

/** The items of one arrow, its number on top. */
export function arrowItems(arrow: Arrow, number: number, { to }: Lay): readonly Item[] {
  const path = smooth(arrow.points.map(to));
  const thin = (points: readonly Point[]): Stroke => mark(polyline(points.map(to)));
  const hidden = arrow.hidden ? [mark(smooth(arrow.hidden.map(to)), { line: "02.1" })] : [];
  return [
    ...(arrow.guides ?? []).map(thin),
    ...hidden,
    ...bodyAndHeads(path, arrow.heads),
    ...numberRing(number, numberAt(path, arrow.number, to)),
  ];
}
