import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { articles } from "../../src/articles/index.ts";
import { FITTING_KINDS } from "../../src/model/fitting.ts";
import type { Shop } from "../../src/model/shop.ts";
import { WORK_KINDS } from "../../src/model/work.ts";
import { sayFault } from "../../src/order/say.ts";
import { isShopFile, NO_SHOP, readShop, shopNamedIn } from "../../src/order/shopRead.ts";
import { shopJsonSchema } from "../../src/order/shopSchema.ts";

const INCH = 25.4;
const DEMO = readFileSync("templates/shop.yaml", "utf8");

const shopOf = (text: string): Shop => {
  const { faults, shop } = readShop(text, "shop.yaml");
  expect(faults).toEqual([]);
  return shop!;
};
const said = (text: string): readonly string[] =>
  readShop(text, "shop.yaml").faults.map((f) => sayFault(f, "shop.yaml"));

describe("the demo workshop", () => {
  const shop = shopOf(DEMO);

  test("has what stands in its file", () => {
    expect(shop).toMatchObject({
      file: "shop.yaml",
      name: "Fernhollow Saddlery",
      currency: { code: "GBP", digits: 2 },
      perHour: "28.00",
      overhead: 0.25,
      overheadOf: "labour",
      margin: 0.2,
      marginOf: "price",
      tax: 0.2,
      taxName: "VAT",
      deposit: 0.3,
      roundTo: "1.00",
      sundries: "2.50",
      validDays: 30,
    });
    expect(shop.leathers.strap).toMatchObject({ price: "14.50", per: "square foot", yield: 0.75 });
    expect(shop.leathers.lining).toMatchObject({ yield: 0.8, yieldFrom: "shop.yaml:28" });
    expect(shop.leathers.strap!.side).toBeCloseTo(22 * 92903.04, 4);
    expect(shop.hardware.buckle.bySize[1]).toEqual({ size: (5 * INCH) / 8, each: "3.40" });
    expect(shop.hardware.rivet.lengthsFrom).toBe("shop.yaml:36");
    expect(shop.thread).toMatchObject({ price: "13.20", reel: 100_000 });
    expect(shop.minutes).toMatchObject({ setUp: 15, cutByKnife: 6, prick: 0.02 });
  });

  test("has a price or a time for all that can be in a job", () => {
    expect(Object.values(shop.leathers).every((l) => l.price !== undefined)).toBe(true);
    expect(Object.keys(shop.minutes).sort()).toEqual([...WORK_KINDS].sort());
    const brought = ["bit"];
    const unpriced = FITTING_KINDS.filter(
      (kind) => !shop.hardware[kind].each && shop.hardware[kind].bySize.length === 0,
    );
    expect(unpriced.filter((kind) => !brought.includes(kind))).toEqual([]);
  });

  test("has sizes of a headstall and a bag that their orders can have", () => {
    const cob = shop.sizes.find((s) => s.name === "cob");
    expect(cob).toEqual({
      article: "one-ear-headstall",
      name: "cob",
      measures: { "over-poll": "39 1/2 in", "ear-base": "8 1/2 in" },
    });
    expect(new Set(shop.sizes.map((s) => s.article))).toEqual(new Set(["one-ear-headstall", "bag"]));
  });
});

describe("a shop with nothing in it", () => {
  test("has no price, no time and no size of its own", () => {
    expect(JSON.stringify(NO_SHOP)).not.toMatch(/"(price|each|perHour|currency|roundTo|sundries)":/);
    expect(NO_SHOP).toMatchObject({
      file: "",
      name: "",
      margin: 0,
      tax: 0,
      deposit: 0,
      minutes: {},
      punches: [],
      sizes: [],
    });
  });

  test("knows every leather of every article, every kind of hardware", () => {
    const names = articles.flatMap((a) =>
      a.sections.flatMap((s) => /^leather\.(.+)$/.exec(s.path)?.[1] ?? []),
    );
    expect(new Set(Object.keys(NO_SHOP.leathers))).toEqual(new Set(names));
    expect(Object.keys(NO_SHOP.hardware)).toEqual([...FITTING_KINDS]);
  });

  // keleenleathers.com, Hide diagram: 13.5 square feet of cloth, 18 of leather.
  test("wastes a quarter of its leather, as published", () => {
    for (const { yield: y, yieldFrom } of Object.values(NO_SHOP.leathers)) {
      expect(y).toBe(13.5 / 18);
      expect(yieldFrom).toContain("keleenleathers.com");
    }
  });

  test("is what a file with only a name gives", () => {
    expect(shopOf("shop: Wren's")).toEqual({ ...NO_SHOP, file: "shop.yaml", name: "Wren's" });
  });
});

describe("each value", () => {
  test("a bare number has the file's unit", () => {
    const sizeOf = (units: string) => shopOf(`units: ${units}\npunches: { 3: 2 }\nthread: { tail: 5 }`);
    expect(sizeOf("in").punches).toEqual([{ number: "3", size: 2 * INCH }]);
    expect(sizeOf("mm").punches).toEqual([{ number: "3", size: 2 }]);
    expect(sizeOf("mm").thread.tail).toBe(5);
  });

  test("lists come sorted, smallest first", () => {
    const s = shopOf(
      'currency: EUR\nhardware:\n  ring: { by-size: "1 in 4.80, 5/8 in 3.2" }\n  rivet: { lengths: "3/8 in, 6 mm" }\npunches: { b: 4 mm, a: 2 mm }',
    );
    expect(s.hardware.ring.bySize).toEqual([
      { size: (5 * INCH) / 8, each: "3.2" },
      { size: INCH, each: "4.80" },
    ]);
    expect(s.hardware.rivet.lengths).toEqual([6, 9.525]);
    expect(s.punches.map((p) => p.number)).toEqual(["a", "b"]);
  });

  test("a size may have some of its article's measures, of any kind", () => {
    const s = shopOf("sizes: { bag: { pony: 'width 8 in, measured: inside, holds phone' } }");
    expect(s.sizes).toEqual([
      { article: "bag", name: "pony", measures: { width: "8 in", measured: "inside", holds: "phone" } },
    ]);
  });

  test("a margin may be larger than the cost, and never the whole price", () => {
    expect(shopOf("price: { margin: 150 %, margin-of: cost }").margin).toBe(1.5);
    expect(said("price: { margin: 95 % }")[0]).toContain(
      "shop.yaml:1:18 price.margin: your margin: got 0.95",
    );
  });
});

describe("faults", () => {
  test.each([
    ["curency: GBP\nlabour: { per-hour: 3 }", "write currency"],
    ["labour: { per-hour: 3 }", 'add a line at the left margin such as "currency: GBP"'],
    ["currency: gbp", "write GBP"],
    ["currency: Yen", "write JPY"],
    ["currency: GPB", "write GBP"],
    // USD and UGX are one letter off both.
    ["currency: USX", "write the currency's three capital letters by ISO 4217"],
    ["price: { margin: 25 }", "lower margin to at most 0.9, or did you mean 25 % (0.25)?"],
    ['currency: GBP\nleather: { strap: { by-thickness: "8 12.50" } }', "write each thickness with its unit"],
    ['currency: GBP\nleather: { strap: { by-thickness: "8 oz 12, 8 oz 13" } }', "write each size once"],
    ["currency: JPY\nleather: { strap: { by-thickness: 8 oz 2.12345 } }", 'write "2.1235" if that is meant'],
    ["sizes: { strap: { s: pieces.strap.lenght 30 in } }", "write pieces.strap.length"],
    [
      "sizes: { strap: { s: pieces.strap.length 30 } }",
      'write "30 in", "30 mm" or "30 cm", whichever is meant',
    ],
    ["sizes: { strap: { s: pieces.strap.holes many } }", "write"],
    ["currency: £", "write the currency's three capital letters by ISO 4217"],
    ["currency: XAU", "write"],
    ["currency: GBP\nlabour: { per-hour: £28 }", "write the number alone; the currency stands once"],
    ["currency: JPY\nprice: { round-to: 3.5 }", 'write "4" if that is meant'],
    ["currency: JPY\nhardware: { ring: { by-size: 1 in 2.12345 } }", 'write "2.1235" if that is meant'],
    ["leather: { stap: { per: square foot } }", "write strap"],
    ["leather: { strap: { per: square fot } }", "write square foot"],
    ["leather: { strap: { side: 22 } }", "write a number and its unit"],
    ["leather: { strap: { yield: 1.2 } }", "lower yield to at most 1"],
    ["hardware: { binding screw: { spares: 1 } }", "write binding-screw"],
    ["hardware: { ring: { lengths: 1 in } }", "move it under hardware.binding-screw or under hardware.rivet"],
    [
      "currency: GBP\nhardware: { ring: { by-size: 5/8 3.20 } }",
      "write each size with its unit and its price",
    ],
    ['currency: GBP\nhardware: { ring: { by-size: "1 in 3, 25.4 mm 4" } }', "write each size once"],
    ["hardware: { rivet: { lengths: 0 in } }", "write each length with its unit"],
    ["minutes: { stich: 3 }", "write stitch"],
    ["minutes: { stitch: 3 min }", 'write "3"'],
    ["minutes: { stitch: -3 }", "take the minus away"],
    ["punches: { 3: 1 m }", "write the diameter of its hole with its unit"],
    ["punches: { 3: [1] }", "write one value, without [ ] or -"],
    ["punches:\n  3: 2 mm\n  3: 4 mm", "take one of them out"],
    ["sizes: { bagg: { s: width 3 in } }", "write bag"],
    ["sizes: { bag: { s: heigt 8 in } }", "write height"],
    ["sizes: { bag: { s: width 8 } }", 'write "8 in", "8 mm" or "8 cm", whichever is meant'],
    ["sizes: { bag: { s: width 8 m } }", "lower width to at most"],
    ["sizes: { bag: { s: 'width 8 in, width 9 in' } }", "write each measure once"],
    ["sizes: { bag: { s: 'width 8,5 in' } }", "write each measure's name and its size"],
    ["sizes: { bag: { s: measured within } }", "write"],
    ["article: bag\nmeasures: { width: 3 in }", "name the file with your rates"],
    ["", 'begin with a line that names your shop, as in "shop: Fernhollow Saddlery"'],
    ["- a\n- b", "begin with a line that names your shop"],
  ])("%s", (text, mend) => {
    const lines = said(text);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain(`To mend: ${mend}`);
  });

  test("come all at once, each with its place", () => {
    const text = [
      "shop: Wren's",
      "currency: GBP",
      "labour: { per-hour: 28,00 }",
      "leather:",
      "  strap: { yield: 3, sides: 4 sq ft }",
      "minutes: { stitch: often }",
      "punches: { 1: huge }",
      "sizes:",
      "  bag: { s: width 8 }",
    ].join("\n");
    expect(readShop(text, "s").faults.map((f) => [f.place?.line, f.key])).toEqual([
      [3, "labour.per-hour"],
      [5, "leather.strap.yield"],
      [5, "leather.strap.sides"],
      [6, "minutes.stitch"],
      [7, "punches.1"],
      [9, "sizes.bag.s"],
    ]);
  });
});

describe("the shop that an order names", () => {
  test.each([
    ["article: bag\nshop: shop.yaml", "shop.yaml"],
    ["shop: ../my shop.yaml # ours\narticle: bag", "../my shop.yaml"],
    ["article: bag", ""],
    ["shop:", ""],
    ["shop: { a: b }", ""],
    ["[", ""],
    ["", ""],
  ])("%s", (text, named) => {
    expect(shopNamedIn(text)).toBe(named);
  });
});

describe("the published shape", () => {
  const validate = new Ajv2020({ strict: false }).compile(shopJsonSchema());

  test("takes the demo workshop", () => {
    expect(validate(parse(DEMO)), JSON.stringify(validate.errors)).toBe(true);
  });
  test.each([
    ["labour: { per-houre: 3 }"],
    ["leather: { strip: { price: 3 } }"],
    ["leather: { strap: { per: yard } }"],
    ["punches: { 3: { a: b } }"],
    ["sizes: { saddle: { s: x } }"],
  ])("refuses %s", (text) => {
    expect(validate(parse(text))).toBe(false);
  });
});

test("leather priced by its thickness, and sizes with an order's other settings", () => {
  const text = [
    "currency: GBP",
    'leather: { strap: { price: 13, by-thickness: "10 oz 14.00, 8 oz 12.50" } }',
    "sizes: { strap: { short: 'width 1 in, pieces.strap.length 30 in' } }",
  ].join("\n");
  const { shop, faults } = readShop(text, "s");
  expect(faults).toEqual([]);
  expect(shop!.leathers.strap).toMatchObject({
    price: "13",
    byThickness: [
      { thickness: expect.closeTo(3.175, 6), price: "12.50" },
      { thickness: expect.closeTo(3.96875, 6), price: "14.00" },
    ],
  });
  expect(shop!.sizes).toEqual([
    { article: "strap", name: "short", measures: { width: "1 in", "pieces.strap.length": "30 in" } },
  ]);
});

test("a shop file is told from an order", () => {
  expect([DEMO, "labour: { per-hour: 3 }"].map(isShopFile)).toEqual([true, true]);
  expect(["article: bag\nprice: { margin: 0.2 }", "price: { margin: 0.2 }", "", "["].map(isShopFile)).toEqual(
    [...[false, false, false, false]],
  );
});
