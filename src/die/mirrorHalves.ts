// An outline that is its own mirror image is fitted in one half, and that half is mirrored.

import { boundsOf } from "../geometry/bounds.ts";
import { type Curve, curveAt, directionAt, partOf } from "../geometry/curve.ts";
import { type Path, type Point, SAME_POINT_MM } from "../geometry/path.ts";
import { apart, cross, dot, minus } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";
import type { Free } from "./arcFewest.ts";
import { mappedCurve } from "./arcFrame.ts";
import { backwards, MOST_TURN } from "./arcMerge.ts";
import type { Axis } from "./symmetry.ts";

/** An axis this near to upright or level, radians, is so, and stands in the middle of the outline's box. */
const UPRIGHT_RAD = 1e-4;
/** A curve that crosses the axis square to it, within this, radians, goes on smoothly into its image. */
const SQUARE_RAD = 1e-4;
/** Places on a curve between which a crossing of the axis is looked for, and halvings. */
const LOOKED = 24;
const HALVINGS = 60;

export type Mirror = { readonly at: Point; readonly way: Point };

/** Half an outline from its first crossing of the axis to the second. */
export type Half = { readonly curves: readonly Curve[]; readonly start: Free; readonly end: Free };

/** The axis without the rounding of the sums it was found by. */
export function mirrorOf(outline: Path, { at, angle }: Axis): Mirror {
  const { minX, minY, maxX, maxY } = boundsOf(outline);
  const middle: Point = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [cos, sin] = [trig.cos(angle), trig.sin(angle)];
  if (Math.abs(sin) < UPRIGHT_RAD) return { at: middle, way: [1, 0] };
  if (Math.abs(cos) < UPRIGHT_RAD) return { at: middle, way: [0, 1] };
  return { at, way: [cos, sin] };
}

export function imageOf({ at, way: [c, s] }: Mirror, [x, y]: Point): Point {
  if (c === 0) return [2 * at[0] - x, y];
  if (s === 0) return [x, 2 * at[1] - y];
  const [dx, dy] = [x - at[0], y - at[1]];
  const along = dx * c + dy * s;
  return [at[0] + 2 * along * c - dx, at[1] + 2 * along * s - dy];
}

const side = ({ at, way }: Mirror, p: Point): number => cross(way, minus(p, at));

/** Where a curve crosses the axis within itself, as t. */
function crossingsOf(curve: Curve, mirror: Mirror): readonly number[] {
  const off = (t: number): number => side(mirror, curveAt(curve, t));
  const found: number[] = [];
  for (let i = 0; i < LOOKED; i++) {
    let [a, b] = [i / LOOKED, (i + 1) / LOOKED];
    const [before, after] = [off(a), off(b)];
    if (before === 0 && i > 0) found.push(a);
    if (!(before * after < 0)) continue;
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (a + b) / 2;
      if (off(middle) * before > 0) a = middle;
      else b = middle;
    }
    found.push((a + b) / 2);
  }
  return found;
}

/** The curves of a closed outline with a joint wherever it crosses the axis. */
function cutAt(curves: readonly Curve[], mirror: Mirror): readonly Curve[] {
  return curves.flatMap((curve): readonly Curve[] => {
    const inner = crossingsOf(curve, mirror).filter((t) =>
      [curve.p0, curve.p1].every((p) => apart(curveAt(curve, t), p) > SAME_POINT_MM),
    );
    const cuts = [0, ...inner, 1];
    return cuts.slice(1).map((t, i) => partOf(curve, cuts[i]!, t));
  });
}

function endAt(mirror: Mirror, curve: Curve, t: number): Free {
  const along = Math.abs(dot(directionAt(curve, t), mirror.way));
  return along < SQUARE_RAD ? "axis" : "corner";
}

/**
 * One half of a closed outline, whichever begins first; undefined when it doesn't cross the axis in just two
 * places.
 */
export function halfOf(curves: readonly Curve[], mirror: Mirror): Half | undefined {
  const cut = cutAt(curves, mirror);
  const on = cut.flatMap(({ p0 }, i) => (Math.abs(side(mirror, p0)) < SAME_POINT_MM ? [i] : []));
  const [first, second] = on;
  if (on.length !== 2 || first === undefined || second === undefined) return undefined;
  const own = cut.slice(first, second);
  if (own.length === 0) return undefined;
  return { curves: own, start: endAt(mirror, own[0]!, 0), end: endAt(mirror, own.at(-1)!, 1) };
}

/** A line or arc and its image, which it meets on the axis, as one; they are two when it is bent there. */
function joined(curve: Curve, mirror: Mirror): readonly Curve[] {
  const image = backwards(mappedCurve(curve, (p) => imageOf(mirror, p), true));
  if (endAt(mirror, curve, 1) === "corner") return [curve, image];
  if (curve.kind === "line") return [{ ...curve, p1: image.p1 }];
  if (curve.kind !== "arc" || Math.abs(2 * curve.sweep) > MOST_TURN) return [curve, image];
  return [{ ...curve, p1: image.p1, centre: onAxis(mirror, curve.centre), sweep: 2 * curve.sweep }];
}

/** The place on the axis next to the point. */
function onAxis(mirror: Mirror, p: Point): Point {
  const image = imageOf(mirror, p);
  return [(p[0] + image[0]) / 2, (p[1] + image[1]) / 2];
}

/** A half with its mirror image: a closed outline whose curves across the axis are centred on it. */
export function withImage(half: readonly Curve[], mirror: Mirror): readonly Curve[] {
  const image = half.map((curve) => backwards(mappedCurve(curve, (p) => imageOf(mirror, p), true)));
  const back = [...image].reverse();
  const [last, first] = [half.at(-1)!, half[0]!];
  const across = joined(last, mirror);
  // The first curve's image comes last and runs into it.
  const home = joined(backwards(first), mirror).map(backwards).reverse();
  if (half.length === 1) return [...across];
  const inner = [...half.slice(1, -1), ...across, ...back.slice(1, -1)];
  return home.length === 1 ? [home[0]!, ...inner] : [first, ...inner, back.at(-1)!];
}
