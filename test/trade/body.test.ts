import { describe, expect, test } from "vitest";
import {
  boundsOf,
  cornerTurns,
  curvatureAt,
  pathLength,
  pointAt,
  tangentAt,
} from "../../src/geometry/index.ts";
import { BODIES, type Body, bodyEdge } from "../../src/trade/body.ts";

const body = (more: Partial<Body> = {}): Body => ({
  kind: "swelled",
  from: 40,
  to: 240,
  widthFrom: 16,
  widthTo: 20,
  widest: 32,
  widestAt: 0.4,
  scallops: 5,
  ...more,
});

describe.each(BODIES)("%s body", (kind) => {
  const { path, corners } = bodyEdge(body({ kind }));

  test("begins and ends at the widths it was given", () => {
    expect(path.start).toEqual([40, 8]);
    const [x, y] = path.segments.at(-1)!.to;
    expect(x).toBeCloseTo(240, 9);
    expect(y).toBeCloseTo(10, 9);
  });

  test("turns sharply nowhere but at the corners it names", () => {
    const sharp = cornerTurns(path).filter((c) => c.turn !== 0);
    for (const c of sharp) {
      expect(corners.some((k) => Math.hypot(k[0] - c.at[0], k[1] - c.at[1]) < 1e-6)).toBe(true);
    }
    expect(sharp.length).toBe(kind === "scalloped" ? 4 : 0);
  });

  test("never goes back along the strap", () => {
    const length = pathLength(path);
    const xs = Array.from({ length: 201 }, (_, i) => pointAt(path, (length * i) / 200)[0]);
    for (const [i, x] of xs.slice(1).entries()) expect(x).toBeGreaterThan(xs[i]!);
  });
});

describe("swelled", () => {
  test("is as wide as ordered where ordered, and nowhere wider", () => {
    const { path } = bodyEdge(body());
    expect(boundsOf(path).maxY).toBeCloseTo(16, 9);
    const [first] = path.segments;
    expect(first!.to[0]).toBeCloseTo(40 + 0.4 * 200, 9);
    expect(first!.to[1]).toBeCloseTo(16, 9);
  });

  test("leaves and arrives along the strap", () => {
    const { path } = bodyEdge(body());
    expect(tangentAt(path, 0)).toBeCloseTo(0, 6);
    expect(tangentAt(path, pathLength(path))).toBeCloseTo(0, 6);
  });
});

describe("straight and tapered", () => {
  test("of one width are a line", () => {
    for (const kind of ["straight", "tapered"] as const) {
      const { path } = bodyEdge(body({ kind, widthTo: 16 }));
      expect(path.segments.map((s) => s.kind)).toEqual(["line"]);
    }
  });

  test("of two widths keep between them", () => {
    const box = boundsOf(bodyEdge(body({ kind: "tapered" })).path);
    expect([box.minY, box.maxY].map((n) => Number(n.toFixed(9)))).toEqual([8, 10]);
  });
});

describe("scalloped", () => {
  test("rises to the widest on a strap of one width, as often as ordered", () => {
    const { path, corners } = bodyEdge(body({ kind: "scalloped", widthTo: 16 }));
    expect(path.segments).toHaveLength(5);
    expect(corners).toHaveLength(6);
    expect(boundsOf(path).maxY).toBeCloseTo(16, 9);
    // Each arc bows outward: the edge runs with the leather on its right.
    for (let i = 0; i < 5; i += 1)
      expect(curvatureAt(path, (pathLength(path) * (i + 0.5)) / 5)).toBeLessThan(0);
  });

  test("no wider than its ends is straight", () => {
    const { path } = bodyEdge(body({ kind: "scalloped", widest: 20, widthFrom: 20 }));
    expect(path.segments.every((s) => s.kind === "line")).toBe(true);
  });
});
