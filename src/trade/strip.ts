import { cornerTurns } from "../geometry/corners.ts";
import { pathLength } from "../geometry/length.ts";
import { type Path, type Point, polyline } from "../geometry/path.ts";
import { reversed } from "../geometry/transform.ts";

// Edges of a strip that is sewn round a body: lines of points in +x, as seen on the strip's upper edge.

/** Lengths that differ by less are one, mm; far below what a knife follows. */
const SAME_MM = 1e-6;

/** True when a path turns where its segment i begins. */
function turnsAt(path: Path, i: number): boolean {
  const s = pathLength({ ...path, segments: path.segments.slice(0, i) });
  return cornerTurns(path).some((c) => Math.abs(c.s - s) < SAME_MM && c.turn !== 0);
}

/** Length of the straight stretch that a path begins with, mm; 0 when it begins with a curve. */
export function straightStart(path: Path): number {
  const first = path.segments.findIndex((s, i) => s.kind !== "line" || (i > 0 && turnsAt(path, i)));
  const straight = first < 0 ? path.segments : path.segments.slice(0, first);
  return pathLength({ ...path, segments: straight });
}

/** Length of the shortest of the straight stretches that the paths begin and end with, mm. */
export const straightSides = (...paths: readonly Path[]): number =>
  Math.min(...paths.flatMap((p) => [straightStart(p), straightStart(reversed(p))]));

export type Tapering = {
  /** Length of the seam, from its first to its last stitch. */
  readonly length: number;
  /** From a top edge of the strip to the first stitch. */
  readonly beyond: number;
  /** The seam's straight sides below the first stitch, over which the strip tapers. */
  readonly side: number;
  /** The seam's y over base and corners, and how much lower it lies at the top edges. */
  readonly level: number;
  readonly rise: number;
};

/**
 * The flat seam line from top edge to top edge, its middle at x = 0: level over base and corners, sloping over
 * the straight sides, as long as the seam and what lies beyond its ends.
 */
export function seamPoints(t: Tapering): readonly Point[] {
  const side = Math.min(t.side, t.length / 2);
  const slope = side + t.beyond;
  const half = t.length / 2 - side;
  const end = half + Math.sqrt(Math.max(slope ** 2 - t.rise ** 2, 0));
  const level = (x: number): Point => [x, t.level];
  if (Math.abs(t.rise) < SAME_MM || slope < SAME_MM) return [level(-end), level(end)];
  const inner = half > SAME_MM ? [level(-half), level(half)] : [level(0)];
  return [[-end, t.level - t.rise], ...inner, [end, t.level - t.rise]];
}

/** The line at distance d to the left of a line of points in +x; its ends stay straight above theirs. */
export function beside(points: readonly Point[], d: number): readonly Point[] {
  const normals = points.slice(1).map(([x, y], i): Point => {
    const [dx, dy] = [x - points[i]![0], y - points[i]![1]];
    const size = Math.sqrt(dx * dx + dy * dy);
    return [-dy / size, dx / size];
  });
  return points.map(([x, y], i): Point => {
    const [a, b] = [normals[i - 1], normals[i]];
    if (!a || !b) return [x, y + d / (a ?? b)![1]];
    const share = d / (1 + a[0] * b[0] + a[1] * b[1]);
    return [x + share * (a[0] + b[0]), y + share * (a[1] + b[1])];
  });
}

/** The closed band between two distances beside a line of points, anticlockwise; `from` < `to`. */
export const bandBeside = (points: readonly Point[], from: number, to: number): Path =>
  polyline([...beside(points, from), ...[...beside(points, to)].reverse()], true);
