import { Bezier } from "bezier-js";
import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import {
  circlePath,
  cubic,
  openPath,
  pathLength,
  polyline,
  rectanglePath,
} from "../../src/geometry/index.ts";
import type { Point } from "../../src/geometry/path.ts";
import { type Laid, withSeams } from "../../src/trade/mates.ts";
import { laid, side, straight, uPath } from "../support/seamEdges.ts";
import { barePiece } from "../support/soundPiece.ts";

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const runs = (l: Laid): readonly string[] => l.joins.map((j) => j.name.replace("front to gusset: ", ""));
const counts = (l: Laid): readonly (readonly number[])[] =>
  l.sides.map((s) => s.seams.map((seam) => seam.stitches));
const holesOf = (l: Laid, k: number): readonly Point[] => l.sides[k]!.holes.map((h) => h.at);

describe("one run", () => {
  const [w, h, r] = [240, 180, 40];
  /** Closed form of a rounded rectangle's U. */
  const length = 2 * h + w - (4 - Math.PI) * r;
  const l = laid([side("front", uPath(w, h, r)), side("gusset", straight(length))]);

  test("a rounded U and the straight strip of its closed form 2h + w − (4 − π) r have the same stitches", () => {
    expect(runs(l)).toEqual(["edge"]);
    const [n] = counts(l)[0]!;
    expect(counts(l)).toEqual([[n], [n]]);
    for (const { seams } of l.sides) expect(seams[0]!.pitch * n!).toBeCloseTo(length, 6);
    expect(Math.abs(length / n! - 3.5)).toBeLessThanOrEqual(
      Math.min(Math.abs(length / (n! + 1) - 3.5), Math.abs(length / (n! - 1) - 3.5)),
    );
  });

  test("each hole of the U lies where an independent library puts its mate's length (svg-path-properties 1.3.0)", () => {
    const path = `M ${-w / 2} ${h} L ${-w / 2} ${r} A ${r} ${r} 0 0 1 ${-w / 2 + r} 0 L ${w / 2 - r} 0 A ${r} ${r} 0 0 1 ${w / 2} ${r} L ${w / 2} ${h}`;
    const properties = new svgPathProperties(path);
    expect(properties.getTotalLength()).toBeCloseTo(length, 3);
    holesOf(l, 1).forEach(([s], k) => {
      const p = properties.getPointAtLength(s);
      expect(apart(holesOf(l, 0)[k]!, [p.x, p.y])).toBeLessThan(0.01);
    });
  });

  test("a curved base against a strip: lengths by bezier-js 6.1.4 from hole to hole", () => {
    const c = [0, 0, 60, -80, 140, -60, 220, 30] as const;
    const curve = new Bezier(...c);
    const path = openPath([0, 0], [cubic([60, -80], [140, -60], [220, 30])]);
    const m = laid([side("front", path), side("gusset", straight(curve.length()))]);
    // x grows all along it, so a hole's t is found by halving.
    const along = ([x]: Point): number => {
      let [low, high] = [0, 1];
      for (let i = 0; i < 50; i++) {
        const t = (low + high) / 2;
        if (curve.get(t).x < x) low = t;
        else high = t;
      }
      return curve.split(low).left.length();
    };
    holesOf(m, 0)
      .slice(1, -1)
      .forEach((at, k) => {
        expect(along(at)).toBeCloseTo(holesOf(m, 1)[k + 1]![0], 4);
      });
  });

  test("names: the edge's own, holes numbered from 1, seam and join know each other", () => {
    const [front] = l.sides;
    expect(front!.seams[0]).toMatchObject({
      id: "seam",
      numberFrom: 1,
      joins: "front to gusset: edge",
      note: "2 back-stitches at each end",
      inset: 4,
      pitchAsked: 3.5,
    });
    expect(front!.holes.map((x) => x.id)).toEqual(front!.holes.map((_, k) => `seam.${k + 1}`));
    expect(front!.seams[0]!.holes).toEqual(front!.holes.map((x) => x.id));
    expect(l.joins).toEqual([
      {
        kind: "seam",
        name: "front to gusset: edge",
        sides: [
          { piece: "front", seam: "seam" },
          { piece: "gusset", seam: "seam" },
        ],
        stack: 4,
        backStitches: [2, 2],
        dimension: "measures.height",
      },
    ]);
  });

  test("a piece takes its own side", () => {
    const front = withSeams(barePiece("front", rectanglePath([0, 0], 10, 10)), l.sides);
    expect(front.seams).toEqual(l.sides[0]!.seams);
    expect(front.holes).toEqual(l.sides[0]!.holes);
    expect(withSeams(barePiece("other", rectanglePath([0, 0], 10, 10)), l.sides).holes).toEqual([]);
  });
});

describe("corners and breaks", () => {
  const sharp = uPath(240, 180, 0);

  test("a corner over 30° of one side ends a run on both, with a hole at the corner and at its mate's length", () => {
    const l = laid([side("gusset", straight(600)), side("front", sharp)]);
    expect(runs(l)).toEqual(["start to corner 1", "corner 1 to corner 2", "corner 2 to end"]);
    expect(counts(l)[0]).toEqual(counts(l)[1]);
    for (const [at, mate] of [
      [-120, 180],
      [120, 420],
    ] as const) {
      const k = holesOf(l, 1).findIndex((p) => apart(p, [at, 0]) < 1e-9);
      expect(holesOf(l, 0)[k]![0]).toBeCloseTo(mate, 6);
    }
  });

  test("turns of 30° and less are none", () => {
    const bent = (degrees: number) => {
      const a = (degrees * Math.PI) / 180;
      const path = polyline([
        [0, 0],
        [100, 0],
        [100 + 100 * Math.cos(a), 100 * Math.sin(a)],
      ]);
      return runs(laid([side("front", path)])).length;
    };
    expect([bent(29.9), bent(30.1), bent(-30.1)]).toEqual([1, 2, 2]);
  });

  test("corners of two sides that meet are one place; those that don't end runs on both", () => {
    expect(runs(laid([side("a", sharp), side("b", uPath(240, 180, 0))]))).toHaveLength(3);
    const other = polyline([
      [0, 0],
      [300, 0],
      [300, 300],
    ]);
    const l = laid([side("a", sharp), side("b", other)]);
    expect(runs(l)).toEqual([
      "start to corner 1",
      "corner 1 to corner 2",
      "corner 2 to corner 3",
      "corner 3 to end",
    ]);
    expect(holesOf(l, 1).some((p) => apart(p, [300, 0]) < 1e-9)).toBe(true);
    expect(holesOf(l, 0).some((p) => apart(p, [0, 0]) < 1e-9)).toBe(true);
  });

  test("breaks of one name meet, whatever their lengths", () => {
    const l = laid([
      side("body", straight(300), { bend: 100, straight: 140 }),
      side("panel", straight(285), { bend: 100, straight: 125 }),
    ]);
    expect(runs(l)).toEqual(["start to bend", "bend to straight", "straight to end"]);
    const lengths = l.sides.map((s) => s.seams.map((seam) => pathLength(seam.path)));
    expect(lengths).toEqual([
      [100, 40, 160],
      [100, 25, 160],
    ]);
    // The longest side has the pitch that was asked: 40 mm take 11 stitches of 3.64, not 25 / 3.5 = 7.
    expect(counts(l)).toEqual([
      [29, 11, 46],
      [29, 11, 46],
    ]);
  });

  test("a break that one side alone has is carried by arc length inside the run around it", () => {
    const l = laid([
      side("body", straight(300), { bend: 100, straight: 140, mark: 220 }),
      side("panel", straight(285), { bend: 100, straight: 125 }),
      side("lining", straight(285), { bend: 100, straight: 125 }),
    ]);
    for (const { seams } of l.sides)
      for (const { path } of seams.slice(2)) expect(pathLength(path)).toBeCloseTo(80, 9);
  });

  test("a corner where a break is named goes by that name", () =>
    expect(runs(laid([side("front", sharp, { foot: 180 })]))).toEqual([
      "start to foot",
      "foot to corner 1",
      "corner 1 to end",
    ]));

  test("breaks in different orders are an error that names what sets them, and nothing is thrown", () => {
    const l = laid([side("a", straight(100), { x: 20, y: 60 }), side("b", straight(100), { y: 20, x: 60 })]);
    expect(l.findings).toHaveLength(1);
    expect(l.findings[0]).toMatchObject({ severity: "error", rule: "mates-agree" });
    expect(l.findings[0]!.mend).toContain("measures.height");
  });

  test("numbers run on; a hole between two runs is in both", () => {
    const [front] = laid([side("front", sharp)]).sides;
    const [a, b, c] = front!.seams;
    expect([a!.id, b!.id, c!.id]).toEqual(["seam.1", "seam.2", "seam.3"]);
    expect(a!.holes.at(-1)).toBe(b!.holes[0]);
    expect(b!.numberFrom).toBe(a!.stitches + 1);
    expect(c!.numberFrom).toBe(a!.stitches + b!.stitches + 1);
    expect(b!.holes[0]).toBe(`seam.${b!.numberFrom}`);
    const stitches = a!.stitches + b!.stitches + c!.stitches;
    expect(front!.holes.map((h) => h.id)).toEqual(
      Array.from({ length: stitches + 1 }, (_, k) => `seam.${k + 1}`),
    );
    expect([a!.note, b!.note, c!.note]).toEqual([
      "2 back-stitches at the start",
      undefined,
      "2 back-stitches at the end",
    ]);
  });
});

describe("runs without stitches", () => {
  const l = laid(
    [side("a", straight(300), { p: 100, q: 130 }), side("b", straight(300), { p: 100, q: 130 })],
    {
      unstitched: ["p to q"],
    },
  );

  test("have no holes, no seam and no join; the others keep their own", () => {
    expect(runs(l)).toEqual(["start to p", "q to end"]);
    const xs = holesOf(l, 0).map(([x]) => x);
    expect(xs.filter((x) => x > 100.001 && x < 129.999)).toEqual([]);
    expect([xs.includes(100), xs.includes(130)]).toEqual([true, true]);
    const [a, b] = l.sides[0]!.seams;
    expect(a!.holes.filter((h) => b!.holes.includes(h))).toEqual([]);
    expect(b!.numberFrom).toBe(a!.holes.length + 1);
  });

  test("the thread ends before them and begins anew", () =>
    expect(l.joins.map((j) => j.backStitches)).toEqual([
      [2, 2],
      [2, 2],
    ]));
});

describe("closed seams", () => {
  test("a ring has as many holes as stitches", () => {
    const [ring] = laid([side("pocket", circlePath([0, 0], 30))]).sides;
    const n = Math.round((2 * Math.PI * 30) / 3.5);
    expect(ring!.holes).toHaveLength(n);
    expect(ring!.seams[0]).toMatchObject({ stitches: n, pitch: (2 * Math.PI * 30) / n });
    // Chords of a regular polygon.
    ring!.holes.forEach((h, k) => {
      expect(apart(h.at, ring!.holes.at(k - 1)!.at)).toBeCloseTo(60 * Math.sin(Math.PI / n), 9);
    });
  });

  test("a box has a hole in each corner, once, and comes round to its first", () => {
    const [box] = laid([side("tab", rectanglePath([0, 0], 40, 16))]).sides;
    expect(box!.seams).toHaveLength(4);
    const stitches = box!.seams.reduce((sum, s) => sum + s.stitches, 0);
    expect(box!.holes).toHaveLength(stitches);
    expect(new Set(box!.holes.map((h) => h.id)).size).toBe(stitches);
    expect(box!.seams.at(-1)!.holes.at(-1)).toBe(box!.seams[0]!.holes[0]);
    for (const corner of [
      [0, 0],
      [40, 0],
      [40, 16],
      [0, 16],
    ] as const)
      expect(box!.holes.filter((h) => apart(h.at, corner) < 1e-9)).toHaveLength(1);
  });

  test("begun in the middle of a side, a box still turns at its corners", () => {
    const path = polyline(
      [
        [20, 0],
        [40, 0],
        [40, 16],
        [0, 16],
        [0, 0],
      ],
      true,
    );
    const [box] = laid([side("tab", path)]).sides;
    expect(box!.seams.map((s) => pathLength(s.path))).toEqual([16, 40, 16, 40]);
  });

  test("with one corner, it begins and ends there", () => {
    const teardrop = openPath([0, 0], [cubic([60, 60], [-60, 60], [0, 0])]);
    const one = laid([side("tab", { ...teardrop, closed: true })]);
    expect(one.sides[0]!.seams).toHaveLength(1);
    expect(one.sides[0]!.seams[0]!.holes).toHaveLength(one.sides[0]!.seams[0]!.stitches);
    expect(apart(one.sides[0]!.holes[0]!.at, [0, 0])).toBeLessThan(1e-9);
  });
});

describe("a wrap-round body and its end panel", () => {
  // fixtures/published/worked-cases.json: H 180, B 60, ρ 8, t 2.5, end panel stitched at 3.
  const { flat, seamDifference } = worked.cases.wrapRound;
  const radii = [8 + 1.25, 8 - 3];
  const quarter = Math.PI / 2;
  const breaks = (r: number) => {
    const bend = quarter * r;
    return {
      "front bend start": 172,
      "front bend end": 172 + bend,
      "back bend start": 172 + bend + 44,
      "back bend end": 172 + 2 * bend + 44,
    };
  };
  const l = laid(
    [
      side("body", straight(flat), breaks(radii[0]!)),
      side("end-panel", uPath(54, 177, 5), breaks(radii[1]!)),
    ],
    {
      bends: {
        "front bend start to front bend end": { angle: quarter, radii },
        "back bend start to back bend end": { angle: quarter, radii },
      },
    },
  );

  test("the drawn seams differ by what the worked case says", () => {
    const [body, panel] = l.sides.map((s) => s.seams.reduce((sum, seam) => sum + pathLength(seam.path), 0));
    expect(body! - panel!).toBeCloseTo(seamDifference, 3);
  });

  test("folded round the panel's edge, every hole of the body meets its mate within 0.2 mm", () => {
    // The body bent in a section of its own: its inner face keeps 3 mm outside the panel's seam.
    const [r, s] = [radii[0]!, radii[1]!];
    const folded = (x: number): Point => {
      const bend = quarter * r;
      if (x <= 172) return [-27, 177 - x];
      if (x <= 172 + bend) {
        const a = Math.PI + (x - 172) / r;
        return [-22 + s * Math.cos(a), 5 + s * Math.sin(a)];
      }
      if (x <= 216 + bend) return [-22 + (x - 172 - bend), 0];
      if (x <= 216 + 2 * bend) {
        const a = -quarter + (x - 216 - bend) / r;
        return [22 + s * Math.cos(a), 5 + s * Math.sin(a)];
      }
      return [27, 5 + (x - 216 - 2 * bend)];
    };
    expect(l.sides[0]!.holes).toHaveLength(l.sides[1]!.holes.length);
    l.sides[0]!.holes.forEach((h, k) => {
      expect(apart(folded(h.at[0]), l.sides[1]!.holes[k]!.at)).toBeLessThan(0.2);
    });
  });

  test("its bends have as many stitches as keep the panel's from crowding", () => {
    // 14.53 mm on the body, 7.85 on the panel: 4 of 3.63 and of 1.96; at pitch 4.2, 3 of 4.84 and of 2.62.
    expect(counts(l)[1]![1]).toBe(4);
    const inBend = (r: number, pitch: number, mode: "iron" | "spread" = "spread") => {
      const at = (radius: number) => ({ in: 100, out: 100 + quarter * radius });
      const [body, panel] = [9.25, r].map((radius) => straight(200 + quarter * radius));
      const sides = [side("body", body!, at(9.25)), side("panel", panel!, at(r))];
      const bends = { "in to out": { angle: quarter, radii: [9.25, r], dimension: "pieces.body.base-fold" } };
      return laid(sides, { bends, pitch, mode });
    };
    // 4 stitches would lie 1.57 mm apart on the panel, under half of 3.9: 3 of 2.09, and 4.84 on the body.
    expect(counts(inBend(4, 3.9)).map((c) => c[1])).toEqual([3, 3]);
    // But never more than a quarter further apart than asked, however short the panel is.
    expect(counts(inBend(0.5, 3)).map((c) => c[1])).toEqual([4, 4]); // 14.53 / 3.75 = 3.9
    const iron = inBend(4, 3.6, "iron");
    const gaps = iron.sides.map((s) => s.seams[1]!.pitch * s.seams[1]!.stitches);
    expect(gaps[0]).toBeCloseTo(quarter * 9.25, 9);
    expect(gaps[1]).toBeCloseTo(quarter * 4, 9);
    expect(iron.joins.map((j) => j.dimension)).toEqual([
      "measures.height",
      "pieces.body.base-fold",
      "measures.height",
    ]);
    expect(iron.joins[1]!.bend).toEqual({ angle: quarter, radii: [9.25, 4] });
  });

  test("the joins carry their bends, and the shorter side its own pitch", () => {
    expect(l.joins.map((j) => j.bend?.angle)).toEqual([undefined, quarter, undefined, quarter, undefined]);
    expect(l.sides[1]!.seams[1]!.note).toMatch(/^stitches 1\.\d+ mm apart here/);
  });
});

describe("an iron's pitch", () => {
  const gaps = (length: number, pitch: number): readonly number[] => {
    const xs = holesOf(laid([side("a", straight(length))], { pitch, mode: "iron" }), 0).map(([x]) => x);
    return xs.slice(1).map((x, k) => x - xs[k]!);
  };

  test("is kept from the start; the last stitches share the left-over, at most 10 % each, and no more than must", () => {
    for (const [length, pitch] of [
      [101, 3],
      [100, 3.4],
      [298.6, 3.85],
      [61.4, 3],
    ] as const) {
      const all = gaps(length, pitch);
      expect(all.reduce((sum, g) => sum + g, 0)).toBeCloseTo(length, 9);
      const changed = all.filter((g) => Math.abs(g - pitch) > 1e-9);
      expect(all.slice(0, all.length - changed.length).every((g) => Math.abs(g - pitch) < 1e-9)).toBe(true);
      for (const g of changed) expect(Math.abs(g / pitch - 1)).toBeLessThanOrEqual(0.1 + 1e-9);
      const leftOver = Math.abs(length - all.length * pitch);
      expect(changed.length).toBe(Math.ceil(leftOver / (0.1 * pitch) - 1e-9));
    }
  });

  test("whole pitches have nothing to say; a left-over offers the nearest whole length", () => {
    const said = (length: number) =>
      laid([side("a", straight(length))], { pitch: 3.4, mode: "iron" }).findings;
    expect(said(34 * 3.4)).toEqual([]);
    expect(said(101)).toHaveLength(1);
    expect(said(101)[0]).toMatchObject({ severity: "note", rule: "iron-pitch" });
    expect(said(101)[0]!.mend).toContain("102 mm"); // 30 × 3.4
    expect(said(102)).toEqual([]);
  });

  test("a run too short for it is spread", () => {
    const [a, b] = gaps(5.2, 3);
    expect(a).toBeCloseTo(2.6, 9);
    expect(b).toBeCloseTo(2.6, 9);
  });
});

describe("marks", () => {
  const marked = (over: Parameters<typeof laid>[1]) => laid([side("a", straight(70))], over).sides[0]!;

  test("round holes have their diameter, slits lean and keep apart, a groove keeps its holes as data", () => {
    const round = marked({ marks: "round holes", markSize: 1.2 });
    expect(round.holes.every((h) => h.kind === "round" && h.size === 1.2 && h.angle === 0)).toBe(true);
    const slit = marked({ markSize: 3 });
    expect(slit.holes.every((h) => h.kind === "awl" && h.size < 3.5 && h.use === "stitch")).toBe(true);
    expect(slit.holes[0]!.angle).toBeCloseTo(Math.PI / 4, 9);
    const groove = marked({ marks: "groove" });
    expect([groove.seams[0]!.groove, slit.seams[0]!.groove]).toEqual([true, undefined]);
    expect(groove.holes).toHaveLength(21);
  });

  test("a side's slits may lean the other way", () => {
    const l = laid([side("a", straight(70)), side("b", straight(70))], { slants: [1, -1] });
    expect(l.sides[1]!.holes[0]!.angle).toBeCloseTo(-Math.PI / 4, 9);
  });
});

describe("any two sides", () => {
  const steps = fc.array(fc.tuple(fc.integer({ min: 20, max: 900 }), fc.integer({ min: -15, max: 15 })), {
    minLength: 1,
    maxLength: 7,
  });
  /** A path of straight steps, each turned from the last by a tenth of a right angle times a whole number. */
  const walk = (all: readonly (readonly [number, number])[]) => {
    let [x, y, a] = [0, 0, 0];
    const points: Point[] = [[0, 0]];
    for (const [tenths, turn] of all) {
      a += (turn * Math.PI) / 20;
      x += (tenths / 10) * Math.cos(a);
      y += (tenths / 10) * Math.sin(a);
      points.push([x, y]);
    }
    return polyline(points);
  };

  test("have the same stitches run by run, holes in sequence, each run as long as its mate", () => {
    fc.assert(
      fc.property(steps, steps, fc.constantFrom("iron", "spread"), (one, two, mode) => {
        const a = walk(one);
        const raw = walk(two);
        // The second side is stretched to the first one's length.
        const f = pathLength(a) / pathLength(raw);
        const b = polyline(
          [raw.start, ...raw.segments.map((s) => s.to)].map(([x, y]): Point => [x * f, y * f]),
        );
        const l = laid([side("a", a), side("b", b)], { mode: mode as "iron" });
        expect(l.findings.filter((x) => x.severity === "error")).toEqual([]);
        expect(counts(l)[0]).toEqual(counts(l)[1]);
        expect(l.sides[0]!.holes.map((h) => h.id)).toEqual(l.sides[1]!.holes.map((h) => h.id));
        l.sides[0]!.seams.forEach((s, k) => {
          const mate = l.sides[1]!.seams[k]!;
          // Corners that lie within half a pitch are taken as one; the runs beside them differ by so much.
          expect(Math.abs(pathLength(s.path) - pathLength(mate.path))).toBeLessThan(3.5);
        });
        const total = l.sides[0]!.seams.reduce((sum, s) => sum + pathLength(s.path), 0);
        expect(Math.abs(total - pathLength(a))).toBeLessThan(1e-6);
      }),
      { seed: 31, numRuns: 150 },
    );
  });
});
