import type { Point } from "../../geometry/path.ts";
import type { Bar, TurnBack } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";

// Folds a turn-back's data by going along the leather: round the bar on the neutral fibre, off it in a
// straight line, and on beside the other leg. No formula of the developed length is used, so what the
// pieces were made by is checked against something else.
//
// The folded frame: bar's centre at the origin, the strap leaves towards +x, the front leg above.

/** A part of the way round a bar: its length, and how it bends to the right (1/radius). */
type Bend = { readonly length: number; readonly bend: number };
/** A place on the neutral fibre and its heading. */
type Stand = { readonly x: number; readonly y: number; readonly heading: number };

/** Half way round a bar at a distance from its surface: from its far middle to its near middle, over the top. */
export function halfWayRound(
  bar: Bar,
  fibre: number,
): { readonly start: Stand; readonly bends: readonly Bend[] } {
  const heading = Math.PI / 2;
  if (bar.kind === "round") {
    const r = bar.diameter / 2 + fibre;
    return { start: { x: -r, y: 0, heading }, bends: [{ length: Math.PI * r, bend: 1 / r }] };
  }
  const [a, b] = [bar.along / 2 - bar.corner, bar.through / 2 - bar.corner];
  const r = bar.corner + fibre;
  const corner: Bend = { length: (Math.PI / 2) * r, bend: 1 / r };
  const bends = [{ length: b, bend: 0 }, corner, { length: 2 * a, bend: 0 }, corner, { length: b, bend: 0 }];
  return { start: { x: -(a + r), y: 0, heading }, bends };
}

/** One step along a straight or evenly bent part. */
function step({ x, y, heading }: Stand, bend: number, length: number): Stand {
  if (bend === 0) return { x: x + length * trig.cos(heading), y: y + length * trig.sin(heading), heading };
  const next = heading - length * bend;
  return {
    x: x + (trig.sin(heading) - trig.sin(next)) / bend,
    y: y + (trig.cos(next) - trig.cos(heading)) / bend,
    heading: next,
  };
}

/** Where one stands after `s` along the way; past its end straight on. */
function walk(start: Stand, bends: readonly Bend[], s: number): Stand {
  let at = start;
  let left = s;
  for (const { length, bend } of bends) {
    if (left <= length) return step(at, bend, left);
    at = step(at, bend, length);
    left -= length;
  }
  return step(at, 0, left);
}

/** A folded turn-back; lengths s along the neutral fibre from the fold's centre, the same on both legs. */
export type Folded = {
  /** Where the legs leave the bar. */
  readonly leaves: number;
  /** Where they are held beside each other. */
  readonly held: number;
  /** How steeply they run together in between; negative when they run apart. Radians. */
  readonly slope: number;
  /** Place and heading of the front leg; the back leg is its mirror image. */
  at(s: number): Stand;
};

/** The first look for where the leg leaves goes round the bar in this many steps, the second halves one. */
const LOOKS = 720;
const HALVINGS = 60;

/** Positive when the straight line on from here passes below the point, so that the leg left too late. */
const passed = ({ x, y, heading }: Stand, [px, py]: Point): number =>
  trig.cos(heading) * (py - y) - trig.sin(heading) * (px - x);

/** How far round the leg leaves the bar so that its straight line meets the point; undefined if it can't. */
function leavesAt(start: Stand, bends: readonly Bend[], point: Point): number | undefined {
  const total = bends.reduce((sum, b) => sum + b.length, 0);
  const late = (s: number): boolean => passed(walk(start, bends, s), point) >= 0;
  let i = 1;
  while (i <= LOOKS && !late((i / LOOKS) * total)) i++;
  if (i > LOOKS) return undefined;
  let [low, high] = [((i - 1) / LOOKS) * total, (i / LOOKS) * total];
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (late(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Distance between the legs' neutral fibres where they are held: their own parts and what is caught. */
const legsApart = (t: TurnBack): number => t.neutral * (t.frontThickness + t.backThickness) + t.caught;

/** Folds the data; undefined when no taut fold holds the legs there (the lift-off lies inside the wrap). */
export function folded(t: TurnBack): Folded | undefined {
  const height = legsApart(t) / 2;
  const { start, bends } = halfWayRound(t.bar, t.neutral * t.wrapThickness);
  const known =
    [height, t.liftOff, t.clamp, start.x].every(Number.isFinite) &&
    bends.every((b) => b.length >= 0 && Number.isFinite(b.bend));
  const leaves = known ? leavesAt(start, bends, [t.liftOff, height]) : undefined;
  if (leaves === undefined) return undefined;
  const off = walk(start, bends, leaves);
  const straight = Math.hypot(t.liftOff - off.x, height - off.y);
  const held = leaves + straight;
  const at = (s: number): Stand => {
    if (s <= leaves) return walk(start, bends, s);
    if (s <= held) return step(off, 0, s - leaves);
    return { x: t.liftOff + (s - held), y: height, heading: 0 };
  };
  return { leaves, held, slope: -off.heading, at };
}

/** A flat place's distance from the fold's centre along the front leg; negative on the back leg. */
export const alongLeg = (t: TurnBack, x: number): number => (x - t.centre) * t.direction;
