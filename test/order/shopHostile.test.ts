import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LARGEST_BYTES } from "../../src/order/guard.ts";
import { sayFault } from "../../src/order/say.ts";
import { readShop, shopNamedIn } from "../../src/order/shopRead.ts";

const codes = (text: string) => readShop(text, "shop.yaml").faults.map((f) => f.code);

describe("refused at once", () => {
  test.each([
    ["a byte over 1 MB", `# ${"a".repeat(LARGEST_BYTES - 1)}`, "too-large"],
    ["a million brackets", "[".repeat(1e6), "too-large"],
    [
      "more names than a shop has",
      Array.from({ length: 60_000 }, (_, i) => `key${i}: 1`).join("\n"),
      "too-large",
    ],
    ["maps in maps", "{a: ".repeat(8_000), "too-deep"],
    ["a zero", "shop: a\0b", "not-text"],
    ["a byte order mark", "\uFEFFshop: a", "byte-order-mark"],
  ])("%s", (_, text, code) => {
    expect(codes(text)).toContain(code);
  });

  test("the words are of a shop file, not of an order", () => {
    for (const text of [
      "# x\n",
      "[".repeat(1e6),
      "a\0",
      "\uFEFF",
      "%YAML 1.1\n---\nshop: a\n",
      "shop: a\n---\nshop: b\n",
      "x",
    ]) {
      const { faults } = readShop(text, "shop.yaml");
      expect(faults.length).toBeGreaterThan(0);
      for (const f of faults) expect(sayFault(f, "shop.yaml")).not.toMatch(/\b(?<!byte )order\b/);
    }
  });

  test("names that JavaScript's objects have of their own are plain names", () => {
    for (const name of ["__proto__", "constructor", "toString"]) {
      expect(codes(`${name}: 1`)).toEqual(["unknown-key"]);
      expect(codes(`sizes: { ${name}: { s: x } }`)).toEqual(["unknown-key"]);
      expect(codes(`sizes: { bag: { s: ${name} 3 in } }`)).toHaveLength(1);
      expect(readShop(`punches: { ${name}: 2 mm }`, "s").shop?.punches).toEqual([{ number: name, size: 2 }]);
      expect(readShop(`sizes: { bag: { ${name}: width 8 in } }`, "s").shop?.sizes).toEqual([
        { article: "bag", name, measures: { width: "8 in" } },
      ]);
    }
    expect(({} as { width?: unknown }).width).toBeUndefined();
  });
});

const words = [
  ..."shop|currency|GBP|JPY|units|mm|labour|per-hour|price|margin|95 %|leather|strap|hardware|ring|by-size".split(
    "|",
  ),
  ..."1 in 3.20|5/8 in|1,5|minutes|stitch|0.25|punches|3|2 mm|sizes|bag|small|width 8 in|height|£|<<".split(
    "|",
  ),
  ...[
    ": ",
    ":",
    "\n",
    "\n  ",
    "\n    ",
    "\n\t",
    " ",
    ", ",
    "#",
    "- ",
    "? ",
    "{",
    "}",
    "[",
    "]",
    "&a ",
    "*a",
    "!x ",
    "|",
    "'",
    '"',
  ],
  ...["\uFEFF", "\0", "½", "\u202E", "\u2028", "__proto__", "1e3", ".inf"],
];
/** Half characters and unassigned ones as well. */
const anyUnit = fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit));

const sound = (text: string): void => {
  const { faults, shop } = readShop(text, "shop.yaml");
  expect(shop === undefined).toBe(faults.length > 0);
  const lines = text.split("\n");
  for (const f of faults) {
    expect(sayFault(f, "shop.yaml")).toMatch(/^shop\.yaml/);
    if (f.place) expect(f.place.column).toBeLessThanOrEqual((lines[f.place.line - 1] ?? "").length + 1);
  }
  expect(typeof shopNamedIn(text)).toBe("string");
};

describe("no text makes it throw", () => {
  test("of a shop's words and YAML's signs", () => {
    const text = fc.array(fc.constantFrom(...words), { maxLength: 24 }).map((w) => w.join(""));
    fc.assert(fc.property(text, sound), { seed: 21, numRuns: 300 });
  });

  test("in the right place", () => {
    const value = fc.array(fc.constantFrom(...words.filter((w) => !w.includes("\n"))), {
      minLength: 1,
      maxLength: 5,
    });
    const line = fc.constantFrom(
      "currency: ",
      "labour: { per-hour: ",
      "price:\n  margin: ",
      "leather:\n  strap:\n    side: ",
      "hardware:\n  ring:\n    by-size: ",
      "hardware:\n  rivet:\n    lengths: ",
      "minutes:\n  stitch: ",
      "punches:\n  3: ",
      "sizes:\n  bag:\n    small: ",
      "sizes:\n  strap:\n    small: width ",
    );
    fc.assert(
      fc.property(line, value, (l, v) => sound(`${l}${v.join("")}`)),
      { seed: 22, numRuns: 300 },
    );
  });

  test("of any characters", () => {
    fc.assert(fc.property(fc.string({ unit: anyUnit, maxLength: 60 }), sound), { seed: 23, numRuns: 100 });
  });
});
