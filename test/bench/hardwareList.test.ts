import { describe, expect, test } from "vitest";
import { hardwareList } from "../../src/bench/hardwareList.ts";
import type { Fitting } from "../../src/model/fitting.ts";
import { madeOf } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { shopWith } from "../support/shops.ts";
import { bareJob } from "../support/soundPiece.ts";

const rivet = (over: Partial<Fitting>): Fitting => ({
  kind: "rivet",
  name: "rivets of the tab",
  count: 2,
  details: ["head 9 mm"],
  through: { shank: 5, stack: 6 },
  pieces: ["tab"],
  serves: [],
  ...over,
});
const listOf = (fittings: readonly Fitting[], spares = 0, quantity = 1) =>
  hardwareList(bareJob([], { fittings }), shopWith({ rivet: { spares, lengths: [12] } }), quantity);

describe("alike things are one row", () => {
  test("of one kind, size, shank and details, under both names", () => {
    const rows = listOf([
      rivet({}),
      rivet({ name: "rivets of the handle", count: 8, pieces: ["handle", "tab"] }),
    ]);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      name: "rivets of the tab; rivets of the handle",
      count: 10,
      pieces: ["tab", "handle"],
      shank: { diameter: 5, stack: 6, chosen: 12 },
    });
  });

  test.each<[string, Partial<Fitting>]>([
    ["kind", { kind: "binding screw" }],
    ["size", { size: 9 }],
    ["details", { details: ["head 8 mm"] }],
    ["shank", { through: { shank: 4, stack: 6 } }],
    ["stack", { through: { shank: 5, stack: 6.5 } }],
    ["who brings it", { brought: true }],
  ])("another %s is another row", (_, over) => {
    expect(listOf([rivet({}), rivet(over)])).toHaveLength(2);
  });
});

describe("counts and spares", () => {
  test("are for the whole order, spares rounded up to whole ones", () => {
    // 12 straps of 2 rivets, a tenth more: 24 and 3.
    expect(listOf([rivet({})], 0.1, 12)[0]).toMatchObject({ count: 24, spares: 3 });
    // 100 of them at 7 %: 0.07 × 100 is a hair over 7 in binary.
    expect(listOf([rivet({ count: 100 })], 0.07)[0]).toMatchObject({ count: 100, spares: 7 });
    expect(listOf([rivet({})], 0)[0]!.spares).toBe(0);
  });

  test("spares by kind, as the shop says, and none of what the customer brings", () => {
    const shop = shopWith({ rivet: { spares: 0.5 } });
    const fittings = [
      rivet({ kind: "buckle", size: 25.4 }),
      rivet({ brought: true }),
      rivet({ count: 3, through: { shank: 3, stack: 4 } }),
    ];
    expect(hardwareList(bareJob([], { fittings }), shop, 1).map((r) => r.spares)).toEqual([0, 0, 2]);
  });

  test("every fitting of every order is counted once, as often as articles are ordered", () => {
    for (const { name, text } of orderFiles) {
      const made = madeOf(text);
      const rows = hardwareList(made, shopWith({}), 3);
      const of = (kind: string, list: readonly { kind: string; count: number }[]): number =>
        list.filter((x) => x.kind === kind).reduce((n, x) => n + x.count, 0);
      for (const { kind } of made.fittings!)
        expect(of(kind, rows), `${name} ${kind}`).toBe(3 * of(kind, made.fittings!));
    }
  });
});

test("an article without fittings has an empty list", () => {
  expect(hardwareList(bareJob([]), shopWith({}), 5)).toEqual([]);
});
