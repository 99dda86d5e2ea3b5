import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Piece } from "../../src/model/piece.ts";
import { readOrder } from "../../src/order/read.ts";

// Straps that P. N. Hasluck describes (Harness Making, Cassell, London, 1904; pages beside each figure in
// the fixture), ordered as a maker would, and what is cut for them measured on the drawn outline.

type Book = { readonly figures: Readonly<Record<string, Readonly<Record<string, never>>>> };
const book = JSON.parse(readFileSync("fixtures/published/harness-making-1904.json", "utf8")) as Book;
const figure = (id: string): Record<string, number & readonly number[]> => book.figures[id]! as never;

type StrapOrder = {
  readonly width: number;
  readonly length: number;
  readonly left: string;
  readonly right: string;
  readonly more: string;
};

const orderOf = (o: StrapOrder): string => `article: strap
units: in
measures: { ${o.left}, ${o.right}, width: ${o.width}, keeper: no }
leather: { strap: { thickness: 1/8 in } }
pieces:
  strap: { reckoned: fold to fold, length: ${o.length}, ${o.more} }
`;

function pieceOf(o: StrapOrder): Piece {
  const read = readOrder(orderOf(o), "book.yaml", articles);
  expect(read.faults).toEqual([]);
  const made = read.order!.article.make(read.order!.values);
  const errors = checkPieces(made, { units: "in" }).filter((f) => f.severity === "error");
  expect(errors).toEqual([]);
  return made.pieces[0]!;
}

function extentIn(piece: Piece): { readonly length: number; readonly width: number } {
  const box = boundsOf(piece.outline);
  return { length: (box.maxX - box.minX) / 25.4, width: (box.maxY - box.minY) / 25.4 };
}

const LOOPS = { left: "left-end: loop", right: "right-end: loop" };

describe("the handbook's straps, as ordered, are cut as the handbook cuts them", () => {
  test("H3 cart-bridle nose-band: 16 in finished, 4 in turned in at each end, is cut 24 in", () => {
    const { cut, width, finished, turnInEachEnd } = figure("H3");
    const piece = pieceOf({
      ...LOOPS,
      width: width!,
      length: finished!,
      more: `left-turn-back: ${turnInEachEnd}, right-turn-back: ${turnInEachEnd}`,
    });
    expect(extentIn(piece).length).toBeCloseTo(cut!, 6);
    expect(extentIn(piece).width).toBeCloseTo(width!, 6);
  });

  test("H8 forehead band: 13 in between the marks, both ends bent round a 1 1/2 in strap, is cut 21 in", () => {
    const { cut, width, betweenMarks, roundStrap, loopEachEnd } = figure("H8");
    const piece = pieceOf({
      ...LOOPS,
      width: width!,
      length: betweenMarks!,
      more: `around: ${roundStrap}, left-turn-back: ${loopEachEnd}, right-turn-back: ${loopEachEnd}`,
    });
    expect(extentIn(piece).length).toBeCloseTo(cut!, 6);
    const folds = piece.folds.map((f) => f.from[0]).sort((a, b) => a - b);
    expect((folds[1]! - folds[0]!) / 25.4).toBeCloseTo(betweenMarks!, 6);
  });

  test("H9 breeching strap: 30 in with 9 in turned down is cut 39 in", () => {
    const { cut, width, finished, turnDown } = figure("H9");
    const piece = pieceOf({
      width: width!,
      length: finished!,
      left: "left-end: loop",
      right: "right-end: plain",
      more: `left-turn-back: ${turnDown}`,
    });
    expect(extentIn(piece).length).toBeCloseTo(cut!, 6);
  });

  test("H12 rein: each part loses the 3 in that are turned down at the bit", () => {
    const { cuts, width, turnDown, finished } = figure("H12") as unknown as {
      cuts: number[];
      width: number;
      turnDown: number;
      finished: number[];
    };
    for (const [i, length] of finished.entries()) {
      const piece = pieceOf({
        width,
        length,
        left: "left-end: ring",
        right: "right-end: plain",
        more: `left-turn-back: ${turnDown}`,
      });
      expect(extentIn(piece).length).toBeCloseTo(cuts[i]!, 6);
    }
  });

  test("H30, H31, H32 box strap 1 1/2 in wide, 6 ft long: turn-down, first hole and spacing as the book has them", () => {
    const { strapWidth, firstHole } = figure("H30");
    const { turnDown } = figure("H32");
    const piece = pieceOf({
      width: strapWidth!,
      length: 72,
      left: "left-end: buckle",
      right: "right-end: billet",
      more: `left-turn-back: ${turnDown}`,
    });
    const box = boundsOf(piece.outline);
    expect((box.maxX - box.minX) / 25.4).toBeCloseTo(72 + turnDown!, 6);
    const holes = piece.holes
      .filter((h) => h.use === "buckle")
      .map((h) => (box.maxX - h.at[0]) / 25.4)
      .sort((a, b) => a - b);
    // "about 5 in": to the eighth of an inch.
    expect(Math.abs(holes[0]! - firstHole!)).toBeLessThan(1 / 8);
    const spacing = holes[1]! - holes[0]!;
    expect(spacing).toBeGreaterThan(strapWidth!);
    expect(spacing).toBeLessThanOrEqual(strapWidth! + 1 / 8 + 1e-9);
  });
});
