import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { beginOrder } from "../../src/order/begin.ts";
import type { Order } from "../../src/order/order.ts";
import { readOrder } from "../../src/order/read.ts";
import { sampleArticle } from "../support/sampleArticle.ts";

const text = beginOrder(sampleArticle);
const lines = text.split("\n");
const orderOf = (of: string): Order => {
  const { order, faults } = readOrder(of, "new.yaml", [sampleArticle]);
  expect(faults).toEqual([]);
  return order!;
};
const valuesOf = (order: Order) => order.sections.flatMap((s) => s.dimensions);
const begun = orderOf(text);

/** A setting that is left alone: its line has a # and no space after it. */
const isSetting = (line: string) => /^ *#[^ #]/.test(line);
const settings = lines.flatMap((line, i) => (isSetting(line) ? [i] : []));
const without = (line: string) => line.replace("#", "");
/** Path of the setting in a line, from the lines less deep above it. */
function pathOf(at: number): string {
  const depth = (line: string) => line.search(/[^ #]/);
  const names = [without(lines[at]!).trim().split(":")[0]!];
  let deep = depth(without(lines[at]!));
  for (let i = at - 1; i >= 0; i--) {
    const line = lines[i]!;
    if (/^ *[a-z-]+:$/.test(line) && depth(line) < deep) {
      names.unshift(line.trim().slice(0, -1));
      deep = depth(line);
    }
  }
  return names.join(".");
}

describe("a new order", () => {
  test("reads back without a fault, to the sample and the defaults", () => {
    const short = orderOf(
      "article: plain belt\nfor: Wren, for the fair\nmeasures:\n  waist: 34 1/2 in\nleather:\n  strap:\n    thickness: 8-9 oz\n",
    );
    expect(valuesOf(begun)).toEqual(valuesOf(short));
  });

  test("has every setting once, the sample's set, all others as comments", () => {
    const settable = sampleArticle.sections.flatMap((s) =>
      Object.entries(s.table).flatMap(([name, d]) =>
        d.handed ? [] : [`${s.path}.${name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}`],
      ),
    );
    const set = ["measures.waist", "leather.strap.thickness"];
    expect(settings.map(pathOf).sort()).toEqual(
      [
        "paper",
        "units",
        "margin",
        "overlap",
        "ends-only",
        "shop",
        ...settable.filter((p) => !set.includes(p)),
      ].sort(),
    );
    expect(lines).toContain("article: plain belt");
    expect(lines).toContain("for: Wren, for the fair");
    expect(lines).toContain("  waist: 34 1/2 in");
    expect(lines).toContain("    thickness: 8-9 oz");
  });

  test("keeps to 100 columns, has no spaces at line ends, and ends with one line end", () => {
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(100);
      expect(line).not.toMatch(/\s$/);
    }
    expect(text).toMatch(/[^\n]\n$/);
    expect(text).not.toMatch(/\n\n\n/);
  });

  // A maker takes one # away, and nothing changes but that the value is now given.
  test.each(settings.map((at) => [pathOf(at), at] as const))(
    "stays the same when the # before %s is taken away",
    (path, at) => {
      const order = orderOf(lines.map((line, i) => (i === at ? without(line) : line)).join("\n"));
      for (const d of valuesOf(order)) {
        const was = valuesOf(begun).find((b) => b.key === d.key)!;
        expect(d.origin).toBe(d.key === path ? "given" : was.origin);
        if (d.key === path && was.value === undefined) {
          expect(d.value).toBeGreaterThanOrEqual(d.least!);
          expect(d.value).toBeLessThanOrEqual(d.most!);
        } else if (typeof d.value === "number") {
          // A computed default is written to 0.01 mm.
          expect(Math.abs(d.value - (was.value as number))).toBeLessThanOrEqual(0.01);
        } else expect(d.value).toBe(was.value);
      }
    },
  );

  test("reads without a fault with every # taken away", () => {
    orderOf(lines.map((line) => (isSetting(line) ? without(line) : line)).join("\n"));
  });

  test("explains each setting above its line", () => {
    const above = (line: string) => {
      const at = lines.indexOf(line);
      expect(at).toBeGreaterThan(0);
      const found: string[] = [];
      for (let i = at - 1; lines[i]!.trim().startsWith("# "); i--) found.unshift(lines[i]!.trim().slice(2));
      return found.join(" ");
    };
    expect(above("  waist: 34 1/2 in")).toBe(
      "Round the waist, where the belt lies. 15 3/4 in (400 mm) to 62 31/32 in (1600 mm). Must be given. An example: put your own.",
    );
    expect(above("    #bar: 4 mm")).toBe("Diameter of the bar. 2 mm to 15/32 in (12 mm). Default 4 mm.");
    // Worked out from the sample, with what it follows from.
    expect(above("    #width: 1 in")).toBe(
      "Width of the strap. 15/16 in (23.4 mm) to 1 in (25.7 mm), from buckle inside. Default 1 in, from buckle inside (as wide as the buckle is inside).",
    );
    // 3.3 widths are more than half of five pitches: the width alone decides.
    expect(above("    #tip: 83.82 mm")).toBe(
      "From the first hole to the tip. 1 1/2 in (38.1 mm) to 15 23/32 in (400 mm), from width. Default 83.82 mm, from width (3.3 widths (H30)).",
    );
    expect(above("    #overhang: 5/8 in")).toBe(
      "How far the frame reaches past the bar. 0 in (0 mm) to 1 5/32 in (30 mm). May be left out.",
    );
    expect(above("    #point: english")).toBe(
      "Shape of the strap's end. One of english, round or spear. Default english.",
    );
    expect(above("    #creased: yes")).toBe("A line pressed along both edges. Yes or no. Default yes.");
    expect(above('    #stamp: ""')).toBe("Letters stamped inside. Up to 20 letters. May be left blank.");
    expect(above("  #pitch: 8 per inch")).toMatch(/Default 8 per inch\.$/);
  });

  test("says of a value that the article sets where it comes from", () => {
    const strap = sampleArticle.sections[5]!;
    const { default: _, ...holes } = strap.table.holes as { default?: unknown };
    const followed = {
      ...strap,
      table: { ...strap.table, holes } as unknown as typeof strap.table,
      handOver: (done: Parameters<NonNullable<typeof strap.handOver>>[0]) => ({
        ...strap.handOver!(done),
        holes: { value: 9, kind: "count" as const, name: "holes for the waist", parts: [], inputs: [] },
      }),
    };
    const sections = sampleArticle.sections.map((s) => (s === strap ? followed : s));
    expect(beginOrder({ ...sampleArticle, sections })).toMatch(
      /# 1 to 15\. Default 9, from holes for the waist\.\n {4}#holes: 9\n/,
    );
  });

  test("says that ranges and worked defaults follow the figures in the file", () => {
    const head = lines.slice(0, lines.indexOf("article: plain belt")).join(" ").replaceAll(" # ", " ");
    expect(head).toContain("are worked out for the figures in this file and change with them.");
  });

  test("shows the example that a meaning names, not the middle of the range", () => {
    const belt = articles.find((a) => a.slug === "strap")!;
    const die = beginOrder(belt).split("\n");
    const at = die.findIndex((l) => l.includes("price-per-mm:"));
    expect(die[at]).toBe("  #price-per-mm: 0.05");
    expect(die.slice(at - 3, at).join(" ")).toContain("as in 0.05");
  });

  test("is not made from a sample with faults", () => {
    expect(() => beginOrder({ ...sampleArticle, sample: {} })).toThrow(
      /the sample of plain belt has faults: .*measures\.waist/,
    );
    expect(() =>
      beginOrder({ ...sampleArticle, sample: { ...sampleArticle.sample, "measures.wast": "1" } }),
    ).toThrow(/"wast" is not known/);
  });
});
