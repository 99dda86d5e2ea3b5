import { arc, cubic, line, openPath, type Path, type Point, type Segment } from "../geometry/path.ts";
import { minus, plus, polar, scaled, unit } from "../geometry/vector.ts";
import * as trig from "../units/trigonometry.ts";

// The free edge of a flap, drawn upward: x = 0 is its middle.

export const FLAP_EDGES = ["straight", "round", "pointed", "bell"] as const;
export type FlapKind = (typeof FLAP_EDGES)[number] | "tongue";

export type FlapShape = {
  readonly kind: FlapKind;
  readonly halfWidth: number;
  /** Where its sides begin, and its end. */
  readonly from: number;
  readonly end: number;
  /** Radius of its corners, where it has any. */
  readonly corner: number;
  /** From the end back to where the sides leave off; of a tongue to the flap's own edge. */
  readonly depth: number;
  /** Width of a tongue. */
  readonly tongueWidth: number;
};

/** Where a tongue leaves the flap the leather would tear in a sharp corner; mm, common practice, no source. */
export const TONGUE_FILLET_MM = 5;
/** A tip is rounded by this, or by a third of its depth and a quarter of half its width if they are less. */
const TIP_MM = 8;
/** The rounding of a tongue's end takes no more than this share of its length. */
const TONGUE_END_SHARE = 0.8;
/** A quarter of a round by one cubic leaves from the middle of its sides by this share (4 (√2 − 1) / 3). */
const QUARTER = (4 * (Math.SQRT2 - 1)) / 3;

/** The right half, and what joins its end to the left half's where they don't meet. */
type Half = { readonly segments: readonly Segment[]; readonly middle?: Segment };

const mirrored = ([x, y]: Point): Point => [0 - x, y];

function straight({ halfWidth: w, end, corner: c }: FlapShape): Half {
  const round = arc([w - c, end], [w - c, end - c], true);
  return { segments: [line([w, end - c]), round], middle: line([c - w, end]) };
}

function round({ halfWidth: w, end, depth }: FlapShape): Half {
  const y = end - depth;
  return { segments: [line([w, y]), cubic([w, y + QUARTER * depth], [QUARTER * w, end], [0, end])] };
}

function pointed({ halfWidth: w, end, depth, corner }: FlapShape): Half {
  const r = Math.min(TIP_MM, depth / 3, w / 4);
  const shoulder: Point = [w, end - depth];
  const tip: Point = [0, end - r];
  const [x, y] = minus(shoulder, tip);
  // From the shoulder a tangent to the tip's round; there the edge has turned by this angle.
  const turn = trig.atan2(y, x) + trig.acos(r / Math.hypot(x, y));
  const touch = polar(tip, r, turn);
  const cut = corner * trig.tan(turn / 2);
  const start: Point = [w, shoulder[1] - cut];
  const leave = plus(shoulder, scaled(unit(minus(touch, shoulder)), cut));
  return {
    segments: [line(start), arc(leave, [w - corner, start[1]], true), line(touch)],
    middle: arc(mirrored(touch), tip, true),
  };
}

/** The flank of a bell is this much steeper in its middle than the straight way down it. */
const FLANK = 1.7;
/** Handles reach this share of the way to where the two tangents cross. */
const REACH = 0.65;

function bell({ halfWidth: w, end, depth, corner: c }: FlapShape): Half {
  const shoulder: Point = [w - c, end - depth + c];
  const tip: Point = [0, end];
  const middle: Point = [shoulder[0] / 2, (shoulder[1] + end) / 2];
  // The middle's tangent crosses the level tangents of both ends this far from them.
  const cross = middle[0] - middle[0] / FLANK;
  const level = cross * REACH;
  const steep = scaled(minus([shoulder[0] - cross, shoulder[1]], middle), REACH);
  return {
    segments: [
      line([w, end - depth]),
      arc(shoulder, [w - c, end - depth], true),
      cubic([shoulder[0] - level, shoulder[1]], plus(middle, steep), middle),
      cubic(minus(middle, steep), [level, end], tip),
    ],
  };
}

function tongue({ halfWidth: w, end, depth, corner: c, tongueWidth }: FlapShape): Half {
  const [half, f, y] = [tongueWidth / 2, TONGUE_FILLET_MM, end - depth];
  const r = Math.min(half, TONGUE_END_SHARE * (depth - f));
  const segments = [
    line([w, y - c]),
    arc([w - c, y], [w - c, y - c], true),
    line([half + f, y]),
    arc([half, y + f], [half + f, y + f], false),
    line([half, end - r]),
    arc([half - r, end], [half - r, end - r], true),
  ];
  return half - r > 0 ? { segments, middle: line([r - half, end]) } : { segments };
}

const HALVES = { straight, round, pointed, bell, tongue } as const;

/** Draws the edge: an open path up the right side, round the end, and down the left side. */
export function flapEdge(s: FlapShape): Path {
  const { segments, middle } = HALVES[s.kind](s);
  const start: Point = [s.halfWidth, s.from];
  const starts = [start, ...segments.map(({ to }) => to)];
  const back = segments.map((segment, i): Segment => {
    const to = mirrored(starts[i]!);
    if (segment.kind === "line") return line(to);
    if (segment.kind === "cubic") return cubic(mirrored(segment.c2), mirrored(segment.c1), to);
    return arc(to, mirrored(segment.centre), segment.ccw);
  });
  return openPath(start, [...segments, ...(middle ? [middle] : []), ...back.reverse()]);
}
