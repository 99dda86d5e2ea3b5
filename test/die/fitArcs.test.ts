import { Bezier } from "bezier-js";
import fc from "fast-check";
import polygonClipping from "polygon-clipping";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import { ARC_FIT_MM, fitArcs } from "../../src/die/fitArcs.ts";
import {
  circlePath,
  closedPath,
  cornerTurns,
  cubic,
  distanceToPath,
  flatten,
  line,
  mirroredInX,
  openPath,
  type Path,
  type Point,
  pathLength,
  reversed,
  selfCrossings,
  slotPath,
  turned,
  withStarts,
} from "../../src/geometry/index.ts";
import { anyOutline, ellipse, neile, roundedRectangle, svgData, swelledStrap } from "../geometry/shapes.ts";

/** The outside's own points of a path: svg-path-properties, by its own lengths. */
function outsidePoints(path: Path, count: number): readonly Point[] {
  const outside = new svgPathProperties(svgData(path));
  const total = outside.getTotalLength();
  return Array.from({ length: count }, (_, i) => {
    const { x, y } = outside.getPointAtLength((total * i) / count);
    return [x, y] as const;
  });
}

const radiusAt = ({ from, centre }: { from: Point; centre: Point }): number =>
  Math.hypot(from[0] - centre[0], from[1] - centre[1]);

/** Both ways, by points that another library found. */
function furthest(a: Path, b: Path): number {
  const one = outsidePoints(a, 240).map((p) => distanceToPath(p, b));
  const other = outsidePoints(b, 240).map((p) => distanceToPath(p, a));
  return Math.max(...one, ...other);
}

describe("curves fitted by arcs", () => {
  test.each([
    ["swelled strap", swelledStrap(), 22],
    ["narrow waist", swelledStrap(8, 5), 22],
    ["ellipse of 4 cubics", ellipse(50, 30, 4), 22],
    ["ellipse of 64 cubics", ellipse(50, 30), 22],
    ["flat ellipse", ellipse(100, 20, 8), 30],
  ])("%s: within 0.05 mm both ways, lines and arcs only, few of them", (_, path, most) => {
    const { path: fitted, error } = fitArcs(path);
    expect(fitted.segments.every(({ kind }) => kind !== "cubic")).toBe(true);
    expect(furthest(path, fitted)).toBeLessThanOrEqual(0.05);
    expect(error).toBeLessThanOrEqual(ARC_FIT_MM);
    expect(furthest(path, fitted)).toBeLessThanOrEqual(error + 0.001);
    expect(fitted.segments.length).toBeLessThanOrEqual(most);
    expect(fitted.closed).toBe(true);
  });

  test("joints that were smooth stay smooth, to 0.06°", () => {
    for (const path of [swelledStrap(), ellipse(50, 30, 4), ellipse(50, 30)]) {
      for (const { turn } of cornerTurns(fitArcs(path).path)) expect(Math.abs(turn)).toBeLessThan(0.001);
    }
  });

  test("arcs and lines are kept exactly, and their joints", () => {
    for (const path of [roundedRectangle(80, 40, 6), slotPath([3, 4], 20, 4, 0.3), circlePath([1, 2], 9)]) {
      const { path: fitted, error } = fitArcs(path);
      expect(error).toBe(0);
      expect(fitted.start).toEqual(path.start);
      expect(fitted.segments.length).toBe(path.segments.length);
      fitted.segments.forEach((segment, i) => {
        expect(segment).toEqual(path.segments[i]);
      });
    }
    // Beside a curve a line ends sooner or later, on its own line; the ends' half circles stay.
    const kept = withStarts(fitArcs(swelledStrap()).path);
    const lines = kept.filter(({ segment }) => segment.kind === "line");
    expect(lines.length).toBe(4);
    for (const { from, segment } of lines)
      for (const [, y] of [from, segment.to]) expect(Math.abs(Math.abs(y) - 8)).toBeLessThan(1e-9);
    for (const x of [0, 260])
      expect(
        kept.filter(
          ({ segment }) =>
            segment.kind === "arc" && Math.hypot(segment.centre[0] - x, segment.centre[1]) < 1e-9,
        ).length,
      ).toBe(1);
  });

  test("the radii at an ellipse's ends are near the ellipse's own: b²/a and a²/b", () => {
    const [a, b] = [50, 30];
    const arcs = withStarts(fitArcs(ellipse(a, b), 0.001).path).flatMap(({ from, segment }) =>
      segment.kind === "arc" ? [{ from, to: segment.to, r: radiusAt({ from, centre: segment.centre }) }] : [],
    );
    const radii = arcs.map(({ r }) => r);
    expect(Math.abs(Math.min(...radii) / (b ** 2 / a) - 1)).toBeLessThan(0.05);
    expect(Math.abs(Math.max(...radii) / (a ** 2 / b) - 1)).toBeLessThan(0.05);
  });

  test("a straight cubic becomes a line", () => {
    const { path } = fitArcs(openPath([0, 0], [cubic([10, 5], [20, 10], [30, 15])]));
    expect(path.segments).toEqual([line([30, 15])]);
  });

  test("length and area agree with other libraries on the cubics themselves", () => {
    const handles = [0, 0, 30, 45, 70, -35, 100, 10] as const;
    const path = openPath([0, 0], [cubic([30, 45], [70, -35], [100, 10])]);
    const fitted = fitArcs(path).path;
    const length = new Bezier(...handles).length();
    expect(Math.abs(pathLength(fitted) - length)).toBeLessThan(0.05);
    const area = (p: Path): number => {
      const ring = flatten(p, 0.001).map(([x, y]): [number, number] => [x, y]);
      return polygonClipping
        .union([ring])
        .flat()
        .reduce(
          (sum, r) =>
            sum +
            r.reduce(
              (s, q, i) => s + (q[0] * r[(i + 1) % r.length]![1] - r[(i + 1) % r.length]![0] * q[1]) / 2,
              0,
            ),
          0,
        );
    };
    const strap = swelledStrap();
    // A strip 0.05 mm wide all round is the most that the area may differ by.
    const most = 0.05 * pathLength(strap);
    expect(Math.abs(area(fitArcs(strap).path) - area(strap))).toBeLessThan(most);
  });

  test("a run gets the same arcs wherever it lies: turned, mirrored, run backwards", () => {
    const path = openPath([0, 0], [cubic([30, 5], [50, 40], [90, 42])]);
    const radii = (p: Path): readonly number[] =>
      withStarts(fitArcs(p).path).map(({ from, segment }) =>
        segment.kind === "arc" ? radiusAt({ from, centre: segment.centre }) : Infinity,
      );
    const own = radii(path);
    const alike = (got: readonly number[]): void => {
      expect(got.length).toBe(own.length);
      got.forEach((r, i) => {
        expect(Math.abs(r / own[i]! - 1)).toBeLessThan(1e-6);
      });
    };
    expect(own.length).toBeGreaterThan(1);
    alike(radii(turned(path, 1.1)));
    alike(radii(mirroredInX(path)));
    alike([...radii(reversed(path))].reverse());
    alike([...radii(reversed(mirroredInX(turned(path, -2))))].reverse());
  });

  test("a piece that is its own mirror image gets arcs that are", () => {
    const ends = fitArcs(swelledStrap()).path.segments.map(({ to }) => to);
    for (const [x, y] of ends) expect(ends.some(([u, v]) => Math.hypot(u - x, v + y) < 1e-6)).toBe(true);
  });

  test("a coarser tolerance needs fewer arcs, a finer one more", () => {
    const count = (t: number): number => fitArcs(ellipse(50, 30, 4), t).path.segments.length;
    expect(count(0.5)).toBeLessThan(count(0.045));
    expect(count(0.045)).toBeLessThan(count(0.002));
  });

  test.each([
    ["a bend between two samples", [76.63, 9.39], [14.92, 74.28], [8.14, 84.03], [67.99, 22.82]],
    ["a hook", [76.4332, 56.5558], [23.7488, 81.6204], [68.6322, 39.7936], [80.5813, 64.7478]],
    ["a leaf", [13.8754, 5.7305], [60.1672, 93.5127], [95.6313, 27.2472], [13.2888, 40.3283]],
  ] as const)("a curve on which the first search is too coarse is searched again: %s", (_, a, b, c, d) => {
    const path = openPath(a, [cubic(b, c, d)]);
    const { path: fitted, error } = fitArcs(path);
    expect(error).toBeLessThanOrEqual(ARC_FIT_MM);
    expect(furthest(path, fitted)).toBeLessThanOrEqual(ARC_FIT_MM);
  });

  test("at a cusp the error that was reached is told, and it ends", () => {
    const { path, error } = fitArcs(neile(20));
    expect(path.segments.every(({ kind }) => kind !== "cubic")).toBe(true);
    expect(furthest(neile(20), path)).toBeLessThanOrEqual(Math.max(error, ARC_FIT_MM) + 0.002);
  });

  test("any outline, within the tolerance that is asked", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        fc.pre(selfCrossings(outline).length === 0);
        const { path, error } = fitArcs(outline);
        expect(error).toBeLessThanOrEqual(ARC_FIT_MM);
        expect(furthest(outline, path)).toBeLessThanOrEqual(0.05);
        const [x, y] = path.segments.at(-1)!.to;
        expect(Math.hypot(x - path.start[0], y - path.start[1])).toBeLessThan(1e-9);
      }),
      { seed: 11, numRuns: 10 },
    );
  }, 20000);

  test("no tolerance is no fit", () => {
    expect(() => fitArcs(closedPath([0, 0], [line([1, 0]), line([0, 1])]), 0)).toThrow(RangeError);
    expect(() => fitArcs(circlePath([0, 0], 1), Number.NaN)).toThrow(RangeError);
  });
});
