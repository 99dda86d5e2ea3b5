import fc from "fast-check";
import type { Nodes, Root } from "mdast";
import { fromMarkdown } from "mdast-util-from-markdown";
import { gfmTableFromMarkdown } from "mdast-util-gfm-table";
import { gfmTable } from "micromark-extension-gfm-table";
import { describe, expect, test } from "vitest";
import { markdown } from "../../src/output/markdown.ts";
import { benchDocument } from "../../src/picture/bench/benchDocument.ts";
import type { BenchDocument, DocumentBlock, TableBlock } from "../../src/picture/bench/document.ts";
import { quoteDocument } from "../../src/picture/bench/quoteDocument.ts";
import { bench, paperWith } from "../support/benches.ts";

// What is written is read back by a reader that has nothing to do with the writer: micromark's.

const readBack = (text: string): Root =>
  fromMarkdown(text, { extensions: [gfmTable()], mdastExtensions: [gfmTableFromMarkdown()] });

const textOf = (node: Nodes): string =>
  "value" in node ? node.value : "children" in node ? node.children.map(textOf).join("") : "";

/** All kinds of nodes of a tree. */
const kindsOf = (node: Nodes): readonly string[] => [
  node.type,
  ...("children" in node ? node.children.flatMap(kindsOf) : []),
];

/** A text as a reader of the page sees it: white space is one space. */
const seen = (text: string): string => text.replace(/\s+/gu, " ").trim();

const tablesIn = (root: Root): readonly (readonly (readonly string[])[])[] =>
  root.children.flatMap((node) =>
    node.type === "table" ? [node.children.map((row) => row.children.map(textOf))] : [],
  );

const tableRows = ({ columns, rows, foot }: TableBlock): readonly (readonly string[])[] =>
  [columns.map((c) => c.title), ...rows, ...(foot ? [foot] : [])].map((row) => row.map(seen));

const tablesOf = (paper: BenchDocument): readonly (readonly (readonly string[])[])[] =>
  paper.blocks.flatMap((b) => (b.kind === "table" ? [tableRows(b)] : []));

const paperOf = (blocks: readonly DocumentBlock[], title = "Title"): BenchDocument => ({
  title,
  type: 3,
  subtitle: [],
  head: "",
  blocks,
});

const tableWith = (cells: readonly string[]): DocumentBlock => ({
  kind: "table",
  columns: [
    { title: "What", align: "left" },
    { title: "How many", align: "right" },
  ],
  rows: cells.map((c) => [c, `${c.length}`]),
  foot: ["Together", "1"],
});

const HOSTILE = [
  "a | b",
  "|",
  "\\|",
  "\\\\|x",
  "`code`",
  "``|``",
  "<b>bold</b>",
  "<script>alert(1)</script>",
  "<!-- off",
  "[link](http://a.example)",
  "![x](y)",
  "<http://a.example>",
  "[x]: http://a.example",
  "1. one",
  "1) one",
  "# head",
  "- item",
  "+ item",
  "* item",
  "> quote",
  "---",
  "===",
  ":--",
  "~~~",
  "    code",
  "&amp; &#35;",
  "*a* _b_ **c**",
  "a\nb",
  "a\r\n\r\n# b",
  "a\u2028b",
  "ends with \\",
  "^_^",
  "$x$",
  "",
];

/** Kinds that only our own structure makes. */
const OURS = ["heading", "paragraph", "root", "strong", "table", "tableCell", "tableRow", "text"];

describe("Markdown", () => {
  test.each(HOSTILE)("a cell stays the text it is: %j", (cell) => {
    const paper = paperOf([tableWith([cell, "next"])]);
    const root = readBack(markdown(paper));
    expect(tablesIn(root)).toEqual(tablesOf(paper));
    expect([...new Set(kindsOf(root))].filter((k) => !OURS.includes(k))).toEqual([]);
  });

  test.each(HOSTILE)("title, text, note, items and steps stay the text they are: %j", (words) => {
    const said = `x${words}`;
    const blocks: readonly DocumentBlock[] = [
      { kind: "heading", text: words },
      { kind: "text", text: words },
      { kind: "list", items: [words, said] },
      { kind: "steps", steps: [{ text: words, detail: said, time: "2 min" }] },
      { kind: "blanks", labels: [words] },
    ];
    const root = readBack(markdown(paperOf(blocks, words)));
    const kinds = [...new Set(kindsOf(root))];
    expect(kinds.filter((k) => ![...OURS, "list", "listItem"].includes(k))).toEqual([]);
    const lists = root.children.filter((n) => n.type === "list");
    expect(lists.map((l) => l.ordered)).toEqual([false, true]);
    expect(lists[0]!.children.map(textOf)).toEqual([words, said].map(seen));
    expect(root.children.filter((n) => n.type === "heading").map(textOf)).toEqual([seen(words), seen(words)]);
    const paragraphs = root.children.flatMap((n) => (n.type === "paragraph" ? [textOf(n)] : []));
    expect(paragraphs.slice(0, -1)).toEqual(seen(words) === "" ? [] : [seen(words)]);
    expect(paragraphs.at(-1)).toContain(seen(`${words}:`));
  });

  test("any tables come back cell by cell", () => {
    const bit = fc.constantFrom(
      ..."|`<>[]()#*_-+=~:\\&!.1a \n\t\"'^$".split(""),
      "http://a.example",
      "<b>",
      "&lt;",
    );
    const cell = fc.oneof(
      fc.array(bit, { maxLength: 12 }).map((bits) => bits.join("")),
      fc.string({ unit: "grapheme", maxLength: 12 }),
    );
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 5 }), (cells) => {
        const plain = cells.map((c) => c.replace(/[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu, " "));
        const paper = paperOf([tableWith(plain), { kind: "text", text: "after" }]);
        const root = readBack(markdown(paper));
        expect(tablesIn(root)).toEqual(tablesOf(paper));
        expect(kindsOf(root).filter((k) => !OURS.includes(k))).toEqual([]);
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  test("characters that only steer others are dropped", () => {
    const text = markdown(paperOf([tableWith(["a\u202eb\u2066c\u200fd\u0007e"])], "f\u202eg"));
    expect(text).toContain("abcde");
    expect(text).toContain("# fg");
    for (const steering of ["\u202e", "\u2066", "\u200f", "\u0007"]) expect(text).not.toContain(steering);
  });

  test("what other readers would strike out, link or set as a formula is escaped too", () => {
    const words = "~~no~~ $x$ www.a.example https://a.example ann@a.example";
    const text = markdown(paperOf([tableWith([words])]));
    expect(text).not.toMatch(/(?<!\\)~|(?<!\\)\$|www\.|s:\/\/|n@/);
    expect(tablesIn(readBack(text))[0]?.[1]?.[0]).toBe(words);
  });

  test("bench sheet and quote come back whole, in order, steps numbered", () => {
    const paper = benchDocument({ ...paperWith(), priced: true });
    const quote = quoteDocument(paperWith())!;
    for (const each of [paper, quote]) {
      const root = readBack(markdown(each));
      expect(tablesIn(root)).toEqual(tablesOf(each));
      const heads = root.children.flatMap((n) => (n.type === "heading" ? [textOf(n)] : []));
      expect(heads).toEqual([
        each.title,
        ...each.blocks.flatMap((b) => (b.kind === "heading" ? [b.text] : [])),
      ]);
    }
    const steps = readBack(markdown(paper)).children.find((n) => n.type === "list" && n.ordered === true);
    const items = steps?.type === "list" ? steps.children.map(textOf) : [];
    expect(items).toHaveLength(bench.steps.length);
    bench.steps.forEach((s, i) => {
      expect(items[i]).toContain(s.says);
      expect(items[i]).toContain(s.setting);
    });
  });

  test("the same paper gives the same text, and figures stand to the right", () => {
    const text = markdown(quoteDocument(paperWith())!);
    expect(markdown(quoteDocument(paperWith())!)).toBe(text);
    const prices = readBack(text).children.filter((n) => n.type === "table")[1]!;
    expect(prices.align).toEqual(["left", "right"]);
  });
});
