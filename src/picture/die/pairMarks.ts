// What stands on the view of a nested die besides its lines: both datums, how far the second lies from the
// first, and where the two come nearest.

import type { Die } from "../../die/die.ts";
import type { Nest } from "../../die/nest.ts";
import { boundsOf } from "../../geometry/bounds.ts";
import { distanceToPath, nearestOnPath } from "../../geometry/distance.ts";
import { flatten } from "../../geometry/flatten.ts";
import {
  arc,
  type Box,
  circlePath,
  line,
  openPath,
  type Path,
  type Point,
  polyline,
} from "../../geometry/path.ts";
import { placed } from "../../geometry/transform.ts";
import { apart, between, minus, plus, polar, scaled, unit } from "../../geometry/vector.ts";
import type { Units } from "../../model/say.ts";
import { MM_PER_INCH, printNumber } from "../../units/index.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Item, Stroke } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { arrow, type Dimension, dimensionStrokes } from "../piece/dimension.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";
import { scaledPath } from "../sheet/scale.ts";

/** A datum's circle, and half of its cross, mm on paper. */
const DATUM_MM = 2;
/** The least circle that shows its black quarters; between two crosses, and from a circle to its cross's end. */
const LEAST_DATUM_MM = 0.9;
const OFF_CROSS_MM = 0.5;
const CROSS_MM = 6;
/** From the board to the dimension line of an offset, and from there to its words, mm. */
const OFFSET_MM = 6.5;
const WORDS_MM = 1.2;
/** Two arrows need this much between them, mm; where there is less they come from outside. */
const ARROWS_MM = 8;
const OUTSIDE_MM = 6;
/** The tails of the arrows at the least gap: short, they lie on the pieces, mm. */
const GAP_TAIL_MM = 4.5;
/** Outlines are followed this closely when their nearest places are looked for, mm. */
const FOLLOW_MM = 0.01;
/** Places along a straight edge are this far apart, and this much further away is as near as the nearest, mm. */
const STEP_MM = 2;
const EQUAL_MM = 0.02;
/** Past the end of a piece's centre line, from the outline, mm. */
const AXIS_MM = 4.2;
/** A cosine below this: upright. */
const STRAIGHT = 1e-6;
/** What is nearer than this is no offset, mm. */
const NONE_MM = 0.0005;
/** A place is given to a thousandth of a millimetre, as the file with the true lines has it. */
const DECIMALS = { mm: 3, in: 4 } as const;

/** A place as it is dimensioned, in both units. */
export function sayPlace(mm: number, units: Units): string {
  const metric = printNumber(mm, DECIMALS.mm);
  const inches = printNumber(mm / MM_PER_INCH, DECIMALS.in);
  return units === "in" ? `${inches} [${metric}]` : `${metric} [${inches}]`;
}

/** How large a datum's sign is, mm on paper. */
export type DatumSize = { readonly radius: number; readonly arm: number };

/** As usual, or as small as two datums so far apart on paper need it: their crosses do not touch. */
export function datumSize(far: number): DatumSize {
  const arm = Math.min(CROSS_MM, far / 2 - OFF_CROSS_MM);
  const radius = Math.min(DATUM_MM, Math.max(LEAST_DATUM_MM, arm / 2));
  return { radius, arm: Math.max(arm, radius + OFF_CROSS_MM) };
}

/** A datum: a circle whose first and third quarters are black, and a cross that passes it. */
export function datumSign(at: Point, id: string, { radius: r, arm: reach }: DatumSize): readonly Stroke[] {
  const on = (dx: number, dy: number): Point => plus(at, [dx, dy]);
  const quarter = (from: Point, to: Point): Stroke => ({
    ...stroke("mark", "01.1", { ...openPath(at, [line(from), arc(to, at, true), line(at)]), closed: true }),
    fill: "black",
  });
  const arm = (dx: number, dy: number): Stroke =>
    stroke("mark", "01.1", polyline([on(-dx, -dy), on(dx, dy)]));
  return [
    { ...stroke("mark", "01.1", circlePath(at, r), id), fill: "white" },
    arm(reach, 0),
    arm(0, reach),
    quarter(on(r, 0), on(0, r)),
    quarter(on(-r, 0), on(0, -r)),
  ];
}

/** Arrows that point at each other from outside, with tails. */
function outsideArrows(a: Point, b: Point, tail: number): readonly Stroke[] {
  const along = unit(minus(b, a));
  const from = (tip: Point, way: Point): readonly Stroke[] => [
    stroke("mark", "01.1", polyline([tip, plus(tip, scaled(way, tail))])),
    arrow("mark", tip, scaled(way, -1)),
  ];
  return [...from(a, scaled(along, -1)), ...from(b, along)];
}

function strokesOf(dimension: Dimension): readonly Stroke[] {
  const { lineFrom, lineTo } = dimension;
  const all = dimensionStrokes("mark", dimension);
  if (apart(lineFrom, lineTo) >= ARROWS_MM) return all;
  return [...all.filter(({ fill }) => fill === undefined), ...outsideArrows(lineFrom, lineTo, OUTSIDE_MM)];
}

/** Which way an offset is measured. */
type Along = "x" | "y";

/**
 * Where the extension line of a datum begins, going up for x and right for y: at the end of its cross; where the
 * piece's centre line runs that way through the datum, at that line's end, as the one would hide the other.
 */
function extensionFrom(
  [x, y]: Point,
  along: Along,
  axis: Die["axis"],
  { maxX, maxY }: Box,
  arm: number,
): Point {
  const onAxis =
    axis !== undefined &&
    Math.abs(along === "x" ? trig.cos(axis.angle) : trig.sin(axis.angle)) < STRAIGHT &&
    Math.abs(axis.at[along === "x" ? 0 : 1]) < NONE_MM;
  if (along === "x") return [x, Math.max(y + arm, onAxis ? maxY + AXIS_MM : y)];
  return [Math.max(x + arm, onAxis ? maxX + AXIS_MM : x), y];
}

/** The words beside the line of an offset: above it, or turned and to its right. */
function offsetWords(text: string, along: Along, line: number, middle: number): readonly Item[] {
  const block = [{ text, size: PLAIN_MM }];
  const { width, height } = blockSize(block);
  const [a, b] = [middle - width / 2, middle + width / 2];
  const [c, d] = [line + WORDS_MM, line + WORDS_MM + height];
  return along === "x"
    ? blockWords(block, { minX: a, maxX: b, minY: c, maxY: d })
    : blockWords(block, { minX: c, maxX: d, minY: a, maxY: b }, 90);
}

type OffsetAsked = {
  readonly die: Die;
  readonly nest: Nest;
  readonly units: Units;
  readonly k: number;
  readonly board: Box;
  readonly datum: DatumSize;
};

/** The offset along x above the board, that along y to its right; nothing for one that is 0. */
export function offsetItems({ die, nest, units, k, board, datum }: OffsetAsked): readonly Item[] {
  const { second } = nest;
  const to = scaled(second.at, k);
  const one = scaledPath(die.rules[0]!.path, { x: k, y: k });
  const [first, other] = [boundsOf(one), boundsOf(placed(one, { ...second, at: to }))];
  const offset = (along: Along): readonly Item[] => {
    const i = along === "x" ? 0 : 1;
    if (Math.abs(second.at[i]) < NONE_MM) return [];
    const line = (along === "x" ? board.maxY : board.maxX) + OFFSET_MM;
    const dimension: Dimension = {
      from: extensionFrom([0, 0], along, die.axis, first, datum.arm),
      to: extensionFrom(to, along, die.axis, other, datum.arm),
      lineFrom: along === "x" ? [0, line] : [line, 0],
      lineTo: along === "x" ? [to[0], line] : [line, to[1]],
    };
    return [
      ...strokesOf(dimension),
      ...offsetWords(sayPlace(Math.abs(second.at[i]), units), along, line, to[i] / 2),
    ];
  };
  return [...offset("x"), ...offset("y")];
}

/** Places along an outline, close together also where it is straight. */
function placesAlong(path: Path): readonly Point[] {
  const corners = flatten(path, FOLLOW_MM);
  return corners.flatMap((a, i): readonly Point[] => {
    const b = corners[i + 1] ?? (path.closed ? corners[0]! : a);
    const count = Math.max(1, Math.ceil(apart(a, b) / STEP_MM));
    return Array.from({ length: count }, (_, j) => between(a, b, j / count));
  });
}

/** Both datums, both centre lines as far as they reach, and all rules but the outlines: notches stand on these. */
function takenBy({ axis, rules }: Die, { second }: Nest): readonly Path[] {
  const { minX, minY, maxX, maxY } = boundsOf(rules[0]!.path);
  const far = maxX - minX + maxY - minY;
  const own = [
    polyline([[0, 0]]),
    ...rules.slice(1).map(({ path }) => path),
    ...(axis ? [polyline([polar(axis.at, -far, axis.angle), polar(axis.at, far, axis.angle)])] : []),
  ];
  return [...own, ...own.map((path) => placed(path, second))];
}

/**
 * The places of both outlines that lie nearest to each other, mm from datum 1: the first's, the second's. Of
 * edges that run side by side, the middle of what is equally near, off the pieces' corners; `clear` mm off the
 * datums and the centre lines where that can be.
 */
export function nearestPlaces(die: Die, nest: Nest, clear: number): readonly [Point, Point] {
  const { second } = nest;
  const one = die.rules[0]!.path;
  const other = placed(one, second);
  const far = (from: Path, to: Path) => placesAlong(from).map((at) => ({ at, far: distanceToPath(at, to) }));
  const [mine, its] = [far(one, other), far(other, one)];
  const least = (all: typeof mine): number => Math.min(...all.map((p) => p.far));
  // The nearest place of one is an end of a straight bit of it, or opposite to an end of the other's.
  const ofOne = least(mine) <= least(its);
  const near = (ofOne ? mine : its).filter((p) => p.far <= Math.min(least(mine), least(its)) + EQUAL_MM);
  const middle = scaled(
    near.reduce((sum, { at }) => plus(sum, at), [0, 0] as Point),
    1 / near.length,
  );
  const taken = takenBy(die, nest);
  const free = near.filter(({ at }) => taken.every((path) => distanceToPath(at, path) >= clear));
  const { at } = (free.length > 0 ? free : near).reduce((a, b) =>
    apart(b.at, middle) < apart(a.at, middle) ? b : a,
  );
  return ofOne ? [at, nearestOnPath(at, other).point] : [nearestOnPath(at, one).point, at];
}

export type GapMark = {
  readonly items: readonly Stroke[];
  /** Where a line to its words may begin: the ends of the arrows' tails. */
  readonly ends: readonly [Point, Point];
  readonly middle: Point;
};

/** Arrows at the least gap, from outside: there is never room between. */
export function gapMark([a, b]: readonly [Point, Point], k: number): GapMark {
  const [p, q] = [scaled(a, k), scaled(b, k)];
  const back = scaled(unit(minus(q, p)), GAP_TAIL_MM);
  return {
    items: outsideArrows(p, q, GAP_TAIL_MM),
    ends: [minus(p, back), plus(q, back)],
    middle: between(p, q, 0.5),
  };
}
