import { describe, expect, test } from "vitest";
import { cutList } from "../../src/bench/cutList.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import { polyline, rectanglePath } from "../../src/geometry/path.ts";
import type { Piece } from "../../src/model/piece.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { bareJob, barePiece } from "../support/soundPiece.ts";

const finish = (byDie = "") => ({ byDie, dye: "", edges: "burnished", edged: true, thread: "" }) as const;
const rowsOf = (pieces: readonly Piece[], quantity = 1) => cutList(bareJob(pieces), finish(), quantity).rows;
const plate = barePiece("plate", rectanglePath([0, 0], 300, 200), { name: "Plate" });

describe("a row", () => {
  test("says what is cut, of what, how large", () => {
    expect(rowsOf([{ ...plate, count: 4 }])).toEqual([
      {
        piece: "plate",
        name: "Plate",
        count: 4,
        hand: "all alike",
        leather: "strap",
        thickness: 3.5,
        skived: [],
        length: 300,
        width: 200,
        grain: "along the longer side, left to right on the template",
        cutBy: "knife",
      },
    ]);
  });

  test.each([
    ["same", 1, 1, "as drawn"],
    ["same", 2, 3, "all alike"],
    ["pair", 2, 1, "1 as drawn, 1 turned over"],
    ["pair", 2, 5, "5 as drawn, 5 turned over"],
  ] as const)("hand %s, %d in an article, %d articles: %s", (hand, count, quantity, words) => {
    const [row] = rowsOf([{ ...plate, hand, count }], quantity);
    expect(row).toMatchObject({ hand: words, count: count * quantity });
  });

  test("length lies along the backbone", () => {
    const [row] = rowsOf([{ ...plate, grain: Math.PI / 2 }]);
    expect(row!.length).toBeCloseTo(200, 9);
    expect(row!.width).toBeCloseTo(300, 9);
    expect(row!.grain).toBe("along the shorter side, up and down the template");
  });

  test("of a plate that lies aslant with its backbone, too", () => {
    // 3-4-5: a direction of (4, 3) / 5, a plate of 100 by 50 along it.
    const outline = polyline(
      [
        [0, 0],
        [80, 60],
        [50, 100],
        [-30, 40],
      ],
      true,
    );
    const [row] = rowsOf([{ ...plate, outline, grain: Math.atan2(3, 4) }]);
    expect(row!.length).toBeCloseTo(100, 9);
    expect(row!.width).toBeCloseTo(50, 9);
    expect(row!.grain).toBe("aslant, 36.9° from left to right on the template");
  });
});

test("the cut size of every piece is the box of its outline, followed point by point", () => {
  for (const { name, text } of orderFiles) {
    const made = madeOf(text);
    const { rows } = cutList(made, finish(), 1);
    expect(rows.map((r) => r.piece)).toEqual(made.pieces.map((p) => p.id));
    for (const [i, p] of made.pieces.entries()) {
      const points = flatten(p.outline, 0.001);
      const span = (x: number, y: number): number => {
        const on = points.map((q) => q[0] * x + q[1] * y);
        return Math.max(...on) - Math.min(...on);
      };
      const [c, s] = [Math.cos(p.grain), Math.sin(p.grain)];
      expect(Math.abs(rows[i]!.length - span(c, s)), `${name} ${p.id}`).toBeLessThan(0.005);
      expect(Math.abs(rows[i]!.width - span(-s, c)), `${name} ${p.id}`).toBeLessThan(0.005);
    }
  }
});

describe("skiving", () => {
  const skived = (order: string, piece: string) =>
    cutList(madeOf(orderText(order)), finish(), 1).rows.find((r) => r.piece === piece)!.skived;

  test("of a cheek: at the buckle, its feathered end, at the bit", () => {
    // 5/64 in, which the order writes as 5 oz, is left in both folds.
    expect(skived("juniper-headstall", "cheek")).toEqual([
      { to: 1.984375, where: "at the fold round the buckle bar, and behind it" },
      { to: 0, where: "feathered behind the fold round the buckle bar" },
      { to: 1.984375, where: "at the fold round the bit ring, and behind it" },
    ]);
  });
  test("of a strap with two like ends, each by its side", () => {
    expect(skived("browband", "strap").map((s) => s.where)).toEqual([
      "at the left fold round the strap, and behind it",
      "feathered behind the left fold round the strap",
      "at the right fold round the strap, and behind it",
      "feathered behind the right fold round the strap",
    ]);
  });
  test("of a keeper, both ends in one line; of a crown, none", () => {
    expect(skived("juniper-headstall", "keeper-fixed")).toEqual([{ to: 1, where: "at both ends" }]);
    expect(skived("juniper-headstall", "crown")).toEqual([]);
  });
  test("every skive of every order is on the list", () => {
    for (const { text } of orderFiles) {
      const made = madeOf(text);
      for (const [i, row] of cutList(made, finish(), 1).rows.entries()) {
        const zones = made.pieces[i]!.zones.filter((z) => z.kind === "skive").map((z) => z.to);
        expect([...new Set(row.skived.map((s) => s.to))].sort()).toEqual([...new Set(zones)].sort());
        for (const s of row.skived) expect(s.where.length).toBeGreaterThan(8);
      }
    }
  });
});

describe("cut by", () => {
  const made = madeOf(orderText("juniper-headstall"));
  const by = (text: string) => {
    const { rows, findings } = cutList(made, finish(text), 1);
    return { findings, by: (tool: string) => rows.filter((r) => r.cutBy === tool).map((r) => r.piece) };
  };
  const keepers = ["keeper-fixed", "keeper-running"];

  test("strap cutter for straps, knife for the rest", () => {
    const { by: cutBy, findings } = by("");
    expect(cutBy("strap cutter")).toEqual(["crown", ...keepers]);
    expect(cutBy("knife")).toEqual(["cheek", "ear-piece"]);
    expect(findings).toEqual([]);
  });

  test.each([
    ["cheek", ["cheek"]],
    [" CHEEK ,Ear Piece,, ", ["cheek", "ear-piece"]],
    ["cheek, keeper", ["cheek", ...keepers]],
    ["keeper_running", ["keeper-running"]],
  ])("die for %j", (text, pieces) => {
    const { by: cutBy, findings } = by(text);
    expect(cutBy("die")).toEqual(pieces);
    expect(findings).toEqual([]);
  });

  test("a name that is no piece's is an error with the nearest and all the pieces, and its change removes it", () => {
    const { findings, by: cutBy } = by("keeper, chek, chek");
    expect(cutBy("die")).toEqual(keepers);
    expect(findings).toEqual([
      {
        rule: "cut-by-die",
        severity: "error",
        piece: "",
        place: "finish.by-die",
        message: 'there is no piece "chek" to cut with a die',
        value: "chek",
        limit: "crown, cheek, ear-piece, keeper-fixed or keeper-running",
        mend: "write cheek in finish.by-die",
        change: { dimension: "finish.by-die", value: "keeper, cheek" },
      },
    ]);
    expect(by(findings[0]!.change!.value).findings).toEqual([]);
  });

  test.each(["c", "k", "stirrup leathers", "constructor", "🐴"])("%j names none", (text) => {
    const { findings, by: cutBy } = by(text);
    expect(findings).toHaveLength(1);
    expect(cutBy("die")).toEqual([]);
  });

  test("each unknown name has a finding; taking them all out ends them", () => {
    const { findings } = by("saddle, cheek, girth strap");
    expect(findings.map((f) => f.value)).toEqual(["saddle", "girth strap"]);
    expect(findings[0]!.change).toEqual({ dimension: "finish.by-die", value: "cheek, girth strap" });
  });
});
