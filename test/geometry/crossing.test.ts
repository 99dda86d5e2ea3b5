import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  cornerTurns,
  crossings,
  cubic,
  distanceToPath,
  line,
  moved,
  openPath,
  type Path,
  type Point,
  polyline,
  reversed,
  selfCrossings,
  turned,
} from "../../src/geometry/index.ts";
import {
  anyOutline,
  coordinates,
  ellipse,
  inPaper,
  neile,
  oneCubic,
  points,
  roundedRectangle,
  swelledStrap,
} from "./shapes.ts";

function samePoints(found: readonly Point[], expected: readonly Point[], within = 1e-9): void {
  expect(found.length).toBe(expected.length);
  for (const [x, y] of expected) {
    expect(Math.min(...found.map((point) => Math.hypot(point[0] - x, point[1] - y)))).toBeLessThan(within);
  }
}

describe("crossings", () => {
  test("closed forms: lines, line and circle, circles, parabola and line", () => {
    const cross = polyline(points(-10, -10, 10, 10));
    samePoints(crossings(cross, polyline(points(-10, 10, 10, -10))), points(0, 0));
    samePoints(crossings(circlePath([0, 0], 5), polyline(points(-9, 3, 9, 3))), points(-4, 3, 4, 3));
    samePoints(crossings(circlePath([0, 0], 5), circlePath([6, 0], 5)), points(3, -4, 3, 4));
    const parabola = oneCubic(-2, 4, -2 / 3, -4 / 3, 2 / 3, -4 / 3, 2, 4);
    samePoints(crossings(parabola, polyline(points(-3, 1, 3, 1))), points(-1, 1, 1, 1));
    const golden = (1 + Math.sqrt(5)) / 2;
    samePoints(
      crossings(parabola, polyline(points(-2, -1, 3, 4))),
      points(golden, golden + 1, 1 - golden, 2 - golden),
    );
  });

  test("a parabola and a circle: y = x² and the unit circle", () => {
    const parabola = oneCubic(-2, 4, -2 / 3, -4 / 3, 2 / 3, -4 / 3, 2, 4);
    const y = (Math.sqrt(5) - 1) / 2;
    samePoints(crossings(parabola, circlePath([0, 0], 1)), points(-Math.sqrt(y), y, Math.sqrt(y), y));
  });

  test("two cubics with nine crossings: bezier-js 6.1.4 and paper 0.12.20", () => {
    const across = oneCubic(0, 0, 300, 50, -200, 50, 100, 100);
    const along = oneCubic(0, 100, 30, -200, 70, 300, 100, 0);
    const found = crossings(across, along);
    const theirs = inPaper(across).getIntersections(inPaper(along));
    expect(found.length).toBe(theirs.length);
    samePoints(
      found,
      theirs.map(({ point }) => [point.x, point.y] as const),
      1e-4,
    );
    const [b, c] = [new Bezier(...coordinates(across)), new Bezier(...coordinates(along))];
    for (const pair of b.intersects(c, 0.001)) {
      const { x, y } = b.get(Number(pair.split("/")[0]));
      expect(Math.min(...found.map((p) => Math.hypot(p[0] - x, p[1] - y)))).toBeLessThan(0.5);
    }
    expect(found.length).toBeGreaterThanOrEqual(7);
  });

  test("two quarter-turned ellipses cross four times, on the diagonals", () => {
    const [a, b] = [60, 40];
    const at = (a * b) / Math.sqrt(a * a + b * b);
    const [tall, wide] = [ellipse(b, a), ellipse(a, b)];
    samePoints(crossings(wide, tall), points(at, at, -at, at, -at, -at, at, -at), 1e-5);
  });

  test("every crossing lies on both, is found from either side, and paper finds as many", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, (a, other) => {
        const b = turned(moved(other, [30, 10]), 0.3);
        const found = crossings(a, b);
        for (const point of found) {
          expect(distanceToPath(point, a)).toBeLessThan(1e-6);
          expect(distanceToPath(point, b)).toBeLessThan(1e-6);
        }
        expect(crossings(b, a).length).toBe(found.length);
        const drawable = [a, b].every(({ segments }) => segments.every(({ kind }) => kind !== "arc"));
        if (drawable) expect(found.length).toBe(inPaper(a).getIntersections(inPaper(b)).length);
      }),
      { seed: 71, numRuns: 100 },
    );
  });

  test("touching counts: tangent circles, a T, corner on corner", () => {
    samePoints(crossings(circlePath([0, 0], 5), circlePath([8, 0], 3)), points(5, 0));
    samePoints(crossings(circlePath([0, 0], 5), circlePath([2, 0], 3)), points(5, 0));
    samePoints(crossings(circlePath([0, 0], 5), polyline(points(-9, 5, 9, 5))), points(0, 5));
    // A hair (half a millionth) is still a touch, a hundred-thousandth is none.
    samePoints(
      crossings(circlePath([0, 0], 5), polyline(points(-9, 5.0000003, 9, 5.0000003))),
      points(0, 5),
      1e-6,
    );
    expect(crossings(circlePath([0, 0], 5), polyline(points(-9, 5.00001, 9, 5.00001)))).toEqual([]);
    samePoints(crossings(polyline(points(0, 0, 10, 0)), polyline(points(4, 0, 4, 7))), points(4, 0));
    const hill = oneCubic(-30, 0, -10, 40, 10, 40, 30, 0);
    samePoints(crossings(hill, polyline(points(-20, 30, 20, 30))), points(0, 30), 1e-5);
    expect(crossings(hill, polyline(points(-20, 30.001, 20, 30.001)))).toEqual([]);
  });

  test("running along each other: both ends of the stretch and its middle", () => {
    samePoints(
      crossings(polyline(points(0, 0, 10, 0)), polyline(points(4, 0, 20, 0))),
      points(4, 0, 7, 0, 10, 0),
    );
    const quarter = openPath([5, 0], [arc([0, 5], [0, 0], true)]);
    expect(crossings(quarter, openPath([5, 0], [arc([-5, 0], [0, 0], true)])).length).toBe(3);
    const bow = oneCubic(0, 0, 30, 10, 60, -10, 90, 0);
    samePoints(crossings(bow, reversed(bow)), points(0, 0, 45, 0, 90, 0), 1e-6);
  });
});

describe("a path's crossings with itself", () => {
  test.each<readonly [string, Path]>([
    ["rounded rectangle", roundedRectangle(120, 70, 15)],
    ["its corners grown together", roundedRectangle(20, 20, 10)],
    ["swelled strap", swelledStrap()],
    ["ellipse of 64 cubics", ellipse(60, 40)],
    ["circle of two arcs", circlePath([3, 3], 9)],
    ["cusp", neile(50)],
    ["sharp spike", polyline(points(0, 0, 100, 0.01, 0, 0.02), true)],
    ["teardrop of one cubic", closedPath([0, 0], [cubic([40, 30], [-40, 30], [0, 0])])],
    ["a point", openPath([1, 1], [])],
    ["segments of no length", openPath([0, 0], [line([5, 0]), line([5, 0]), line([5, 5])])],
  ])("%s: none", (_, path) => {
    for (let i = 0; i < 4; i++) {
      expect(selfCrossings(turned(path, i * 1.3, [7, -5]))).toEqual([]);
      expect(selfCrossings(reversed(turned(path, i * 1.3)))).toEqual([]);
    }
  });

  test("figure eights: of lines, touching in a corner, of arcs", () => {
    samePoints(selfCrossings(polyline(points(0, 0, 10, 10, 10, 0, 0, 10), true)), points(5, 5));
    const corner = polyline(points(0, 0, 5, 5, 10, 0, 10, 10, 5, 5, 0, 10), true);
    samePoints(selfCrossings(corner), points(5, 5));
    const arcs = closedPath(
      [0, 0],
      [
        arc([10, 0], [5, 0], true),
        arc([0, 0], [5, 0], true),
        arc([-10, 0], [-5, 0], true),
        arc([0, 0], [-5, 0], true),
      ],
    );
    samePoints(selfCrossings(arcs), points(0, 0));
  });

  test("doubled back: neighbours that run over each other", () => {
    samePoints(selfCrossings(polyline(points(0, 0, 10, 0, 4, 0))), points(4, 0, 7, 0));
    expect(selfCrossings(polyline(points(0, 0, 10, 0), true)).length).toBeGreaterThan(0);
    const arcBack = openPath([5, 0], [arc([0, 5], [0, 0], true), arc([5, 0], [0, 0], false)]);
    expect(selfCrossings(arcBack).length).toBeGreaterThan(0);
    // x(t) of a straight cubic with x = 0, 40, −10, 30: x′ = 180 t² − 180 t + 40 = 0 at t = 1/3 and 2/3.
    samePoints(selfCrossings(oneCubic(0, 0, 40, 0, -10, 0, 30, 0)), points(50 / 3, 0, 40 / 3, 0));
  });

  test("a cubic's own loop: bezier-js 6.1.4", () => {
    const looped = oneCubic(0, 0, 100, 80, -70, 80, 30, 0);
    const theirs = new Bezier(...coordinates(looped));
    const [t] = theirs.selfintersects(0.001)[0]!.split("/").map(Number);
    const { x, y } = theirs.get(t!);
    const [found, ...others] = selfCrossings(looped);
    expect(others).toEqual([]);
    expect(Math.hypot(found![0] - x, found![1] - y)).toBeLessThan(0.5);
    expect(found![0]).toBeCloseTo(15, 9);
    expect(selfCrossings(oneCubic(0, 0, 30, 10, 60, -10, 90, 0))).toEqual([]);
  });
});

describe("corners", () => {
  test("any closed outline of lines turns once round in all: 2π (Hopf's Umlaufsatz)", () => {
    const star = polyline(points(0, 0, 30, 4, 50, 0, 40, 25, 22, 9, 3, 30), true);
    const turns = cornerTurns(star);
    expect(turns.length).toBe(6);
    expect(turns.reduce((sum, { turn }) => sum + turn, 0)).toBeCloseTo(2 * Math.PI, 12);
    expect(turns[0]).toMatchObject({ at: [0, 0], s: 0 });
    expect(turns[1]!.s).toBeCloseTo(Math.hypot(30, 4), 12);
    expect(turns.reduce((sum, { turn }) => sum + (turn < 0 ? 1 : 0), 0)).toBe(2);
  });

  test("smooth joints are exactly 0; a square's are quarter turns, to the left when anticlockwise", () => {
    for (const path of [roundedRectangle(120, 70, 15), swelledStrap(), ellipse(60, 40)]) {
      for (const { turn } of cornerTurns(turned(path, 0.7))) expect(turn).toBe(0);
    }
    const square = polyline(points(0, 0, 9, 0, 9, 9, 0, 9), true);
    for (const { turn } of cornerTurns(square)) expect(turn).toBeCloseTo(Math.PI / 2, 12);
    for (const { turn } of cornerTurns(reversed(square))) expect(turn).toBeCloseTo(-Math.PI / 2, 12);
  });

  test("open paths have inner joints only; turning right back is π; crumbs are passed over", () => {
    expect(cornerTurns(polyline(points(0, 0, 10, 0, 4, 0))).map(({ turn }) => turn)).toEqual([Math.PI]);
    const crumbs = openPath([0, 0], [line([5, 0]), line([5, 0]), line([5, 5])]);
    expect(cornerTurns(crumbs).length).toBe(1);
    expect(cornerTurns(crumbs)[0]!.turn).toBeCloseTo(Math.PI / 2, 12);
    expect(cornerTurns(openPath([0, 0], []))).toEqual([]);
  });
});
