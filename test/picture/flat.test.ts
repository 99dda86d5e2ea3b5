import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  line,
  openPath,
  type Point,
  polyline,
  withStarts,
} from "../../src/geometry/path.ts";
import { arcCubics } from "../../src/output/curves.ts";
import { type FlatItem, flattenPicture, runsBy } from "../../src/picture/flat.ts";
import type { Group, Item, Stroke, Words } from "../../src/picture/picture.ts";
import { roundAngle, roundPath, roundPoint } from "../../src/picture/round.ts";
import { textCorners } from "../../src/picture/words.ts";
import { stroke, words } from "../support/picture.ts";

const flat = (items: readonly Item[]): readonly FlatItem[] =>
  flattenPicture({ title: "", width: 100, height: 100, items });
const group = (items: readonly Item[], more: Partial<Group>): Group => ({
  kind: "group",
  placement: { at: [0, 0], angle: 0 },
  items,
  ...more,
});
const lineTo = (...points: Point[]): Stroke => stroke("cut", "01.2", polyline(points), { id: "line" });
const pathOf = (item: FlatItem | undefined) => (item!.item as Stroke).path;

describe("groups", () => {
  test("are mirrored, then turned, then moved, the inner ones first", () => {
    const inner = group([lineTo([10, 2], [20, 2])], {
      placement: { at: [1, 0], angle: 0, mirrored: true },
      id: "inner",
    });
    const outer = group([inner], { placement: { at: [5, 5], angle: Math.PI / 2 }, id: "outer" });
    const [found] = flat([outer]);
    // By hand: (10, 2) → mirrored (10, −2) → moved (11, −2) → a quarter turn (2, 11) → moved (7, 16).
    expect(pathOf(found).start).toEqual([7, 16]);
    expect(pathOf(found).segments).toEqual([line([7, 26])]);
    expect(found?.item.id).toBe("outer.inner.line");
  });

  test("a mirrored arc bulges to the mirrored side", () => {
    const half = stroke("cut", "01.2", openPath([0, 0], [arc([10, 0], [5, 0], false)]));
    const [found] = flat([group([half], { placement: { at: [0, 20], angle: 0, mirrored: true } })]);
    const [first] = withStarts(pathOf(found));
    const cubics = first?.segment.kind === "arc" ? arcCubics(first.from, first.segment) : [];
    expect(Math.min(...cubics.map((c) => c.to[1]))).toBeCloseTo(15, 6);
  });

  test("mirrored words stay readable and fill the box that their mirror image would", () => {
    for (const align of ["left", "centre", "right"] as const) {
      const item = words("Juniper g", [12, 7], { align, angle: 0.4 });
      const placement = { at: [40, 30], angle: 1.1, mirrored: true } as const;
      const [found] = flat([group([item], { placement })]);
      const [cos, sin] = [Math.cos(1.1), Math.sin(1.1)];
      const image = textCorners(item).map(
        ([x, y]): Point => [40 + x * cos + y * sin, 30 + x * sin - y * cos],
      );
      const turned = textCorners(found?.item as Words);
      // Half a turn swaps the ends of the base line and, against the mirror, keeps top and bottom.
      const expected = [image[1]!, image[0]!, image[3]!, image[2]!];
      for (const [i, corner] of turned.entries()) {
        expect(Math.hypot(corner[0] - expected[i]![0], corner[1] - expected[i]![1])).toBeLessThan(0.002);
      }
    }
  });

  test("a clip goes with its group, and clips of groups within are added after it", () => {
    const clip = { minX: 0, minY: 0, maxX: 10, maxY: 5 };
    const inner = group([lineTo([0, 0], [1, 0])], { placement: { at: [3, 4], angle: Math.PI / 2 }, clip });
    const outer = group([inner, lineTo([0, 0], [2, 0]), lineTo([0, 0], [3, 0])], {
      placement: { at: [1, 1], angle: 0 },
      clip,
    });
    const [nested, one, two] = flat([outer]);
    const outerCorners = [
      [1, 1],
      [11, 1],
      [11, 6],
      [1, 6],
    ];
    expect(nested?.clips).toEqual([
      outerCorners,
      [
        [4, 5],
        [4, 15],
        [-1, 15],
        [-1, 5],
      ],
    ]);
    expect(one?.clips).toEqual([outerCorners]);
    // Shared by identity, so that an output sets it once.
    expect(two?.clips).toBe(one?.clips);
  });
});

test("layers come in one fixed order, and items keep their order within one", () => {
  const items = [
    words("last", [0, 0]),
    stroke(
      "cut",
      "01.2",
      polyline([
        [0, 0],
        [1, 1],
      ]),
      { id: "a" },
    ),
    stroke(
      "skive",
      "03.1",
      polyline([
        [0, 0],
        [1, 1],
      ]),
    ),
    stroke(
      "cut",
      "01.2",
      polyline([
        [0, 0],
        [1, 1],
      ]),
      { id: "b" },
    ),
  ];
  expect(flat(items).map(({ item }) => `${item.layer} ${item.id ?? ""}`)).toEqual([
    "skive ",
    "cut a",
    "cut b",
    "text ",
  ]);
});

test("runs are neighbours that share a key", () => {
  expect(runsBy([1, 1, 2, 1], (n) => n)).toEqual([
    { key: 1, run: [1, 1] },
    { key: 2, run: [2] },
    { key: 1, run: [1] },
  ]);
});

describe("rounding", () => {
  test("sixteenths of an inch lie on ties and always go up", () => {
    expect(roundPoint([25.4 / 16, (3 * 25.4) / 16])).toEqual([1.588, 4.763]);
    expect(roundPoint([-25.4 / 16, -0.0001])).toEqual([-1.587, 0]);
  });

  test("angles come into one turn", () => {
    expect(roundAngle(2 * Math.PI)).toBe(0);
    expect(roundAngle(-Math.PI)).toBeCloseTo(Math.PI, 5);
    expect(roundAngle((5 * Math.PI) / 2)).toBeCloseTo(Math.PI / 2, 5);
    expect(roundAngle(-0.3)).toBe(-0.3);
  });

  /** Length of a rounded path, by an independent library over its cubics. */
  const lengthOf = (path: ReturnType<typeof roundPath>): number =>
    withStarts(path).reduce((sum, { from, segment }) => {
      if (segment.kind === "line") return sum + Math.hypot(segment.to[0] - from[0], segment.to[1] - from[1]);
      let at = from;
      for (const { c1, c2, to } of segment.kind === "arc" ? arcCubics(from, segment) : [segment]) {
        sum += new Bezier(at[0], at[1], c1[0], c1[1], c2[0], c2[1], to[0], to[1]).length();
        at = to;
      }
      return sum;
    }, 0);

  test("no arc is turned inside out or lost, however small, large, short or nearly whole", () => {
    const radius = fc.oneof(
      fc.double({ min: 0.001, max: 0.05, noNaN: true }),
      fc.double({ min: 0.05, max: 5000, noNaN: true }),
    );
    const turn = fc.oneof(
      fc.double({ min: 1e-7, max: 0.01, noNaN: true }),
      fc.double({ min: 0.01, max: 6.283, noNaN: true }),
    );
    const angle = fc.double({ min: -4, max: 4, noNaN: true });
    fc.assert(
      fc.property(radius, turn, angle, fc.boolean(), (r, theta, from, ccw) => {
        const point = (a: number): Point => [7.1234 + r * Math.cos(a), 3.9876 + r * Math.sin(a)];
        const segment = arc(point(ccw ? from + theta : from - theta), [7.1234, 3.9876], ccw);
        const length = lengthOf(roundPath(openPath(point(from), [segment])));
        // Ends and centre move by 0.0007 mm each; an arc drawn as a line is shorter by less than a hundredth.
        expect(Math.abs(length - r * theta)).toBeLessThan(0.02);
      }),
      { seed: 3, numRuns: 2000 },
    );
  });

  test("whole circles stay whole", () => {
    for (const r of [0.4, 1.5875, 12.7, 250]) {
      const length = lengthOf(roundPath(circlePath([10.00049, 7.77], r)));
      expect(Math.abs(length - 2 * Math.PI * r)).toBeLessThan(0.006);
    }
  });

  test("an arc with both ends in one place is nothing, not a circle", () => {
    expect(lengthOf(roundPath(closedPath([3, 3], [arc([3, 3], [0, 0], true)])))).toBe(0);
  });

  test("coordinates that are no numbers are refused", () => {
    expect(() => roundPoint([Number.NaN, 0])).toThrow(/finite/);
  });
});
