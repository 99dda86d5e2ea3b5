// Area by Green's theorem: half the sum of x dy − y dx along the path.
import * as trig from "../units/trigonometry.ts";
import { type Curve, curvesOf } from "./curve.ts";
import { endPoint, type Path, type Point } from "./path.ts";
import { reversed } from "./transform.ts";
import { cross, minus } from "./vector.ts";

/** Twice the area that a curve sweeps as seen from `eye`. */
function sweptTwice(curve: Curve, eye: Point): number {
  const [a, b] = [minus(curve.p0, eye), minus(curve.p1, eye)];
  const triangle = cross(a, b);
  if (curve.kind === "line") return triangle;
  // The circular segment between arc and chord: r² (θ − sin θ) / 2.
  if (curve.kind === "arc") return triangle + curve.radius ** 2 * (curve.sweep - trig.sin(curve.sweep));
  // Integral of the Bernstein products, pair by pair of control points.
  const [c, d] = [minus(curve.c1, eye), minus(curve.c2, eye)];
  const pairs =
    6 * cross(a, c) + 3 * cross(a, d) + cross(a, b) + 3 * cross(c, d) + 3 * cross(c, b) + 6 * cross(d, b);
  return pairs / 10;
}

/**
 * Area inside the path in mm², exact for lines, arcs and cubics; positive when it runs anticlockwise. An
 * open path is taken as closed by a straight line. Where a path winds twice the area counts twice.
 */
export function signedArea(path: Path): number {
  const eye = path.start;
  const swept = curvesOf(path).reduce((sum, curve) => sum + sweptTwice(curve, eye), 0);
  return (swept + cross(minus(endPoint(path), eye), minus(path.start, eye))) / 2;
}

/** The closed path running anticlockwise: itself, or reversed. */
export const anticlockwise = (path: Path): Path => (signedArea(path) < 0 ? reversed(path) : path);
