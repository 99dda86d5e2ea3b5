import {
  arc,
  line,
  openPath,
  type Path,
  type Point,
  SAME_POINT_MM,
  type Segment,
} from "../../geometry/path.ts";
import type { Bar, TurnBack } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";

// A turn-back folded, seen from the side: bar's centre at the origin, the strap leaves towards +x, the
// front leg above. A taut line round the bar's section, off it in a straight line, on beside the other leg.

/** The upper half of a bar's section: corners about ±`along`, `up` with this radius; a round bar has one. */
type Section = { readonly along: number; readonly up: number; readonly corner: number };

const sectionOf = (bar: Bar): Section =>
  bar.kind === "round"
    ? { along: 0, up: 0, corner: bar.diameter / 2 }
    : { along: bar.along / 2 - bar.corner, up: bar.through / 2 - bar.corner, corner: bar.corner };

/** Where a taut line leaves the bar for the place where the legs are held. */
export type Taut = {
  readonly bar: Section;
  /** The neutral fibre's distance from the corners' centres. */
  readonly radius: number;
  /** Direction from the corner's centre to where the line leaves it, radians. */
  readonly leaves: number;
  /** It leaves at the corner nearer to the legs. */
  readonly near: boolean;
  /** Where the legs are held: along the strap, and the neutral fibre's height there. */
  readonly held: Point;
};

/** Direction of the point of a circle at which a line from a point outside touches it, on the upper side. */
function touch([cx, cy]: Point, radius: number, [px, py]: Point): number | undefined {
  const distance = Math.hypot(px - cx, py - cy);
  return distance > radius ? trig.atan2(py - cy, px - cx) + trig.acos(radius / distance) : undefined;
}

/** The taut line of a leg; undefined where none holds it: the legs are held inside the wrap. */
export function tautOf(t: TurnBack): Taut | undefined {
  const bar = sectionOf(t.bar);
  const radius = bar.corner + t.neutral * t.wrapThickness;
  const height = (t.neutral * (t.frontThickness + t.backThickness) + t.caught) / 2;
  const held: Point = [t.liftOff, height];
  if (![radius, bar.along, bar.up, ...held].every(Number.isFinite) || bar.along < 0 || bar.up < 0)
    return undefined;
  const nearTouch = touch([bar.along, bar.up], radius, held);
  if (nearTouch === undefined || t.liftOff <= bar.along) return undefined;
  if (trig.cos(nearTouch) >= 0) return { bar, radius, leaves: nearTouch, near: true, held };
  const farTouch = touch([-bar.along, bar.up], radius, held);
  return farTouch === undefined ? undefined : { bar, radius, leaves: farTouch, near: false, held };
}

/**
 * A line that goes with the front leg: from the bar's far middle round it at `off` from the neutral fibre,
 * to `atHeld` where the legs are held, and on to `end`.
 */
export function alongLeg({ bar, radius, leaves, near }: Taut, off: number, atHeld: Point, end: Point): Path {
  const r = radius + off;
  const on = ([x, y]: Point, angle: number): Point => [x + r * trig.cos(angle), y + r * trig.sin(angle)];
  const [far, close]: readonly [Point, Point] = [
    [-bar.along, bar.up],
    [bar.along, bar.up],
  ];
  const start: Point = [-bar.along - r, 0];
  // The inner face of a fold round a sharp edge has no arc.
  const round = (centre: Point, to: number): readonly Segment[] =>
    r < SAME_POINT_MM ? [] : [arc(on(centre, to), centre, false)];
  const up = bar.up > SAME_POINT_MM ? [line(on(far, Math.PI))] : [];
  const top = bar.along > SAME_POINT_MM ? [line(on(close, Math.PI / 2))] : [];
  const wrap = near
    ? [...round(far, Math.PI / 2), ...top, ...(leaves < Math.PI / 2 ? round(close, leaves) : [])]
    : round(far, leaves);
  return openPath(start, [...up, ...wrap, line(atHeld), line(end)]);
}
