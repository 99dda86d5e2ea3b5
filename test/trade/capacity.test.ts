import jscad from "@jscad/modeling";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import papers from "../../fixtures/published/paper-sizes.json";
import { flatten } from "../../src/geometry/flatten.ts";
import { arc, cubic, line, openPath, type Path, type Point } from "../../src/geometry/path.ts";
import { capacityOf, goesIn, type Inside, roomOver, sectionOf, volumeOf } from "../../src/trade/capacity.ts";
import { THINGS, thingNames } from "../../src/trade/facts/things.ts";
import { given } from "../support/quantities.ts";
import { allIn } from "../support/readExpression.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// Volumes against meshes measured by a general library (@jscad/modeling), rooms against right triangles of
// whole sides and against a search that only asks whether points lie inside.

/** A panel with round corners of radius r, from the top left round the base to the top right. */
const round = (width: number, height: number, r: number, topWidth = width): Path => {
  const [w, t] = [width / 2, topWidth / 2];
  return openPath(
    [-t, height],
    [
      line([-w, r]),
      arc([-w + r, 0], [-w + r, r], true),
      line([w - r, 0]),
      arc([w, r], [w - r, r], true),
      line([t, height]),
    ],
  );
};
/** Corners cut off at 45°. */
const clipped = (width: number, height: number, c: number): Path => {
  const w = width / 2;
  return openPath(
    [-w, height],
    [[-w, c] as const, [-w + c, 0] as const, [w - c, 0] as const, [w, c] as const, [w, height] as const].map(
      line,
    ),
  );
};
/** A base that sags in the middle, drawn as one cubic. */
const sagging = (width: number, height: number, sag: number): Path => {
  const w = width / 2;
  return openPath(
    [-w, height],
    [line([-w, sag]), cubic([-w / 2, -sag / 3], [w / 2, -sag / 3], [w, sag]), line([w, height])],
  );
};
/** A top edge that dips in the middle. */
const dipped = (width: number, height: number, dip: number): Path => {
  const w = width / 2;
  return openPath(
    [w, height],
    [cubic([w / 3, height - (dip * 4) / 3], [-w / 3, height - (dip * 4) / 3], [-w, height])],
  );
};

type Solid = {
  readonly outline: Path;
  readonly top?: Path;
  readonly depth: number;
  readonly depthTop: number;
};

/** How finely a mesh follows the curves, mm, and what that takes of a volume, as a share. */
const FINE_MM = 1e-4;
const FINE = 1e-5;

/** The corners of the section, without the last, which is the first again. */
function corners(s: Solid): readonly Point[] {
  const [u, top] = [flatten(s.outline, FINE_MM), s.top ? flatten(s.top, FINE_MM).slice(1, -1) : []];
  return [...u, ...top];
}

/** The bag as a closed mesh: front, back and a wall all round, each in its plane. */
function meshVolume(s: Solid): number {
  const points = corners(s);
  const ys = flatten(s.outline, FINE_MM).map(([, y]) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const half = (y: number): number => (s.depth + ((s.depthTop - s.depth) * (y - low)) / (high - low)) / 2;
  const n = points.length;
  const at = (p: Point, side: 1 | -1): [number, number, number] => [p[0], p[1], side * half(p[1])];
  const mesh = jscad.primitives.polyhedron({
    points: [...points.map((p) => at(p, 1)), ...points.map((p) => at(p, -1))],
    faces: [
      points.map((_, i) => i),
      points.map((_, i) => 2 * n - 1 - i),
      ...points.map((_, i) => [i, n + i, n + ((i + 1) % n), (i + 1) % n]),
    ],
  });
  return jscad.measurements.measureVolume(mesh);
}

const room = (s: Solid, wanted?: string) => ({
  outline: s.outline,
  ...(s.top ? { top: s.top } : {}),
  width: given("width", 200),
  height: given("height", 150),
  depth: given("depth", s.depth),
  depthTop: given("depth at the top", s.depthTop),
  shapedBy: [given("measured width", 200), given("measured height", 150)],
  ...(wanted === undefined ? {} : { wanted }),
});

describe("volume", () => {
  test("a straight bag: the mesh of its section, extruded", () => {
    for (const outline of [round(220, 160, 45), clipped(220, 160, 30), sagging(220, 160, 25)]) {
      const section = jscad.primitives.polygon({
        points: corners({ outline, depth: 1, depthTop: 1 }).map(([x, y]) => [x, y]),
      });
      const mesh = jscad.extrusions.extrudeLinear({ height: 60 }, section);
      const volume = volumeOf(room({ outline, depth: 60, depthTop: 60 })).value;
      expect(volume / jscad.measurements.measureVolume(mesh)).toBeCloseTo(1, 5);
    }
  });

  const shapes: readonly (readonly [string, Solid])[] = [
    ["round corners, narrower on top", { outline: round(220, 160, 45), depth: 60, depthTop: 35 }],
    ["round corners, sides leaning in", { outline: round(220, 160, 45, 180), depth: 60, depthTop: 35 }],
    ["clipped corners, wider on top", { outline: clipped(220, 160, 30), depth: 40, depthTop: 70 }],
    ["a sagging base", { outline: sagging(220, 160, 25), depth: 60, depthTop: 20 }],
    ["a dipped top", { outline: round(220, 160, 45), top: dipped(220, 160, 30), depth: 60, depthTop: 20 }],
  ];
  test.each(shapes)("%s: the mesh's", (_, s) => {
    expect(Math.abs(volumeOf(room(s)).value / meshVolume(s) - 1)).toBeLessThan(FINE);
  });

  test("a plain box and a wedge, in closed form", () => {
    const outline = clipped(200, 150, 0);
    expect(volumeOf(room({ outline, depth: 50, depthTop: 50 })).value).toBeCloseTo(200 * 150 * 50, 6);
    expect(volumeOf(room({ outline, depth: 60, depthTop: 0 })).value).toBeCloseTo((200 * 150 * 60) / 2, 6);
  });

  test("a half disc's middle lies 4r/3π from its flat side (closed form)", () => {
    const r = 90;
    const { area, middle } = sectionOf({ outline: openPath([-r, 0], [arc([r, 0], [0, 0], true)]) });
    expect(area).toBeCloseTo((Math.PI * r * r) / 2, 6);
    expect(middle).toBeCloseTo(1 - 4 / (3 * Math.PI), 9);
  });

  test("the same wherever the outline lies", () => {
    const up = (p: Path, by: number): Path =>
      openPath(
        [p.start[0], p.start[1] + by],
        p.segments.map((s) => {
          const m = ([x, y]: Point): Point => [x, y + by];
          if (s.kind === "line") return line(m(s.to));
          return s.kind === "arc" ? arc(m(s.to), m(s.centre), s.ccw) : cubic(m(s.c1), m(s.c2), m(s.to));
        }),
      );
    for (const p of [round(220, 160, 45), sagging(220, 160, 25)]) {
      const [here, there] = [p, up(p, 37)].map((outline) =>
        volumeOf(room({ outline, depth: 60, depthTop: 30 })),
      );
      expect(there!.value / here!.value).toBeCloseTo(1, 10);
    }
  });

  test.each([
    ["tapering", 30],
    ["as deep at the top", 60],
  ])("its history names what it moves with: %s", (_, depthTop) => {
    const work = (v: Readonly<Record<string, number>>) =>
      volumeOf({
        outline: round(v.width!, v.height!, v.corner!),
        width: given("inside width", v.width!),
        height: given("inside height", v.height!),
        depth: given("depth", v.depth!),
        depthTop: given("top", v.top!),
        shapedBy: [given("width", v.width!), given("height", v.height!), given("corner", v.corner!)],
      });
    const values = { width: 200, height: 150, corner: 40, depth: 60, top: depthTop };
    expect(faultsOfHistory(work, values)).toEqual([]);
    expect(allIn(work(values)).map((q) => q.name)).toContain("corner");
  });
});

describe("room over a thing's place", () => {
  // Corner rounds of 50: beside a right triangle of 30, 40 and 50 the round lies 10 over the base, or 20.
  const inside: Inside = { outline: round(200, 150, 50), depth: 60, depthTop: 60 };

  test("a box with square corners rides up on the round ones", () => {
    expect(roomOver(inside, 100, 60)).toBeCloseTo(150, 4);
    expect(roomOver(inside, 160, 60)).toBeCloseTo(140, 4);
    expect(roomOver(inside, 180, 60)).toBeCloseTo(130, 4);
    // Leather that it touches is no hindrance: as wide as the bag it stands where the rounds begin.
    expect(roomOver(inside, 200, 60)).toBeGreaterThan(99.9);
    expect(roomOver(inside, 200, 60)).toBeLessThan(100.1);
    expect(roomOver(inside, 200.1, 60)).toBeLessThan(0);
  });

  test("clipped corners, a sagging base", () => {
    const cut: Inside = { outline: clipped(200, 150, 40), depth: 60, depthTop: 60 };
    expect(roomOver(cut, 120, 60)).toBeCloseTo(150, 4);
    expect(roomOver(cut, 150, 60)).toBeCloseTo(135, 4);
    const arch: Inside = {
      // An arc of radius 125 under a chord of 150: it sags 25 in the middle, 5 at 35 to each side.
      outline: openPath([-75, 120], [line([-75, 25]), arc([75, 25], [0, 125], true), line([75, 120])]),
      depth: 60,
      depthTop: 60,
    };
    expect(roomOver(arch, 70, 60)).toBeCloseTo(115, 4);
  });

  test("sides that lean in let nothing past that is wider than the top", () => {
    const narrow: Inside = { outline: round(200, 150, 50, 140), depth: 60, depthTop: 60 };
    expect(roomOver(narrow, 139.9, 60)).toBeGreaterThan(140);
    expect(roomOver(narrow, 141, 60)).toBeLessThan(0);
    const wide: Inside = {
      outline: openPath(
        [-100, 100],
        [
          [-60, 0],
          [60, 0],
          [100, 100],
        ].map((p) => line(p as unknown as Point)),
      ),
      depth: 60,
      depthTop: 60,
    };
    // Between sides that lean out by 40 in 100 a thing of 160 stands half way up.
    expect(roomOver(wide, 160, 60)).toBeCloseTo(50, 4);
  });

  test("a taper: nothing thicker than the top goes in; a top that is wider holds it further up", () => {
    const narrow: Inside = { outline: clipped(200, 150, 0), depth: 60, depthTop: 40 };
    expect(roomOver(narrow, 100, 40)).toBeCloseTo(150, 4);
    expect(roomOver(narrow, 100, 40.1)).toBe(-Infinity);
    const wide: Inside = { outline: clipped(200, 150, 0), depth: 40, depthTop: 60 };
    expect(roomOver(wide, 100, 50)).toBeCloseTo(75, 4);
  });

  test("a dipped top lets stand out what it dips below", () => {
    // The cubic's middle lies 3/4 of its handles' drop below the ends: by 30.
    const dip: Inside = { ...inside, top: dipped(200, 150, 30) };
    expect(roomOver(dip, 100, 60)).toBeCloseTo(120, 4);
    expect(roomOver(dip, 20, 60)).toBeCloseTo(120, 4);
  });
});

describe("does it go in", () => {
  const inside: Inside = { outline: round(200, 150, 50), depth: 60, depthTop: 60 };

  test("any way up, to the last 0.01 mm", () => {
    for (const sizes of [
      [160, 139.99, 60],
      [60, 160, 139.99],
      [139.99, 60, 160],
    ] as const)
      expect(goesIn(sizes, inside)).toBe(true);
    for (const sizes of [
      [160, 140.01, 60],
      [60.01, 160, 139],
      [140.01, 60, 160.01],
    ] as const)
      expect(goesIn(sizes, inside)).toBe(false);
  });

  test("any thing in any round bag: as a search by points says", () => {
    const size = fc.double({ min: 5, max: 260, noNaN: true });
    const input = fc.record({
      width: fc.double({ min: 80, max: 300, noNaN: true }),
      height: fc.double({ min: 60, max: 250, noNaN: true }),
      corner: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      depth: fc.double({ min: 10, max: 120, noNaN: true }),
      sizes: fc.tuple(size, size, size),
    });
    const STEP = 0.25;
    let [some, none] = [0, 0];
    fc.assert(
      fc.property(input, ({ width, height, corner, depth, sizes }) => {
        const r = (corner * Math.min(width, 2 * height)) / 2;
        const holds = (x: number, y: number): boolean => {
          const [dx, dy] = [Math.abs(x) - (width / 2 - r), r - y];
          if (Math.abs(x) > width / 2 || y < 0 || y > height) return false;
          return dx <= 0 || dy <= 0 || Math.hypot(dx, dy) <= r;
        };
        const searched = (grown: number): boolean =>
          [
            [0, 1, 2],
            [0, 2, 1],
            [1, 0, 2],
            [1, 2, 0],
            [2, 0, 1],
            [2, 1, 0],
          ].some(([a, b, c]) => {
            const [w, h, d] = [sizes[a!]! + grown, sizes[b!]! + grown, sizes[c!]! + grown];
            if (d > depth) return false;
            for (let y = 0; y <= height; y += STEP) if (holds(w / 2, y) && holds(w / 2, y + h)) return true;
            return false;
          });
        const goes = goesIn(sizes, { outline: round(width, height, r), depth, depthTop: depth });
        // The search goes up by steps: what it finds goes in, what it finds only when smaller may.
        if (searched(0)) expect(goes).toBe(true);
        if (!searched(-2 * STEP)) expect(goes).toBe(false);
        if (goes) some++;
        else none++;
      }),
      { seed: 5, numRuns: 400 },
    );
    expect(Math.min(some, none)).toBeGreaterThan(50);
  });
});

describe("common things", () => {
  const mm = (name: string) => THINGS.find((t) => t.name === name)!;

  test("papers are the published sizes; their thickness has no source and says so", () => {
    const { R1, R2 } = papers.figures;
    const paper = (name: string) => [...mm(name).sizes.slice(0, 2)].reverse();
    expect(paper("A4 pad")).toEqual(R1.a4);
    expect(paper("A5 book")).toEqual(R1.a5);
    expect(paper("letter pad")).toEqual(R2.letter.map((inch) => expect.closeTo(inch * 25.4, 9)));
    for (const name of ["A4 pad", "A5 book", "A6 book", "letter pad"])
      expect(mm(name).source).toContain("thickness: common practice, no source");
  });

  test("the next smaller A paper is as wide as half the larger's length (ISO 216, halved and rounded down)", () => {
    expect(mm("A6 book").sizes[1]).toBe(Math.floor(mm("A5 book").sizes[0] / 2));
    expect(mm("A6 book").sizes[0]).toBe(mm("A5 book").sizes[1]);
  });

  test("what was recalled or is habit says so", () => {
    expect(mm("bank card").source).toMatch(/^from memory/);
    for (const name of ["phone", "750 ml bottle"]) expect(mm(name).source).toBe("common practice, no source");
    expect(THINGS.map((t) => t.name)).toEqual(thingNames);
  });

  test("a bag says of each whether it goes in, and what was wanted", () => {
    const found = capacityOf(room({ outline: round(200, 150, 50), depth: 60, depthTop: 60 }, "A5 book"));
    const goes = Object.fromEntries(found.things.map((t) => [t.name, t.goes]));
    expect(goes).toEqual({
      "A4 pad": false,
      "A5 book": false,
      "A6 book": true,
      "letter pad": false,
      "bank card": true,
      phone: true,
      "750 ml bottle": false,
    });
    expect(found.wanted).toBe("A5 book");
    expect(found.inside).toEqual([200, 150, 60]);
    const larger = capacityOf(room({ outline: round(260, 170, 50), depth: 60, depthTop: 60 }));
    expect(larger.things.find((t) => t.name === "A5 book")!.goes).toBe(true);
    expect(larger.wanted).toBeUndefined();
  });
});
