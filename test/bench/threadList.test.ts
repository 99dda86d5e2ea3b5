import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../fixtures/published/thread-and-stitches.json";
import { sewingsOf } from "../../src/bench/sewings.ts";
import { threadList } from "../../src/bench/threadList.ts";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Join, Made } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Shop } from "../../src/model/shop.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { shopWith } from "../support/shops.ts";
import { bareJob, barePiece, stitched } from "../support/soundPiece.ts";

const INCH = 25.4;
const { S2, S5, S9, S13 } = published.figures;

const shopOf = (needleful: number, tail: number, name = ""): Shop =>
  shopWith({}, { file: "shop.yaml", thread: { name, needleful, tail } });
const endless = shopOf(1e9, 0);

const plate = (id: string, count: number, rows: readonly (readonly [string, number, number, number])[]) => {
  const laid = rows.map(([line, x, stitches, pitch]) => stitched(line, x, 5, stitches, pitch));
  return barePiece(id, rectanglePath([0, 0], 1e4, 10), {
    count,
    seams: laid.map((r) => r.seam),
    holes: laid.flatMap((r) => r.holes),
  });
};
type Run = { readonly name: string; readonly line: string; readonly back?: readonly [number, number] };
const seam = ({ name, line, back = [0, 0] }: Run, stack: number, pieces: readonly string[]): Join => ({
  kind: "seam",
  name,
  sides: pieces.map((piece) => ({ piece, seam: line })),
  stack,
  backStitches: back,
  dimension: "measures.height",
});
/** Two plates sewn to each other by one run. */
const twoPlates = (
  stitches: number,
  pitch: number,
  stack: number,
  back: readonly [number, number] = [0, 0],
) =>
  bareJob(
    ["a", "b"].map((id) => plate(id, 1, [["s", 10, stitches, pitch]])),
    { joins: [seam({ name: "a to b: edge", line: "s", back }, stack, ["a", "b"])] },
  );
const oneRow = (made: Made, shop: Shop, quantity = 1) => threadList(made, shop, quantity).rows[0]!;

describe("thread for a length of seam", () => {
  // A long seam, so that its two ends don't count.
  const ratio = (thickness: number, perInch: number): number => {
    const n = 5000;
    const pitch = INCH / perInch;
    return oneRow(twoPlates(n, pitch, thickness * INCH), endless).length / (n * pitch);
  };

  test("as published for a lockstitch, which has the same way", () => {
    expect(ratio(S2.thickness, S2.stitchesPerInch)).toBeCloseTo(S2.threadPerInch, 3);
  });
  test.each(S9.cases)("$thickness in of leather, $stitchesPerInch to the inch: $times times", (c) => {
    expect(ratio(c.thickness, c.stitchesPerInch)).toBeCloseTo(c.times, 2);
  });
  test("about four times in common work: 1/8 in of leather, 7 to 9 to the inch", () => {
    for (const perInch of [7, 8, 9]) expect(Math.abs(ratio(1 / 8, perInch) - S5.times)).toBeLessThan(0.3);
  });

  test("exactly what one thread takes that is followed from hole to hole", () => {
    // Half of it goes through the first hole; then both needles go along a face and through the next, crossing.
    const follow = (n: number, pitch: number, stack: number): number => {
      const middle: readonly [number, number][] = [
        [0, 0],
        [0, stack],
      ];
      const needle = (from: number): readonly [number, number][] => {
        const way: [number, number][] = [];
        let z = from;
        for (let i = 1; i <= n; i++) {
          way.push([i * pitch, z], [i * pitch, stack - z]);
          z = stack - z;
        }
        return way;
      };
      const long = (way: readonly (readonly [number, number])[]): number =>
        way.slice(1).reduce((sum, [x, z], i) => sum + Math.hypot(x - way[i]![0], z - way[i]![1]), 0);
      return long(middle) + long([[0, 0], ...needle(0)]) + long([[0, stack], ...needle(stack)]);
    };
    for (const [n, p, t] of [
      [1, 3, 4],
      [7, 3.175, 6.2],
      [118, 3.6, 3.57],
    ] as const)
      expect(oneRow(twoPlates(n, p, t), endless).length).toBeCloseTo(follow(n, p, t), 6);
  });

  test("back-stitches take what as many more stitches do, tails come once at each end", () => {
    const made = (n: number, back: readonly [number, number]) => twoPlates(n, 3, 4, back);
    const row = oneRow(made(20, [2, 3]), endless);
    expect(row).toMatchObject({ stitches: 20, backStitches: 5, pitch: 3, stack: 4, times: 1 });
    expect(row.length).toBeCloseTo(oneRow(made(25, [0, 0]), endless).length, 9);
    expect(oneRow(made(20, [2, 3]), shopOf(1e9, 127)).length - row.length).toBeCloseTo(254, 9);
  });
});

describe("needlefuls", () => {
  test("none is longer than the shop's, and one fewer wouldn't do", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 900 }),
        fc.double({ min: 1.5, max: 6.5, noNaN: true }),
        fc.double({ min: 1, max: 15, noNaN: true }),
        fc.integer({ min: 600, max: 4000 }),
        fc.integer({ min: 0, max: 200 }),
        (n, pitch, stack, needleful, tail) => {
          const made = twoPlates(n, pitch, stack);
          const bare = oneRow(made, endless).length;
          const { needlefuls: k, length } = oneRow(made, shopOf(needleful, tail));
          expect(length / k).toBeLessThanOrEqual(needleful + 1e-6);
          // Each thread but the first begins in the hole where the last ended: once more through the leather.
          expect(length).toBeCloseTo(bare + 2 * k * tail + (k - 1) * stack, 6);
          if (k > 1) expect(bare + 2 * (k - 1) * tail + (k - 2) * stack).toBeGreaterThan((k - 1) * needleful);
        },
      ),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test("a needleful that is all tails still sews a stitch", () => {
    const row = oneRow(twoPlates(40, 3, 4), shopOf(200, 1000));
    expect(row.needlefuls).toBeLessThanOrEqual(40);
    expect(Number.isFinite(row.length)).toBe(true);
  });
});

describe("runs of one seam", () => {
  const pieces = (second: number): readonly Piece[] =>
    ["a", "b"].map((id) =>
      plate(id, 1, [
        ["s.1", 10, 20, 3],
        ["s.2", second, 10, 4],
      ]),
    );
  const runs = (back: Run["back"]) => [
    seam({ name: "a to b: side", line: "s.1", back: [2, 0] }, 4, ["a", "b"]),
    seam({ name: "a to b: base", line: "s.2", ...(back ? { back } : {}) }, 5, ["a", "b"]),
  ];
  /** The second run begins in the hole where the first ends. */
  const sharing = (p: Piece): Piece => ({
    ...p,
    seams: p.seams.map((s, i) => (i === 0 ? s : { ...s, holes: ["s.1.21", ...s.holes.slice(1)] })),
  });

  test("are one row with one pair of tails where they share a hole", () => {
    const made = bareJob(pieces(70).map(sharing), { joins: runs([0, 2]) });
    const { rows } = threadList(made, shopOf(1e9, 100), 1);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ seam: "a to b", stitches: 30, backStitches: 4, stack: 5, needlefuls: 1 });
    // 20 stitches of 3 mm and 10 of 4 mm.
    expect(rows[0]!.pitch).toBeCloseTo(100 / 30, 9);
    expect(rows[0]!.length).toBeCloseTo((2 * 34 * 100) / 30 + 69 * 5 + 200, 6);
  });

  test("are sewn apart, each with its tails, where they don't", () => {
    const made = bareJob(pieces(200), { joins: runs([2, 2]) });
    const [row] = threadList(made, shopOf(1e9, 100), 1).rows;
    expect(row).toMatchObject({ seam: "a to b", stitches: 30, needlefuls: 2 });
    expect(row!.length).toBeCloseTo((2 * 36 * 100) / 30 + (2 * 36 + 2) * 5 + 400, 6);
  });
});

test("sides that lie closer in a bend don't shorten the thread: the longest side's pitch counts", () => {
  const pieces = [plate("inner", 1, [["s", 10, 10, 2]]), plate("outer", 1, [["s", 10, 10, 3]])];
  const joins = [seam({ name: "outer to inner: bend", line: "s" }, 4, ["inner", "outer"])];
  expect(oneRow(bareJob(pieces, { joins }), endless).pitch).toBeCloseTo(3, 9);
});

describe("how often", () => {
  test("both sides of one body, each to an end of its own: twice", () => {
    const body = plate("body", 1, [
      ["left", 10, 10, 3],
      ["right", 500, 10, 3],
    ]);
    const ends = ["first", "second"].map((id) => plate(id, 1, [["s", 10, 10, 3]]));
    const sides = [
      { piece: "body", seam: "left" },
      { piece: "body", seam: "right" },
      ...ends.map((p) => ({ piece: p.id, seam: "s" })),
    ];
    const join = { ...seam({ name: "body to ends: edge", line: "" }, 4, []), sides } as Join;
    expect(oneRow(bareJob([body, ...ends], { joins: [join] }), endless).times).toBe(2);
  });

  const times = (order: string, quantity = 1): Readonly<Record<string, number>> =>
    Object.fromEntries(
      threadList(madeOf(orderText(order)), endless, quantity).rows.map((r) => [r.seam, r.times]),
    );

  test("two cheeks, two rows in each turn-back; two running keepers; a dozen ordered", () => {
    expect(times("juniper-headstall")).toEqual({
      "Cheek, turn-back round the buckle bar, each edge": 4,
      "Running keeper, its ends": 2,
    });
    expect(times("juniper-headstall", 12)).toEqual({
      "Cheek, turn-back round the buckle bar, each edge": 48,
      "Running keeper, its ends": 24,
    });
  });
  test("front and back once each; two end panels, two strap ends; two handles, each end on front and back", () => {
    expect(times("wren-flap-purse")).toMatchObject({ "front to gusset": 1, "back to gusset": 1 });
    expect(times("box-bag")).toMatchObject({
      "body to end panels": 2,
      "buckle strap and billet strap to end panel": 2,
    });
    expect(times("travel-bag")).toMatchObject({
      "handle left end to front and back": 2,
      "handle right end to front and back": 2,
      "pocket to back": 1,
    });
  });
});

test("a row goes through all that lies there: legs and keeper, patch behind a strap's end, a keeper's lap", () => {
  const stacks = (order: string) =>
    Object.fromEntries(threadList(madeOf(orderText(order)), endless, 1).rows.map((r) => [r.seam, r.stack]));
  // 10.5 oz of 1/64 in; its back leg 0.6 of that; the fixed keeper's end 1 mm.
  const ounces = (n: number): number => (n * INCH) / 64;
  const cheek = stacks("bramble-headstall")["Cheek, turn-back round the buckle bar, each edge"];
  expect(cheek).toBeCloseTo(ounces(10.5) * 1.6 + 1, 6);
  // Two ends of 1 mm, lapped.
  expect(stacks("bramble-headstall")["Running keeper, its ends"]).toBeCloseTo(2, 6);
  // End panel 4 mm, strap 8 oz, patch 1 mm.
  expect(stacks("box-bag")["buckle strap and billet strap to end panel"]).toBeCloseTo(4 + ounces(8) + 1, 6);
});

describe("every order", () => {
  const all = orderFiles.map(({ name, text }) => [name, madeOf(text)] as const);

  test.each(all)("%s: each line of stitches of each piece belongs to one row", (_, made) => {
    const named = sewingsOf(made).flatMap((s) => s.lines.map((l) => `${l.piece} ${l.line}`));
    const drawn = made.pieces.flatMap((p) => p.seams.map((s) => `${p.id} ${s.id}`));
    expect([...named].sort()).toEqual([...drawn].sort());
  });

  test.each(all)("%s: as many stitch holes on the pieces as the rows' stitches go through", (_, made) => {
    const { rows } = threadList(made, endless, 1);
    const holes = (p: Piece): number => p.holes.filter((h) => h.use === "stitch").length;
    // A patch is pricked through with its strap.
    const isPatch = (id: string): boolean => id.startsWith("patch-");
    const onPieces = made.pieces.filter((p) => !isPatch(p.id)).reduce((n, p) => n + p.count * holes(p), 0);
    const inRows = rows.reduce((sum, r) => {
      // A turn-back is pricked in its front leg alone, all else in two layers.
      const layers = r.seam.includes("turn-back") ? 1 : 2;
      // A box has as many holes as stitches, an open stretch one more; side gussets are sewn in three stretches.
      const box = / to (end panel|front and back)$/.test(r.seam);
      const ends = box ? 0 : r.seam === "body to side gussets" ? 3 : 1;
      return sum + r.times * layers * (r.stitches + ends);
    }, 0);
    expect(inRows).toBe(onPieces);
  });

  test.each(all)("%s: totals are the rows', figures are sound", (_, made) => {
    const list = threadList(made, shopOf(1676.4, 127), 2);
    let [total, stitches] = [0, 0];
    for (const r of list.rows) {
      for (const n of [r.times, r.stitches, r.pitch, r.stack, r.length, r.needlefuls])
        expect(n).toBeGreaterThan(0);
      expect(r.length / r.needlefuls).toBeLessThanOrEqual(1676.4);
      for (const id of r.pieces) expect(made.pieces.map((p) => p.id)).toContain(id);
      total += r.times * r.length;
      stitches += r.times * r.stitches;
    }
    expect(list.total).toBeCloseTo(total, 6);
    expect(list.stitches).toBe(stitches);
    expect(list.advice.length > 0).toBe(list.rows.length > 0);
    for (const a of list.advice) expect(a.source.length).toBeGreaterThan(8);
  });
});

describe("advice", () => {
  const says = (made: Made, shop = endless) => threadList(made, shop, 1).advice;

  test("for tack at 8 to the inch: the cords and the number that are published for it", () => {
    const tack = S13.rows.find((r) => r.for.includes("tack"))!;
    const [thread] = says(twoPlates(30, INCH / 8, 6));
    expect(thread!.what).toBe("thread");
    expect(thread!.says).toContain(`${tack.cords} cords`);
    expect(thread!.says).toContain(`No. ${tack.number}`);
    expect(thread!.source).toMatch(/^common practice, no source; .*Desgrange/);
  });

  test("the heavier the leather and the longer the stitch, the heavier the thread and the thicker the needle", () => {
    const numbers = (pitch: number, stack: number): readonly number[] =>
      says(twoPlates(30, pitch, stack))
        .filter((a) => a.what === "thread" || a.what === "needles")
        .map((a) => Number(/(?:of (\d) cords)|(?:No\. (\d)$)/.exec(a.says)!.slice(1).join("")));
    const steps = [
      [2, 1],
      [2.8, 3],
      [3.5, 6],
      [4.5, 9],
      [6, 12],
    ].map(([p, t]) => numbers(p!, t!));
    const cords = steps.map((s) => s[0]!);
    const needles = steps.map((s) => s[1]!);
    expect([...cords].sort()).toEqual(cords);
    expect(new Set(cords).size).toBe(5);
    // Needles are thicker by lower numbers.
    expect([...needles].sort((a, b) => b - a)).toEqual(needles);
    // Fine stitches in thick leather, and long ones in thin, are sewn with the finer thread.
    expect(numbers(2, 12)).toEqual(numbers(2, 1));
    expect(numbers(6, 1)).toEqual(numbers(2, 1));
  });

  test("says for which seams, where they want more than one", () => {
    const texts = says(madeOf(orderText("bramble-headstall"))).map((a) => a.says);
    expect(texts.filter((t) => t.endsWith("for Running keeper, its ends"))).toHaveLength(2);
  });

  test("the awl's slits as they are drawn, through the thickest leather; none for punched holes", () => {
    const awl = says(twoPlates(30, 3, 7)).find((a) => a.what === "awl");
    expect(awl!.says).toContain("1.8 mm long");
    expect(awl!.says).toContain("7 mm of leather");
    expect(says(madeOf(orderText("travel-bag"))).map((a) => a.what)).not.toContain("awl");
  });

  test("the shop's own thread first; nothing for what isn't sewn", () => {
    const own = shopOf(1000, 100, "waxed linen, brown");
    expect(says(twoPlates(30, 3, 7), own)[0]).toEqual({
      what: "your thread",
      says: "waxed linen, brown",
      source: "shop.yaml",
    });
    expect(says(madeOf(orderText("curb-strap")), own)).toEqual([]);
  });
});

test("a row of stitches that nothing else explains is still on the list", () => {
  const made = bareJob([plate("tab", 3, [["ornament", 10, 12, 3]])]);
  const list = threadList(made, endless, 1);
  expect(list.rows).toMatchObject([{ seam: "tab, row ornament", times: 3, stitches: 12, stack: 3.5 }]);
});
