// Neighbours that are one line or one arc, drawn in two, become one.
import { type Curve, directionAt } from "../geometry/curve.ts";
import { apart, between, dot, minus, turnBetween } from "../geometry/vector.ts";

/** A joint that turns by less than this is smooth: over 1 m it leads a thousandth of a millimetre astray. */
export const SMOOTH_RAD = 1e-6;
/** Centres and radii this near, for a radius up to 1 m, are those of one circle. */
const SAME_CIRCLE_MM = 1e-6;
/** A whole arc turns by no more than three quarters of a round: its ends then still say where it lies. */
export const MOST_TURN = 1.5 * Math.PI;

export const goesOn = (before: Curve, after: Curve): boolean =>
  Math.abs(turnBetween(directionAt(before, 1), directionAt(after, 0))) < SMOOTH_RAD;

/** A cubic whose handles lie on its chord, in order, is a line. */
function straightened(curve: Curve): Curve {
  if (curve.kind !== "cubic") return curve;
  const { p0, c1, c2, p1 } = curve;
  const chord = minus(p1, p0);
  const size2 = dot(chord, chord);
  if (size2 === 0) return curve;
  const share = [c1, c2].map((c) => dot(minus(c, p0), chord) / size2);
  const onIt = [c1, c2].every((c, i) => apart(c, between(p0, p1, share[i]!)) < SAME_CIRCLE_MM);
  return onIt && share[0]! >= 0 && share[1]! <= 1 && share[0]! <= share[1]!
    ? { kind: "line", p0, p1 }
    : curve;
}

function oneCurve(a: Curve, b: Curve): Curve | undefined {
  if (a.kind === "line" && b.kind === "line") return goesOn(a, b) ? { ...a, p1: b.p1 } : undefined;
  if (a.kind !== "arc" || b.kind !== "arc" || a.sweep * b.sweep < 0) return undefined;
  const near = SAME_CIRCLE_MM * Math.max(1, a.radius / 1000);
  if (apart(a.centre, b.centre) > near || Math.abs(a.radius - b.radius) > near) return undefined;
  const sweep = a.sweep + b.sweep;
  return Math.abs(sweep) <= MOST_TURN + SMOOTH_RAD ? { ...a, p1: b.p1, sweep } : undefined;
}

/** Neighbours that are one line or one arc as one; on a closed path the last and the first are neighbours too. */
export function oneEach(curves: readonly Curve[], closed = false): readonly Curve[] {
  const done: Curve[] = [];
  for (const curve of curves.map(straightened)) {
    const last = done.at(-1);
    const whole = last && oneCurve(last, curve);
    if (whole) done[done.length - 1] = whole;
    else done.push(curve);
  }
  const across = closed && done.length > 2 ? oneCurve(done.at(-1)!, done[0]!) : undefined;
  return across ? [across, ...done.slice(1, -1)] : done;
}

/** The curve run from its end to its start. */
export function backwards(curve: Curve): Curve {
  const { p0, p1 } = curve;
  if (curve.kind === "line") return { kind: "line", p0: p1, p1: p0 };
  if (curve.kind === "cubic") return { kind: "cubic", p0: p1, c1: curve.c2, c2: curve.c1, p1: p0 };
  return { ...curve, p0: p1, p1: p0, angle0: curve.angle0 + curve.sweep, sweep: -curve.sweep };
}
