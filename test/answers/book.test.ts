import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import {
  type BookFile,
  type BookRow,
  bookCsv,
  bookRow,
  bookRowsWith,
  sayBook,
} from "../../src/answers/book.ts";
import { fileKind } from "../../src/answers/fileKind.ts";
import { makeJob } from "../../src/job.ts";
import { beginShop } from "../../src/order/shopBegin.ts";
import { orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";

const SHOP = { file: "shop.yaml", text: readFileSync("templates/shop.yaml", "utf8") };
const JUNIPER = orderText("juniper-headstall");
const DAY = "2026-03-14";

const rowOf = (found: BookFile): BookRow | undefined =>
  bookRow(found, (text) => makeJob(text, found.file, { shop: SHOP }));
const rowsOf = (texts: Readonly<Record<string, string>>): readonly BookRow[] =>
  Object.entries(texts).flatMap(([file, text]) => rowOf({ file, changed: DAY, text }) ?? []);

const STRAP =
  "article: strap\nfor: Zoë's dog\nunits: in\nmeasures: { width: 1 }\npieces: { strap: { length: 30 } }\n";

const rows = rowsOf({
  "juniper.yaml": JUNIPER,
  "old/dog.yaml": STRAP,
  "faulty.yaml": JUNIPER.replace("over-poll", "over-pole"),
  "narrow.yaml": JUNIPER.replace("effective-length: 10", "effective-length: 16"),
  "shop.yaml": SHOP.text,
  "notes.yaml": "- oil\n- thread\n",
});
const named = (file: string): BookRow => rows.find((r) => r.file === file)!;

describe("a row of the book", () => {
  test("tells whose order it is, its measures in its units, its price as on the quote", () => {
    const job = makeJob(JUNIPER, "juniper.yaml", { shop: SHOP });
    const price = job.made ? job.job.bench.price! : undefined;
    expect(named("juniper.yaml")).toEqual({
      file: "juniper.yaml",
      forWhom: "Juniper, bay mare, 15.1 hands",
      article: "one-ear headstall",
      changed: DAY,
      sizes: [
        { name: "over-poll", says: "41 1/2 in" },
        { name: "ear-base", says: "9 in" },
      ],
      checks: { state: "sound", errors: 0, cautions: 0 },
      quantity: 1,
      // GBP has two digits.
      price: { total: (price!.total / 100).toFixed(2), currency: "GBP" },
    });
    expect(named("old/dog.yaml").price).toBeUndefined();
  });

  test("a sum that leaves something out is no price", () => {
    const text = SHOP.text.replace(/^ {2}per-hour:.*$/m, "");
    const row = bookRow({ file: "j.yaml", changed: DAY, text: JUNIPER }, (order) =>
      makeJob(order, "j.yaml", { shop: { file: "shop.yaml", text } }),
    )!;
    expect(row.price).toBeUndefined();
    expect(sayBook([row]).join("\n")).toContain("rates are missing");
  });

  test("an order that can't be read is listed with its first fault, and with whose it is", () => {
    expect(named("faulty.yaml")).toMatchObject({
      forWhom: "Juniper, bay mare, 15.1 hands",
      article: "one-ear headstall",
      checks: { state: "can't be read", reason: expect.stringContaining("over-pole") },
    });
    expect(named("notes.yaml").checks.state).toBe("can't be read");
    expect(named("narrow.yaml").checks.state).toBe("contradicts itself");
    const gone = rowOf({ file: "gone.yaml", changed: "", problem: "gone.yaml may not be read" });
    expect(gone?.checks).toMatchObject({ state: "can't be read", reason: "gone.yaml may not be read" });
  });

  test("what a check found is counted", () => {
    const text = orderText("wren-flap-purse")
      .replace("width: 8", "width: 7")
      .replace("height: 6 1/4", "height: 5 1/2");
    const [row] = rowsOf({ "small.yaml": text });
    const result = makeJob(text, "small.yaml");
    const errors = result.made ? result.job.findings.filter((f) => f.severity === "error").length : 0;
    expect(errors).toBeGreaterThan(0);
    expect(row?.checks).toMatchObject({ state: "has errors", errors });
  });
});

describe("a shop file is no order", () => {
  test("sound, begun or faulty, it is passed by; no order ever is", () => {
    expect(rows.map((r) => r.file)).not.toContain("shop.yaml");
    expect(fileKind(beginShop()).kind).toBe("shop");
    expect(fileKind("labour: { per-hour: much }\n").kind).toBe("shop");
    for (const { name, text } of orderFiles) expect(fileKind(text).kind, name).toBe("order");
    expect(fileKind("for: Juniper\nmeasures: { over-poll: 41 }\n").kind).toBe("order");
  });
});

describe("words choose orders", () => {
  const files = (...words: readonly string[]): readonly string[] =>
    bookRowsWith(rows, words).map((r) => r.file);
  test.each([
    ["whose", ["JUNIPER", "bay"], ["juniper.yaml", "faulty.yaml", "narrow.yaml"]],
    ["an accent on one side alone", ["zoe's"], ["old/dog.yaml"]],
    ["an accent on the other", ["ZOË'S"], ["old/dog.yaml"]],
    ["the article", ["strap"], ["old/dog.yaml"]],
    ["the file's name", ["old/"], ["old/dog.yaml"]],
    ["the state", ["sound", "juniper"], ["juniper.yaml"]],
    ["the reason", ["over-pole"], ["faulty.yaml"]],
    ["words that no one order holds together", ["dog", "juniper"], []],
  ])("%s", (_, words, found) => {
    expect(files(...words)).toEqual(found);
  });
  test("no word chooses all", () => {
    expect(files()).toHaveLength(rows.length);
  });
});

describe("the list as CSV and as a table", () => {
  const hostile: readonly BookRow[] = [
    { ...named("juniper.yaml"), forWhom: "=1+1", file: '+cmd"x",y.yaml' },
    { ...named("juniper.yaml"), forWhom: 'a "quoted", name\nwith a line', file: "@SUM(A1).yaml" },
    { ...named("juniper.yaml"), forWhom: "-2", file: "\u001b[2J.yaml", changed: "" },
  ];
  const read = parse(bookCsv(hostile), { columns: true }) as Record<string, string>[];

  test("another reader gets every row back, and no cell that a spreadsheet would reckon", () => {
    expect(read).toHaveLength(3);
    expect(read.map((r) => r.for)).toEqual(["'=1+1", 'a "quoted", name\nwith a line', "'-2"]);
    expect(read.map((r) => r.file)).toEqual(['\'+cmd"x",y.yaml', "'@SUM(A1).yaml", "\u001b[2J.yaml"]);
    expect(read.flatMap((r) => Object.values(r)).filter((cell) => /^[=+@-]/.test(cell))).toEqual([]);
    expect(read[0]).toMatchObject({
      measures: "over-poll 41 1/2 in, ear-base 9 in",
      errors: "0",
      currency: "GBP",
    });
  });

  test("a table's rows stand one to a line, and hold nothing that drives a terminal", () => {
    const lines = sayBook(hostile);
    expect(lines).toHaveLength(4);
    expect(lines.filter((l) => l.includes("\n") || l.includes("\u001b"))).toEqual([]);
  });

  test("a name that is long doesn't break the table; reasons stand under it", () => {
    const lines = sayBook([...rows, { ...named("juniper.yaml"), forWhom: "x".repeat(120) }]);
    const starts = lines.slice(0, 1 + rows.length + 1).map((l) => l.search(/changed|2026-03-14/));
    expect(new Set(starts).size).toBe(1);
    expect(lines.filter((l) => /^ {2}faulty\.yaml can't be read: /.test(l))).toHaveLength(1);
    expect(sayBook([])).toEqual(["No orders."]);
  });
});
