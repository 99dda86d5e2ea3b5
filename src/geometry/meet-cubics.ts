// Where two cubics meet: both are halved while their boxes overlap, then Newton finishes.
import { type CubicCurve, curveAt, velocityAt } from "./curve.ts";
import type { Point } from "./path.ts";
import { chordGap, halvesOf, type Stretch, shareOf, stretchBoxGap, stretchOf } from "./stretch.ts";
import { apart, cross, minus } from "./vector.ts";

/**
 * Stretches this flat cross where their chords cross: Newton takes over. A second crossing between them
 * would enclose less than what counts as the same point.
 */
const FLAT_MM = 0.0005;
/** Newton's step in t below which nothing changes any more. */
const STEP = 1e-13;
/**
 * Pairs looked at before the search is given up: only curves that run within a millionth of a millimetre
 * of each other for a long way need more, and those have nothing left to find.
 */
const MOST_PAIRS = 20_000;

/** Two curves meet at `at`, which is `a` along the first and `b` along the second (t, 0 to 1). */
export type Meeting = { readonly a: number; readonly b: number; readonly at: Point };

type Guess = { readonly a: number; readonly b: number };

/** One Newton step towards p(a) = q(b); undefined when the curves are parallel there. */
function step(p: CubicCurve, q: CubicCurve, { a, b }: Guess): Guess | undefined {
  const [u, v] = [velocityAt(p, a), velocityAt(q, b)];
  const off = minus(curveAt(q, b), curveAt(p, a));
  const det = cross(u, v);
  if (Math.abs(det) < Number.EPSILON) return undefined;
  return { a: a + cross(off, v) / det, b: b + cross(off, u) / det };
}

const clamped = (t: number): number => Math.min(Math.max(t, 0), 1);

function newton(p: CubicCurve, q: CubicCurve, start: Guess, near: number): Meeting | undefined {
  let guess = start;
  for (let i = 0; i < 8; i++) {
    const next = step(p, q, guess);
    if (!next) break;
    const moved = Math.abs(next.a - guess.a) + Math.abs(next.b - guess.b);
    guess = { a: clamped(next.a), b: clamped(next.b) };
    if (moved < STEP) break;
  }
  const at = curveAt(p, guess.a);
  return apart(at, curveAt(q, guess.b)) <= near ? { ...guess, at } : undefined;
}

/** The meeting of two flat stretches; `sure` when there cannot be a second one between them. */
function meetFlat(
  s: Stretch,
  r: Stretch,
  near: number,
): { readonly meeting?: Meeting; readonly sure: boolean } {
  const chords = chordGap(s, r);
  const strays = s.strays + r.strays;
  if (chords.gap - strays > near) return { sure: true };
  const last = strays < near / 2;
  if (chords.gap > 0 && !last) return { sure: false };
  const [p, q] = [s.curve, r.curve] as [CubicCurve, CubicCurve];
  const meeting = newton(p, q, { a: shareOf(s, chords.a), b: shareOf(r, chords.b) }, near);
  const here = meeting && inside(s, meeting.a) && inside(r, meeting.b);
  return here ? { meeting, sure: true } : { sure: last };
}

const inside = ({ t0, t1 }: Stretch, t: number): boolean => {
  const slack = (t1 - t0) / 2;
  return t >= t0 - slack && t <= t1 + slack;
};

/** All points that two cubics share within `near` mm; the same point may come more than once. */
export function meetCubics(p: CubicCurve, q: CubicCurve, near: number): readonly Meeting[] {
  const found: Meeting[] = [];
  const pairs: [Stretch, Stretch][] = [[stretchOf(p), stretchOf(q)]];
  for (let looked = 0; looked < MOST_PAIRS; looked++) {
    const pair = pairs.pop();
    if (!pair) break;
    const [s, r] = pair;
    if (stretchBoxGap(s, r) > near) continue;
    const flat = s.strays + r.strays < FLAT_MM ? meetFlat(s, r, near) : undefined;
    if (flat?.meeting) found.push(flat.meeting);
    if (flat?.sure) continue;
    if (s.strays >= r.strays) for (const half of halvesOf(s)) pairs.push([half, r]);
    else for (const half of halvesOf(r)) pairs.push([s, half]);
  }
  return found;
}
