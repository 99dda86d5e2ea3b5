import { mkdirSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { bag } from "../../src/articles/bag.ts";
import type { ArticleDefinition } from "../../src/articles/definition.ts";
import { headstall } from "../../src/articles/headstall.ts";
import { articles } from "../../src/articles/index.ts";
import { plainStrap } from "../../src/articles/strap.ts";
import type { Sentence } from "../../src/model/sentence.ts";
import type { Order } from "../../src/order/order.ts";
import { readOrder } from "../../src/order/read.ts";
import { sampleOrder, sampleText } from "../../src/order/sample.ts";
import { anyOrder, orderText } from "../support/anyOrder.ts";
import { orderFiles } from "../support/orders.ts";
import { randomFrom } from "../support/random.ts";
import { orderTexts, readAloud, toldFaults, unsaidNames } from "../support/told.ts";

const SEED = 20261125;

/** An article with its sentences changed. */
const planted = (
  article: ArticleDefinition,
  change: (sentences: readonly Sentence[]) => readonly Sentence[],
  rest: (names: readonly string[]) => readonly string[] = (names) => names,
): ArticleDefinition => ({
  ...article,
  told: { sentences: change(article.told.sentences), rest: rest(article.told.rest) },
});

describe("each name that can be set is told once", () => {
  test.each(articles.map((a) => [a.name, a] as const))("%s", (_, article) => {
    expect(toldFaults(article)).toEqual([]);
  });

  const strap = articles.find((a) => a.slug === "strap")!;
  const more = (text: string, conditions: Omit<Sentence, "text"> = {}) =>
    planted(
      strap,
      (s) => [...s, { text, ...conditions }],
      (r) => r.filter((n) => n !== "pieces.strap.feather"),
    );
  const FEATHER = "Thinned {pieces.strap.feather}.";

  test("a planted sentence without a fault has none", () => {
    expect(toldFaults(more(FEATHER, { when: { name: "measures.keeper", is: ["yes"] } }))).toEqual([]);
  });

  test.each<[string, ArticleDefinition, readonly string[]]>([
    ["a sentence left out", planted(strap, (s) => s.slice(1)), ["for is told nowhere"]],
    [
      "a name left out of the rest",
      planted(
        strap,
        (s) => s,
        (r) => r.filter((n) => n !== "die.owner"),
      ),
      ["die.owner is told nowhere"],
    ],
    ["a sentence twice", planted(strap, (s) => [s[0]!, ...s]), ["for is told twice"]],
    [
      "a name in a sentence and in the rest",
      planted(
        strap,
        (s) => s,
        (r) => [...r, "for"],
      ),
      ["for is told twice"],
    ],
    [
      "a name that can't be set",
      planted(
        strap,
        (s) => s,
        (r) => [...r, "pieces.strap.left-end"],
      ),
      ["pieces.strap.left-end is no name that can be set"],
    ],
    [
      "a misspelt name",
      more(`${FEATHER.slice(0, -1)} {measures.colour}.`),
      ["measures.colour is no name that can be set"],
    ],
    ["no value", more("Thinned."), ["pieces.strap.feather is told nowhere", '"Thinned." sets no value']],
    [
      "a stray brace",
      more("Thin {Feather} {pieces.strap.feather}."),
      ['"Thin {Feather} {pieces.strap.feather}." has a stray brace'],
    ],
    [
      "an article before a value",
      more("A {pieces.strap.feather} end."),
      ['"A {pieces.strap.feather} end." has a or an before a value'],
    ],
    ["no full stop", more(FEATHER.slice(0, -1)), [`"${FEATHER.slice(0, -1)}" isn't written as a sentence`]],
    [
      "a condition on a measure",
      more(FEATHER, { when: { name: "measures.width", is: ["1 in"] } }),
      [`"${FEATHER}" hangs on measures.width, which is no choice, flag or text`],
    ],
    [
      "a condition on a value that can't be",
      more(FEATHER, { and: { name: "measures.left-end", is: ["buckle", "hook"] } }),
      [`"${FEATHER}" hangs on measures.left-end: hook, which it can't be`],
    ],
    [
      "a flag's condition that is neither yes nor no",
      more(FEATHER, { when: { name: "measures.keeper", is: ["true"] } }),
      [`"${FEATHER}" hangs on measures.keeper: true, which it can't be`],
    ],
    [
      "a condition without values",
      more(FEATHER, { when: { name: "measures.keeper", is: [] } }),
      [`"${FEATHER}" hangs on measures.keeper and no value`],
    ],
    [
      "a condition set nowhere but in the table",
      planted(more(FEATHER, { when: { name: "die.notches", is: ["by hand"] } }), (s) => s),
      [`"${FEATHER}" hangs on die.notches, which no sentence sets`],
    ],
    [
      "an alternative to nothing",
      more(FEATHER, { or: { name: "measures.keeper", is: ["yes"] } }),
      [`"${FEATHER}" has an alternative to nothing`],
    ],
  ])("a planted fault is found: %s", (_, article, faults) => {
    expect(toldFaults(article)).toEqual(faults);
  });

  test("a sentence that hides its own choice is found", () => {
    const hiding = planted(strap, (s) =>
      s.map((one) =>
        one.text.includes("{measures.left-end}")
          ? { ...one, when: { name: "measures.left-end", is: ["ring"] } }
          : one,
      ),
    );
    expect(toldFaults(hiding)).toEqual([
      expect.stringContaining("would take measures.left-end away with itself"),
    ]);
  });
});

type Given = Readonly<Record<string, string>>;

/** What is cut, punched and drawn of an order's pieces; undefined where it can't be read. */
function shapesOf(article: ArticleDefinition, text: string): { order: Order; shapes: string } | undefined {
  const { order } = readOrder(text, "any.yaml", [article]);
  if (!order) return undefined;
  const { pieces } = article.make(order.values);
  const drawn = pieces.map((p) => [
    p.id,
    p.count,
    p.outline,
    p.cutouts,
    p.holes,
    p.marks,
    p.folds.map((f) => f.id),
  ]);
  const lengths = (key: string, value: unknown) => (key === "sizes" ? undefined : value);
  return { order, shapes: JSON.stringify(drawn, lengths) };
}

/** Whether the pieces are others without these values; undefined where an order can't be without them. */
function felt(
  article: ArticleDefinition,
  given: Given,
  shapes: string,
  names: readonly string[],
): boolean | undefined {
  const less = Object.fromEntries(Object.entries(given).filter(([n]) => !names.includes(n)));
  const without = shapesOf(article, orderText(article, less));
  return without && without.shapes !== shapes;
}

/** Names told by no sentence that is said, whose values change the pieces all the same. */
function feltUnsaid(article: ArticleDefinition, runs: number): readonly string[] {
  const random = randomFrom(SEED);
  return Array.from({ length: runs }).flatMap(() => {
    const { text, given } = anyOrder(article, random);
    const full = shapesOf(article, text);
    if (!full) return [];
    const unsaid = unsaidNames(article, orderTexts(full.order)).filter((n) => given[n] !== undefined);
    // All at once, which is quick; one by one only where that tells something.
    const any = felt(article, given, full.shapes, unsaid);
    return any !== false ? unsaid.filter((name) => felt(article, given, full.shapes, [name])) : [];
  });
}

describe("what isn't said changes nothing", () => {
  test.each([
    [headstall, 12],
    [plainStrap, 30],
    [bag, 4],
  ] as const)("$slug", (article, runs) => {
    expect(new Set(feltUnsaid(article, runs))).toEqual(new Set());
  });

  test("a condition that hides a value in use is found", () => {
    const hiding = planted(plainStrap, (s) =>
      s.map((one) =>
        one.text.includes("{measures.count}")
          ? { ...one, when: { name: "measures.left-end", is: ["ring"] } }
          : one,
      ),
    );
    expect(feltUnsaid(hiding, 6)).toContain("measures.count");
  });
});

/** Fewer say too little of an order; more aren't read. */
const [FEWEST, MOST] = [8, 20];

describe("an order is read aloud", () => {
  const folder = "out/told";
  const write = (name: string, lines: readonly string[]): void => {
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}/.gitignore`, "*\n");
    writeFileSync(`${folder}/${name}.txt`, `${lines.join("\n")}\n`);
  };
  const own = [headstall, plainStrap, bag];

  test.each(own)("$slug: its sample in 8 to 20 sentences of its own", (article) => {
    const said = readAloud(article.told.sentences, orderTexts(sampleOrder(article)));
    expect(said.length).toBeGreaterThanOrEqual(FEWEST);
    expect(said.length).toBeLessThanOrEqual(MOST);
  });

  test.each(articles.map((a) => [a.slug, sampleText(a)] as const))("%s: its sample", (slug, text) => {
    write(`sample-${slug}`, spoken(text));
  });

  test.each(orderFiles)("$name", ({ name, text }) => {
    write(name.replace(/\.yaml$/, ""), spoken(text));
  });

  function spoken(text: string): readonly string[] {
    const { order } = readOrder(text, "spoken.yaml", articles);
    const said = readAloud(order!.article.told.sentences, orderTexts(order!));
    expect(said.join("\n")).not.toMatch(/[{}?]/);
    return said;
  }
});
