// Shapes that several tests share, and the same shapes written for other libraries.
import fc from "fast-check";
import paper from "paper/dist/paper-core.js";
import {
  arc,
  type CubicSegment,
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  type Segment,
  withStarts,
} from "../../src/geometry/index.ts";

/** Points from their coordinates, x and y by turns. */
export const points = (...coordinates: readonly number[]): Point[] =>
  Array.from({ length: coordinates.length / 2 }, (_, i) => [coordinates[2 * i]!, coordinates[2 * i + 1]!]);

/** A rectangle with its middle at the origin and corners of radius r, anticlockwise. */
export function roundedRectangle(width: number, height: number, r: number): Path {
  const [x, y] = [width / 2, height / 2];
  return closedPath(
    [-x + r, -y],
    [
      line([x - r, -y]),
      arc([x, -y + r], [x - r, -y + r], true),
      line([x, y - r]),
      arc([x - r, y], [x - r, y - r], true),
      line([-x + r, y]),
      arc([-x, y - r], [-x + r, y - r], true),
      line([-x, -y + r]),
      arc([-x + r, -y], [-x + r, -y + r], true),
    ],
  );
}

/** A strap's outline swelled in the middle by four cubics, round at both ends; `waist` below 8 makes it narrow. */
export function swelledStrap(half = 8, middle = 16): Path {
  return closedPath(
    [0, -half],
    [
      line([40, -half]),
      cubic([70, -half], [80, -middle], [130, -middle]),
      cubic([180, -middle], [190, -half], [220, -half]),
      line([260, -half]),
      arc([260, half], [260, 0], true),
      line([220, half]),
      cubic([190, half], [180, middle], [130, middle]),
      cubic([80, middle], [70, half], [40, half]),
      line([0, half]),
      arc([0, -half], [0, 0], true),
    ],
  );
}

/** An ellipse as `count` cubics with the ellipse's own tangents; at 64 they stray under 1e-9 of its size. */
export function ellipse(a: number, b: number, count = 64): Path {
  const step = (2 * Math.PI) / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  const at = (i: number): Point => [a * Math.cos(i * step), b * Math.sin(i * step)];
  const way = (i: number): Point => [-a * Math.sin(i * step), b * Math.cos(i * step)];
  const plus = (p: Point, v: Point, k: number): Point => [p[0] + k * v[0], p[1] + k * v[1]];
  const segments = Array.from({ length: count }, (_, i) => {
    const end = i === count - 1 ? at(0) : at(i + 1);
    return cubic(plus(at(i), way(i), handle), plus(end, way(i + 1), -handle), end);
  });
  return closedPath(at(0), segments);
}

/** Neile's parabola (t², t³) for t from −1 to 1: one cubic with a true cusp at its middle. */
export const neile = (scale: number): Path =>
  openPath([scale, -scale], [cubic([-scale / 3, scale], [-scale / 3, -scale], [scale, scale])]);

/** One cubic as an open path, from eight coordinates. */
export function oneCubic(x0: number, y0: number, ...rest: readonly number[]): Path {
  const [a, b, c, d, e, f] = rest as [number, number, number, number, number, number];
  return openPath([x0, y0], [cubic([a, b], [c, d], [e, f])]);
}

export const coordinates = (path: Path): number[] => {
  const { c1, c2, to } = path.segments[0] as CubicSegment;
  return [...path.start, ...c1, ...c2, ...to];
};

function svgSegment({ from, segment }: { readonly from: Point; readonly segment: Segment }): string {
  const to = segment.to.join(" ");
  if (segment.kind === "line") return `L${to}`;
  if (segment.kind === "cubic") return `C${segment.c1.join(" ")} ${segment.c2.join(" ")} ${to}`;
  const { centre, ccw } = segment;
  const r = Math.hypot(from[0] - centre[0], from[1] - centre[1]);
  const angle = (p: Point): number => Math.atan2(p[1] - centre[1], p[0] - centre[0]);
  const left = (angle(segment.to) - angle(from) + 4 * Math.PI) % (2 * Math.PI);
  const large = (ccw ? left : 2 * Math.PI - left) > Math.PI ? 1 : 0;
  return `A${r} ${r} 0 ${large} ${ccw ? 1 : 0} ${to}`;
}

/** The path as SVG path data, in our axes (y is not turned). */
export const svgData = (path: Path): string =>
  `M${path.start.join(" ")}${withStarts(path).map(svgSegment).join("")}`;

/** The path in paper, lines and cubics only. */
export function inPaper(path: Path): paper.Path {
  if (!paper.project) paper.setup(new paper.Size(1, 1));
  const item = new paper.Path({ insert: false });
  const at = ([x, y]: Point): paper.Point => new paper.Point(x, y);
  item.moveTo(at(path.start));
  for (const segment of path.segments) {
    if (segment.kind === "arc") throw new Error("paper has no arcs");
    if (segment.kind === "line") item.lineTo(at(segment.to));
    else item.cubicCurveTo(at(segment.c1), at(segment.c2), at(segment.to));
  }
  if (path.closed) item.closePath();
  return item;
}

const share = fc.double({ min: 0, max: 1, noNaN: true });
const mix = (from: number, to: number, k: number): number => from + (to - from) * k;

/** A segment of any kind from p to q, bulging by up to half the distance. */
function segmentBetween(p: Point, q: Point, kind: number, k: number, m: number): Segment {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  if (kind === 0) return line(q);
  if (kind === 1) {
    const bulge = mix(0.05, 0.45, k) * (m < 0.5 ? -1 : 1);
    // Sagitta s on a chord c: the centre lies c/2 · (1 − s²)/(2s) from the chord, s as a share of c/2.
    const off = (1 - bulge * bulge) / (2 * bulge);
    return arc(q, [(p[0] + q[0]) / 2 - (dy / 2) * off, (p[1] + q[1]) / 2 + (dx / 2) * off], bulge > 0);
  }
  const [u, v] = [mix(-0.4, 0.4, k), mix(-0.4, 0.4, m)];
  return cubic(
    [p[0] + dx / 3 - dy * u, p[1] + dy / 3 + dx * u],
    [p[0] + (2 * dx) / 3 - dy * v, p[1] + (2 * dy) / 3 + dx * v],
    q,
  );
}

/**
 * Outlines of three to eight segments of every kind round the origin, 20 to 80 mm from it, anticlockwise.
 * Most do not cross themselves; a test that needs so asks.
 */
export const anyOutline: fc.Arbitrary<Path> = fc
  .array(fc.tuple(share, share, fc.integer({ min: 0, max: 2 }), share, share), { minLength: 3, maxLength: 8 })
  .map((rows) => {
    const points = rows.map(([turn, far], i): Point => {
      const angle = (2 * Math.PI * (i + 0.6 * turn)) / rows.length;
      const radius = mix(20, 80, far);
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
    const segments = rows.map(([, , kind, k, m], i) =>
      segmentBetween(points[i]!, points[(i + 1) % points.length]!, kind, k, m),
    );
    return closedPath(points[0]!, segments);
  });

/** The same without its last segment. */
export const anyOpenPath: fc.Arbitrary<Path> = anyOutline.map(({ start, segments }) =>
  openPath(start, segments.slice(0, -1)),
);
