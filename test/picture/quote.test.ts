import { describe, expect, test } from "vitest";
import { makeJob } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { benchDocument } from "../../src/picture/bench/benchDocument.ts";
import type { DocumentBlock, TableBlock } from "../../src/picture/bench/document.ts";
import { about } from "../../src/picture/bench/ordered.ts";
import { benchPictures } from "../../src/picture/bench/pages.ts";
import { quoteDocument } from "../../src/picture/bench/quoteDocument.ts";
import { columnWidths, tableLines } from "../../src/picture/bench/tableLines.ts";
import { keysInWords } from "../../src/picture/bench/words.ts";
import { sayCutSize } from "../../src/picture/piece/say.ts";
import { bench, paperWith } from "../support/benches.ts";
import { orderText } from "../support/madeOf.ts";

const jobOf = (text: string): Job => {
  const result = makeJob(text, "a.yaml");
  if (!result.made) throw new Error(JSON.stringify(result.faults));
  return result.job;
};
/** The quote of a job with a price, however it came about. */
const quoteOf = (job: Job, quantity = 1): readonly DocumentBlock[] =>
  quoteDocument({ ...job, quantity, bench: { ...job.bench, price: bench.price! } })!.blocks;
const tables = (blocks: readonly DocumentBlock[]): readonly TableBlock[] =>
  blocks.filter((b): b is TableBlock => b.kind === "table");
const rowsOf = (blocks: readonly DocumentBlock[]): Readonly<Record<string, string>> =>
  Object.fromEntries(tables(blocks)[0]!.rows.map(([what, says]) => [what, says]));
const textOf = (blocks: readonly DocumentBlock[]): string => JSON.stringify(blocks);

const STRAP =
  "article: strap\nunits: in\nmeasures: { left-end: buckle, right-end: billet, width: 1, count: 2 }\n" +
  "pieces: { strap: { length: 36, holes: 5, hole-pitch: 1 } }\n";

describe("what the customer ordered", () => {
  test("a strap: its length as it was given, not as it is cut", () => {
    const rows = rowsOf(quoteOf(jobOf(STRAP), 3));
    expect(rows).toMatchObject({
      What: "Strap: a buckle at one end, holes and a point at the other",
      "How many": "6",
      Length: "36 in, from the buckle's bar to the middle hole",
      Width: "1 in",
      "Can be buckled": "from 34 in to 38 in",
      "Metal parts": "2 buckles of 1 in",
    });
    expect(textOf(quoteOf(jobOf(STRAP)))).not.toContain("cut length");
  });

  test("a purse: kind, sizes, closure, lining, pocket, strap and how it is fixed, metal parts by name", () => {
    const text =
      "article: bag\nunits: in\nmeasures: { width: 8, height: 6 1/4, depth: 2 1/4, shoulder-drop: 21 }\n" +
      "bag: { closure: press stud, lining: yes, strap-fixed: riveted }\nprice: { own-leather: yes }\n";
    const blocks = quoteOf(jobOf(text));
    const rows = rowsOf(blocks);
    expect(rows).toMatchObject({
      What: "Flap purse",
      "Size, outside": "8 in wide, 6 1/4 in high, 2 1/4 in deep",
      Opening: "a flap, held by a press stud",
      Lining: "lined with leather",
      Pocket: "none",
      "The strap is": "riveted to the bag",
      "You bring": "the leather",
    });
    expect(rows["Shoulder strap"]).toMatch(
      /^for a drop of 21 in, about [\d /]+ in in all; can be buckled from/,
    );
    expect(rows["Metal parts"]).toMatch(/1 buckle of 1 in, .*1 press stud/);
    // Nothing finer than a quarter of an inch, no shop talk, no thickness twice.
    expect(textOf(blocks)).not.toMatch(/\/(?:8|16|32|64) in|patch|keeper|\d mm/);
    expect(blocks[0]).toEqual({ kind: "blanks", labels: ["Date", "Delivery by"] });
  });

  test("a tote is open", () => {
    const rows = rowsOf(quoteOf(jobOf(orderText("rowan-tool-tote"))));
    expect(rows.What).toBe("Open tote");
    expect(rows.Opening).toBe("an open top");
  });

  test("several headstalls: each one's price, exact or about, and bits in the plural", () => {
    const job = jobOf(orderText("juniper-headstall").replace(/^units:/m, "price: { quantity: 4 }\nunits:"));
    const blocks = quoteOf(job, 4);
    expect(rowsOf(blocks)["You bring"]).toBe("4 bits (ring wire 8 mm)");
    // 62.00 over 4, and over 3.
    expect(tables(blocks)[1]!.rows[0]![0]).toBe("One-ear headstall, 4 at 15.50 each");
    expect(tables(quoteOf(job, 3))[1]!.rows[0]![0]).toBe("One-ear headstall, 3 at about 20.67 each");
  });

  test("the tax begins its line with a capital", () => {
    const price = { ...bench.price!, tax: { ...bench.price!.tax, what: "sales tax" } };
    const blocks = quoteDocument(paperWith({ bench: { ...bench, price } }))!.blocks;
    expect(tables(blocks)[1]!.rows[1]![0]).toBe("Sales tax, 20 % of the price");
  });

  test("reckoned lengths are rounded to 1/4 in or 5 mm", () => {
    expect([about(953.2, "in"), about(953.2, "mm"), about(1039, "mm")]).toEqual([
      "37 1/2 in",
      "955 mm",
      "1040 mm",
    ]);
  });
});

describe("the bench sheet", () => {
  test("has a place for the date, and says sizes as the template does", () => {
    const job = jobOf(orderText("wren-flap-purse"));
    const { blocks } = benchDocument({ ...job, priced: true });
    expect(blocks[0]).toMatchObject({ kind: "blanks", labels: expect.arrayContaining(["Date"]) });
    const front = job.made.pieces.find((p) => p.id === "front")!;
    const row = tables(blocks)[0]!.rows.find(([name]) => name === front.name)!;
    expect(row).toContain(sayCutSize(front, "in"));
  });

  test("a strap's holes, the ordered length marked; a bag's strap was measured by nobody", () => {
    const said = textOf(benchDocument({ ...jobOf(STRAP), priced: true }).blocks);
    expect(said).toContain('["hole 3","36 in (914.4 mm)","as ordered"]');
    const bag = textOf(benchDocument({ ...jobOf(orderText("wren-flap-purse")), priced: true }).blocks);
    expect(bag).toContain('"as reckoned"');
    expect(bag).not.toContain('"as measured"');
  });

  test("the shop's thread and the ordered one stand beside what usually suits", () => {
    const advice = [
      { what: "your thread", says: "linen, 4 cord", source: "shop.yaml" },
      ...bench.thread.advice,
    ];
    const says = (finish: string, own: boolean): string =>
      textOf(
        benchDocument({
          ...paperWith({ finish: { dye: "", edges: "", thread: finish } }),
          ...{ bench: { ...bench, thread: { ...bench.thread, ...(own ? { advice } : {}) } }, priced: false },
        }).blocks,
      );
    expect(says("linen, cream", true)).toContain("Ordered: linen, cream.");
    expect(says("", true)).toContain("Your thread: linen, 4 cord (shop.yaml).");
    expect(says("", true)).toContain("To compare, what usually suits these seams: linen of 4 cords");
    expect(says("", false)).toContain('"Thread: linen of 4 cords');
  });

  test("rounding says to what", () => {
    const shop = { ...paperWith().shop, roundTo: "5.00" };
    expect(textOf(benchDocument({ ...paperWith({ shop }), priced: true }).blocks)).toContain(
      "up to a whole 5.00",
    );
  });

  test("names of settings are words on paper", () => {
    expect(keysInWords("give measures.rise to compare.")).toBe("give the rise to compare.");
    expect(keysInWords("look at pieces.ear-piece.band-width")).toBe("look at the band width");
  });
});

describe("short tables", () => {
  const setting = { width: 180, size: 3, height: 240 };
  const table = (rows: number): TableBlock => ({
    kind: "table",
    columns: [{ title: "Hole", align: "left" }],
    rows: Array.from({ length: rows }, (_, i) => [`row ${i + 1}`]),
  });
  const keeps = (rows: number, height = 240): readonly boolean[] =>
    tableLines(table(rows), { ...setting, height }, 1).map((l) => l.keep ?? false);

  test("up to 12 rows stay on one page, more may go on on the next", () => {
    expect(keeps(12).slice(0, -1).every(Boolean)).toBe(true);
    expect(keeps(12).at(-1)).toBe(false);
    expect(keeps(13).filter((k) => !k).length).toBeGreaterThan(2);
    // Higher than half a page, it would leave too much of one empty.
    expect(keeps(12, 40).filter((k) => !k).length).toBeGreaterThan(2);
    expect(columnWidths(table(12), setting)).toHaveLength(1);
  });

  test("drawn near a page's end, the whole table goes over", () => {
    const filler = Array.from({ length: 30 }, (_, i): DocumentBlock => ({ kind: "text", text: `line ${i}` }));
    const paper = { title: "t", subtitle: [], type: 3, head: "h", blocks: [...filler, table(12)] };
    const pages = benchPictures(paper, { width: 210, height: 200, margin: 12 });
    const on = pages.map((p) => JSON.stringify(p.items));
    const first = on.findIndex((t) => t.includes('"row 1"'));
    expect(first).toBe(on.findIndex((t) => t.includes('"row 12"')));
    expect(first).toBeGreaterThan(0);
  });
});
