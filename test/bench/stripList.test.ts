import { describe, expect, test } from "vitest";
import { stripList } from "../../src/bench/stripList.ts";
import { arc, closedPath, line, type Path, rectanglePath } from "../../src/geometry/path.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { shopWith } from "../support/shops.ts";
import { bareJob, barePiece } from "../support/soundPiece.ts";

const shop = shopWith({}, { stripAllowance: 0.05 });
const strap = (id: string, length: number, width: number, count = 1, thickness = 3.5) =>
  barePiece(id, rectanglePath([0, -width / 2], length, width), {
    count,
    straight: true,
    leather: { kind: "strap", thickness, thickest: thickness },
  });

describe("strips", () => {
  test("of one width are one row: the straps, their sum, the allowance, both together", () => {
    const made = bareJob([strap("cheek", 350, 20, 2), strap("crown", 700, 20)]);
    expect(stripList(made, shop, 3)).toEqual([
      {
        leather: "strap",
        thickness: 3.5,
        width: 20,
        straps: [
          { piece: "cheek", name: "cheek", count: 6, length: 350 },
          { piece: "crown", name: "crown", count: 3, length: 700 },
        ],
        sum: 4200,
        allowance: 210,
        total: 4410,
      },
    ]);
  });

  test("widths within 0.05 mm are cut with one setting, the wider; others are not", () => {
    const made = bareJob([strap("a", 100, 20), strap("b", 100, 20.04), strap("c", 100, 20.1)]);
    const rows = stripList(made, shop, 1).map((r) => [r.width, r.straps.map((s) => s.piece)]);
    expect(rows).toEqual([
      [20.1, ["c"]],
      [20.04, ["b", "a"]],
    ]);
  });

  test("another leather or thickness is another strip", () => {
    const other = { ...strap("c", 100, 20), leather: { kind: "keeper", thickness: 3.5, thickest: 3.5 } };
    const made = bareJob([strap("a", 100, 20), strap("b", 100, 20, 1, 2), other]);
    expect(stripList(made, shop, 1).map((r) => [r.leather, r.thickness])).toEqual([
      ["strap", 3.5],
      ["strap", 2],
      ["keeper", 3.5],
    ]);
  });
});

describe("what a strap cutter can cut", () => {
  const isStrip = (outline: Path, over: Parameters<typeof barePiece>[2] = {}): boolean =>
    stripList(bareJob([barePiece("p", outline, over)]), shop, 1).length === 1;
  const rounded = closedPath(
    [0, -30],
    [
      line([400, -30]),
      arc([430, 0], [400, 0], true),
      arc([400, 30], [400, 0], true),
      line([0, 30]),
      line([0, -30]),
    ],
  );
  /** A strip that grows by 1 mm. */
  const tapered = closedPath([0, -30], [line([430, -31]), line([430, 31]), line([0, 30]), line([0, -30])]);

  test("a long band with parallel edges, one end rounded", () => {
    expect(isStrip(rounded)).toBe(true);
  });
  test("not across the backbone", () => {
    expect(isStrip(rounded, { grain: Math.PI / 2 })).toBe(false);
  });
  test("not one that tapers", () => {
    expect(isStrip(tapered)).toBe(false);
  });
  test("not wider than 4 in, and not as short as a patch", () => {
    expect(isStrip(rectanglePath([0, 0], 900, 102))).toBe(false);
    expect(isStrip(rectanglePath([0, 0], 900, 101))).toBe(true);
    expect(isStrip(rectanglePath([0, 0], 100, 40))).toBe(false);
  });
  test("not thin lining leather", () => {
    expect(isStrip(rounded, { leather: { kind: "lining", thickness: 0.6, thickest: 0.6 } })).toBe(false);
  });
});

test("every plain strap of every order is on it once, as long as its history says it is cut", () => {
  for (const { name, text } of orderFiles) {
    const made = madeOf(text);
    const straps = stripList(made, shop, 1).flatMap((r) => r.straps);
    for (const p of made.pieces.filter((p) => p.straight)) {
      const found = straps.filter((s) => s.piece === p.id);
      expect(found, `${name} ${p.id}`).toHaveLength(1);
      expect(found[0]!.count).toBe(p.count);
      expect(found[0]!.length).toBeCloseTo(p.sizes[0]!.value, 6);
    }
  }
});

test("a cheek that swells isn't cut from a strip, a plain one is", () => {
  const pieces = (name: string): readonly string[] =>
    stripList(madeOf(orderText(name)), shop, 1).flatMap((r) => r.straps.map((s) => s.piece));
  expect(pieces("juniper-headstall")).not.toContain("cheek");
  expect(pieces("miniature")).toContain("cheek");
});
