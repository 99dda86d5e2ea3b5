import type { Point } from "../../geometry/path.ts";
import type { Bar, TurnBack } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Folded } from "./folded.ts";

// Does a buckle's tongue fit its slot? The tongue is a solid: an eye round the bar and a blade that swings
// from closed to open. The leather is a solid too: the wrap's thickness on both sides of its neutral fibre.
// How far the slot must be open is found by trying, from far out towards the bar.

export type Tongue = { readonly thickness: number; readonly openAngle: number };

/** Distance from a point to the bar's surface; negative inside. */
function fromBar(bar: Bar, [x, y]: Point): number {
  if (bar.kind === "round") return Math.hypot(x, y) - bar.diameter / 2;
  const dx = Math.abs(x) - (bar.along / 2 - bar.corner);
  const dy = Math.abs(y) - (bar.through / 2 - bar.corner);
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - bar.corner;
}

/** Blades between open and closed that are tried; the open one reaches furthest. */
const BLADES = 6;

/** True when the point lies in the eye or, on the outer leg, in a blade at any angle from open to closed. */
function inTongue(bar: Bar, tongue: Tongue, legHeading: number, outer: boolean, p: Point): boolean {
  if (fromBar(bar, p) < tongue.thickness) return true;
  if (!outer) return false;
  for (let i = 0; i <= BLADES; i++) {
    const way = legHeading + tongue.openAngle + ((Math.PI - tongue.openAngle) * i) / BLADES;
    const [dx, dy] = [trig.cos(way), trig.sin(way)];
    const beside = Math.abs(p[0] * dy - p[1] * dx);
    if (p[0] * dx + p[1] * dy > 0 && beside < tongue.thickness / 2) return true;
  }
  return false;
}

/** Where through the leather's thickness it is tried, from the flesh face to the grain face. */
const LAYERS = [0, 0.25, 0.5, 0.75, 1];
/** Steps of the first look; no blade is so thin that one passes it by. */
const STEP_MM = 0.2;
const HALVINGS = 40;

/** How far from the fold's centre, along the neutral fibre, a leg must be open for the tongue; mm. */
export function tongueNeeds(t: TurnBack, fold: Folded, tongue: Tongue, outer: boolean): number {
  const heading = fold.at(fold.leaves).heading;
  const hits = (s: number): boolean => {
    const stand = fold.at(s);
    const [nx, ny] = [-trig.sin(stand.heading), trig.cos(stand.heading)];
    return LAYERS.some((share) => {
      const out = (share - t.neutral) * t.wrapThickness;
      return inTongue(t.bar, tongue, heading, outer, [stand.x + out * nx, stand.y + out * ny]);
    });
  };
  const size = t.bar.kind === "round" ? t.bar.diameter : Math.hypot(t.bar.along, t.bar.through);
  const reach = (size + t.wrapThickness + tongue.thickness) / trig.sin(tongue.openAngle);
  let s = fold.leaves + reach;
  while (s > 0 && !hits(s)) s -= STEP_MM;
  let [low, high] = [Math.max(s, 0), s + STEP_MM];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (hits(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
