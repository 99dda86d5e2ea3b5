import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { pdf } from "../../src/output/pdf.ts";
import { type BenchPaper, benchDocument } from "../../src/picture/bench/benchDocument.ts";
import type { BenchDocument } from "../../src/picture/bench/document.ts";
import { benchPictures } from "../../src/picture/bench/pages.ts";
import { quoteDocument } from "../../src/picture/bench/quoteDocument.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Stroke, Words } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { bench, emptyBench, paperWith } from "../support/benches.ts";
import { bold, font } from "../support/fonts.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { pdfRows } from "../support/pdfRows.ts";

const MARGIN = 12;
const letter = { width: 215.9, height: 279.4, margin: MARGIN };
const papers = {
  letter,
  a4: { width: 210, height: 297, margin: MARGIN },
  tabloid: { width: 279.4, height: 431.8, margin: MARGIN },
  "roll 300 mm": { width: 300, height: 5000, margin: MARGIN },
  "the narrowest roll": { width: 148, height: 5000, margin: MARGIN },
} as const;

const wordsOn = (picture: Picture): readonly Words[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "words" ? [item] : []));
const strokesOn = (picture: Picture): readonly Stroke[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "stroke" ? [item] : []));
/** Without spaces: lines are parted at them. */
const bare = (text: string): string => text.replace(/\s+/gu, "");
const said = (pages: readonly Picture[]): string =>
  bare(
    pages
      .flatMap(wordsOn)
      .map((w) => w.text)
      .join(""),
  );

const longWord = "W".repeat(200);
const hostileName = `${"Ærøskøbing ".repeat(10)}Ωmega 12`.slice(0, 120);
const hostileAddress = "1 Long Lane, ".repeat(16).slice(0, 200);
const hostile: BenchPaper = paperWith({
  bench: {
    ...bench,
    cut: [...bench.cut, { ...bench.cut[0]!, name: longWord, grain: `${"left ".repeat(60)}` }],
    steps: Array.from({ length: 60 }, (_, i) => ({
      ...bench.steps[i % bench.steps.length]!,
      ...{
        id: `s${i}`,
        says: `Do step number ${i + 1} with care`,
        setting: i % 7 === 0 ? "x".repeat(90) : "",
      },
    })),
    hardware: [],
    unpriced: ["🐴 and \u202emirrored\u202c\nnext line", "no price"],
  },
  order: { ...paperWith().order, forWhom: hostileName, file: `${"f".repeat(100)}.yaml` },
  shop: { ...paperWith().shop, name: "M".repeat(80), address: hostileAddress },
  quantity: 1000,
});

const documents: Readonly<Record<string, BenchDocument>> = {
  "a bench sheet": benchDocument({ ...paperWith(), priced: true }),
  "a bench sheet in millimetres": benchDocument({
    ...paperWith({ order: { ...paperWith().order, units: "mm" } }),
    priced: false,
  }),
  "a hostile bench sheet": benchDocument({ ...hostile, priced: true }),
  "an empty bench sheet": benchDocument({ ...paperWith({ bench: emptyBench }), priced: true }),
  "a quote": quoteDocument(paperWith())!,
  "a hostile quote": quoteDocument(hostile)!,
};

describe.each(Object.entries(papers))("on %s", (_, page) => {
  test.each(Object.entries(documents))(
    "%s: words clear of words and rules, inside the margins",
    (_name, paper) => {
      for (const picture of benchPictures(paper, page)) {
        expect(overlaps(picture)).toEqual([]);
        expect(cutWords(picture)).toEqual([]);
        const boxes = [...wordsOn(picture).map(textBox), ...strokesOn(picture).map((s) => boundsOf(s.path))];
        for (const box of boxes) {
          expect(box.minX).toBeGreaterThanOrEqual(MARGIN);
          expect(box.minY).toBeGreaterThanOrEqual(MARGIN);
          expect(box.maxX).toBeLessThanOrEqual(picture.width - MARGIN);
          expect(box.maxY).toBeLessThanOrEqual(picture.height - MARGIN);
        }
        expect(Math.min(...wordsOn(picture).map((w) => w.size))).toBeGreaterThanOrEqual(2.9);
        expect(picture.width).toBe(page.width);
      }
    },
  );

  test.each(["a bench sheet", "a quote", "an empty bench sheet"])("%s says everything", (name) => {
    const paper = documents[name]!;
    const all = said(benchPictures(paper, page));
    const texts = paper.blocks.flatMap((b): readonly string[] => {
      if (b.kind === "table")
        return [...b.columns.map((c) => c.title), ...b.rows.flat(), ...(b.foot ?? []), b.note ?? ""];
      if (b.kind === "steps") return b.steps.flatMap((s) => [s.text, s.detail, s.time]);
      if (b.kind === "list") return b.items;
      return b.kind === "blanks" ? b.labels : [b.text];
    });
    for (const text of [paper.title, ...paper.subtitle, ...texts]) expect(all).toContain(bare(text));
  });

  test("every page has its head: article, customer and its number", () => {
    const pages = benchPictures(documents["a hostile bench sheet"]!, page);
    pages.forEach((picture, i) => {
      const top = wordsOn(picture).filter((w) => w.at[1] > picture.height - MARGIN - 16);
      expect(bare(top.map((w) => w.text).join(""))).toContain(bare(`headstall for ${hostileName}`));
      expect(top.map((w) => w.text)).toContain(`page ${i + 1} of ${pages.length}`);
    });
  });
});

describe("steps", () => {
  const pages = benchPictures(documents["a hostile bench sheet"]!, letter);
  /** Closed squares to tick. */
  const boxes = pages.map((p) => strokesOn(p).filter((s) => s.path.closed));

  test("each of 60 has its number and a box to tick beside it, in order", () => {
    expect(boxes.flat()).toHaveLength(60);
    const numbers = pages.flatMap((p, i) =>
      boxes[i]!.map((b) => {
        const box = boundsOf(b.path);
        const beside = wordsOn(p).filter(
          (w) => w.bold && /^\d+$/.test(w.text) && w.at[1] > box.minY - 1 && w.at[1] < box.maxY,
        );
        return beside.map((w) => w.text).join();
      }),
    );
    expect(numbers).toEqual(Array.from({ length: 60 }, (_, i) => `${i + 1}`));
  });
});

test("a table that goes on over pages has its head on each", () => {
  const cut = Array.from({ length: 90 }, (_, i) => ({ ...bench.cut[0]!, name: `Strap ${i + 1}` }));
  const pages = benchPictures(
    benchDocument({ ...paperWith({ bench: { ...bench, cut } }), priced: true }),
    letter,
  );
  const withRows = pages.filter((p) => wordsOn(p).some((w) => /^Strap \d+$/.test(w.text)));
  expect(withRows.length).toBeGreaterThan(2);
  for (const page of withRows) {
    const words = wordsOn(page);
    const head = words.find((w) => w.bold && w.text === "Backbone");
    const rows = words.filter((w) => /^Strap \d+$/.test(w.text));
    expect(head?.at[1]).toBeGreaterThan(Math.max(...rows.map((r) => r.at[1])));
  }
  expect(said(withRows)).toContain("Strap90");
});

test("a number and its unit stay on one line", () => {
  const lines = benchPictures(documents["a bench sheet"]!, papers["the narrowest roll"]).flatMap(wordsOn);
  expect(lines.filter((w) => /^(mm|in|oz|yd|m)\b/.test(w.text)).map((w) => w.text)).toEqual([]);
  expect(lines.filter((w) => /\d mm\b/.test(w.text)).length).toBeGreaterThan(20);
});

test("a heading is never left alone at the foot of a page", () => {
  for (const [name, paper] of Object.entries(documents))
    for (const page of benchPictures(paper, { ...letter, height: 200 })) {
      const lowest = wordsOn(page).reduce((a, b) => (b.at[1] < a.at[1] ? b : a));
      const headings = paper.blocks.flatMap((b) => (b.kind === "heading" ? [b.text] : []));
      expect([name, headings.includes(lowest.text)]).toEqual([name, false]);
    }
});

test("what there is none of is said", () => {
  const blocks = benchDocument({ ...paperWith({ bench: emptyBench }), priced: true }).blocks;
  const at = blocks.findIndex((b) => b.kind === "heading" && b.text === "Hardware");
  expect(blocks[at + 1]).toEqual({ kind: "text", text: "None." });
});

describe("the price", () => {
  const sheet = benchDocument({ ...paperWith(), priced: true });

  test("comes last on a page of its own, and its printed lines add up", async () => {
    const pages = benchPictures(sheet, letter);
    const rows = await pdfRows(await pdf(pages, { font, bold, title: "t", id: "1" }));
    const own = rows.filter((page) =>
      page.some((row) => row.some((c) => c.startsWith("Your own reckoning"))),
    );
    expect(own).toEqual([rows.at(-1)]);
    expect(own[0]!.flat().join(" ")).not.toContain("Order of work");
    /** The last cell of the row that begins so, in pence. */
    const pence = (what: string, nth = 0): number =>
      Number(
        own[0]!
          .filter((r) => r[0] === what)
          [nth]!.at(-1)!
          .replace(".", ""),
      );
    expect(pence("Strap leather, 3.57 mm") + pence("Cheek buckle: buckle, 15.9 mm")).toBe(
      pence("Materials together"),
    );
    const parts = ["Materials together", "Labour together", "Overhead"].map((what) => pence(what));
    expect(parts.reduce((a, b) => a + b, 0)).toBe(pence("Cost"));
    expect(pence("Cost") + pence("Margin") + pence("Rounding")).toBe(pence("Price before tax"));
    expect(pence("Price before tax") + pence("VAT")).toBe(pence("Total"));
    expect(pence("Deposit") + pence("Balance")).toBe(pence("Total"));
  });

  test("is left out where it isn't asked for, or there is none", () => {
    const { price, ...unpriced } = bench;
    expect(price).toBeDefined();
    const papers = [
      benchDocument({ ...paperWith(), priced: false }),
      benchDocument({ ...paperWith({ bench: unpriced }), priced: true }),
    ];
    for (const paper of papers) expect(said(benchPictures(paper, letter))).not.toMatch(/GBP|reckoning/);
    expect(quoteDocument(paperWith({ bench: unpriced }))).toBeUndefined();
  });
});

describe("the quote", () => {
  const quote = said(benchPictures(quoteDocument(paperWith())!, letter));

  test("says shop, for whom, what, price with tax, total, what to pay when, and how long it holds", () => {
    for (const text of ["Fernhollow Saddlery", "The Old Forge, Fernhollow", "Juniper", "One-ear headstall"])
      expect(quote).toContain(bare(text));
    for (const text of ["62.00", "VAT, 20 % of the price 12.40", "Total in GBP 74.40", "22.32", "52.08"])
      expect(quote).toContain(bare(text));
    for (const text of [
      "holds for 30 days",
      "Signature:",
      "Date:",
      "havana brown",
      "41 1/2 in, can be buckled from",
      "1 bit (ring wire 8 mm)",
      "Delivery by:",
    ])
      expect(quote).toContain(bare(text));
  });

  test("says nothing of materials' prices, labour, overhead or margin", () => {
    expect(quote).not.toMatch(/margin|overhead|labour|minute|14\.50|3\.40|48\.84|12\.21|cost/i);
    expect(quote).not.toContain(bare("as this order says"));
  });

  test("is not made as long as something has no price", () => {
    const price = { ...bench.price!, incomplete: true };
    expect(quoteDocument(paperWith({ bench: { ...bench, price } }))).toBeUndefined();
  });

  test("without tax or deposit there are no such lines", () => {
    const price = {
      ...bench.price!,
      tax: { ...bench.price!.tax, minor: 0 },
      total: 6200,
      deposit: 0,
      balance: 6200,
    };
    const plain = said(benchPictures(quoteDocument(paperWith({ bench: { ...bench, price } }))!, letter));
    expect(plain).not.toMatch(/VAT|Deposit/);
    expect(plain).toContain(bare("Total in GBP 62.00"));
  });
});

test("letters that the font lacks stand as numbers; what steers others is dropped", async () => {
  const pages = benchPictures(documents["a hostile bench sheet"]!, letter);
  expect(said(pages)).toContain(bare("□U+1F434 and mirrored next line"));
  const rows = await pdfRows(await pdf(pages, { font, bold, title: "t", id: "1" }));
  expect(rows).toHaveLength(pages.length);
  expect(bare(rows.flat(2).join(""))).toContain("mirrorednextline");
});

test("the same paper gives the same pages", () => {
  const paper = documents["a bench sheet"]!;
  expect(benchPictures(paper, letter)).toEqual(benchPictures(paper, letter));
});
