// Lines as a pen draws them: smooth through a few points, full in the middle, thin at the ends. Sums and
// square roots alone, so that the bytes are the same in every engine.
import {
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  type Segment,
  withStarts,
} from "../../geometry/path.ts";
import { apart, between, leftOf, minus, plus, scaled, unit } from "../../geometry/vector.ts";

/** Length of a curve's handle as a share of the chord: a third makes even speed. */
const HANDLE = 1 / 3;

/** Direction at a point between two others: that of both chords, the shorter one counting for more. */
function through(before: Point, at: Point, after: Point): Point {
  const [a, b] = [apart(before, at), apart(at, after)];
  return unit(plus(scaled(minus(at, before), b / a), scaled(minus(after, at), a / b)));
}

function joined(points: readonly Point[], directions: readonly Point[]): readonly Segment[] {
  return points.slice(1).map((to, i) => {
    const from = points[i]!;
    const reach = HANDLE * apart(from, to);
    return cubic(plus(from, scaled(directions[i]!, reach)), minus(to, scaled(directions[i + 1]!, reach)), to);
  });
}

/** A smooth open path through the points, of which no neighbours may be the same. Needs at least two. */
export function smooth(points: readonly Point[]): Path {
  const directions = points.map((p, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (!before) return unit(minus(after!, p));
    return after ? through(before, p, after) : unit(minus(p, before));
  });
  return openPath(points[0]!, joined(points, directions));
}

/** A smooth closed path through the points, in their order. Needs at least three. */
export function smoothLoop(points: readonly Point[]): Path {
  const count = points.length;
  const directions = points.map((p, i) =>
    through(points[(i + count - 1) % count]!, p, points[(i + 1) % count]!),
  );
  return closedPath(points[0]!, joined([...points, points[0]!], [...directions, directions[0]!]));
}

/** How broad a line is at its start, over its length, and at its end, mm. */
export type Nib = { readonly start: number; readonly full: number; readonly end: number };

/** Half the breadth at a share t of the way: a line soon has its full breadth and keeps it long. */
function halfBreadth({ start, full, end }: Nib, t: number): number {
  const toEnd = 2 * Math.abs(t - 0.5);
  const thinning = toEnd * toEnd * toEnd;
  return (full + ((t < 0.5 ? start : end) - full) * thinning) / 2;
}

type Span = { readonly from: Point; readonly c1: Point; readonly c2: Point; readonly to: Point };

function spanOf(from: Point, segment: Segment): Span {
  const { to } = segment;
  if (segment.kind === "cubic") return { from, c1: segment.c1, c2: segment.c2, to };
  return { from, c1: between(from, to, 1 / 3), c2: between(from, to, 2 / 3), to };
}

/**
 * One edge of a span: its ends moved out square to it, its handles longer on the outside of a bend and
 * shorter on the inside, as the chords are.
 */
function edgeOf({ from, c1, c2, to }: Span, halves: readonly number[], side: 1 | -1): Span {
  const [a, b] = [leftOf(unit(minus(c1, from))), leftOf(unit(minus(to, c2)))];
  const [h0, h1, h2, h3] = halves.map((half) => side * half);
  const [start, end] = [plus(from, scaled(a, h0!)), plus(to, scaled(b, h3!))];
  const stretch = apart(start, end) / apart(from, to);
  return {
    from: start,
    c1: plus(plus(start, scaled(minus(c1, from), stretch)), scaled(a, h1! - h0!)),
    c2: plus(plus(end, scaled(minus(c2, to), stretch)), scaled(b, h2! - h3!)),
    to: end,
  };
}

/**
 * The outline, to be filled, of a line drawn along an open path of lines and cubics, of which none may
 * have both ends in one place. Near enough for a line much thinner than its bends.
 */
export function penned(path: Path, nib: Nib): Path {
  const spans = withStarts(path).map(({ from, segment }) => spanOf(from, segment));
  const sizes = spans.map(({ from, to }) => apart(from, to));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  let done = 0;
  const edges = spans.map((span, i) => {
    const halves = [0, 1 / 3, 2 / 3, 1].map((t) => halfBreadth(nib, (done + t * sizes[i]!) / total));
    done += sizes[i]!;
    return { left: edgeOf(span, halves, 1), right: edgeOf(span, halves, -1) };
  });
  const there = edges.map(({ left }) => cubic(left.c1, left.c2, left.to));
  const back = edges.map(({ right }) => cubic(right.c2, right.c1, right.from)).reverse();
  return closedPath(edges[0]!.left.from, [...there, line(edges.at(-1)!.right.to), ...back]);
}
