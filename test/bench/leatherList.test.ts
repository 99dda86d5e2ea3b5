import polygonClipping from "polygon-clipping";
import { describe, expect, test } from "vitest";
import { leatherList } from "../../src/bench/leatherList.ts";
import { circlePath, rectanglePath } from "../../src/geometry/path.ts";
import type { LeatherRate, Shop } from "../../src/model/shop.ts";
import { madeOf } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { areaOf, ring } from "../support/polygonAreas.ts";
import { shopWith } from "../support/shops.ts";
import { bareJob, barePiece } from "../support/soundPiece.ts";

const rate = (over: Partial<LeatherRate>): LeatherRate => ({
  per: "square foot",
  yield: 0.5,
  byThickness: [],
  yieldFrom: "shop.yaml:7",
  supplier: "",
  ...over,
});
const shop = (strap: Partial<LeatherRate>): Shop => shopWith({}, { leathers: { strap: rate(strap) } });
const disc = barePiece("disc", circlePath([10, 20], 50));
const plate = barePiece("plate", rectanglePath([0, 0], 300, 200), { count: 2 });

describe("areas", () => {
  test("of a disc and two plates, for an order of three", () => {
    const [row, ...more] = leatherList(bareJob([disc, plate]), shop({}), 3);
    expect(more).toEqual([]);
    expect(row).toMatchObject({ leather: "strap", thickness: 3.5, pieces: ["disc", "plate"] });
    expect(row!.net).toBeCloseTo(3 * (Math.PI * 2500 + 120000), 6);
  });

  test("inside the rough-cut line, where there is one", () => {
    const rough = { ...plate, rough: rectanglePath([-5, -5], 310, 210) };
    expect(leatherList(bareJob([rough]), shop({}), 1)[0]!.net).toBeCloseTo(2 * 310 * 210, 6);
  });

  test("of another kind or thickness are another row; thicknesses that print alike are one", () => {
    const of = (kind: string, thickness: number) => ({
      ...plate,
      leather: { kind, thickness, thickest: thickness },
    });
    const made = bareJob([of("strap", 3.5), of("body", 3.5), of("strap", 3.501), of("strap", 2)]);
    const rows = leatherList(made, shop({}), 1);
    expect(rows.map((r) => [r.leather, r.thickness, r.net / 60000])).toEqual([
      ["strap", 3.5, 4],
      ["body", 3.5, 2],
      ["strap", 2, 2],
    ]);
  });

  test("of every piece of every order, as flattened and joined by polygon-clipping 0.15.7", () => {
    for (const { name, text } of orderFiles) {
      const made = madeOf(text);
      const rows = leatherList(made, shop({}), 2);
      expect(rows.flatMap((r) => r.pieces).sort()).toEqual(made.pieces.map((p) => p.id).sort());
      for (const row of rows) {
        const wanted = made.pieces
          .filter((p) => row.pieces.includes(p.id))
          .map((p) => 2 * p.count * areaOf(polygonClipping.union(ring(p.rough ?? p.outline, 0.002))))
          .reduce((a, b) => a + b, 0);
        // Flattened from inside within 0.002 mm, a piece loses less than that round its edge.
        expect(Math.abs(row.net / wanted - 1), `${name} ${row.leather}`).toBeLessThan(5e-4);
      }
    }
  });
});

describe("what is bought", () => {
  test("net over the yield of that leather, and where the yield came from", () => {
    const [row] = leatherList(bareJob([plate]), shop({ yield: 0.8 }), 1);
    expect(row).toMatchObject({ yield: 0.8, yieldFrom: "shop.yaml:7" });
    expect(row!.needed).toBeCloseTo(150000, 6);
    expect(row).not.toHaveProperty("ofSide");
  });

  test("a side of 20 square feet is 1.858 m², and 0.15 m² are 0.0807 of it", () => {
    // 1 ft = 0.3048 m exactly: BIPM, The International System of Units.
    const [row] = leatherList(bareJob([plate]), shop({ yield: 0.8, side: 20 * 304.8 ** 2 }), 1);
    expect(row!.ofSide).toBeCloseTo(0.15 / 1.858061, 5);
  });

  test("a leather that the shop doesn't know has the usual yield, as published", () => {
    // keleenleathers.com, Hide diagram: 18 square feet of leather replace 13.5 of cloth (read).
    const [row] = leatherList(bareJob([plate]), shopWith({}), 1);
    expect(row!.yield).toBeCloseTo(13.5 / 18, 9);
    expect(row!.yieldFrom).toContain("keleenleathers.com");
  });

  test("a leather by the name of something every object has is not found there", () => {
    const odd = { ...plate, leather: { kind: "constructor", thickness: 2, thickest: 2 } };
    expect(leatherList(bareJob([odd]), shopWith({}), 1)[0]!.needed).toBeCloseTo(160000, 6);
  });
});

test("nothing to cut is an empty list", () => {
  expect(leatherList(bareJob([]), shopWith({}), 1)).toEqual([]);
});
