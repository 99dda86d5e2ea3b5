import { describe, expect, test } from "vitest";
import { distanceToPath, nearestOnPath } from "../../src/geometry/distance.ts";
import { pathLength } from "../../src/geometry/length.ts";
import { arc, cubic, line, openPath, type Path, polyline } from "../../src/geometry/path.ts";
import { clipMarks, clipPlaces, quarterNotches } from "../../src/trade/clips.ts";

// Clips are common practice, no source: stop max(1.5, t) short of the stitches, min(8 mm, 15°) apart.

/** Down 80, a quarter round of this radius, and 60 across. */
const corner = (radius: number): Path =>
  openPath([0, 80], [line([0, 0]), arc([radius, -radius], [radius, 0], true), line([radius + 60, -radius])]);

const gaps = (places: readonly number[]): readonly number[] => places.slice(1).map((s, i) => s - places[i]!);

describe("where an allowance is clipped", () => {
  test.each([
    [60, 8],
    [31, 8],
    [20, (20 * Math.PI) / 12],
    [6, (6 * Math.PI) / 12],
  ])("round a radius of %d: at most %d mm apart, within the curve, no more than needed", (radius, most) => {
    const places = clipPlaces(corner(radius), 8);
    const round = (radius * Math.PI) / 2;
    const parts = [places[0]! - 80, ...gaps(places), 80 + round - places.at(-1)!];
    for (const part of parts) expect(part).toBeLessThanOrEqual(most + 1e-6);
    expect(places[0]!).toBeGreaterThan(80);
    expect(places.at(-1)!).toBeLessThan(80 + round);
    expect(places).toHaveLength(Math.max(1, Math.ceil(round / most - 1e-6) - 1));
  });

  test("none along straight seams or hardly curved ones", () => {
    expect(
      clipPlaces(
        polyline([
          [0, 0],
          [200, 0],
        ]),
        8,
      ),
    ).toEqual([]);
    expect(clipPlaces(openPath([0, 0], [arc([100, 0], [50, 900], true)]), 8)).toEqual([]);
  });

  test("one in a sharp corner", () =>
    expect(
      clipPlaces(
        polyline([
          [0, 90],
          [0, 0],
          [70, 0],
        ]),
        8,
      ),
    ).toEqual([90]));

  test("a wide curve beside a sharp one keeps its own, with one between them", () => {
    const quarter = arc([20, -20], [20, 0], true);
    const wide = openPath(
      [0, 0],
      [quarter, arc([20 + 200 * Math.sin(0.3), 180 - 200 * Math.cos(0.3)], [20, 180], true)],
    );
    const places = clipPlaces(wide, 8);
    const joint = 10 * Math.PI;
    expect(places.some((s) => Math.abs(s - joint) < 1e-6)).toBe(true);
    expect(places.filter((s) => s > joint + 1e-6)).toHaveLength(7);
    expect(places.filter((s) => s < joint - 1e-6)).toHaveLength(5);
  });

  test("a free curve too, closer where it is asked", () => {
    const curve = openPath([0, 0], [cubic([30, -20], [60, -20], [90, 0])]);
    const [wide, close] = [clipPlaces(curve, 8), clipPlaces(curve, 4)];
    expect(Math.max(...gaps(wide))).toBeLessThanOrEqual(8);
    expect(Math.max(...gaps(close))).toBeLessThanOrEqual(4);
    expect(close.length).toBeGreaterThan(wide.length);
  });
});

describe("clip marks", () => {
  const seam = polyline([
    [0, 10],
    [100, 10],
  ]);
  test.each([
    [1.2, 1.5],
    [2.4, 2.4],
  ])("in %d mm leather stop %d short of the stitches, and begin at the cut edge", (t, short) => {
    const marks = clipMarks("clip", seam, [20, 50], 8, t);
    expect(marks.map((m) => m.id)).toEqual(["clip.1", "clip.2"]);
    for (const { path } of marks) {
      expect(path.start[1]).toBeCloseTo(18, 9);
      expect(distanceToPath(path.segments[0]!.to, seam)).toBeCloseTo(short, 9);
    }
  });

  test("an allowance no wider than that has none left to cut", () => {
    const [mark] = clipMarks("clip", seam, [20], -2, 3);
    expect(pathLength(mark!.path)).toBeCloseTo(0, 9);
  });
});

test("notches: the middle and the quarters, from the cut edge, clear of the stitches", () => {
  const seam = polyline([
    [0, 0],
    [100, 0],
    [100, 60],
  ]);
  for (const edge of [4, -4, 12]) {
    const marks = quarterNotches("front", seam, edge);
    expect(marks.map((m) => m.label)).toEqual(["quarter", "centre", "quarter"]);
    expect(marks.map((m) => nearestOnPath(m.path.segments[0]!.to, seam).at)).toEqual([
      40,
      80,
      expect.closeTo(120, 9),
    ]);
    for (const m of marks) {
      expect(distanceToPath(m.path.start, seam)).toBeCloseTo(Math.abs(edge), 9);
      expect(distanceToPath(m.path.segments[0]!.to, seam)).toBeGreaterThanOrEqual(2);
    }
  }
});
