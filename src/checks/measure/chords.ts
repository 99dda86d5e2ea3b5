import { flatten } from "../../geometry/flatten.ts";
import type { Path, Point } from "../../geometry/path.ts";
import { remembered } from "../../geometry/remember.ts";

/** Outlines are followed this closely when a width is measured on them; a tenth of the finest limit. */
const FOLLOW_MM = 0.001;

/** A closed outline's points, chords between them within 0.001 mm of it. */
export const outlinePoints = remembered((path: Path): readonly Point[] => flatten(path, FOLLOW_MM));

export type Span = readonly [low: number, high: number];

/** The stretches of the line y = `at` (axis "x") or x = `at` (axis "y") that lie inside a polygon, rising. */
export function spansInside(points: readonly Point[], axis: "x" | "y", at: number): readonly Span[] {
  const [along, across] = axis === "x" ? [0, 1] : [1, 0];
  const met: number[] = [];
  for (const [i, a] of points.entries()) {
    const b = points[(i + 1) % points.length]!;
    if (a[across]! > at === b[across]! > at) continue;
    const t = (at - a[across]!) / (b[across]! - a[across]!);
    met.push(a[along]! + t * (b[along]! - a[along]!));
  }
  met.sort((p, q) => p - q);
  return met.flatMap((low, i): Span[] => (i % 2 === 0 && i + 1 < met.length ? [[low, met[i + 1]!]] : []));
}

/** How far a point may lie outside a span by rounding and still belong to it; mm. */
const BELONGS_MM = 0.002;

/** Width of a piece along x, measured on its drawn outline across it through a point; undefined outside it. */
export function widthAcross(outline: Path, [x, y]: Point): number | undefined {
  const spans = spansInside(outlinePoints(outline), "y", x);
  const span = spans.find(([low, high]) => y >= low - BELONGS_MM && y <= high + BELONGS_MM);
  return span && span[1] - span[0];
}
