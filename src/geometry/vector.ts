// Small sums with points taken as vectors. Square roots are written out instead of Math.hypot:
// sqrt is rounded the same way by every engine, and it is faster.
import * as trig from "../units/trigonometry.ts";
import type { Point } from "./path.ts";

export const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const scaled = (a: Point, k: number): Point => [a[0] * k, a[1] * k];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
/** Positive when b lies to the left of a. */
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
export const sizeOf = (a: Point): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);

export function apart(a: Point, b: Point): number {
  const x = a[0] - b[0];
  const y = a[1] - b[1];
  return Math.sqrt(x * x + y * y);
}

/** The point a share `t` of the way from a to b; exactly a at 0 and exactly b at 1. */
export function between(a: Point, b: Point, t: number): Point {
  return [(1 - t) * a[0] + t * b[0], (1 - t) * a[1] + t * b[1]];
}

/** A quarter turn to the left. */
export const leftOf = (a: Point): Point => [-a[1], a[0]];

/** The same direction with length 1. A vector of no length stays as it is. */
export function unit(a: Point): Point {
  const size = sizeOf(a);
  return size > 0 ? [a[0] / size, a[1] / size] : a;
}

/** The point at `radius` from `centre` in the direction `angle`. */
export function polar(centre: Point, radius: number, angle: number): Point {
  return [centre[0] + radius * trig.cos(angle), centre[1] + radius * trig.sin(angle)];
}

/** Turn from direction a to direction b, in (−π, π], left positive. */
export const turnBetween = (a: Point, b: Point): number => trig.atan2(cross(a, b), dot(a, b));
