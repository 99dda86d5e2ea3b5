import { pathLength } from "../geometry/length.ts";
import { cubic, line, openPath, type Point, type Segment } from "../geometry/path.ts";
import type { SeamEdge } from "../model/piece.ts";

// Lines of a side gusset: x across, centred; the foot's finished edge at y = 0, top upward.

/** Everything that the drawing is made from, mm. The side seam runs from `foot` up, `up` its direction. */
export type Frame = {
  readonly foot: Point;
  readonly up: Point;
  /** From there to the top edge, along the seam. */
  readonly side: number;
  /** Half of the foot's run of stitches, and how far the flanges reach past the ends of all runs. */
  readonly run: number;
  readonly reach: number;
  /** Height of the top edge. */
  readonly top: number;
  /** From a flange's finished edge to the middle of its bend. */
  readonly fold: number;
};

/** Where the line at distance `out` outside the side seam crosses the height y, at +x. */
export const atHeight = ({ foot, up }: Frame, out: number, y: number): Point => {
  const along = (y - foot[1] + out * up[0]) / up[1];
  return [foot[0] + out * up[1] + along * up[0], y];
};

export const mirrored = ([x, y]: Point): Point => [0 - x, y];

/** A top edge cut higher by less than this is level, mm: a knife can't follow it. */
const NO_DROP_MM = 1e-6;
/** Handles of this share of a run leave and arrive along it. */
const HANDLE = 0.45;

/** The top edge of the web from +x to −x, cut higher in the middle; level where it begins and ends. */
export function topEdge(from: Point, drop: number): readonly Segment[] {
  if (drop < NO_DROP_MM) return [line(mirrored(from))];
  const reach = from[0] * HANDLE;
  const middle: Point = [0, from[1] + drop];
  return [
    cubic([from[0] - reach, from[1]], [reach, middle[1]], middle),
    cubic([-reach, middle[1]], [-from[0] + reach, from[1]], mirrored(from)),
  ];
}

/** Down the front's side, across the notched corner, along the foot, and up the back's side. */
export function frameSeam(f: Frame, seamStart: number, inset: number): Pick<SeamEdge, "path" | "breaks"> {
  const long = f.side - seamStart;
  const start: Point = [f.foot[0] + long * f.up[0], f.foot[1] + long * f.up[1]];
  const end: Point = [f.run, inset];
  // Over the notch the path only leads on, smoothly, from one run to the next.
  const hand = Math.min(f.foot[0] - f.run, f.foot[1] - inset) * HANDLE;
  const [below, beside]: readonly [Point, Point] = [
    [f.foot[0] - hand * f.up[0], f.foot[1] - hand * f.up[1]],
    [end[0] + hand, end[1]],
  ];
  const path = openPath(start, [
    line(f.foot),
    cubic(below, beside, end),
    line(mirrored(end)),
    cubic(mirrored(beside), mirrored(below), mirrored(f.foot)),
    line(mirrored(start)),
  ]);
  const bend = (pathLength(path) - 2 * long - 2 * f.run) / 2;
  return {
    path,
    breaks: [
      { at: long, name: "front bend start" },
      { at: long + bend, name: "front bend end" },
      { at: long + bend + 2 * f.run, name: "back bend start" },
      { at: long + 2 * bend + 2 * f.run, name: "back bend end" },
    ],
  };
}
