import fc from "fast-check";
import { expect, test } from "vitest";
import { pageAnswer } from "../../src/answers/pageAnswer.ts";
import { pageEdit, pageUnits } from "../../src/answers/pageEdit.ts";
import { pageFindings } from "../../src/answers/pageFindings.ts";
import { pageFolded, pagePiece } from "../../src/answers/pagePictures.ts";
import { articles } from "../../src/articles/index.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { readOrder } from "../../src/order/read.ts";
import { orderFiles } from "../support/orders.ts";

const lengthsOf = (text: string): readonly unknown[] => {
  const { order, faults } = readOrder(text, "t.yaml", articles);
  if (!order) throw new Error(faults.map((f) => `${f.key}: ${f.problem}`).join("\n"));
  return order.sections.flatMap((s) =>
    s.dimensions.filter((d) => d.key !== "units").map((d) => [d.key, d.value]),
  );
};

test.each(orderFiles)("$name: in other units every value is exactly what it was", ({ text }) => {
  const before = lengthsOf(text);
  for (const units of ["in", "mm", "cm"] as const) {
    const other = pageUnits(text, units);
    expect(other.ok).toBe(true);
    if (!other.ok) continue;
    expect(lengthsOf(other.value)).toEqual(before);
    expect(readOrder(other.value, "t.yaml", articles).order?.units).toBe(units);
  }
});

test("bare numbers get the unit they had, and nothing else is touched", () => {
  const text =
    'article: strap  # plain\nunits: in\nmargin: 1/2 # half\nmeasures:\n  width: "1 1/2"\n  # at both ends\n  left-end: buckle\nleather:\n  strap: { thickness: 3 mm }\npieces:\n  strap: { length: 900 mm, holes: 7 }\n';
  expect(pageUnits(text, "mm")).toEqual({
    ok: true,
    value:
      "article: strap  # plain\nunits: mm\nmargin: 1/2 in # half\nmeasures:\n  width: 1 1/2 in\n  # at both ends\n  left-end: buckle\nleather:\n  strap: { thickness: 3 mm }\npieces:\n  strap: { length: 900 mm, holes: 7 }\n",
  });
});

test("a value is set, added and taken out; a refusal says why", () => {
  const text = "article: strap\nmeasures: { width: 1 in }\n";
  expect(pageEdit(text, "measures.width", "2 in")).toEqual({ ok: true, value: text.replace("1 in", "2 in") });
  const added = pageEdit(text, "for", "Juniper");
  expect(added.ok && added.value).toContain("for: Juniper");
  expect(added.ok && pageEdit(added.value, "for", undefined)).toEqual({ ok: true, value: text });
  const cases: readonly (readonly [string, string, string | undefined, RegExp])[] = [
    ["a: [", "for", "x", /mended first/],
    [text, "measures", "x", /can't be written/],
    [text, "measures", undefined, /each by its own name/],
    [text, "for", "two\nlines", /one line/],
  ];
  for (const [from, key, value, why] of cases) {
    const r = pageEdit(from, key, value);
    expect(r.ok, key).toBe(false);
    expect(!r.ok && r.message).toMatch(why);
  }
});

test("an order with faults has its texts, its faults with their place and mend, and fields of a new order", () => {
  const a = pageAnswer("article: strap\nfor: Juniper\nmeasures:\n  width: 3 furlongs\n", "t.yaml");
  expect(a.ok).toBe(false);
  if (a.ok) return;
  const fault = a.faults.find((f) => f.key === "measures.width");
  expect(fault?.place).toEqual({ line: 4, column: 10 });
  expect(fault?.says).toMatch(/To mend: /);
  expect(a.texts).toMatchObject({ article: "strap", for: "Juniper", "measures.width": "3 furlongs" });
  expect(a.view?.slug).toBe("strap");
  expect(a.view?.groups.length).toBeGreaterThan(3);
});

test("the findings are those that the checks have", () => {
  for (const { name, text } of orderFiles.slice(0, 4)) {
    const { order } = readOrder(text, name, articles);
    const found = checkPieces(order!.article.make(order!.values), { units: order!.units });
    const said = pageFindings(text, name);
    expect(said.ok).toBe(true);
    for (const f of found) expect(said.ok && said.value).toContainEqual(f);
    const grave = said.ok ? said.value.map((f) => ["error", "caution", "note"].indexOf(f.severity)) : [];
    expect(grave).toEqual([...grave].sort());
  }
});

test("a shop file that can't be read is told before anything else", () => {
  const text = `${orderFiles.find((f) => f.name === "heron-bag-strap.yaml")!.text}\nshop: mine.yaml\n`;
  const bad = pageAnswer(text, "t.yaml", { shop: { file: "mine.yaml", text: "shop: [" } });
  expect(bad.ok).toBe(false);
  expect(!bad.ok && bad.faults[0]?.says).toContain("mine.yaml");
  expect(pageAnswer(text, "t.yaml", { shop: { file: "mine.yaml", missing: "no file" } }).ok).toBe(true);
});

/** Orders with pieces cut out, doubled, or replaced by odd letters. */
const spoiled = fc
  .record({
    file: fc.constantFrom(...orderFiles),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.nat(40),
    instead: fc.oneof(
      fc.string({ unit: "binary", maxLength: 12 }),
      fc.constantFrom(
        "&a",
        "*a",
        "!!",
        "{",
        "}",
        "[",
        ": ",
        "\t",
        "\u0000",
        "\u2028",
        "1e999",
        "-0",
        "NaN",
        "<<: ",
        "---\n",
        "%",
      ),
    ),
  })
  .map(({ file: { text }, at, length, instead }) => {
    const i = Math.floor(at * text.length);
    return text.slice(0, i) + instead + text.slice(i + length);
  });
const KEYS = ["for", "measures.width", "measures", "units", "__proto__.x", "", ".", "die.revision"];

test("no text makes the page's answers throw", () => {
  fc.assert(
    fc.property(
      fc.oneof(spoiled, fc.string({ unit: "binary", maxLength: 60 })),
      fc.constantFrom(...KEYS),
      fc.option(fc.string({ unit: "binary", maxLength: 20 }), { nil: undefined }),
      (text, key, value) => {
        const a = pageAnswer(text, "t.yaml");
        if (!a.ok) expect(a.faults.length).toBeGreaterThan(0);
        const r = pageEdit(text, key, value);
        if (!r.ok) expect(r.message).not.toBe("");
        pageUnits(text, "mm");
        if (!a.ok) {
          pageFolded(text, "t.yaml");
          pagePiece(text, "t.yaml", key);
          pageFindings(text, "t.yaml");
        }
      },
    ),
    { seed: 3, numRuns: 60 },
  );
});
