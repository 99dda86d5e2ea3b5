import { describe, expect, test } from "vitest";
import { type Die, dieFor } from "../../src/die/die.ts";
import { pairDie } from "../../src/die/pairDie.ts";
import { ruleLengths } from "../../src/die/rulePaths.ts";
import { defaultDie } from "../../src/die/settings.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { distanceToPath } from "../../src/geometry/distance.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import type { Box, Point } from "../../src/geometry/path.ts";
import { placed } from "../../src/geometry/transform.ts";
import { nearestPlaces } from "../../src/picture/die/pairMarks.ts";
import type { PairSheetInput } from "../../src/picture/die/pairSheet.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { A3, dieOf, inputFor, MARGIN, orderPieces, wordsOnPart } from "../support/dies.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { boxOf, meet, pairSheetOf, squaresOn, strokesOn, TABLOID } from "../support/pairSheets.ts";
import { given } from "../support/quantities.ts";
import { allText, textsOn, wordsOn } from "../support/sheets.ts";

// The sheet of a nested die, of every piece of every demo order.

const pieces = orderPieces().map(({ name, piece, units }) => {
  const die = dieFor(piece, defaultDie());
  const nest = pairDie(die);
  const sheets = [
    pairSheetOf(die, units, { nest }),
    pairSheetOf(die, units, { nest, sheet: A3, stamp: "has errors" }),
  ];
  return [name, { die, nest, units, sheets }] as const;
});

function outside(picture: Picture): readonly string[] {
  const half = 0.5;
  return flattenPicture(picture).flatMap(({ item }) => {
    const box = item.kind === "words" ? textBox(item) : boundsOf(item.path);
    const inside =
      box.minX >= MARGIN - half &&
      box.minY >= MARGIN - half &&
      box.maxX <= picture.width - MARGIN + half &&
      box.maxY <= picture.height - MARGIN + half;
    return inside ? [] : [item.kind === "words" ? item.text : (item.id ?? item.layer)];
  });
}

/** How many times smaller than the board the view is, by the words of the sheet. */
function reducedOf(picture: Picture): number {
  const says = textsOn(picture).find((t) => /^Scale 1 : \d+$/.test(t));
  return Number(says?.slice("Scale 1 : ".length));
}

const middle = ({ minX, minY, maxX, maxY }: Box): Point => [(minX + maxX) / 2, (minY + maxY) / 2];

/** What is amiss with the square or the bar by which a sheet is measured. */
function checkFaults(picture: Picture): readonly string[] {
  const squares = squaresOn(picture);
  const reduced = reducedOf(picture);
  if (reduced > 1) {
    const real = Number(/^(\d+) mm of the board/m.exec(allText(picture))?.[1]);
    const bars = strokesOn(picture).filter((s) => s.layer === "sheet" && s.fill === "black");
    const lengths = bars.map(({ path }) => boundsOf(path)).map(({ minX, maxX }) => maxX - minX);
    return Math.abs(Math.max(...lengths) - real / reduced) < 0.01 ? [] : ["bar"];
  }
  const words = wordsOn(picture).filter(({ text }) => !/^50 mm$|outer edge|before cutting/.test(text));
  const parts = strokesOn(picture).filter(({ id }) => id?.endsWith("die.outline"));
  return [
    ...(squares.length === 1 ? [] : [`${squares.length} squares`]),
    ...squares.flatMap((s) => words.filter((w) => meet(s, textBox(w))).map((w) => w.text)),
    ...squares.flatMap((s) =>
      parts
        .filter(({ path }) =>
          flatten(path, 0.1).some(([x, y]) => x > s.minX && x < s.maxX && y > s.minY && y < s.maxY),
        )
        .map(({ id }) => id!),
    ),
  ];
}

describe("the sheet of a nested die", () => {
  test.each(pieces)("%s: words keep off the pieces, each other and the paper's edge", (_, { sheets }) => {
    for (const picture of sheets) {
      expect(wordsOnPart(picture)).toEqual([]);
      expect(overlaps(picture)).toEqual([]);
      expect(cutWords(picture)).toEqual([]);
      expect(outside(picture)).toEqual([]);
    }
  });

  test.each(pieces)("%s: at true scale it has its 50 mm square, reduced a bar", (_, { sheets }) => {
    expect(sheets.flatMap(checkFaults)).toEqual([]);
  });

  test.each(pieces)(
    "%s: both datums, their offset, the least gap and the board are said",
    (_, { nest, units, sheets }) => {
      const { second, gap } = nest;
      for (const picture of sheets) {
        const texts = textsOn(picture);
        expect(texts).toContain("datum 1");
        expect(texts).toContain("datum 2");
        const k = 1 / reducedOf(picture);
        const [one, two] = ["datum.1", "datum.2"].map((id) => middle(boxOf(picture, id)));
        expect((two![0] - one![0]) / k).toBeCloseTo(second.at[0], 1);
        expect((two![1] - one![1]) / k).toBeCloseTo(second.at[1], 1);
        const figures = texts.join("\n");
        for (const value of second.at.map(Math.abs).filter((v) => v > 0.001)) {
          const mm = String(Number(value.toFixed(3)));
          expect(figures).toContain(units === "in" ? `[${mm}]` : `${mm} [`);
        }
        const said = texts.find((t) => t.startsWith("least gap ("));
        const inMm = units === "in" ? /\[(.*)\]/.exec(said!) : /\((.*) \[/.exec(said!);
        expect(Math.abs(Number(inMm?.[1]) - gap)).toBeLessThan(0.0051);
        expect(texts.filter((t) => t.startsWith("board ("))).toHaveLength(2);
        expect(figures).not.toMatch(/two alike/);
        expect(texts).toContain(second.mirrored ? "one left, one right" : "both alike");
      }
    },
  );
});

describe("faults are found", () => {
  const keeper = pairSheetOf(dieOf("juniper-headstall.yaml", "keeper-running"), "in");
  const cheek = pairSheetOf(dieOf("juniper-headstall.yaml", "cheek"), "in");

  test("a square that is gone, or lies on words", () => {
    const bare = { ...keeper, items: keeper.items.filter((i) => i.kind !== "stroke" || i.fill !== "black") };
    expect(checkFaults(bare)).toEqual(["0 squares"]);
    const [{ minX, minY }] = squaresOn(keeper) as readonly [Box];
    const on: Picture = {
      ...keeper,
      items: [
        ...keeper.items,
        {
          kind: "words",
          layer: "text",
          at: [minX + 10, minY + 40],
          size: 3,
          text: "B",
          align: "left",
          angle: 0,
        },
      ],
    };
    expect(checkFaults(on)).toEqual(["B"]);
  });

  test("a bar of another scale", () => {
    expect(checkFaults(cheek)).toEqual([]);
    const wrong = JSON.parse(JSON.stringify(cheek).replaceAll("Scale 1 : 2", "Scale 1 : 5")) as Picture;
    expect(checkFaults(wrong)).toEqual(["bar"]);
  });
});

test("on tabloid paper a cheek and an ear piece are nested at true scale, with the square", () => {
  for (const id of ["cheek", "ear-piece"]) {
    const picture = pairSheetOf(dieOf("juniper-headstall.yaml", id), "in", { sheet: TABLOID });
    expect(reducedOf(picture)).toBe(1);
    expect(checkFaults(picture)).toEqual([]);
    expect(overlaps(picture)).toEqual([]);
  }
});

test.each(["cheek", "ear-piece", "keeper-running"])(
  "the least gap of two of %s is marked where it is",
  (id) => {
    const die: Die = dieOf("juniper-headstall.yaml", id);
    const nest = pairDie(die);
    const [a, b] = nearestPlaces(die, nest, 5);
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(nest.gap, 1);
  },
);

describe("what a die maker needs beside the view", () => {
  const cheek = dieOf("juniper-headstall.yaml", "cheek");
  const words = (more: Partial<PairSheetInput> = {}): string =>
    textsOn(pairSheetOf(cheek, "mm", more)).join(" ");

  test("it is made instead of the single die, where that is ordered", () => {
    const { title } = inputFor(cheek, "mm");
    expect(words({ title: { ...title, instead: true } })).toContain(
      "Make 1 of this board instead of single dies: drawing TS-104-cheek, revision B defines the outline",
    );
    expect(words({ title: { ...title, instead: true } })).toContain("1 board, no single dies");
    expect(words()).not.toContain("single dies");
  });

  test("rule and tubes of both, the board, and whom to ask", () => {
    const { rule } = ruleLengths(cheek.rules);
    expect(words()).toContain(`Rule in all: ${Number((2 * rule).toFixed(2))} mm`);
    expect(words()).toContain("8 tubes");
    expect(words()).toMatch(/Board: Yours to choose. Which, and how thick\?/);
    const { title } = inputFor(cheek, "mm");
    expect(words({ title: { ...title, owner: "" } })).toContain("Whom to ask: write here");
    expect(words()).not.toContain("Whom to ask");
  });

  test("its price is that of two on one board", () => {
    const priced = { currency: "EUR", pricePerMm: given("price", 0.05), priceForBoard: given("board", 25) };
    const die = dieOf("juniper-headstall.yaml", "cheek", priced);
    const length = Number((2 * ruleLengths(die.rules).rule).toFixed(2));
    const says = textsOn(pairSheetOf(die, "mm")).join(" ");
    expect(says).toContain(`EUR ${(length * 0.05 + 25).toFixed(2)} for the rule and the board`);
  });
});

test("two datums that lie close on paper do not touch", () => {
  // The crown's are 19.4 mm apart, and the sheet is reduced 1 : 5.
  const crown = pairSheetOf(dieOf("juniper-headstall.yaml", "crown"), "in");
  const [a, b] = ["datum.1", "datum.2"].map((id) => boxOf(crown, id));
  expect(meet(a!, b!)).toBe(false);
  expect(b!.minY - a!.maxY).toBeGreaterThan(0.5);
  expect(a!.maxX - a!.minX).toBeGreaterThan(1.7);
});

test("the least gap is not marked on a notch", () => {
  const gusset = dieOf("wren-flap-purse.yaml", "gusset", { notches: "in the die" });
  const nest = pairDie(gusset);
  const places = nearestPlaces(gusset, nest, 5);
  const notches = gusset.rules.filter(({ kind }) => kind === "notch");
  expect(notches.length).toBeGreaterThan(0);
  for (const { path } of [...notches, ...notches.map((n) => ({ path: placed(n.path, nest.second) }))])
    for (const at of places) expect(distanceToPath(at, path)).toBeGreaterThan(4.9);
});

test("words keep off the stamp", () => {
  const picture = pairSheetOf(dieOf("juniper-headstall.yaml", "crown"), "in", { stamp: "has errors" });
  const stamp = wordsOn(picture).find(({ text }) => text === "HAS ERRORS")!;
  const box = textBox(stamp);
  const near = { ...box, minX: box.minX - 4 };
  const others = wordsOn(picture).filter(({ text }) => text !== stamp.text && text !== "");
  expect(others.filter((w) => meet(near, textBox(w))).map(({ text }) => text)).toEqual([]);
});

describe("a press that takes one and not two", () => {
  const [, { die, units }] = pieces[0]!;
  const wordsAt = (share: number): string => {
    const press = `${((share * die.load.value) / 1000).toFixed(2)} kN`;
    return textsOn(pairSheetOf(dieFor(die.piece, { ...defaultDie(), press }), units, { sheet: A3 })).join(
      " ",
    );
  };
  test("is said on the sheet of the pair", () => {
    expect(wordsAt(1.5)).toContain("TOO MUCH for the press");
    expect(wordsAt(2.8)).not.toContain("TOO MUCH");
    expect(wordsAt(2.8)).toContain("is rated for");
  });
});
