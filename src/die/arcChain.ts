// A chain of arcs that meet smoothly, as numbers: where it starts, how each bends and how long it is.

import type { Point } from "../geometry/path.ts";
import * as trig from "../units/trigonometry.ts";

/** A place and the direction there, radians. */
export type Pose = { readonly x: number; readonly y: number; readonly angle: number };

/** One arc of a chain; a straight line has no curvature (1/mm, positive to the left). */
export type Link = { readonly curvature: number; readonly length: number };

/** A place on the curve that a chain stands for, and how far along it lies, mm. */
export type Sample = { readonly x: number; readonly y: number; readonly s: number };

/** A joint is looked for this far before and behind where the lengths say, as a share of the arc, and in mm. */
const JOINT_SHARE = 0.1;
const JOINT_MM = 0.5;
/** An arc that turns by less is a straight line in all digits: its chord is its length. */
const NO_TURN = 1e-9;

/** Where an arc ends. Its chord is 2 sin(turn ÷ 2) ÷ curvature, in the direction half-way between both ends. */
export function ahead({ x, y, angle }: Pose, { curvature, length }: Link): Pose {
  const half = (curvature * length) / 2;
  const chord = Math.abs(half) < NO_TURN ? length : (length * trig.sin(half)) / half;
  const way = angle + half;
  return { x: x + chord * trig.cos(way), y: y + chord * trig.sin(way), angle: angle + 2 * half };
}

/** The poses at which each arc starts, and the last one's end. */
export function posesOf(start: Pose, links: readonly Link[]): readonly Pose[] {
  const poses = [start];
  for (const link of links) poses.push(ahead(poses.at(-1)!, link));
  return poses;
}

/** The point as seen from a pose: how far along, how far to the left. */
export function seenFrom({ x, y, angle }: Pose, px: number, py: number): Point {
  const [cos, sin] = [trig.cos(angle), trig.sin(angle)];
  return [(px - x) * cos + (py - y) * sin, (py - y) * cos - (px - x) * sin];
}

/**
 * How far a point at (u, v) seen from the pose lies to the left of the circle through that pose, mm. With
 * f = 2v − κ(u² + v²) the distance is f ÷ (1 + √(1 − κf)): right for straight lines too, where κ is 0.
 */
export function leftOfArc(u: number, v: number, curvature: number): number {
  const f = 2 * v - curvature * (u * u + v * v);
  return f / (1 + Math.sqrt(Math.max(0, 1 - curvature * f)));
}

type Joint = {
  readonly pose: Pose;
  readonly cos: number;
  readonly sin: number;
  /** How far along the chain it lies, and between which lengths its place is decided by the line square to it. */
  readonly s: number;
  readonly from: number;
  readonly to: number;
};

function jointAfter(pose: Pose, links: readonly Link[], index: number, done: number): Joint | undefined {
  const [link, after] = [links[index]!, links[index + 1]];
  if (!after) return undefined;
  const next = ahead(pose, link);
  const s = done + link.length;
  const near = JOINT_SHARE * Math.min(link.length, after.length) + JOINT_MM;
  const [cos, sin] = [trig.cos(next.angle), trig.sin(next.angle)];
  return { pose: next, cos, sin, s, from: s - near, to: s + near };
}

/**
 * How far each sample lies to the left of the chain, mm, one arc after another. The curve's samples and the
 * chain run side by side, so a joint is near where the lengths say; there the line square to it decides.
 */
export function strays(start: Pose, links: readonly Link[], samples: readonly Sample[]): readonly number[] {
  const found: number[] = [];
  let index = 0;
  let pose = start;
  let [cos, sin] = [trig.cos(pose.angle), trig.sin(pose.angle)];
  let joint = jointAfter(pose, links, 0, 0);
  for (const { x, y, s } of samples) {
    while (joint && s >= joint.from) {
      if (s <= joint.to && (x - joint.pose.x) * joint.cos + (y - joint.pose.y) * joint.sin <= 0) break;
      index++;
      pose = joint.pose;
      cos = joint.cos;
      sin = joint.sin;
      joint = jointAfter(pose, links, index, joint.s);
    }
    const dx = x - pose.x;
    const dy = y - pose.y;
    found.push(leftOfArc(dx * cos + dy * sin, dy * cos - dx * sin, links[index]!.curvature));
  }
  return found;
}

export function mostOf(values: readonly number[]): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}
