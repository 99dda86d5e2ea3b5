// Which way a slot lies: the smallest box round it at the direction of its longest straight side.

import { boundsOf } from "../geometry/bounds.ts";
import { curvesOf } from "../geometry/curve.ts";
import type { Path } from "../geometry/path.ts";
import { turned } from "../geometry/transform.ts";
import { apart } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";

export type LongSide = { readonly length: number; readonly width: number; readonly angle: number };

/** Rounding decides not whether a slot that stands upright points up or down. */
const UPRIGHT = 1e-9;

/** The angle as that of a line, above −π/2 to π/2: a slot has no head and no tail. */
export const ofLine = (angle: number): number => angle - Math.PI * Math.ceil(angle / Math.PI - 0.5 - UPRIGHT);

/** Length and width over all of a closed path and the direction of its length, in (−π/2, π/2]. */
export function longSide(path: Path): LongSide {
  const lines = curvesOf(path).filter((curve) => curve.kind === "line");
  const longest = lines.reduce<(typeof lines)[number] | undefined>(
    (best, l) => (!best || apart(l.p0, l.p1) > apart(best.p0, best.p1) + 1e-6 ? l : best),
    undefined,
  );
  const along = longest ? trig.atan2(longest.p1[1] - longest.p0[1], longest.p1[0] - longest.p0[0]) : 0;
  const { minX, minY, maxX, maxY } = boundsOf(turned(path, -along));
  const [a, b] = [maxX - minX, maxY - minY];
  return a >= b
    ? { length: a, width: b, angle: ofLine(along) }
    : { length: b, width: a, angle: ofLine(along + Math.PI / 2) };
}
