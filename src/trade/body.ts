import { arc, cubic, line, openPath, type Path, type Point, type Segment } from "../geometry/path.ts";

// The shaped edge of a cheek: half its width as a function of length, made of arcs and cubics.

export const BODIES = ["straight", "swelled", "tapered", "scalloped"] as const;
export type BodyKind = (typeof BODIES)[number];

export type Body = {
  readonly kind: BodyKind;
  /** Where the shape begins and ends. */
  readonly from: number;
  readonly to: number;
  /** Widths at its beginning and end, and at its widest. */
  readonly widthFrom: number;
  readonly widthTo: number;
  readonly widest: number;
  /** Place of the widest, as a share of the body's length. */
  readonly widestAt: number;
  readonly scallops: number;
};

export type BodyEdge = {
  /** The upper edge, from `from` to `to`. */
  readonly path: Path;
  /** Cusps between scallops, the only corners. */
  readonly corners: readonly Point[];
};

/** Handles of this share of the run give a curve that leaves and arrives along the strap. */
const HANDLE = 0.45;

/** A curve that is level at both ends. */
function easy(a: Point, b: Point): Segment {
  const reach = (b[0] - a[0]) * HANDLE;
  return cubic([a[0] + reach, a[1]], [b[0] - reach, b[1]], b);
}

/** Draws the upper edge of a body. */
export function bodyEdge(b: Body): BodyEdge {
  const start: Point = [b.from, b.widthFrom / 2];
  const end: Point = [b.to, b.widthTo / 2];
  if (b.kind === "scalloped") return scallops(b, start, end);
  if (b.kind === "swelled") {
    const widest: Point = [b.from + (b.to - b.from) * b.widestAt, b.widest / 2];
    return { path: openPath(start, [easy(start, widest), easy(widest, end)]), corners: [] };
  }
  const level = Math.abs(start[1] - end[1]) < 1e-9;
  return { path: openPath(start, [level ? line(end) : easy(start, end)]), corners: [] };
}

/** Equal arcs, each rising by the same amount over its chord. */
function scallops(b: Body, start: Point, end: Point): BodyEdge {
  const rise = (b.widest - Math.max(b.widthFrom, b.widthTo)) / 2;
  const cusp = (i: number): Point => [
    start[0] + ((end[0] - start[0]) * i) / b.scallops,
    start[1] + ((end[1] - start[1]) * i) / b.scallops,
  ];
  const segments = Array.from({ length: b.scallops }, (_, i) =>
    rise < 1e-6 ? line(cusp(i + 1)) : bow(cusp(i), cusp(i + 1), rise),
  );
  const corners = Array.from({ length: b.scallops + 1 }, (_, i) => cusp(i));
  return { path: openPath(start, segments), corners };
}

/** An arc from a to b that bows to the left of a → b by `rise`. */
function bow(a: Point, b: Point, rise: number): Segment {
  const chord = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const radius = (chord ** 2 / 4 + rise ** 2) / (2 * rise);
  const [ux, uy] = [(b[0] - a[0]) / chord, (b[1] - a[1]) / chord];
  const down = radius - rise;
  const centre: Point = [(a[0] + b[0]) / 2 + uy * down, (a[1] + b[1]) / 2 - ux * down];
  return arc(b, centre, false);
}
