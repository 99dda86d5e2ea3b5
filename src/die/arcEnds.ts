// How a chain of arcs may start and end: at a corner, square to an axis, on a line or arc that is kept.
import * as trig from "../units/trigonometry.ts";
import { type Link, leftOfArc, type Pose, posesOf, seenFrom } from "./arcChain.ts";

/**
 * `fixed`: that place and direction. `corner`: that place, any direction. `axis`: square to a line through
 * that place, anywhere on it. `kept`: on a line or arc of the piece, somewhere along it: a start is then the
 * place from which that is followed, and its curvature is the first arc's.
 */
export type ChainEnd = { readonly pose: Pose } & (
  | { readonly kind: "fixed" | "corner" | "axis" }
  | { readonly kind: "kept"; readonly curvature: number }
);

/** Directions count like places this far ahead, mm, so that both are of one size. */
const AHEAD_MM = 10;

/** The numbers that a chain is free in: the start's one, if any, then each arc's curvature and length. */
export type Numbers = readonly number[];

export const startsFree = ({ kind }: ChainEnd): boolean => kind === "corner" || kind === "axis";

function startPose({ kind, pose }: ChainEnd, by: number): Pose {
  if (kind === "corner") return { ...pose, angle: pose.angle + by };
  if (kind !== "axis") return pose;
  return { ...pose, x: pose.x - by * trig.sin(pose.angle), y: pose.y + by * trig.cos(pose.angle) };
}

/** The chain that the numbers say. A kept start's own arc comes first. */
export function chainOf(
  start: ChainEnd,
  numbers: Numbers,
): { readonly pose: Pose; readonly links: readonly Link[] } {
  let at = 0;
  const next = (): number => numbers[at++]!;
  const pose = startPose(start, startsFree(start) ? next() : 0);
  const links: Link[] = start.kind === "kept" ? [{ curvature: start.curvature, length: next() }] : [];
  while (at < numbers.length) links.push({ curvature: next(), length: next() });
  return { pose, links };
}

export const numbersOf = (start: ChainEnd, links: readonly Link[]): Numbers => [
  ...(startsFree(start) ? [0] : []),
  ...links.flatMap(({ curvature, length }, i) =>
    i === 0 && start.kind === "kept" ? [length] : [curvature, length],
  ),
];

/** What must be nothing for the chain to end as it should, mm. */
export function misses(end: ChainEnd, last: Pose): readonly number[] {
  const [u, v] = seenFrom(end.pose, last.x, last.y);
  const turned = AHEAD_MM * trig.sin(last.angle - end.pose.angle);
  if (end.kind === "corner") return [u, v];
  if (end.kind === "axis") return [u, turned];
  if (end.kind !== "kept") return [u, v, turned];
  const { curvature } = end;
  const way = end.pose.angle + trig.atan2(curvature * u, 1 - curvature * v);
  return [leftOfArc(u, v, curvature), AHEAD_MM * trig.sin(last.angle - way)];
}

export const endOf = (start: ChainEnd, numbers: Numbers): Pose => {
  const { pose, links } = chainOf(start, numbers);
  return posesOf(pose, links).at(-1)!;
};
