import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import {
  boundsOf,
  cornerTurns,
  pathLength,
  pointAt,
  selfCrossings,
  tangentAt,
} from "../../src/geometry/index.ts";
import { closedPath, line, openPath, type Path } from "../../src/geometry/path.ts";
import { drawPoint, englishRadius, POINTS, type PointKind, pointLength } from "../../src/trade/points.ts";
import { degrees, given } from "../support/quantities.ts";

// Expected values: fixtures/published/worked-cases.json (independent simulation).

const TIP = 100;
const WIDTH = 16;

const lengthOf = (kind: PointKind): number => pointLength(kind, given("width", WIDTH)).value;

/** The point's edge alone, from the lower edge of the strap round the tip to the upper one. */
const edgeOf = (kind: PointKind, length = lengthOf(kind)): Path =>
  openPath([TIP - length, -WIDTH / 2], drawPoint(kind, TIP, WIDTH, length).segments);

/** A short strap that ends in the point. */
const strapOf = (kind: PointKind): Path => {
  const edge = edgeOf(kind);
  return closedPath([0, -WIDTH / 2], [line(edge.start), ...edge.segments, line([0, WIDTH / 2])]);
};

describe.each(POINTS)("%s point", (kind) => {
  test("leads from the lower edge to the upper edge, no further than its tip, no wider than the strap", () => {
    const box = boundsOf(edgeOf(kind));
    expect(edgeOf(kind).segments.at(-1)!.to).toEqual([TIP - lengthOf(kind), WIDTH / 2]);
    expect(box.maxX).toBeCloseTo(TIP, 9);
    expect([box.minY, box.maxY].map((y) => Number(y.toFixed(9)))).toEqual([-WIDTH / 2, WIDTH / 2]);
    expect(selfCrossings(strapOf(kind))).toHaveLength(0);
  });

  test("its lower half is the upper one turned over", () => {
    const edge = edgeOf(kind);
    const length = pathLength(edge);
    for (const share of [0, 0.1, 0.23, 0.4, 0.5]) {
      const [x, y] = pointAt(edge, share * length);
      const [u, v] = pointAt(edge, (1 - share) * length);
      expect(u).toBeCloseTo(x, 6);
      expect(v).toBeCloseTo(-y, 6);
    }
  });

  test("names each of its corners, and no place that is smooth", () => {
    const named = drawPoint(kind, TIP, WIDTH, lengthOf(kind)).corners.map((c) =>
      c.at.map((n) => n.toFixed(6)).join(),
    );
    const sharp = cornerTurns(strapOf(kind))
      .filter((c) => Math.abs(c.turn) > 0.01 && c.at[0] > 1)
      .map((c) => c.at.map((n) => n.toFixed(6)).join());
    expect([...named].sort()).toEqual([...sharp].sort());
  });
});

describe("English point", () => {
  const c = worked.cases.englishPoint;

  test("the worked case: radius and angle of the tip", () => {
    const length = pointLength("english", given("width", c.width));
    expect(length.value).toBeCloseTo(c.length, 9);
    expect(englishRadius("point", given("width", c.width), length).value).toBeCloseTo(c.radius, 2);
    const edge = openPath(
      [TIP - c.length, -c.width / 2],
      drawPoint("english", TIP, c.width, c.length).segments,
    );
    const half = pathLength(edge) / 2;
    const turn = tangentAt(edge, half + 1e-6) - tangentAt(edge, half - 1e-6);
    expect(180 - degrees(Math.abs(turn))).toBeCloseTo(c.tipDegrees, 1);
  });

  test("its arcs have the radius that is explained, and leave the edges without a corner", () => {
    const r = englishRadius("point", given("width", WIDTH), given("length", 22)).value;
    for (const s of drawPoint("english", TIP, WIDTH, 22).segments) {
      if (s.kind !== "arc") throw new Error("not an arc");
      expect(Math.hypot(s.to[0] - s.centre[0], s.to[1] - s.centre[1])).toBeCloseTo(r, 9);
    }
    expect(tangentAt(edgeOf("english", 22), 0)).toBeCloseTo(0, 9);
  });

  test("as short as half the width it is a half circle", () => {
    const edge = edgeOf("english", WIDTH / 2);
    expect(pathLength(edge)).toBeCloseTo((Math.PI * WIDTH) / 2, 9);
  });
});

test("a round point is a half circle", () => {
  expect(pathLength(edgeOf("round"))).toBeCloseTo((Math.PI * WIDTH) / 2, 9);
});

test("a clipped square loses a quarter of its width at each corner, at 45°", () => {
  const edge = edgeOf("clipped");
  const names = drawPoint("clipped", TIP, WIDTH, 4).corners.map((c) => c.name);
  expect(names).toEqual(["clip 1", "clip 2", "clip 3", "clip 4"]);
  expect(degrees(tangentAt(edge, 1))).toBeCloseTo(45, 9);
  expect(pathLength(edge)).toBeCloseTo(2 * Math.hypot(4, 4) + 8, 9);
});
