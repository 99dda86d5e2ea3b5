import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layOut } from "../../src/layout/layOut.ts";
import { roomOf } from "../../src/layout/room.ts";
import type { Piece } from "../../src/model/piece.ts";
import { paper } from "../support/papers.ts";
import { longStrap, panel, samplePiece, strapOutline } from "../support/samplePieces.ts";

const count = (pieces: readonly Piece[], name = "letter"): number =>
  layOut(pieces, { paper: paper(name) }).sheets.length;
const plain = (id: string, length: number, width: number): Piece =>
  samplePiece(id, strapOutline(length, width, 0));
const straps = (n: number, length = 900): readonly Piece[] =>
  Array.from({ length: n }, (_, i) => plain(`s${i}`, length, 16));

// Letter with a margin of 10 prints 195.9 × 259.4 mm; with an overlap of 10, n sheets along their long
// edge cover 249.4 n + 10 mm, along their short edge 185.9 n + 10.
describe("a strap lies along whichever edge needs fewer sheets", () => {
  test.each([
    [240, 1],
    [490, 2],
    [740, 3],
    [990, 4],
    [1240, 5],
  ])("%d mm on %d sheets", (length, sheets) => {
    expect(count([plain("strap", length, 16)])).toBe(sheets);
  });
});

test("straps share a row: as many as fit side by side cost no more than one", () => {
  expect(count(straps(2))).toBe(4);
  expect(count(straps(5))).toBe(4);
  // Six rooms of 36 mm are 216 mm: too many for the short edge, so the sheets stand upright: 5, not 8.
  expect(count(straps(6))).toBe(5);
  expect(count(straps(7))).toBe(5);
});

test("small pieces go where there is room", () => {
  const small = Array.from({ length: 6 }, (_, i) => plain(`k${i}`, 60, 10));
  expect(count([longStrap(), ...small])).toBe(4);
  expect(count(small)).toBe(1);
});

test("a panel is tiled the way that needs fewest", () => {
  // 408 × 308 with its room: 2 × 2 either way on letter, 2 × 1 on tabloid, one on a roll.
  expect(count([panel()])).toBe(4);
  expect(count([panel()], "tabloid")).toBe(2);
  expect(count([panel()], "roll 610 mm")).toBe(1);
});

test("a corner where nothing is drawn gets no sheet", () => {
  // An L: 600 along, 600 up, its arms 100 wide. The far corner of the grid is empty.
  const arms: readonly (readonly [number, number])[] = [
    [0, 0],
    [600, 0],
    [600, 100],
    [100, 100],
    [100, 600],
    [0, 600],
  ];
  const outline = {
    start: arms[0]!,
    segments: [...arms.slice(1), arms[0]!].map((to) => ({ kind: "line" as const, to })),
    closed: true,
  };
  const layout = layOut([samplePiece("l", outline)], { paper: paper("letter") });
  const [plate] = layout.plates;
  const grid = (plate!.jointsX.length + 1) * (plate!.jointsY.length + 1);
  expect(layout.sheets.length).toBeLessThan(grid);
});

/** Rectangles on one sheet, tried exhaustively: every order, every turn, at every corner that others make. */
function fitOnOne(sizes: readonly (readonly [number, number])[], width: number, height: number): boolean {
  type Box = readonly [x: number, y: number, w: number, h: number];
  const apart = (a: Box, b: Box): boolean =>
    a[0] + a[2] <= b[0] || b[0] + b[2] <= a[0] || a[1] + a[3] <= b[1] || b[1] + b[3] <= a[1];
  const place = (rest: readonly (readonly [number, number])[], laid: readonly Box[]): boolean => {
    if (rest.length === 0) return true;
    const xs = [0, ...laid.map((b) => b[0] + b[2])];
    const ys = [0, ...laid.map((b) => b[1] + b[3])];
    return rest.some((size, i) =>
      [size, [size[1], size[0]] as const].some(([w, h]) =>
        xs.some((x) =>
          ys.some((y) => {
            const box: Box = [x, y, w, h];
            const fits = x + w <= width && y + h <= height && laid.every((b) => apart(b, box));
            return (
              fits &&
              place(
                rest.filter((_, k) => k !== i),
                [...laid, box],
              )
            );
          }),
        ),
      ),
    );
  };
  return place(sizes, []);
}

/** The fewest sheets for pieces that each fit on one: every way to part them into sheets is tried. */
function fewest(sizes: readonly (readonly [number, number])[], width: number, height: number): number {
  let best = sizes.length;
  const part = (i: number, groups: readonly (readonly (readonly [number, number])[])[]): void => {
    if (groups.length >= best && i < sizes.length) return;
    if (i === sizes.length) {
      if (groups.length < best && groups.every((g) => fitOnOne(g, width, height))) best = groups.length;
      return;
    }
    for (let g = 0; g < groups.length; g++)
      part(
        i + 1,
        groups.map((group, k) => (k === g ? [...group, sizes[i]!] : group)),
      );
    part(i + 1, [...groups, [sizes[i]!]]);
  };
  part(0, []);
  return best;
}

test("small pieces need no more sheets than the best of all ways to part them", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 60, max: 180 }), fc.integer({ min: 60, max: 180 })), {
        minLength: 2,
        maxLength: 5,
      }),
      (sizes) => {
        const pieces = sizes.map(([w, h], i) => samplePiece(`p${i}`, strapOutline(w, h, 0)));
        const rooms = pieces.map((p) => {
          const r = roomOf(p);
          return [r.maxX - r.minX, r.maxY - r.minY] as const;
        });
        // Fewer may do: a piece that lies on two joined sheets can save a third.
        expect(count(pieces)).toBeLessThanOrEqual(fewest(rooms, 259.4, 195.9));
      },
    ),
    { seed: 31, numRuns: 40 },
  );
});
