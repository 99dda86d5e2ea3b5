import type { Point } from "../../src/geometry/path.ts";

// A taut string round a solid, without any tangent or arc: the solid as many points, and their convex hull.

const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Corners of the convex hull, anticlockwise. */
export function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (run: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of run) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Length round a polygon. */
export const lengthRound = (corners: readonly Point[]): number =>
  corners.reduce((sum, p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);

/** Points on a circle. */
export const onCircle = (centre: Point, radius: number, count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i): Point => {
    const a = (2 * Math.PI * i) / count;
    return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)];
  });

/** Points on a rectangle with rounded corners, centred on the origin. */
export const onRoundedBar = (
  width: number,
  height: number,
  radius: number,
  count: number,
): readonly Point[] =>
  [1, -1].flatMap((sx) =>
    [1, -1].flatMap((sy) => onCircle([sx * (width / 2 - radius), sy * (height / 2 - radius)], radius, count)),
  );

/** Length of a taut string from (x, h) round the solid's far side to (x, −h). */
export function tautRound(solid: readonly Point[], x: number, h: number): number {
  const corners = hull([...solid, [x, h], [x, -h]]);
  return lengthRound(corners) - 2 * h;
}
