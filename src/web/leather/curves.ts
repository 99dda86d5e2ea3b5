import { apart, type Path, type Point } from "./shapes.ts";

// A path as SVG data and as straight bits, both with y up: the drawing turns y over once, for everything.

type Segment = Path["segments"][number];
type Arc = Extract<Segment, { readonly kind: "arc" }>;

/** Straight bits that stand for a quarter of a turn, or for a cubic, where only nearness is asked. */
const BITS = 12;
const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;

/** Coordinates come rounded to 0.001 mm; arcs are divided here, so they are rounded again. */
const num = (n: number): string => `${Math.round(n * 1000) / 1000 || 0}`;
const at = ([x, y]: Point): string => `${num(x)} ${num(y)}`;

/** How far an arc turns, radians, positive anticlockwise; ends that meet are a full turn. */
function turnOf(from: Point, { to, centre, ccw }: Arc): number {
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const end = Math.atan2(to[1] - centre[1], to[0] - centre[0]);
  const left = (((end - start) % TURN) + TURN) % TURN;
  if (ccw) return left === 0 ? TURN : left;
  return left === 0 ? -TURN : left - TURN;
}

/** Points along an arc, `bits` of them, the last its end. */
function arcPoints(from: Point, arc: Arc, bits: number): readonly Point[] {
  const { to, centre } = arc;
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const turn = turnOf(from, arc);
  const [first, last] = [apart(from, centre), apart(to, centre)];
  return Array.from({ length: bits }, (_, i): Point => {
    if (i === bits - 1) return to;
    const share = (i + 1) / bits;
    const radius = first + (last - first) * share;
    const angle = start + turn * share;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

const quartersOf = (from: Point, arc: Arc): number =>
  Math.max(1, Math.ceil(Math.abs(turnOf(from, arc)) / QUARTER - 1e-6));

function arcData(from: Point, arc: Arc): string {
  const radius = num((apart(from, arc.centre) + apart(arc.to, arc.centre)) / 2);
  // With y up, an arc that runs anticlockwise runs towards greater angles: SVG's sweep 1.
  return arcPoints(from, arc, quartersOf(from, arc))
    .map((to) => `A${radius} ${radius} 0 0 ${arc.ccw ? 1 : 0} ${at(to)}`)
    .join("");
}

function segmentData(from: Point, segment: Segment): string {
  if (segment.kind === "line") return `L${at(segment.to)}`;
  if (segment.kind === "arc") return arcData(from, segment);
  return `C${at(segment.c1)} ${at(segment.c2)} ${at(segment.to)}`;
}

const startOf = (path: Path, i: number): Point => (i === 0 ? path.start : path.segments[i - 1]!.to);

/** The data of a path, millimetres, y up. */
export const pathData = (path: Path): string =>
  `M${at(path.start)}${path.segments.map((s, i) => segmentData(startOf(path, i), s)).join("")}${path.closed ? "Z" : ""}`;

function cubicPoints(from: Point, { c1, c2, to }: Extract<Segment, { kind: "cubic" }>): readonly Point[] {
  return Array.from({ length: BITS }, (_, i): Point => {
    const t = (i + 1) / BITS;
    const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
    return [a * from[0] + b * c1[0] + c * c2[0] + d * to[0], a * from[1] + b * c1[1] + c * c2[1] + d * to[1]];
  });
}

/** Points along a path: exact for lines; arcs and cubics within a share of a millimetre. */
export const pointsOf = (path: Path): readonly Point[] => [
  path.start,
  ...path.segments.flatMap((segment, i): readonly Point[] => {
    if (segment.kind === "line") return [segment.to];
    const from = startOf(path, i);
    return segment.kind === "arc"
      ? arcPoints(from, segment, BITS * quartersOf(from, segment))
      : cubicPoints(from, segment);
  }),
];

/** Where the path's segments meet: what a rule is laid to. */
export const cornersOf = (path: Path): readonly Point[] => [path.start, ...path.segments.map((s) => s.to)];

function nearestOnBit(p: Point, a: Point, b: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, share));
  return [a[0] + t * dx, a[1] + t * dy];
}

/** The point of a path that is nearest. */
export function nearestOnPath(p: Point, path: Path): Point {
  const points = pointsOf(path);
  let best = path.start;
  for (let i = 1; i < points.length; i++) {
    const here = nearestOnBit(p, points[i - 1]!, points[i]!);
    if (apart(p, here) < apart(p, best)) best = here;
  }
  return best;
}
