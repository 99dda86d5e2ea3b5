import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { finishSection, priceSection } from "../../src/articles/benchSections.ts";
import { articles } from "../../src/articles/index.ts";
import { benchOf } from "../../src/bench/bench.ts";
import type { Bench } from "../../src/model/bench.ts";
import type { Shop } from "../../src/model/shop.ts";
import { readOrder } from "../../src/order/read.ts";
import { NO_SHOP, readShop } from "../../src/order/shopRead.ts";
import { finishTable, priceTable } from "../../src/trade/benchTables.ts";
import { valuesOf } from "../support/anyValues.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";

const shopOf = (text: string): Shop => {
  const { shop, faults } = readShop(text, "shop.yaml");
  expect(faults).toEqual([]);
  return shop!;
};
const DEMO = shopOf(readFileSync("templates/shop.yaml", "utf8"));

function benchFor(text: string, shop: Shop = DEMO, own?: Readonly<Record<string, string>>) {
  const { values, article, units } = readOrder(text, "order.yaml", articles).order!;
  return benchOf({
    made: article.make(values),
    shop,
    finish: values.of(finishSection),
    price: own ? valuesOf(priceTable, own, {}) : values.of(priceSection),
    units,
  });
}

/** Every number in it. */
function numbersIn(data: unknown): readonly number[] {
  if (typeof data === "number") return [data];
  return typeof data === "object" && data !== null ? Object.values(data).flatMap(numbersIn) : [];
}
const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0);

/** Sizes that the demo shop has no price for; it tells no price of any size. */
const ODD_SIZES: Readonly<Record<string, readonly string[]>> = {
  "child-turned-purse.yaml": ["a buckle of 12 mm"],
  "sagging-pouch.yaml": ["a buckle of 24.5 mm"],
};

describe.each(orderFiles)("$name with the demo shop", ({ name, text }) => {
  const odd = ODD_SIZES[name] ?? [];
  const { bench, findings } = benchFor(text);
  const price = bench.price!;

  test("is priced whole, but for sizes that have no price", () => {
    expect(findings).toEqual([]);
    expect(bench.unpriced.map((u) => u.split(" has no price")[0])).toEqual(odd);
    expect(price.incomplete).toBe(odd.length > 0);
    expect(price.deposit + price.balance).toBe(price.total);
    expect(sum([...price.materials, ...price.labour, price.overhead].map((l) => l.minor))).toBe(price.cost);
    // The shop rounds up to whole pounds.
    expect(price.beforeTax % 100).toBe(0);
  });

  test("has a line for each leather and each kind of hardware, and the time of its steps", () => {
    const lines = price.materials.length;
    const thread = bench.thread.total > 0 ? 1 : 0;
    expect(lines).toBe(bench.leather.length + bench.hardware.length + thread + 1 - odd.length);
    const said = price.labour.map((l) => Number.parseFloat(l.how));
    // Each line's minutes are printed to a hundredth.
    expect(Math.abs(sum(said) - bench.minutes)).toBeLessThanOrEqual(0.005 * said.length);
    expect(new Set(bench.steps.map((s) => s.does)).size).toBe(price.labour.length);
  });

  test("holds only numbers that can be printed", () => {
    expect(numbersIn(bench).filter((n) => !Number.isFinite(n) || n < 0)).toEqual([]);
  });

  test("without a shop file lists the same and prices nothing", () => {
    const { bench: plain } = benchFor(text, NO_SHOP);
    expect(plain.price).toBeUndefined();
    expect(plain.unpriced).toHaveLength(1);
    expect(plain.cut).toEqual(bench.cut);
    expect(plain.steps.map((s) => s.id)).toEqual(bench.steps.map((s) => s.id));
  });
});

describe("a larger order", () => {
  const text = orderText("juniper-headstall");
  const one = benchFor(text, DEMO, {}).bench;
  const many = benchFor(text, DEMO, { quantity: "1000" }).bench;

  test("needs all of it so many times", () => {
    const counts = ({ cut, hardware, punches, leather, thread }: Bench): readonly number[] => [
      ...[...cut, ...hardware, ...punches].map((r) => r.count),
      ...leather.map((l) => l.net),
      thread.stitches,
    ];
    counts(one).forEach((n, i) => {
      expect(counts(many)[i]).toBeCloseTo(1000 * n, 3);
    });
    expect(counts(many)).toHaveLength(counts(one).length);
  });

  test("costs no more for one than one does", () => {
    expect(many.price!.total).toBeLessThanOrEqual(1000 * one.price!.total);
    expect(many.price!.total).toBeGreaterThan(800 * one.price!.total);
  });
});

test("a name that is no piece's is found, where pieces are cut by die", () => {
  const { findings } = benchOf({
    made: madeOf(orderText("juniper-headstall")),
    shop: DEMO,
    finish: valuesOf(finishTable, { "by-die": "hoof" }, {}),
    price: valuesOf(priceTable, {}, {}),
    units: "in",
  });
  expect(findings.map((f) => f.rule)).toEqual(["cut-by-die"]);
});

const KEY = /: write (\S+) in shop\.yaml$/;
/** A value for a key of a shop file, by the last word of the key. */
const VALUES: Readonly<Record<string, string>> = {
  reel: "100 m",
  price: "9.50",
  each: "3.20",
  "per-hour": "30.00",
};

/** A shop file's text, from its keys. */
function shopText(keys: readonly string[]): string {
  const lines = keys.map((key) => {
    const [section = "", ...rest] = key.split(".");
    const value = VALUES[rest.at(-1)!] ?? "0.5";
    return rest.length === 2
      ? { section, line: `  ${rest[0]}: { ${rest[1]}: ${value} }` }
      : { section, line: `  ${rest[0]}: ${value}` };
  });
  const sections = [...new Set(lines.map((l) => l.section))];
  const under = (s: string): readonly string[] => lines.filter((l) => l.section === s).map((l) => l.line);
  return ["currency: GBP", ...sections.flatMap((s) => [`${s}:`, ...under(s)])].join("\n");
}

describe.each(["juniper-headstall", "wren-flap-purse", "buckled-satchel"])("%s and an empty shop", (name) => {
  const text = orderText(name);
  const unpricedWith = (keys: readonly string[]) => benchFor(text, shopOf(shopText(keys))).bench.unpriced;
  const all = unpricedWith([]);
  const keys = all.map((u) => KEY.exec(u)?.[1] ?? "");

  test("lists what lacks a rate, each by the key to write", () => {
    expect(keys).not.toContain("");
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toEqual(expect.arrayContaining(["thread.price", "labour.per-hour", "minutes.stitch"]));
  });

  test("the key, written, takes its entry away and no other", () => {
    keys.forEach((key, i) => {
      expect(unpricedWith([key])).toEqual(all.filter((_, j) => j !== i));
    });
  });

  test("all keys written, it is priced whole", () => {
    const { bench } = benchFor(text, shopOf(shopText(keys)));
    expect(bench.unpriced).toEqual([]);
    expect(bench.price).toMatchObject({ incomplete: false });
  });
});
