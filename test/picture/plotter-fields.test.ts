import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  line,
  type Path,
  pathLength,
  pointAt,
  rectanglePath,
  reversed,
  slotPath,
} from "../../src/geometry/index.ts";
import { COINCIDES_MM, fieldEdges } from "../../src/picture/die/fieldEdges.ts";

// Fields on pieces so plain that one sees which of their edges lie inside.

const strap = rectanglePath([0, -10], 100, 20);
const ends = (path: Path) => [pointAt(path, 0), pointAt(path, pathLength(path))];
const near = (v: number) => expect.closeTo(v, 3);

describe("a field's inner edges", () => {
  test("across a strap: two lines, from edge to edge but for a hair", () => {
    const edges = fieldEdges(rectanglePath([10, -10], 30, 20), strap);
    expect(edges.map(({ closed }) => closed)).toEqual([false, false]);
    const [right, left] = edges.map(ends);
    expect(right).toEqual([
      [near(40), near(-10 + COINCIDES_MM)],
      [near(40), near(10 - COINCIDES_MM)],
    ]);
    expect(left).toEqual([
      [near(10), near(10 - COINCIDES_MM)],
      [near(10), near(-10 + COINCIDES_MM)],
    ]);
  });

  test.each([
    ["as it is", (p: Path) => p],
    ["the other way round", reversed],
  ])("at a strap's end: one line; the outline %s", (_, turned) => {
    const edges = fieldEdges(rectanglePath([80, -10], 20, 20), turned(strap));
    expect(edges).toHaveLength(1);
    expect(pathLength(edges[0]!)).toBeCloseTo(20 - 2 * COINCIDES_MM, 3);
  });

  test("beyond a round end: only the line across is inside", () => {
    const edges = fieldEdges(rectanglePath([20, -10], 15, 20), slotPath([0, 0], 60, 20));
    expect(edges).toHaveLength(1);
    for (const [x] of ends(edges[0]!)) expect(x).toBeCloseTo(20, 6);
  });

  test("along a round edge: the arc that lies on it is gone, the arc inside stays an arc", () => {
    const piece = circlePath([0, 0], 40);
    const ring = closedPath(
      [40, 0],
      [arc([-40, 0], [0, 0], true), line([-30, 0]), arc([30, 0], [0, 0], false)],
    );
    const edges = fieldEdges(ring, piece);
    expect(edges).toHaveLength(1);
    expect(edges[0]!.segments.map(({ kind }) => kind)).toEqual(["line", "arc", "line"]);
    expect(pathLength(edges[0]!)).toBeCloseTo(Math.PI * 30 + 2 * (10 - COINCIDES_MM), 3);
  });

  test("well inside: all of it, closed; as large as the piece: nothing", () => {
    const inner = rectanglePath([20, -5], 30, 10);
    expect(fieldEdges(inner, strap)).toEqual([inner]);
    expect(fieldEdges(strap, strap)).toEqual([]);
  });

  test("within 0.05 mm it lies on the outline, at 0.1 mm it does not", () => {
    const at = (gap: number) => fieldEdges(rectanglePath([10, -10 + gap], 30, 20 - gap), strap);
    const length = (paths: readonly Path[]) => paths.reduce((sum, path) => sum + pathLength(path), 0);
    expect(length(at(0.04))).toBeLessThan(40);
    expect(length(at(0.1))).toBeGreaterThan(69);
  });

  test("an edge that is drawn already is not drawn again; a line that only crosses takes nothing away", () => {
    const field = rectanglePath([40, -10], 20, 20);
    const before = fieldEdges(rectanglePath([10, -10], 30, 20), strap);
    const edges = fieldEdges(field, strap, before);
    expect(edges).toHaveLength(1);
    for (const [x] of ends(edges[0]!)) expect(x).toBeCloseTo(60, 6);
    const across = rectanglePath([-5, -0.02], 110, 0.04);
    expect(fieldEdges(field, strap, [across])).toHaveLength(2);
  });
});
