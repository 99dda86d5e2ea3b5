import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { editOrder } from "../../src/order/edit.ts";
import { MOST_FAULTS } from "../../src/order/faults.ts";
import { LARGEST_BYTES } from "../../src/order/guard.ts";
import { readOrder } from "../../src/order/read.ts";
import { sayFault } from "../../src/order/say.ts";
import { otherArticle, sampleArticle } from "../support/sampleArticle.ts";

const TOP = "article: plain belt\nmeasures:\n  waist: 34\n";
const read = (text: string) => readOrder(text, "wren.yaml", [sampleArticle, otherArticle]);
const codes = (text: string) => read(text).faults.map((f) => f.code);

function timed<T>(work: () => T): { result: T; ms: number } {
  const start = performance.now();
  return { result: work(), ms: performance.now() - start };
}

describe("refused at once", () => {
  test("50 MB, in far less than it takes to read them", () => {
    const { result, ms } = timed(() => codes("# a comment\n".repeat(50e6 / 12)));
    expect(result).toEqual(["too-large"]);
    expect(ms).toBeLessThan(200);
  });

  test("a byte over 1 MB, and 1 MB is counted in bytes", () => {
    const filled = (letter: string, bytes: number) => `${TOP}# ${letter.repeat(bytes)}`;
    expect(codes(filled("a", LARGEST_BYTES - TOP.length - 2))).toEqual([]);
    expect(codes(filled("a", LARGEST_BYTES - TOP.length - 1))).toEqual(["too-large"]);
    // ß has two bytes in UTF-8 (RFC 3629, section 3).
    expect(codes(filled("ß", LARGEST_BYTES / 2))).toEqual(["too-large"]);
  });

  test("a billion laughs: nothing is ever copied from elsewhere", () => {
    const rows = Array.from(
      { length: 9 },
      (_, i) => `l${i + 1}: &l${i + 1} [${Array(10).fill(`*l${i}`).join(", ")}]`,
    );
    const { result, ms } = timed(() => codes(`${TOP}l0: &l0 [ha]\n${rows.join("\n")}\nfor: *l9\n`));
    expect(new Set(result)).toEqual(new Set(["anchor", "alias", "unknown-key"]));
    expect(result).toContain("alias");
    expect(ms).toBeLessThan(500);
  });

  test.each([
    ["brackets in brackets", "[".repeat(20_000)],
    ["maps in maps", "{a: ".repeat(8_000)],
    ["dashes behind dashes", "- ".repeat(20_000)],
    ["question marks", "? ".repeat(20_000)],
    ["stairs", Array.from({ length: 1000 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
  ])("%s", (_, text) => {
    const { result, ms } = timed(() => codes(text));
    expect(result).toContain("too-deep");
    expect(ms).toBeLessThan(1500);
  });

  test.each([
    ["a million brackets", "[".repeat(1e6)],
    ["a million quotes", '"'.repeat(1e6)],
    ["a million closing brackets", "]".repeat(1e6)],
    ["empty documents", "---\n".repeat(250_000)],
    ["more names than an order has", Array.from({ length: 60_000 }, (_, i) => `key${i}: 1`).join("\n")],
    ["line ends", "\n".repeat(1e6)],
  ])("%s", (_, text) => {
    const { result, ms } = timed(() => codes(text));
    expect(result).toEqual(["too-large"]);
    expect(ms).toBeLessThan(1500);
  });

  test.each([
    ["a zero", `${TOP}for: a\0b\n`, "not-text"],
    ["what was no UTF-8", `${TOP}for: a\uFFFDb\n`, "not-text"],
    ["a file in UTF-16, read as UTF-8", "\uFFFD\uFFFDa\0r\0t\0", "not-text"],
    ["a bell", `${TOP}for: a\u0007b\n`, "control-character"],
    ["half a character", `${TOP}for: a\ud800b\n`, "control-character"],
    ["a line end of old", TOP.replaceAll("\n", "\r"), "control-character"],
    ["a byte order mark", `\uFEFF${TOP}`, "byte-order-mark"],
  ])("%s", (_, text, code) => {
    expect(codes(text)).toEqual([code]);
  });

  test("the first such character is pointed to", () => {
    expect(read(`${TOP}for: a\u0007b\n`).faults[0]).toMatchObject({ place: { line: 4, column: 7 } });
    expect(read(`${TOP}for: a\0b\n`).faults[0]).toMatchObject({ place: { line: 4, column: 7 } });
  });
});

describe("told in few words", () => {
  test("a thousand faults are cut short, and counted", () => {
    const { faults } = read(`${TOP}${Array.from({ length: 1000 }, (_, i) => `key${i}: 1`).join("\n")}`);
    expect(faults).toHaveLength(MOST_FAULTS + 1);
    expect(faults.at(-1)).toMatchObject({
      code: "more-faults",
      problem: `there are ${1000 - MOST_FAULTS} more faults from here on`,
    });
  });

  test("a name or a value as long as a book", () => {
    for (const text of [
      `${TOP}${"k".repeat(1000)}: 1`,
      `${TOP}${"k".repeat(90_000)}: 1`,
      `${TOP}for: ${"x".repeat(9e5)}`,
      `article: ${"x".repeat(9e5)}`,
    ]) {
      const { faults } = read(text);
      expect(faults.length).toBeGreaterThan(0);
      for (const f of faults) expect(sayFault(f, "wren.yaml").length).toBeLessThan(400);
    }
  });

  test("names that JavaScript's objects have of their own", () => {
    for (const name of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
      expect(codes(`${TOP}${name}: 1\n`)).toEqual(["unknown-key"]);
      expect(codes(`${TOP}hardware: { ${name}: { bar: 1 } }\n`)).toEqual(["unknown-key"]);
      expect(codes(`article: saddle\n${name}: 1\n`)).toEqual(["unreadable"]);
      expect(codes(`article: ${name}\n`)).toEqual(["unreadable"]);
      expect(codes(`${TOP}paper: ${name}\n`)).toEqual(["unreadable"]);
    }
    expect(({} as { bar?: unknown }).bar).toBeUndefined();
  });
});

/** Half characters and unassigned ones as well. */
const anyUnit = fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit));

describe("no text makes it throw", () => {
  const words = [
    ...[
      "article",
      "plain belt",
      "for",
      "units",
      "mm",
      "paper",
      "measures",
      "waist",
      "34 1/2",
      "hardware",
      "buckle",
      "bar",
      "3,2 mm",
    ],
    ...[
      "pieces",
      "strap",
      "width",
      "holes",
      "stamp",
      "<<",
      ": ",
      ":",
      "\n",
      "\n  ",
      "\n    ",
      "\n\t",
      "\r\n",
      " ",
      "#",
      " # x\n",
      "- ",
      "? ",
    ],
    ...[
      "{",
      "}",
      "[",
      "]",
      ",",
      "&a ",
      "*a",
      "!!str ",
      "!x ",
      "|",
      ">-",
      "'",
      '"',
      "\\",
      "%YAML 1.1\n",
      "---\n",
      "...\n",
      "@",
      "`",
      "~",
      "null",
    ],
    ...["\uFEFF", "\0", "\uFFFD", "½", "\u202E", "\u2028", "__proto__", "1e3", "0x10", ".inf"],
  ];
  const sound = (text: string): void => {
    const { faults, order } = read(text);
    // Either an order or faults, never both and never neither.
    expect(order === undefined).toBe(faults.length > 0);
    const lines = text.split("\n");
    for (const f of faults) {
      expect(sayFault(f, "wren.yaml")).toMatch(/^wren\.yaml/);
      if (f.place) expect(f.place.column).toBeLessThanOrEqual((lines[f.place.line - 1] ?? "").length + 1);
    }
  };

  test("of YAML's own signs", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...words), { maxLength: 30 }).map((w) => w.join("")),
        sound,
      ),
      { seed: 2, numRuns: 1500 },
    );
  });
  test("behind a good beginning", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...words), { maxLength: 20 }).map((w) => TOP + w.join("")),
        sound,
      ),
      { seed: 3, numRuns: 600 },
    );
  });
  test("of any characters", () => {
    fc.assert(fc.property(fc.string({ unit: anyUnit, maxLength: 80 }), sound), { seed: 4, numRuns: 200 });
  });
  test("when it is edited", () => {
    const path = fc.constantFrom(
      "for",
      "measures.waist",
      "hardware.buckle.bar",
      "hardware",
      "pieces.strap.stamp",
      "",
      "a..b",
      "__proto__.x",
    );
    const value = fc.option(fc.string({ unit: anyUnit, maxLength: 12 }), { nil: undefined });
    const text = fc.array(fc.constantFrom(...words), { maxLength: 16 }).map((w) => TOP + w.join(""));
    fc.assert(
      fc.property(text, path, value, (t, p, v) => {
        const edited = editOrder(t, p, v);
        // Where it did something, yaml itself reads what was wanted.
        if (edited === t) return;
        const steps = p.split(".");
        const top: unknown = parse(edited, { schema: "failsafe", strict: false });
        const read = steps.reduce<unknown>((at, name) => (at as Record<string, unknown> | null)?.[name], top);
        expect(typeof read === "string" ? read.trim() : read).toBe(v?.trim());
      }),
      { seed: 5, numRuns: 600 },
    );
  });
});
