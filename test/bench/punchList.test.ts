import { describe, expect, test } from "vitest";
import { punchFor, punchList } from "../../src/bench/punchList.ts";
import { circlePath, rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { Hole } from "../../src/model/piece.ts";
import { ROUND_PUNCHES_MM } from "../../src/trade/facts/punches.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { shopWith } from "../support/shops.ts";
import { bareJob, barePiece, punched } from "../support/soundPiece.ts";

const shop = shopWith({});
const own = shopWith(
  {},
  {
    punches: [
      { number: "3", size: 3.2 },
      { number: "5", size: 4.8 },
    ],
  },
);
const awl: Hole = { id: "a", kind: "awl", at: [0, 0], size: 2, angle: 0.7, use: "stitch" };
const at = (x: number) => [x, 0] as const;
const outline = rectanglePath([0, -12], 300, 24);

describe("which punch is taken", () => {
  test("every hole from 1 to 6 mm has one of the usual, within 0.3 mm of it", () => {
    for (let size = 1; size <= 6; size += 0.01) {
      const punch = punchFor(size, shop)!.size;
      expect(ROUND_PUNCHES_MM).toContain(punch);
      expect(Math.abs(punch - size)).toBeLessThanOrEqual(0.3 + 1e-9);
      // What goes through a hole of 5.2 mm is 5 mm thick.
      expect(punch).toBeGreaterThanOrEqual(size - 0.2 - 1e-9);
    }
  });

  test.each([
    [4, 4],
    [3.62, 3.5],
    [5.2, 5],
    [5.25, 5.5],
    [4.79, 5],
  ])("for %d mm the one of %d mm", (size, punch) => {
    expect(punchFor(size, shop)?.size).toBe(punch);
  });

  test("none for 0.5 or 9.3 mm", () => {
    expect(punchFor(0.5, shop)).toBeUndefined();
    expect(punchFor(9.3, shop)).toBeUndefined();
  });

  test("the shop's own first, with its number; the usual sizes where it has none near", () => {
    expect(punchFor(3.3, own)).toEqual({ number: "3", size: 3.2 });
    expect(punchFor(5, own)).toEqual({ number: "5", size: 4.8 });
    expect(punchFor(2.5, own)).toEqual({ size: 2.5 });
  });
});

describe("rows", () => {
  const strap = barePiece("strap", outline, {
    count: 2,
    holes: [
      ...[1, 2, 3].map((n) => punched(`right.${n}`, at(200 + 20 * n), 4, "buckle")),
      punched("left.rivet.1", at(10), 4, "rivet"),
      awl,
    ],
    cutouts: [
      { id: "left.slot", use: "tongue slot", outline: slotPath(at(50), 23, 4.5), length: 23, width: 4.5 },
      { id: "s", use: "strap slot", outline: slotPath(at(90), 28.7, 9.4), length: 28.7, width: 9.4 },
      { id: "o", use: "opening", outline: circlePath(at(150), 8) },
    ],
  });
  const other = barePiece("tab", outline, { holes: [punched("h", at(10), 4, "rivet")] });
  const rows = punchList(bareJob([strap, other]), shop, 5);

  test("round holes by size and use, counted over pieces, their count and the order's", () => {
    expect(rows.filter((r) => r.what === "round")).toEqual([
      {
        what: "round",
        size: 4,
        use: "buckle",
        count: 30,
        places: [{ piece: "strap", count: 30 }],
        punch: 4,
        how: "punch 4 mm",
      },
      {
        what: "round",
        size: 4,
        use: "rivet",
        count: 15,
        places: [
          { piece: "strap", count: 10 },
          { piece: "tab", count: 5 },
        ],
        punch: 4,
        how: "punch 4 mm",
      },
    ]);
  });

  test("slots by width and length with what is done; an opening by its extent", () => {
    const slots = rows.filter((r) => r.what === "slot");
    expect(slots.map((r) => [r.use, r.size, r.length, r.count, r.punch])).toEqual([
      ["tongue slot", 4.5, 23, 10, 4.5],
      ["strap slot", 9.4, 28.7, 10, undefined],
      ["opening", 16, 16, 10, undefined],
    ]);
    expect(slots[0]!.how).toBe(
      "slot punch 23 by 4.5 mm, or punch 4.5 mm at both ends and a knife between them",
    );
    expect(slots[1]!.how).toBe("a hole of 9.4 mm at both ends and a knife between them");
    expect(slots[2]!.how).toBe("knife, along the line");
  });

  test("the shop's number of the punch is told", () => {
    const [row] = punchList(bareJob([other]), shopWith({}, { punches: [{ number: "4", size: 4.1 }] }), 1);
    expect(row).toMatchObject({ punch: 4.1, number: "4", how: "punch No. 4 (4.1 mm)" });
  });
});

const flat = (text: string, how: string): string => text.replace(/back-holes: [a-z ]+/, `back-holes: ${how}`);

test("holes that are punched once the leather is folded are counted too, in a row of their own", () => {
  const text = orderText("lancet");
  expect(text).toContain("back-holes: after folding");
  const rivets = (how: string) =>
    punchList(madeOf(flat(text, how)), shop, 1).filter((r) => r.use === "rivet");
  expect(rivets("after folding").map((r) => r.count)).toEqual([4, 4]);
  expect(rivets("after folding")[1]!.how).toMatch(/once folded/);
  expect(rivets("punched flat").map((r) => r.count)).toEqual([8]);
});

test("every round hole and every cutout of every order is in the list, and no awl slit", () => {
  for (const { name, text } of orderFiles) {
    const made = madeOf(text);
    const rows = punchList(made, shop, 2);
    const sum = (list: readonly { readonly count: number }[]): number =>
      list.reduce((n, r) => n + r.count, 0);
    for (const p of made.pieces) {
      const own = rows.flatMap((r) =>
        r.how.includes("once folded") ? [] : r.places.filter((x) => x.piece === p.id),
      );
      const round = p.holes.filter((h) => h.kind !== "awl").length;
      expect(sum(own), `${name} ${p.id}`).toBe(2 * p.count * (round + p.cutouts.length));
    }
    expect(sum(rows), name).toBe(sum(rows.flatMap((r) => r.places)));
  }
});
