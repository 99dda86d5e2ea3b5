import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  cubic,
  line,
  openPath,
  type Path,
  polyline,
  rectanglePath,
  slotPath,
} from "../../src/geometry/path.ts";
import type { PagePiece } from "../../src/job.ts";
import { printLength } from "../../src/units/index.ts";
import {
  CARD,
  CSS_PX_PER_MM,
  cardStands,
  holdsOn,
  readCalibration,
  scaleOn,
} from "../../src/web/leather/calibration.ts";
import { nearestOnPath, pathData, pointsOf } from "../../src/web/leather/curves.ts";
import { type Eye, fitTo, pan, seeing, toMm, toPx, viewBox, zoom } from "../../src/web/leather/eye.ts";
import { sayLength } from "../../src/web/leather/sayLength.ts";
import type { Box, FlatItem, Point } from "../../src/web/leather/shapes.ts";
import { layShelves } from "../../src/web/leather/shelves.ts";
import { itemSpecs } from "../../src/web/leather/specs.ts";
import { ticksOf } from "../../src/web/leather/ticks.ts";
import { cellAt, onBench, onPiece, partAt, snapped } from "../../src/web/leather/touch.ts";

// What the drawing on the page is computed by; the drawing itself is tested in a browser (leather.test.ts).

const FRAME = { width: 800, height: 600 };
const SEED = { seed: 6, numRuns: 60 };

const boxes = fc.array(
  fc.record({
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    y: fc.double({ min: -500, max: 500, noNaN: true }),
    w: fc.double({ min: 5, max: 1500, noNaN: true }),
    h: fc.double({ min: 5, max: 500, noNaN: true }),
    letters: fc.integer({ min: 3, max: 30 }),
  }),
  { minLength: 1, maxLength: 14 },
);
const frames = fc.record({
  width: fc.integer({ min: 240, max: 1600 }),
  height: fc.integer({ min: 240, max: 1200 }),
});

describe("pieces in rows", () => {
  const placed = (cell: { readonly box: Box; readonly move: Point }): Box => ({
    minX: cell.box.minX + cell.move[0],
    maxX: cell.box.maxX + cell.move[0],
    minY: cell.box.minY + cell.move[1],
    maxY: cell.box.maxY + cell.move[1],
  });

  test("no two pieces touch, all lie within the whole, in their order", () => {
    fc.assert(
      fc.property(boxes, frames, (list, frame) => {
        const laid = layShelves(
          list.map(({ x, y, w, h, letters }, i) => ({
            id: `${i}`,
            letters,
            box: { minX: x, minY: y, maxX: x + w, maxY: y + h },
          })),
          frame,
        );
        const all = laid.cells.map(placed);
        expect(laid.cells.map(({ id }) => id)).toEqual(list.map((_, i) => `${i}`));
        for (const [i, a] of all.entries()) {
          expect(a.minX).toBeGreaterThanOrEqual(laid.bounds.minX - 1e-6);
          expect(a.maxX).toBeLessThanOrEqual(laid.bounds.maxX + 1e-6);
          expect(a.minY).toBeGreaterThanOrEqual(laid.bounds.minY - 1e-6);
          expect(a.maxY).toBeLessThan(laid.bounds.maxY);
          for (const b of all.slice(i + 1))
            expect(a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY).toBe(true);
        }
      }),
      SEED,
    );
  });

  test("many squares fill a wide frame in more than one row and more than one column", () => {
    const list = Array.from({ length: 12 }, (_, i) => ({
      id: `${i}`,
      letters: 4,
      box: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    }));
    const { cells } = layShelves(list, FRAME);
    expect(new Set(cells.map(({ move }) => move[0])).size).toBe(4);
    expect(new Set(cells.map(({ move }) => move[1])).size).toBe(3);
  });

  test("nothing to lay is an empty page, not a fault", () => {
    expect(layShelves([], FRAME).cells).toEqual([]);
  });
});

describe("where one looks", () => {
  const eyes = fc.record({
    scale: fc.double({ min: 0.1, max: 30, noNaN: true }),
    middle: fc.tuple(
      fc.double({ min: -900, max: 900, noNaN: true }),
      fc.double({ min: -900, max: 900, noNaN: true }),
    ),
  });
  const pixels = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }));

  test("a pixel and its point are each other's", () => {
    fc.assert(
      fc.property(eyes, pixels, (eye: Eye, px) => {
        const [x, y] = toPx(eye, FRAME, toMm(eye, FRAME, px));
        expect(x).toBeCloseTo(px[0], 6);
        expect(y).toBeCloseTo(px[1], 6);
      }),
      SEED,
    );
  });

  test("what lies under the pixel stays there as the scale changes", () => {
    fc.assert(
      fc.property(eyes, pixels, fc.double({ min: 0.2, max: 5, noNaN: true }), (eye: Eye, px, factor) => {
        const held = toMm(eye, FRAME, px);
        const [x, y] = toPx(zoom(eye, FRAME, factor, px, 1), FRAME, held);
        expect(x).toBeCloseTo(px[0], 6);
        expect(y).toBeCloseTo(px[1], 6);
      }),
      SEED,
    );
  });

  test("a pull to the right moves the leather right, and up is up", () => {
    const eye: Eye = { scale: 2, middle: [50, 50] };
    const wide: Box = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
    const before = toPx(eye, FRAME, [10, 10]);
    const after = toPx(pan(eye, [30, -20], wide), FRAME, [10, 10]);
    expect([after[0] - before[0], after[1] - before[1]]).toEqual([30, -20]);
    expect(pan(eye, [1e6, 0], wide).middle[0]).toBe(0);
  });

  test("all of it fits: the corners of the box are in the frame", () => {
    const box: Box = { minX: -20, minY: -300, maxX: 1000, maxY: 40 };
    const eye = fitTo(box, FRAME);
    for (const corner of [
      [-20, -300],
      [1000, 40],
    ] as const) {
      const [x, y] = toPx(eye, FRAME, corner);
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(800);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(600);
    }
    expect(viewBox(eye, FRAME).split(" ").map(Number)[2]).toBeCloseTo(800 / eye.scale, 6);
  });

  test("what is out of sight comes to the middle; what is seen stays", () => {
    const eye: Eye = { scale: 1, middle: [0, 0] };
    expect(seeing(eye, FRAME, [10, 10])).toBe(eye);
    expect(seeing(eye, FRAME, [5000, 0]).middle).toEqual([5000, 0]);
  });
});

describe("rulers", () => {
  test("an inch is 25.4 mm, and figures stand on whole inches", () => {
    const ticks = ticksOf(0, 300, 2, "in");
    for (const { at, figure } of ticks.filter((t) => t.figure !== undefined))
      expect(Number(figure) * 25.4).toBeCloseTo(at, 6);
    expect(ticks.map((t) => t.figure)).toContain("4");
  });

  test("millimetres and centimetres", () => {
    expect(ticksOf(0, 100, 5, "mm").find((t) => t.at === 10)?.figure).toBe("10");
    expect(ticksOf(0, 100, 5, "cm").find((t) => t.at === 10)?.figure).toBe("1");
  });

  test.each(["in", "mm", "cm"] as const)("at any scale %s marks can be told apart", (units) => {
    for (const scale of [0.05, 0.3, 1, 3.78, 12, 40]) {
      const ticks = ticksOf(-50, 900 / scale, scale, units);
      expect(ticks.length).toBeGreaterThan(1);
      const least = scale < 0.06 ? 3 : 4.9;
      expect((ticks[1]!.at - ticks[0]!.at) * scale).toBeGreaterThan(least);
      expect(ticks.some((t) => t.figure !== undefined)).toBe(true);
    }
  });
});

describe("lengths in words", () => {
  test.each([342.9, 1054.1, 25.4, 0.8, 12.7, 304.8, 743.7, 100])("%s mm as the engine prints it", (mm) => {
    expect(sayLength(mm, "in")).toBe(printLength(mm, "in"));
    expect(sayLength(mm, "cm")).toBe(printLength(mm, "cm"));
    if (mm > 1) expect(sayLength(mm, "mm")).toBe(printLength(mm, "mm"));
  });
});

describe("paths", () => {
  const length = (d: string): number => new svgPathProperties(d).getTotalLength();

  test("a circle is as long as 2πr", () => {
    expect(length(pathData(circlePath([10, -4], 7)))).toBeCloseTo(2 * Math.PI * 7, 2);
  });

  test("a slot is two straights and two half circles", () => {
    expect(length(pathData(slotPath([0, 0], 28, 4, 0.3)))).toBeCloseTo(2 * 24 + Math.PI * 4, 2);
  });

  test("arcs bulge to their own side, with y up", () => {
    const left = openPath([10, 0], [arc([-10, 0], [0, 0], true)]);
    const right = openPath([10, 0], [arc([-10, 0], [0, 0], false)]);
    expect(Math.max(...pointsOf(left).map(([, y]) => y))).toBeCloseTo(10, 2);
    expect(Math.min(...pointsOf(right).map(([, y]) => y))).toBeCloseTo(-10, 2);
    const middle = (d: string): number => new svgPathProperties(d).getPointAtLength(Math.PI * 5).y;
    expect(middle(pathData(left))).toBeGreaterThan(5);
    expect(middle(pathData(right))).toBeLessThan(-5);
  });

  test("the nearest point, on lines, arcs and cubics", () => {
    expect(nearestOnPath([5, 3], openPath([0, 0], [line([10, 0])]))).toEqual([5, 0]);
    const [x, y] = nearestOnPath([30, 30], circlePath([0, 0], 10));
    expect(Math.hypot(x, y)).toBeCloseTo(10, 0);
    const bow = openPath([0, 0], [cubic([0, 10], [10, 10], [10, 0])]);
    expect(nearestOnPath([5, 20], bow)[1]).toBeCloseTo(7.5, 1);
  });
});

describe("turning over", () => {
  const cell = { id: "a", box: { minX: -5, minY: -2, maxX: 95, maxY: 8 }, move: [30, -70] as Point };

  test("left becomes right within the piece's own box, and back again", () => {
    expect(onBench(cell, false, [-5, 8])).toEqual([25, -62]);
    expect(onBench(cell, true, [-5, 8])).toEqual([125, -62]);
    expect(onPiece(cell, true, onBench(cell, true, [17, 3]))).toEqual([17, 3]);
  });

  test("a touch finds its piece, or the nearest within reach", () => {
    expect(cellAt([cell], false, [60, -66], 3)?.id).toBe("a");
    expect(cellAt([cell], false, [22.5, -66], 3)?.id).toBe("a");
    expect(cellAt([cell], false, [10, -66], 3)).toBeUndefined();
  });

  test("words stay readable: they start at their other end", () => {
    const words: FlatItem = {
      item: { kind: "words", layer: "text", at: [4, 5], size: 3, text: "crown", align: "left", angle: 0 },
      clips: [],
    };
    const [plain] = itemSpecs([words], "a");
    const [mirrored] = itemSpecs([words], "a", true);
    expect(plain?.attrs).toMatchObject({ "text-anchor": "start", transform: "translate(4 5) scale(1 -1)" });
    expect(mirrored?.attrs).toMatchObject({ "text-anchor": "end", transform: "translate(4 5) scale(-1 -1)" });
  });
});

describe("where a rule is laid", () => {
  const stroke = (id: string | undefined, path: Path, layer: "cut" | "hole"): FlatItem => ({
    item: { kind: "stroke", layer, line: "01.1", path, ...(id === undefined ? {} : { id }) },
    clips: [],
  });
  const piece: PagePiece = {
    id: "strap",
    name: "Strap",
    count: "1",
    leather: "",
    box: { minX: 0, minY: -10, maxX: 200, maxY: 10 },
    lines: [
      stroke("outline", rectanglePath([0, -10], 200, 20), "cut"),
      stroke("hole.1", circlePath([50, 0], 2.5), "hole"),
      stroke(
        undefined,
        polyline([
          [46, 0],
          [54, 0],
        ]),
        "hole",
      ),
    ],
    sizes: [],
    parts: [
      { id: "hole.1", says: "hole 1", at: [50, 0] },
      { id: "seam.long", says: "seam", at: [150, 0] },
    ],
  };

  test("to a hole's middle, though its edge and its cross are nearer", () => {
    expect(snapped(piece, [53.5, 0.5], 6)).toEqual([50, 0]);
  });

  test("to the strap's corner, along its edge, or just there", () => {
    expect(snapped(piece, [197, 8], 6)).toEqual([200, 10]);
    expect(snapped(piece, [120, 8], 6)).toEqual([120, 10]);
    expect(snapped(piece, [149, 1], 6)).toEqual([149, 1]);
  });

  test("a touch means the hole, not the line beside it, and nothing on bare leather", () => {
    expect(partAt(piece, [52, 2], 6)?.id).toBe("hole.1");
    expect(partAt(piece, [100, 0], 6)).toBeUndefined();
  });
});

describe("life size", () => {
  const screen = { ratio: 1, width: 1920, height: 1080 };

  // ISO/IEC 7810:2003, clause 5, ID-1: 85.60 mm by 53.98 mm (from memory).
  test("the card is an ID-1 card, and CSS's own inch is the start", () => {
    expect([CARD.long, CARD.short]).toEqual([85.6, 53.98]);
    expect(scaleOn(undefined, screen)).toBe(CSS_PX_PER_MM);
    expect(CSS_PX_PER_MM * 25.4).toBeCloseTo(96, 9);
  });

  test("a card matched at one zoom holds there alone; at another the screen's own pixels are kept", () => {
    const matched = { pxPerMm: 4, screen };
    const zoomed = { ...screen, ratio: 1.25 };
    expect(holdsOn(matched, screen)).toBe(true);
    expect(holdsOn(matched, zoomed)).toBe(false);
    expect(holdsOn(matched, { ...screen, width: 1280 })).toBe(false);
    expect(holdsOn(undefined, screen)).toBe(false);
    expect(scaleOn(matched, zoomed) * 1.25).toBeCloseTo(4, 9);
  });

  test("a card wider than its room stands", () => {
    expect(cardStands(6.3, 360)).toBe(true);
    expect(cardStands(3.8, 600)).toBe(false);
  });

  test.each([
    undefined,
    null,
    "3.8",
    {},
    [1],
    { pxPerMm: -1, screen },
    { pxPerMm: 4 },
    { pxPerMm: 4, screen: {} },
  ])("what was kept and is no calibration is forgotten: %j", (found) => {
    expect(readCalibration(found)).toBeUndefined();
  });

  test("what was kept is read", () => {
    const kept = { pxPerMm: 4.1, screen };
    expect(readCalibration(structuredClone(kept))).toEqual(kept);
  });
});
