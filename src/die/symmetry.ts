// Is a die its own mirror image? Looked at on what is drawn: outline, slots and holes together.

import { boundsOf } from "../geometry/bounds.ts";
import { curveAt, curvesOf } from "../geometry/curve.ts";
import { distanceToPath } from "../geometry/distance.ts";
import { flatten } from "../geometry/flatten.ts";
import type { Path, Point } from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";

/** Mirror images that lie this near each other, mm, are the same: what a die's drawing promises. */
const SAME_MM = 0.05;
/** Chords that the outline's balance is worked from. */
const CHORD_MM = 0.002;
/** Chords at whose ends mirror images are compared. */
const COMPARED_MM = 0.05;
/** An outline whose spread differs by less than this share between its two main directions has none. */
const EVEN = 0.01;

/** A line through `at` in the direction `angle`, radians. */
export type Axis = { readonly at: Point; readonly angle: number };

type Balance = { readonly centre: Point; readonly xx: number; readonly yy: number; readonly xy: number };

/** Centre and second moments of a polygon's area, by its triangles from the first corner (Green's theorem). */
function balanceOf(points: readonly Point[]): Balance {
  const [ox, oy] = points[0]!;
  const sums = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const [ax, ay, bx, by] = [p[0] - ox, p[1] - oy, q[0] - ox, q[1] - oy];
    const twice = ax * by - bx * ay;
    sums.area += twice / 2;
    sums.x += (twice * (ax + bx)) / 6;
    sums.y += (twice * (ay + by)) / 6;
    sums.xx += (twice * (ax * ax + ax * bx + bx * bx)) / 12;
    sums.yy += (twice * (ay * ay + ay * by + by * by)) / 12;
    sums.xy += (twice * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)) / 24;
  });
  const [cx, cy] = [sums.x / sums.area, sums.y / sums.area];
  return {
    centre: [ox + cx, oy + cy],
    xx: sums.xx / sums.area - cx * cx,
    yy: sums.yy / sums.area - cy * cy,
    xy: sums.xy / sums.area - cx * cy,
  };
}

function middleOf(path: Path): Point {
  const { minX, minY, maxX, maxY } = boundsOf(path);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/**
 * Where an axis can lie: through the centre of area, along a main direction of its spread. A shape spread
 * evenly (a circle, a square) has no main direction: then through each joint, each segment's middle and each
 * hole's.
 */
function candidates(outline: Path, inner: readonly Path[]): readonly Axis[] {
  const { centre, xx, yy, xy } = balanceOf(flatten(outline, CHORD_MM));
  const main = trig.atan2(2 * xy, xx - yy) / 2;
  const axis = (angle: number): Axis => ({ at: centre, angle });
  if (Math.hypot(xx - yy, 2 * xy) > EVEN * (xx + yy)) return [axis(main), axis(main + Math.PI / 2)];
  const places = [
    ...curvesOf(outline).flatMap((curve) => [curve.p0, curveAt(curve, 0.5)]),
    ...inner.map(middleOf),
  ].filter((p) => apart(p, centre) > SAME_MM);
  return [
    axis(main),
    axis(main + Math.PI / 2),
    ...places.map(([x, y]) => axis(trig.atan2(y - centre[1], x - centre[0]))),
  ];
}

function mirrored([x, y]: Point, { at, angle }: Axis): Point {
  const [cos, sin] = [trig.cos(2 * angle), trig.sin(2 * angle)];
  const [dx, dy] = [x - at[0], y - at[1]];
  return [at[0] + cos * dx + sin * dy, at[1] + sin * dx - cos * dy];
}

/** True when the image of each point lies on one of the paths. A mirror image's image is the thing itself, so one way is both. */
function liesOn(paths: readonly Path[], points: readonly Point[], axis: Axis, within: number): boolean {
  return points.every((point) => {
    const image = mirrored(point, axis);
    return paths.some((path) => distanceToPath(image, path) <= within);
  });
}

/**
 * The line about which a closed outline and all that is cut within it are their own mirror image, within
 * `within` mm; undefined when there is none.
 */
export function mirrorAxis(
  outline: Path,
  inner: readonly Path[],
  within: number = SAME_MM,
): Axis | undefined {
  const edge = flatten(outline, COMPARED_MM);
  const holes = inner.flatMap((path) => flatten(path, COMPARED_MM));
  return candidates(outline, inner).find(
    (axis) => liesOn([outline], edge, axis, within) && liesOn(inner, holes, axis, within),
  );
}
