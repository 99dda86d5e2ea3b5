import { readFileSync } from "node:fs";
import fc from "fast-check";
import PDFDocument from "pdfkit";
import { describe, expect, test } from "vitest";
import { pdf } from "../../src/output/pdf.ts";
import { ADVANCES } from "../../src/picture/advances.generated.ts";
import type { Picture, Words } from "../../src/picture/picture.ts";
import { CAPITAL, drawable, textBox, textCorners, textWidth } from "../../src/picture/words.ts";
import { bold, font } from "../support/fonts.ts";
import { words } from "../support/picture.ts";
import { type Image, inkBox, renderPdfPage, withPdf } from "../support/render.ts";
import { advancesModule } from "../tools/advances.ts";

const letters = ADVANCES.flatMap(([first, regular]) =>
  regular.split(" ").map((_, i) => String.fromCodePoint(first + i)),
);
/** What NFC leaves alone: the rest is drawn as its canonical twin, under that twin's width. */
const steadyLetters = letters.filter((c) => c.normalize("NFC") === c);

/** pdfkit's own measure of a text set letter by letter, in the same units as the size. */
function pdfkitWidths(): (text: string, size: number, heavy: boolean) => number {
  const doc = new PDFDocument({ font: null as unknown as string, autoFirstPage: false });
  doc.registerFont("regular", font).registerFont("bold", bold);
  const features = {
    kern: false,
    liga: false,
    clig: false,
    calt: false,
    rlig: false,
    frac: false,
    numr: false,
    dnom: false,
  };
  return (text, size, heavy) =>
    doc
      .font(heavy ? "bold" : "regular")
      .fontSize(size)
      .widthOfString(text, { features: features as unknown as PDFKit.Mixins.OpenTypeFeatures[] });
}

describe("widths", () => {
  test("the table in the repo is what the fonts say", () => {
    expect(readFileSync("src/picture/advances.generated.ts", "utf8") === advancesModule(font, bold)).toBe(
      true,
    );
  });

  test("every letter is as wide as pdfkit makes it, in both faces", () => {
    const measure = pdfkitWidths();
    const wrong = steadyLetters.filter((c) =>
      [false, true].some((b) => Math.abs(textWidth(c, 10, b) - measure(c, 10, b)) > 1e-6),
    );
    expect(wrong).toEqual([]);
  });

  test("so are words of any of these letters", () => {
    const measure = pdfkitWidths();
    const word = fc.array(fc.constantFrom(...steadyLetters), { maxLength: 12 }).map((cs) => cs.join(""));
    fc.assert(
      fc.property(word, fc.boolean(), (text, heavy) => {
        const drawn = drawable(text).text;
        expect(textWidth(text, 10, heavy)).toBeCloseTo(measure(drawn, 10, heavy), 6);
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  test("pairs that fonts like to kern, join or turn into fractions keep their letters' widths", () => {
    const measure = pdfkitWidths();
    for (const text of ["AVAToyLT", "office affluent", "1⁄2 3⁄16", "1⁄2"]) {
      expect(textWidth(text, 7)).toBeCloseTo(measure(text, 7, false), 6);
      expect(textWidth(text, 7)).toBeCloseTo(
        [...text].reduce((sum, c) => sum + textWidth(c, 7), 0),
        9,
      );
    }
  });

  test("a PDF read back by pdfjs has the widths that were foretold", async () => {
    const texts = [
      "over-poll 41½ in",
      "Ηνιοχική Ελένη",
      "Уздечка для Ёлки",
      "Ăștia și Įžūlus",
      "№ 12 — ≤ 3,5 mm → □",
    ];
    const items = texts.flatMap((text, i) => [
      words(text, [10, 20 + 20 * i], { size: 5 }),
      words(text, [10, 30 + 20 * i], { size: 5, bold: true }),
    ]);
    const bytes = await pdf([{ title: "widths", width: 100, height: 130, items }], {
      font,
      bold,
      title: "widths",
      id: "1",
    });
    const found = await withPdf(
      bytes,
      async (file) => (await (await file.getPage(1)).getTextContent()).items,
    );
    const read = found.flatMap((item) => ("str" in item && item.str.trim() !== "" ? [item] : []));
    expect(read.map((item) => item.str)).toEqual(items.map((item) => item.text));
    for (const [i, item] of read.entries()) {
      const foretold = (textWidth(items[i]!.text, 5, items[i]!.bold) * 72) / 25.4;
      // A PDF states widths in thousandths of the font size, pdfjs adds them up: a thousandth a letter.
      expect(Math.abs(item.width - foretold)).toBeLessThan((item.str.length * 5 * 72) / 25.4 / 1000);
    }
  });
});

describe("what can be drawn", () => {
  test.each([
    ["Juniper \u{1F40E}!", "Juniper □U+1F40E!", ["U+1F40E"]],
    ["\u{1F40E}\u{1F40E} 鞍", "□U+1F40E□U+1F40E □U+978D", ["U+1F40E", "U+978D"]],
    ["two\r\nlines\tand", "two  lines and", []],
    ["line\u2028sep\u0085nel", "line sep nel", []],
    ["a\u202Eb\u202C\u2066c\u2069\u200Fd\u061C", "abcd", []],
    ["soft\u00ADhyphen zero\u200Bwidth \uFEFF\u0000\u001B[0m", "softhyphen zerowidth [0m", []],
    ["half \ud83d", "half □U+D83D", ["U+D83D"]],
    ["e\u0301 in one", "é in one", []],
    ["□", "□", []],
    ["\uE000", "□U+E000", ["U+E000"]],
  ])("%j is drawn as %j", (text, drawn, missing) => {
    expect(drawable(text)).toEqual({ text: drawn, missing });
  });

  test("Latin, Greek and Cyrillic as names use them, fractions and units are all there", () => {
    const names =
      "Søren Þóra Łukasz Çağla Đặng Ștefan Ægir Œdipe Ἑλένη Όλγα Юрій Ђорђе Ѓорѓи Қайрат ½¼¾⅛⅜⅝⅞ °′″ × ÷ − ≤ ≥ ≈ ± µ Ω € £ №";
    expect(drawable(names).missing).toEqual([]);
  });

  test("drawing it twice changes nothing, and every text has a width", () => {
    // Any code points, halves of surrogate pairs among them.
    const text = fc.array(
      fc.oneof(fc.nat(0x10ffff), fc.integer({ min: 0xd800, max: 0xdfff }), fc.nat(0x5ff)),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(text, (codes) => {
        const text = String.fromCodePoint(...codes);
        const once = drawable(text);
        expect(drawable(once.text)).toEqual({ text: once.text, missing: [] });
        expect(Number.isFinite(textWidth(text, 3))).toBe(true);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

const DPI = 200;
const SIDE = 60;

async function inkOf(items: readonly Words[]): Promise<ReturnType<typeof inkBox>> {
  const picture: Picture = { title: "box", width: SIDE, height: SIDE, items };
  const bytes = await pdf([picture], { font, bold, title: "box", id: "1" });
  const image: Image = await renderPdfPage(bytes, 1, DPI);
  return inkBox(image);
}

/**
 * True when ink measured on the page lies in the words' box, give or take the one pixel that edges soften
 * over and the twentieth of the size by which a J reaches out of its own width.
 */
function holds(item: Words, ink: NonNullable<ReturnType<typeof inkBox>>): boolean {
  const box = textBox(item);
  const px = 25.4 / DPI;
  const slack = px + item.size / 20;
  return (
    ink.minX * px >= box.minX - slack &&
    ink.maxX * px <= box.maxX + slack &&
    SIDE - ink.maxY * px >= box.minY - slack &&
    SIDE - ink.minY * px <= box.maxY + slack
  );
}

describe("text boxes", () => {
  test.each([
    words("Stitching", [10, 30], { size: 8 }),
    words("Juniper, ÅÇ", [30, 30], { size: 8, align: "centre", bold: true }),
    words("Ẫ Ǖ Ų̇ ģ ț", [50, 30], { size: 10, align: "right" }),
    words("turned", [30, 30], { size: 8, angle: 0.7 }),
    words("upwards g", [30, 30], { size: 8, angle: Math.PI / 2, align: "centre" }),
    words("back again", [20, 20], { size: 6, angle: 2.5, align: "right", bold: true }),
  ])("the ink of $text lies in its box", async (item) => {
    const ink = await inkOf([item]);
    expect(holds(item, ink!)).toBe(true);
    // Seen to fail: a box that lies elsewhere, forgets two letters, or takes bold for regular and smaller.
    expect(holds({ ...item, at: [item.at[0] + 3, item.at[1]] }, ink!)).toBe(false);
    expect(holds({ ...item, text: item.text.slice(0, -2) }, ink!)).toBe(false);
    expect(holds({ ...item, size: item.size * 0.8 }, ink!)).toBe(false);
  });

  test("corners are given as one reads: lower left, lower right, upper right, upper left", () => {
    const [a, b, c, d] = textCorners(words("H", [10, 10], { angle: Math.PI / 2, align: "right" }));
    expect(b[1]).toBeCloseTo(10, 9);
    expect(a[1]).toBeLessThan(b[1]);
    expect([a[0], b[0]].every((x) => x > 10)).toBe(true);
    expect([c[0], d[0]].every((x) => x < 10)).toBe(true);
  });

  test("a capital is as tall as the page shows it", async () => {
    const ink = await inkOf([words("H", [20, 20], { size: 30 })]);
    expect(Math.abs(((ink!.maxY - ink!.minY) * 25.4) / DPI - 30 * CAPITAL)).toBeLessThan((2 * 25.4) / DPI);
  });
});
