import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pathLength, pointAt } from "../../src/geometry/length.ts";
import type { Path, Point } from "../../src/geometry/path.ts";
import { type LayoutOptions, layOut } from "../../src/layout/layOut.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Layout, Placed, Sheet } from "../../src/model/sheet.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";

const SETS: Readonly<Record<string, readonly Piece[]>> = {
  "a headstall": samples.sampleHeadstall(),
  "a panel": [samples.panel()],
  "a headstall and two panels": [
    ...samples.sampleHeadstall(),
    samples.panel(),
    samples.panel("back", 380, 120),
  ],
  "six straps": Array.from({ length: 6 }, (_, i) => samples.longStrap(`strap-${i}`)),
  "a washer": [samples.tinyPiece()],
  "a draft horse's crown": [samples.longStrap("crown", 1690, 32)],
};
const PAPERS = ["letter", "legal", "tabloid", "a4", "a3", "roll 610 mm"] as const;

/** Points all along a path: close enough that none of the overlaps, 10 mm wide, can hide between two. */
const trails = new Map<Path, readonly Point[]>();
function along(path: Path): readonly Point[] {
  const known = trails.get(path);
  if (known) return known;
  const length = pathLength(path);
  const n = Math.max(1, Math.ceil(length / 2));
  const points = Array.from({ length: n + 1 }, (_, i) => pointAt(path, (length * i) / n));
  trails.set(path, points);
  return points;
}

/** Where a point of a piece is drawn: worked here by hand, turned by quarters only. */
function drawnAt({ placement, kept }: Placed, [x, y]: Point): Point | undefined {
  const stretch = kept?.find(([from, to]) => x >= from && x <= to);
  if (kept && !stretch) return undefined;
  const px = x - (stretch?.[2] ?? 0);
  const [ax, ay] = placement.at;
  if (placement.angle === 0) return [ax + px, ay + y];
  if (Math.abs(placement.angle - Math.PI / 2) > 1e-12) throw new Error("a piece lies askew");
  return [ax - y, ay + px];
}

const shows = ({ window: w }: Sheet, [x, y]: Point): boolean =>
  x >= w.minX - 1e-6 && x <= w.maxX + 1e-6 && y >= w.minY - 1e-6 && y <= w.maxY + 1e-6;

function everyMillimetreShown(pieces: readonly Piece[], layout: Layout): void {
  for (const piece of pieces) {
    const homes = layout.plates.flatMap((plate) =>
      plate.placed.filter((p) => p.piece === piece.id).map((placed) => ({ plate, placed })),
    );
    expect(homes, piece.id).toHaveLength(1);
    const { plate, placed } = homes[0]!;
    const sheets = layout.sheets.filter((s) => s.plate === plate.id);
    const paths = [
      piece.outline,
      ...piece.cutouts.map((c) => c.outline),
      ...piece.zones.map((z) => z.outline),
      ...piece.seams.map((s) => s.path),
    ];
    const points = [...paths.flatMap(along), ...piece.holes.map((h) => h.at)];
    const lost = points.filter((p) => {
      const at = drawnAt(placed, p);
      return at !== undefined && !sheets.some((sheet) => shows(sheet, at) && sheet.pieces.includes(piece.id));
    });
    expect(lost, `${piece.id} is on no sheet here`).toEqual([]);
  }
}

function windowsFit(layout: Layout): void {
  const { paper: p, margin, factor, overlap } = layout;
  for (const s of layout.sheets) {
    const [short, long] = [p.width - 2 * margin, p.height - 2 * margin];
    const [w, h] = [s.window.maxX - s.window.minX, s.window.maxY - s.window.minY];
    // Sent to the printer, leather shrinks or grows by the factor of its axis.
    const [sentW, sentH] = s.landscape ? [w / factor.y, h / factor.x] : [w / factor.x, h / factor.y];
    expect(sentW).toBeLessThanOrEqual((s.landscape ? long : short) + 1e-6);
    expect(sentH).toBeLessThanOrEqual((s.landscape ? short : long) + 1e-6);
    expect(s.origin[0]).toBeGreaterThanOrEqual(margin - 1e-6);
    expect(s.origin[1]).toBeGreaterThanOrEqual(margin - 1e-6);
    expect(s.origin[0] + sentW).toBeLessThanOrEqual(s.page.width - margin + 1e-6);
    expect(s.origin[1] + sentH).toBeLessThanOrEqual(s.page.height - margin + 1e-6);
    const right = layout.sheets.find((o) => o.name === s.joins.right);
    if (right) {
      expect(s.window.maxX - right.window.minX).toBeCloseTo(overlap, 9);
      expect(right.joins.left).toBe(s.name);
      expect([right.window.minY, right.window.maxY]).toEqual([s.window.minY, s.window.maxY]);
    }
    const below = layout.sheets.find((o) => o.name === s.joins.below);
    if (below) {
      expect(below.window.maxY - s.window.minY).toBeCloseTo(overlap, 9);
      expect(below.joins.above).toBe(s.name);
    }
  }
}

/** A sheet is not empty when some outline passes through it, or its middle lies on leather. */
function noneEmpty(pieces: readonly Piece[], layout: Layout): void {
  for (const s of layout.sheets) {
    const plate = layout.plates.find((p) => p.id === s.plate)!;
    const drawn = plate.placed.some((placed) => {
      const piece = pieces.find((p) => p.id === placed.piece)!;
      return along(piece.outline).some((p) => {
        const at = drawnAt(placed, p);
        return at !== undefined && shows(s, at);
      });
    });
    expect(drawn, `${s.name} is empty`).toBe(true);
  }
}

function namedOnce(layout: Layout): void {
  const names = layout.sheets.map((s) => s.name);
  expect(new Set(names).size).toBe(names.length);
  for (const s of layout.sheets) {
    expect(s.name).toBe(`${"ABCDEFGHIJ"[s.row]}${s.column + 1}`);
    const inRow = layout.sheets.filter((o) => o.row === s.row).map((o) => o.column);
    expect(inRow).toEqual(inRow.map((_, i) => i));
  }
}

function sound(pieces: readonly Piece[], options: LayoutOptions): Layout {
  const layout = layOut(pieces, options);
  everyMillimetreShown(pieces, layout);
  windowsFit(layout);
  noneEmpty(pieces, layout);
  namedOnce(layout);
  return layout;
}

describe.each(Object.entries(SETS))("%s", (_, pieces) => {
  test.each(PAPERS)("on %s: all of it is on some sheet, windows fit, overlaps are as claimed", (name) => {
    sound(pieces, { paper: paper(name) });
  });

  test("ends only, and for a printer that strays either way", () => {
    sound(pieces, { paper: paper("letter"), endsOnly: true });
    sound(pieces, { paper: paper("a4"), factor: { x: 0.98, y: 1.015 } });
    sound(pieces, { paper: paper("letter"), margin: 15, overlap: 20 });
  });
});

test("any strap, any number of them, on any paper", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 40, max: 1700 }), fc.integer({ min: 10, max: 60 })), {
        minLength: 1,
        maxLength: 5,
      }),
      fc.constantFrom(...PAPERS),
      (sizes, name) => {
        sound(
          sizes.map(([length, width], i) =>
            samples.samplePiece(`s${i}`, samples.strapOutline(length, width, 0)),
          ),
          { paper: paper(name) },
        );
      },
    ),
    { seed: 21, numRuns: 15 },
  );
});

test("the same pieces give the same layout, whatever went before", () => {
  const once = JSON.stringify(layOut(samples.sampleHeadstall(), { paper: paper("letter") }));
  layOut([samples.panel()], { paper: paper("a4") });
  expect(JSON.stringify(layOut(samples.sampleHeadstall(), { paper: paper("letter") }))).toBe(once);
});

test("a pair is drawn once", () => {
  const layout = layOut([samples.cheekLike("cheek", { count: 2, hand: "pair" })], { paper: paper("letter") });
  expect(layout.plates.flatMap((p) => p.placed)).toHaveLength(1);
});

test("nothing to draw needs no sheet; a paper that can't be used throws", () => {
  expect(layOut([], { paper: paper("letter") }).sheets).toEqual([]);
  expect(() => layOut([samples.tinyPiece()], { paper: paper("letter"), margin: 100 })).toThrow(/margin 100/);
});

describe("the search for faults sees", () => {
  const pieces = samples.sampleHeadstall();
  const layout = layOut(pieces, { paper: paper("letter") });
  const [first, ...rest] = layout.sheets as readonly [Sheet, ...Sheet[]];
  const changed = (sheet: Sheet): Layout => ({ ...layout, sheets: [sheet, ...rest] });

  test("a window that stops short", () => {
    const short = { ...first, window: { ...first.window, minX: first.window.minX + 8 } };
    expect(() => everyMillimetreShown(pieces, changed(short))).toThrow(/is on no sheet/);
  });

  test("a window wider than the paper, and one that is not joined as claimed", () => {
    const wide = { ...first, window: { ...first.window, maxX: first.window.maxX + 40 } };
    expect(() => windowsFit(changed(wide))).toThrow();
    const apart = { ...first, window: { ...first.window, maxX: first.window.maxX - 3 } };
    expect(() => windowsFit(changed(apart))).toThrow();
  });

  test("an empty sheet", () => {
    const away = { minX: 0, minY: 5000, maxX: 100, maxY: 5100 };
    expect(() => noneEmpty(pieces, changed({ ...first, window: away }))).toThrow(/is empty/);
  });
});
