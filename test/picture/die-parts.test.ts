import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DieFeature } from "../../src/die/feature.ts";
import { holeTable } from "../../src/die/holeTable.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { auxiliary, bothUnits, sayLetters, sayScale } from "../../src/picture/die/figures.ts";
import { overSheets, type Sheeted } from "../../src/picture/die/sheeted.ts";
import { spread } from "../../src/picture/die/spread.ts";
import { tableLines } from "../../src/picture/die/table.ts";
import { viewOf } from "../../src/picture/die/view.ts";
import type { Item } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { dieOf } from "../support/dies.ts";

const SEED = { seed: 4 };

describe("labels side by side", () => {
  test("with room enough each stands where it is wished", () => {
    expect(
      spread([
        { at: 0, size: 2 },
        { at: 5, size: 2 },
        { at: 9, size: 3 },
      ]),
    ).toEqual([0, 5, 9]);
  });

  test("two that wish the same place stand about it", () => {
    expect(
      spread([
        { at: 4, size: 2 },
        { at: 4, size: 2 },
      ]),
    ).toEqual([3, 5]);
  });

  test("a third that is pushed joins them about the common mean", () => {
    // Wishes 0, 0, 1 for labels of 2: -2, 0, 2 moved by the mean of 0 + 2, 0 - 0, 1 - 2, a third.
    const middles = spread([0, 0, 1].map((at) => ({ at, size: 2 })));
    expect(middles.map((m) => m.toFixed(6))).toEqual([-2 + 1 / 3, 1 / 3, 2 + 1 / 3].map((m) => m.toFixed(6)));
  });

  test("none overlaps, whatever is wished, and no small move of one is nearer to its wish", () => {
    const labels = fc.array(
      fc.record({
        at: fc.double({ min: -100, max: 100, noNaN: true }),
        size: fc.double({ min: 0.1, max: 20, noNaN: true }),
      }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(labels, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a.at - b.at);
        const middles = spread(sorted);
        const gap = (i: number, at: number): number =>
          at - middles[i - 1]! - (sorted[i]!.size + sorted[i - 1]!.size) / 2;
        for (let i = 1; i < sorted.length; i++) expect(gap(i, middles[i]!)).toBeGreaterThan(-1e-6);
        // The first may go left and the last may go right freely: neither then comes nearer to its wish.
        expect(middles[0]!).toBeLessThan(sorted[0]!.at + 1e-6);
        expect(middles.at(-1)!).toBeGreaterThan(sorted.at(-1)!.at - 1e-6);
      }),
      SEED,
    );
  });
});

describe("figures", () => {
  test("an inch is 25.4 mm", () => {
    expect(bothUnits(25.4, "mm")).toBe("25.4 [1]");
    expect(bothUnits(25.4, "in")).toBe("1 [25.4]");
    expect(auxiliary(12.7, "cm")).toBe("(12.7 [0.5])");
    expect(sayScale(5)).toBe("1 : 5");
  });

  test("what lies alike on both sides of the datum reads alike: a tie goes away from 0", () => {
    // 0.3125 in, half way between two thousandths.
    expect(bothUnits(7.9375, "in")).toBe("0.313 [7.94]");
    expect(bothUnits(-7.9375, "in")).toBe("-0.313 [-7.94]");
    expect(bothUnits(-0.0001, "in")).toBe("0 [0]");
    const hole = (x: number): DieFeature => ({
      id: `${x}`,
      kind: "round hole",
      made: "in the die",
      why: "",
      letter: "A1",
      at: [x, -x],
      paths: [],
      holes: [],
    });
    expect(holeTable([hole(7.9375), hole(-7.9375)]).map(({ x, y }) => [x, y])).toEqual([
      [7.938, -7.938],
      [-7.938, 7.938],
    ]);
  });

  test("letters in few words", () => {
    expect(sayLetters(["A1", "A2", "A3", "B1"])).toBe("A1 to A3, B1");
    expect(sayLetters(["B2", "A1", "A2"])).toBe("A1, A2, B2");
    expect(sayLetters(["A10", "A9", "A2", "AA1", "Z1"])).toBe("A2, A9, A10, Z1, AA1");
  });
});

test("columns that fold share the room: a short one keeps what it needs, and all words stand within", () => {
  const long = Array.from({ length: 40 }, (_, i) => `word${i}`).join(" ");
  const table = {
    columns: [
      { title: "a" },
      { title: "b", folds: true },
      { title: "c", folds: true },
      { title: "d", folds: true },
    ],
    rows: [["x", "short", long, long]],
  };
  const words = tableLines(table, 180)
    .flatMap((l) => l.draw(0, 0))
    .filter((i) => i.kind === "words");
  expect(Math.max(...words.map((w) => textBox(w).maxX))).toBeLessThanOrEqual(180);
  expect(words.some(({ text }) => text === "short")).toBe(true);
  expect(words.flatMap(({ text }) => text.split(" ")).filter((w) => w.startsWith("word")).length).toBe(80);
});

describe("lines of tables over sheets", () => {
  const named = (name: string, height: number, more: Partial<Sheeted> = {}): Sheeted => ({
    height,
    draw: (x, y): readonly Item[] => [
      { kind: "words", layer: "text", at: [x, y], size: 1, text: name, align: "left", angle: 0 },
    ],
    ...more,
  });
  const columns = () => [{ minX: 0, maxX: 10, minY: 0, maxY: 10 }];
  const texts = (sheets: readonly (readonly Item[])[]): readonly (readonly string[])[] =>
    sheets.map((items) => items.flatMap((i) => (i.kind === "words" ? [i.text] : [])));

  test("the head stands again where the table goes on, and is not left alone at a foot", () => {
    const head = named("head", 2);
    const rows = ["1", "2", "3", "4"].map((n) => named(n, 3, { again: head }));
    expect(texts(overSheets([{ ...head, keep: true }, ...rows], columns))).toEqual([
      ["head", "1", "2"],
      ["head", "3", "4"],
    ]);
    const after = [named("words", 7), { ...head, keep: true }, ...rows.slice(0, 1)];
    expect(texts(overSheets(after, columns))).toEqual([["words"], ["head", "1"]]);
  });

  test("what is taller than a sheet is drawn all the same", () => {
    expect(texts(overSheets([named("tall", 40), named("next", 2)], columns))).toEqual([["tall"], ["next"]]);
  });
});

describe("no line of sizes hides a fold or the centre line", () => {
  // Each has a hole or slot right on such a line.
  test.each([
    ["draft.yaml", "cheek"],
    ["wren-flap-purse.yaml", "front"],
  ])("%s %s", (order, id) => {
    const die = dieOf(order, id);
    for (const lettering of ["letters", "places"] as const) {
      const { items } = viewOf({ die, units: "mm", k: 0.5, lettering });
      const strokes = items.flatMap((i) => (i.kind === "stroke" ? [{ ...i, box: boundsOf(i.path) }] : []));
      const upright = ({ box }: (typeof strokes)[number]): boolean => box.maxX - box.minX < 0.05;
      const outline = strokes.find((s) => s.id === "die.outline")!.box;
      const hidden = strokes.filter((s) => upright(s) && (s.layer === "fold" || s.id === "axis"));
      expect(hidden.length).toBeGreaterThan(0);
      const sizes = strokes.filter((s) => upright(s) && s.layer === "mark" && s.line === "01.1");
      for (const { box } of hidden)
        for (const size of sizes.filter((s) => Math.abs(s.box.minX - box.minX) < 0.5))
          expect(size.box.minY >= outline.maxY || size.box.maxY <= outline.minY).toBe(true);
    }
  });
});
