import type { Vec } from "./assembleBends.ts";

// The edge of a finished panel from what was ordered, in closed form, and the lines beside it: from the base's
// middle to the right, round the corner and up. The left half is its mirror image.

export type PanelOrder = {
  readonly width: number;
  readonly height: number;
  readonly topWidth: number;
  readonly sag: number;
  readonly corners: string;
  /** Radius of a round corner; of a clipped one what is cut off each edge, and the radius of the cut's ends. */
  readonly corner: number;
  readonly clipRound: number;
};

/** A straight stretch, or a round one from one angle of its circle to a greater one. */
type Stretch =
  | { readonly from: Vec; readonly to: Vec }
  | { readonly centre: Vec; readonly radius: number; readonly start: number; readonly end: number };

const plus = (a: Vec, b: Vec, times = 1): Vec => [a[0] + times * b[0], a[1] + times * b[1]];
const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1];
const size = (a: Vec): number => Math.hypot(a[0], a[1]);
const left = ([x, y]: Vec): Vec => [-y, x];
const angleOf = (a: Vec): number => Math.atan2(a[1], a[0]);

type Line = { readonly on: Vec; readonly way: Vec };
/** The base: level, or round its centre straight over its lowest point. */
type Base = { readonly radius: number };

const beside = ({ on, way }: Line, d: number): Line => ({ on: plus(on, left(way), d), way });

/** Where a rising line leaves the base moved in by d. */
function meet(line: Line, base: Base, d: number): Vec {
  if (!Number.isFinite(base.radius)) return plus(line.on, line.way, (d - line.on[1]) / line.way[1]);
  const from = plus(line.on, [0, -base.radius]);
  const b = dot(from, line.way);
  const c = dot(from, from) - (base.radius - d) ** 2;
  const root = Math.sqrt(b * b - c);
  // Of the two places on the circle, the one nearer the base's corner.
  const [p, q] = [plus(line.on, line.way, -b - root), plus(line.on, line.way, -b + root)];
  return Math.abs(p[1] - line.on[1]) < Math.abs(q[1] - line.on[1]) ? p : q;
}

function cross(a: Line, b: Line): Vec {
  const t = dot(plus(b.on, a.on, -1), left(b.way)) / dot(a.way, left(b.way));
  return plus(a.on, a.way, t);
}

const baseTo = (base: Base, d: number, to: Vec): Stretch =>
  Number.isFinite(base.radius)
    ? {
        centre: [0, base.radius],
        radius: base.radius - d,
        start: -Math.PI / 2,
        end: angleOf(plus(to, [0, -base.radius])),
      }
    : { from: [0, d], to };

/** Way of the base at a place on it. */
const wayAt = (base: Base, at: Vec): Vec => {
  if (!Number.isFinite(base.radius)) return [1, 0];
  const out = plus(at, [0, -base.radius]);
  return [-out[1] / size(out), out[0] / size(out)];
};

/** Where a stretch ends, what lies in the corner, and where the next begins. */
type Corner = { readonly ends: Vec; readonly between: readonly Stretch[]; readonly begins: Vec };

/**
 * The corner between the base or a line and the next line, d mm inside it. A round one keeps its middle. A sharp
 * one moved outward is rounded about the corner, moved inward it stays sharp.
 */
function cornerOf(before: Base | Line, next: Line, round: number, d: number): Corner {
  const isLine = "way" in before;
  const both = (by: number): Vec =>
    isLine ? cross(beside(before, by), beside(next, by)) : meet(beside(next, by), before, by);
  if (round <= d) {
    const at = both(d);
    return { ends: at, between: [], begins: at };
  }
  const middle = both(round);
  const wayBefore = isLine ? before.way : wayAt(before, middle);
  const ends = plus(middle, left(wayBefore), d - round);
  const begins = plus(middle, left(next.way), d - round);
  const angles = [ends, begins].map((p) => angleOf(plus(p, middle, -1))) as [number, number];
  return {
    ends,
    between: [{ centre: middle, radius: round - d, start: angles[0], end: angles[1] }],
    begins,
  };
}

/** The line that cuts a corner off, as far along side and base. */
function clipOf(corner: Vec, side: Line, base: Base, cut: number): Line {
  const high = plus(corner, side.way, cut);
  const turn = cut / base.radius;
  const arm = plus(corner, [0, -base.radius]);
  const low: Vec = Number.isFinite(base.radius)
    ? [
        arm[0] * Math.cos(turn) + arm[1] * Math.sin(turn),
        base.radius + arm[1] * Math.cos(turn) - arm[0] * Math.sin(turn),
      ]
    : [corner[0] - cut, 0];
  const way = plus(high, low, -1);
  return { on: low, way: [way[0] / size(way), way[1] / size(way)] };
}

/** The line d mm inside the finished edge (outside where negative), as far as `beyond` over the top. */
function stretches(o: PanelOrder, d: number, beyond: number): readonly Stretch[] {
  const radius = o.sag > 0.01 ? (o.width ** 2 / 4 + o.sag ** 2) / (2 * o.sag) : Number.POSITIVE_INFINITY;
  const base: Base = { radius };
  const corner: Vec = [o.width / 2, o.sag > 0.01 ? o.sag : 0];
  const rise = plus([o.topWidth / 2, o.height], corner, -1);
  const side: Line = { on: corner, way: [rise[0] / size(rise), rise[1] / size(rise)] };
  const clip = o.corners === "clipped" ? [clipOf(corner, side, base, o.corner)] : [];
  const round = o.corners === "round" ? o.corner : o.corners === "clipped" ? o.clipRound : 0;
  const lines = [...clip, side];
  const corners = lines.map((l, i) => cornerOf(i === 0 ? base : lines[i - 1]!, l, round, d));
  const moved = beside(side, d);
  const top = plus(moved.on, moved.way, (o.height + beyond - moved.on[1]) / moved.way[1]);
  return [
    baseTo(base, d, corners[0]!.ends),
    ...corners.flatMap((c, i): readonly Stretch[] => [
      ...c.between,
      { from: c.begins, to: corners[i + 1]?.ends ?? top },
    ]),
  ];
}

const lengthOf = (s: Stretch): number =>
  "from" in s ? size(plus(s.to, s.from, -1)) : s.radius * (s.end - s.start);

/** A place on the line and which way is inward there. */
export type OnEdge = { readonly at: Vec; readonly inward: Vec };

export type Edge = {
  /** The place u mm from the base's middle, to the right, or to the left where negative. */
  readonly at: (u: number) => OnEdge;
  /** Length from the base's middle up to a height over the base. */
  readonly upTo: (height: number) => number;
  /** Length up to where the straight side begins. */
  readonly toSide: number;
  /** How much of a straight side's length is height. */
  readonly steep: number;
};

const OVER_TOP_MM = 50;

/** The line d mm inside a finished edge. */
export function edgeOf(o: PanelOrder, d: number): Edge {
  const all = stretches(o, d, OVER_TOP_MM);
  const right = (u: number): OnEdge => {
    let rest = u;
    for (const [i, s] of all.entries()) {
      const length = lengthOf(s);
      if (rest > length && i < all.length - 1) {
        rest -= length;
        continue;
      }
      if ("from" in s) {
        const way = plus(s.to, s.from, -1);
        const unit: Vec = [way[0] / length, way[1] / length];
        return { at: plus(s.from, unit, rest), inward: left(unit) };
      }
      const angle = s.start + rest / s.radius;
      const out: Vec = [Math.cos(angle), Math.sin(angle)];
      return { at: plus(s.centre, out, s.radius), inward: [-out[0], -out[1]] };
    }
    throw new Error("an edge without a stretch");
  };
  const toSide = all.slice(0, -1).reduce((sum, s) => sum + lengthOf(s), 0);
  const last = all.at(-1)!;
  if (!("from" in last)) throw new Error("a side that isn't straight");
  const rise = (last.to[1] - last.from[1]) / lengthOf(last);
  return {
    at: (u) => {
      if (u >= 0) return right(u);
      const { at, inward } = right(-u);
      return { at: [-at[0], at[1]], inward: [-inward[0], inward[1]] };
    },
    upTo: (height) => toSide + (height - last.from[1]) / rise,
    toSide,
    steep: rise,
  };
}
