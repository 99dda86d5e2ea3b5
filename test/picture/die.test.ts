import { beforeAll, describe, expect, test } from "vitest";
import { OUTLINE_COLUMNS, readOutlineCells } from "../../src/die/outlineCells.ts";
import { outlineFromTable } from "../../src/die/outlineTable.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { distanceToPath, type Path, pathLength, pointAt } from "../../src/geometry/index.ts";
import { pdf } from "../../src/output/pdf.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { A3, A4, type DrawnDie, drawn, MARGIN, orderPieces, wordsOnPart } from "../support/dies.ts";
import { bold, font } from "../support/fonts.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { pdfRows, type TextRow } from "../support/pdfRows.ts";
import { allText, wordsOn } from "../support/sheets.ts";

// The die drawing of every piece of every order.

const pieces = orderPieces();
const all: readonly DrawnDie[] = pieces.map((p) => drawn(p));
const named = all.map((d) => [d.name, d] as const);

/** Whatever is drawn outside the frame, where a printer may not reach. */
function outsideFrame(picture: Picture): readonly string[] {
  const half = 0.5;
  return flattenPicture(picture).flatMap(({ item, clips }) => {
    const { minX, minY, maxX, maxY } = item.kind === "words" ? textBox(item) : boundsOf(item.path);
    const inside =
      minX >= MARGIN - half &&
      minY >= MARGIN - half &&
      maxX <= picture.width - MARGIN + half &&
      maxY <= picture.height - MARGIN + half;
    return inside || clips.length > 0 ? [] : [item.kind === "words" ? item.text : (item.id ?? item.layer)];
  });
}

function faults(picture: Picture): readonly unknown[] {
  return [
    ...overlaps(picture),
    ...cutWords(picture),
    ...wordsOnPart(picture).map((words) => ({ words, on: "the part" })),
    ...outsideFrame(picture).map((what) => ({ what, outside: picture.title })),
  ];
}

test.each(named)(
  "%s: no words on the part, on a line or on other words, and all within the frame",
  (_, d) => {
    expect(d.pictures.flatMap(faults)).toEqual([]);
  },
);

test("a word moved onto the part, onto a line or off the sheet is found", () => {
  const { pictures } = all.find(({ name }) => name === "wren-flap-purse.yaml: front")!;
  const [view] = pictures as readonly [Picture];
  const outline = flattenPicture(view).find(
    ({ item }) => item.kind === "stroke" && item.id === "view.die.outline",
  )!;
  const { minX, maxX, minY, maxY } = boundsOf((outline.item as { path: Path }).path);
  const at = (x: number, y: number): Picture => ({
    ...view,
    items: [
      ...view.items,
      { kind: "words", layer: "text", at: [x, y], size: 3, text: "A1", align: "left", angle: 0 },
    ],
  });
  expect(wordsOnPart(at((minX + maxX) / 2 + 20, (minY + maxY) / 2))).toContain("A1");
  expect(overlaps(at(maxX - 2, (minY + maxY) / 2))).not.toEqual([]);
  expect(outsideFrame(at(view.width - 6, 100))).toContain("A1");
});

describe("other papers", () => {
  const ids = ["post-satchel.yaml: body", "post-satchel.yaml: billet-strap", "rowan-tool-tote.yaml: front"];
  const some = pieces.filter(({ name }) => ids.includes(name) || name.startsWith("juniper"));
  const on = (sheet: typeof A3) => some.map((p) => drawn(p, { sheet }).pictures);
  const whole = (sheets: readonly (readonly Picture[])[]): number =>
    sheets.filter(([view]) => allText(view!).includes("Scale 1 : 1")).length;

  test("nothing overlaps on A4, on A3 or on A3 turned; A3 shows more at true scale", () => {
    const [a4, a3, turned] = [on(A4), on(A3), on({ width: A3.height, height: A3.width })];
    expect([...a4, ...a3, ...turned].flat().flatMap(faults)).toEqual([]);
    expect(whole(a3)).toBeGreaterThan(whole(a4));
  });
});

/** What a hole's row says, and a label on a view does not. */
const MADE = ["in the die", "by hand afterwards"];
const isFirst = (row: TextRow): boolean => row[0] === "1";
const isOutlineRow = (row: TextRow): boolean =>
  row.length === OUTLINE_COLUMNS.length && /^\d+$/.test(row[0]!) && (row[1] === "line" || row[1] === "arc");

/** The rows of the first table of lines and arcs: the outline's. */
function outlineRows(lines: readonly TextRow[]): readonly TextRow[] {
  const rows = lines.filter(isOutlineRow);
  const next = rows.findIndex((row, i) => i > 0 && isFirst(row));
  return next < 0 ? rows : rows.slice(0, next);
}

function furthest(a: Path, b: Path): number {
  const from = (p: Path, q: Path): number => {
    const length = pathLength(p);
    return Math.max(
      ...Array.from({ length: 240 }, (_, i) => distanceToPath(pointAt(p, (length * i) / 240), q)),
    );
  };
  return Math.max(from(a, b), from(b, a));
}

describe("what a die maker reads off the printed sheets", () => {
  const lines = new Map<string, TextRow[]>();
  beforeAll(async () => {
    // The sheets with words alone, all in one file: fonts are embedded once.
    const sheets = all.flatMap(({ name, pictures }) =>
      pictures.slice(1).map((picture) => ({ name, picture })),
    );
    const bytes = await pdf(
      sheets.map(({ picture }) => picture),
      { font, bold, title: "dies", id: "1" },
    );
    const pages = await pdfRows(bytes);
    pages.forEach((page, i) => {
      const { name } = sheets[i]!;
      lines.set(name, [...(lines.get(name) ?? []), ...page]);
    });
  });

  test.each(named)("%s: the table's text alone gives the outline within 0.05 mm", (name, { piece }) => {
    const rows = outlineRows(lines.get(name)!);
    const path = outlineFromTable(rows.map(readOutlineCells));
    expect(furthest(path, piece.outline)).toBeLessThanOrEqual(0.05);
  });

  test("a figure misprinted by 0.2 mm is found", () => {
    const { name, piece } = all.find((d) => d.name === "rowan-tool-tote.yaml: gusset")!;
    const rows = outlineRows(lines.get(name)!).map(readOutlineCells);
    const path = outlineFromTable(
      rows.map(({ start, end, ...row }) => ({
        ...row,
        start: [start[0] + 0.2, start[1]],
        end: [end[0] + 0.2, end[1]],
      })) as typeof rows,
    );
    expect(furthest(path, piece.outline)).toBeGreaterThan(0.05);
  });

  test.each(named)(
    "%s: every hole and cutout that is not a stitch stands in the table, where it is",
    (name, { piece }) => {
      const rows = lines
        .get(name)!
        .filter((row) => /^[A-Z]+\d+$/.test(row[0]!) && row.some((cell) => MADE.includes(cell)));
      const holes = piece.holes.filter(({ kind, use }) => kind !== "awl" && use !== "stitch");
      expect(rows.length).toBe(holes.length + piece.cutouts.length);
      for (const { at, size, kind } of holes) {
        const row = rows.find(
          ([, x, y]) => Math.abs(Number(x) - at[0]) < 0.001 && Math.abs(Number(y) - at[1]) < 0.001,
        );
        expect(row, `${at}`).toBeDefined();
        expect(row!.join(" ")).toContain("Ø");
        // 3/32 in, the smallest tube with a spring: graphicdies.com, How Small? (D3).
        const made = kind === "staple" || size < 2.37 ? "by hand afterwards" : "in the die";
        expect(row).toContain(made);
      }
    },
  );

  test.each(named)("%s: everything that somebody makes is marked", (name, { die }) => {
    const text = lines
      .get(name)!
      .map((row) => row.join(" "))
      .join("\n");
    for (const { kind, made, letter } of die.features) {
      if (kind === "outline") continue;
      if (letter) expect(text).toMatch(new RegExp(`^${letter} .*${made}`, "m"));
      else expect(text, kind).toMatch(new RegExp(`^${kind} \\d+ `, "m"));
    }
  });
});

test.each(named)(
  "%s: its sheets are counted and named, and each has its number and revision",
  (_, { pictures, piece }) => {
    pictures.forEach((picture, i) => {
      const texts = wordsOn(picture).map((w) => w.text);
      expect(texts).toContain(`${i + 1} of ${pictures.length}`);
      expect(texts).toContain(`TS-104-${piece.id}`);
      expect(texts).toContain("B");
      // A long name stands on two lines.
      expect(texts.join(" ")).toContain(piece.name);
    });
  },
);
