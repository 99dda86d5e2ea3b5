import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Box, Point } from "../../src/geometry/path.ts";
import { pdf } from "../../src/output/pdf.ts";
import { dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import type { Group, Item, Picture } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { type DrawnDie, dieOf, drawn, inputFor, orderPieces } from "../support/dies.ts";
import { bold, font } from "../support/fonts.ts";
import { meet, squaresOn } from "../support/pairSheets.ts";
import { firstLine, measureSquare, renderPdfPage } from "../support/render.ts";
import { wordsOn } from "../support/sheets.ts";

// Measured on the rendered page, by a renderer that is not ours.

const DPI = 300;
const MM = DPI / 25.4;
const SQUARE_PX = 590.55; // 50 mm × 300 / 25.4

const render = async (pictures: readonly Picture[], page: number, hidden: readonly string[] = []) =>
  renderPdfPage(await pdf(pictures, { font, bold, title: "die", id: "1" }), page, DPI, hidden);

const pixel = ({ height }: Picture, [x, y]: Point): readonly [number, number] => [
  Math.round(x * MM),
  Math.round((height - y) * MM),
];

/** A place in the square beside its words, off its divisions: its words' middle is the square's. */
function besideWords(view: Picture): Point {
  const words = wordsOn(view).filter(({ text }) => text === "to outer edge" || text === "50 mm");
  expect(words.length).toBe(2);
  return [words[0]!.at[0] + 18, words[0]!.at[1] + 7];
}

test.each([
  ["at true scale", "keeper-running"],
  ["reduced", "cheek"],
])("the 50 mm square on a sheet whose view is %s measures 590.55 ± 1 px", async (_, id) => {
  const pictures = dieDrawing(inputFor(dieOf("juniper-headstall.yaml", id), "in"));
  const [view] = pictures as readonly [Picture];
  const { x, y } = measureSquare(await render([view], 1), pixel(view, besideWords(view)));
  expect(Math.abs(x.outer - SQUARE_PX)).toBeLessThan(1);
  expect(Math.abs(y.outer - SQUARE_PX)).toBeLessThan(1);
});

const ALL_BUT_CUT = ["skive", "fold", "stitch", "mark", "hole", "sheet", "text"];

test("a keeper's view at true scale is as long and as wide on the page as the keeper", async () => {
  const die = dieOf("juniper-headstall.yaml", "keeper-running");
  const [view] = dieDrawing(inputFor(die, "mm")) as readonly [Picture];
  const [length, width] = die.piece.sizes.slice(0, 2).map(({ value }) => value);
  const group = view.items.find((i) => i.kind === "group" && i.id === "view");
  if (group?.kind !== "group") throw new Error("no view");
  const inside = pixel(view, [group.placement.at[0] + length! / 2, group.placement.at[1]]);
  const { x, y } = measureSquare(await render([view], 1, ALL_BUT_CUT), inside);
  expect(x.middles / MM).toBeCloseTo(length!, 1);
  expect(y.middles / MM).toBeCloseTo(width!, 1);
});

const STRAP = dieOf("heron-bag-strap.yaml", "strap");
const STRAP_SHEETS = dieDrawing(inputFor(STRAP, "mm"));
const isStretches = (picture: Picture): boolean => picture.items.some(isStretch);
const isStretch = (i: Item): i is Group => i.kind === "group" && i.id?.startsWith("from-") === true;

test("a strap shown in stretches is as wide on the page as the strap", async () => {
  const stretches = STRAP_SHEETS[1]!;
  const group = stretches.items.find(isStretch);
  if (!group?.clip) throw new Error("no stretch");
  // A place in the first row between the slot and the centre line's end, clear of all that is left visible.
  const inside = pixel(stretches, [group.placement.at[0] + 60, group.placement.at[1]]);
  const image = await render([stretches], 1, ALL_BUT_CUT);
  const [up, down] = [firstLine(image, ...inside, [0, -1])!, firstLine(image, ...inside, [0, 1])!];
  expect((down.middle - up.middle) / MM).toBeCloseTo(25.4, 1);
});

test("every sheet with stretches has a 50 mm square that measures 590.55 ± 1 px", async () => {
  const sheets = STRAP_SHEETS.filter(isStretches);
  expect(sheets.length).toBeGreaterThan(1);
  for (const sheet of sheets) {
    const [{ maxX, maxY }] = squaresOn(sheet) as readonly [Box];
    // In its upper right corner, off its words and divisions.
    const { x, y } = measureSquare(await render([sheet], 1), pixel(sheet, [maxX - 5, maxY - 5]));
    expect(Math.abs(x.outer - SQUARE_PX)).toBeLessThan(1);
    expect(Math.abs(y.outer - SQUARE_PX)).toBeLessThan(1);
  }
});

// Every piece of every order that is shown in stretches.

const LONG = orderPieces()
  .map((p) => drawn(p))
  .map((d) => [d.name, d, d.pictures.filter(isStretches)] as const)
  .filter(([, , sheets]) => sheets.length > 0);

type Row = { readonly group: Group; readonly beside: Group };

/** The rows of a sheet: what is shown of the piece, and what stands round it. */
const rowsOf = (picture: Picture): readonly Row[] =>
  picture.items.flatMap((group, i) =>
    isStretch(group) ? [{ group, beside: picture.items[i + 1] as Group }] : [],
  );

/** Ticks of a row's ruler on the page, by the numbers that stand under them. */
function numberedTicks({ beside }: Row): readonly (readonly [number: number, x: number])[] {
  const left = beside.placement.at[0];
  const ticks = beside.items.flatMap((i) =>
    i.kind === "stroke" && i.id?.startsWith("ruler.") ? [boundsOf(i.path)] : [],
  );
  return beside.items.flatMap((i) => {
    if (i.kind !== "words" || !/^-?\d+$/.test(i.text)) return [];
    const { minX, maxX, maxY } = textBox(i);
    const under = ticks.find((t) => Math.abs(t.minX - (minX + maxX) / 2) < 0.3 && t.minY > maxY - 1.5);
    return under ? [[Number(i.text), left + under.minX] as const] : [];
  });
}

/** The page's x of each drawn circle's middle in a row's clip. */
function holesIn({ group }: Row): readonly number[] {
  return group.items.flatMap((i) => {
    if (i.kind !== "stroke" || i.layer !== "hole") return [];
    const { minX, maxX } = boundsOf(i.path);
    const x = (minX + maxX) / 2;
    return x > group.clip!.minX && x < group.clip!.maxX ? [group.placement.at[0] + x] : [];
  });
}

/** What is amiss with a row's ruler: its ticks apart, and where the piece's own holes lie by it. */
function rulerFaults(row: Row, holes: readonly number[]): readonly string[] {
  const ticks = numberedTicks(row);
  const [first] = ticks;
  if (!first) return ["no number"];
  const by = (x: number): number => first[0] + x - first[1];
  return [
    ...ticks.filter(([n, x]) => Math.abs(by(x) - n) > 0.01).map(([n]) => `tick ${n}`),
    ...holesIn(row)
      .filter((x) => !holes.some((h) => Math.abs(h - by(x)) < 0.01))
      .map((x) => `hole at ${by(x)}`),
  ];
}

const holesOf = ({ piece }: DrawnDie): readonly number[] =>
  piece.holes.filter(({ kind, use }) => kind !== "awl" && use !== "stitch").map(({ at }) => at[0]);

describe.each(LONG)("%s in stretches", (_, d, sheets) => {
  test("each sheet has one square, and no row lies on it", () => {
    for (const sheet of sheets) {
      const [square, ...more] = squaresOn(sheet);
      expect(more).toEqual([]);
      for (const { group } of rowsOf(sheet)) {
        const [x, y] = group.placement.at;
        const { minX, minY, maxX, maxY } = group.clip!;
        expect(meet(square!, { minX: x + minX, maxX: x + maxX, minY: y + minY, maxY: y + maxY })).toBe(false);
      }
    }
  });

  test("the rulers' ticks are where their numbers say, and the piece's holes where the order's are", () => {
    expect(sheets.flatMap(rowsOf).flatMap((row) => rulerFaults(row, holesOf(d)))).toEqual([]);
  });

  test("rows join at the same x under the same letter, and each shows 5 to 10 mm beyond", () => {
    const rows = sheets.flatMap(rowsOf);
    const joins = rows.map(({ beside }) =>
      beside.items.flatMap((i) =>
        i.kind === "stroke" && i.id?.startsWith("join.") ? [[i.id, boundsOf(i.path).minX] as const] : [],
      ),
    );
    expect(joins.flat().length).toBe(2 * (rows.length - 1));
    rows.slice(1).forEach(({ group: next }, i) => {
      const [id, x] = joins[i]!.at(-1)!;
      expect(joins[i + 1]![0]).toEqual([id, x]);
      const [before, after] = [rows[i]!.group.clip!.maxX - x, x - next.clip!.minX];
      for (const beyond of [before, after]) {
        expect(beyond).toBeGreaterThanOrEqual(5);
        expect(beyond).toBeLessThanOrEqual(10);
      }
      const letter = id.slice("join.".length);
      for (const { beside } of rows.slice(i, i + 2))
        expect(beside.items.some((w) => w.kind === "words" && w.text === `${letter}–${letter}`)).toBe(true);
    });
  });
});

test("a ruler that is moved by half a millimetre is found", () => {
  const [, d, sheets] = LONG.find(([name]) => name === "heron-bag-strap.yaml: strap")!;
  const row = sheets.flatMap(rowsOf).find((r) => holesIn(r).length > 0)!;
  const { at } = row.beside.placement;
  const moved = {
    ...row,
    beside: { ...row.beside, placement: { at: [at[0] + 0.5, at[1]] as const, angle: 0 } },
  };
  expect(rulerFaults(row, holesOf(d))).toEqual([]);
  expect(rulerFaults(moved, holesOf(d))).not.toEqual([]);
});
