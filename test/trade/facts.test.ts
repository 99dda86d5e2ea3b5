import { describe, expect, test } from "vitest";
import harness from "../../fixtures/published/harness-making-1904.json";
import hides from "../../fixtures/published/hides.json";
import holes from "../../fixtures/published/holes-and-hardware.json";
import horses from "../../fixtures/published/horse-measures.json";
import thickness from "../../fixtures/published/leather-thickness.json";
import papers from "../../fixtures/published/paper-sizes.json";
import strength from "../../fixtures/published/strength.json";
import threads from "../../fixtures/published/thread-and-stitches.json";
import { type FactTable, factTables, sayCell, standingOf } from "../../src/trade/facts/index.ts";
import { sayFacts } from "../../src/trade/facts/say.ts";
import { factTable } from "../../src/trade/facts/table.ts";
import { HORSE_SIZES, sizesFor } from "../../src/trade/horseSizes.ts";

// The built-in tables against the published figures: each fixture names its source.

const INCH = 25.4;

const table = (name: string): FactTable => factTables.find((t) => t.name === name)!;
/** The cells of a row found by its first cell. */
const row = (name: string, first: string | number): readonly (string | number | undefined)[] =>
  table(name).rows.find((r) => r.cells[0] === first)!.cells;

describe.each(factTables.map((t) => [t.name, t] as const))("%s", (name, t) => {
  test("asks for one plain word, and it is its own", () => {
    expect(name).toMatch(/^[a-z]+$/);
    expect(factTables.filter((o) => o.name === name)).toHaveLength(1);
  });

  test("says on each row how it is known, and where from", () => {
    for (const r of t.rows) {
      const sourceless = r.standing === "from memory" || r.standing === "common practice, no source";
      expect(r.source.startsWith(r.standing)).toBe(sourceless);
      expect(r.source.length).toBeGreaterThan(10);
      for (const source of r.source.split("; ")) expect(t.sources).toContain(source);
    }
    expect(new Set(t.sources).size).toBe(t.sources.length);
  });

  test("has figures where its columns say figures, and words where words", () => {
    for (const r of t.rows) {
      for (const [i, cell] of r.cells.entries()) {
        if (cell !== undefined)
          expect(typeof cell).toBe(t.columns[i]!.kind === "words" ? "string" : "number");
      }
    }
  });

  test("prints, in inches and in mm, with every source", () => {
    for (const units of ["in", "mm"] as const) {
      const text = sayFacts(t, units).join("\n");
      expect(text).not.toMatch(/undefined|NaN|\[object/);
      for (const source of t.sources) expect(text).toContain(source);
    }
  });
});

describe("leather thickness", () => {
  const { T1, T3, T3inch, T4, bridle } = thickness.figures;

  test("an ounce and an iron are what the standard says", () => {
    const [, irons, inch, mm] = row("leather", 1);
    expect(inch).toBe(`${T1.ounceInch[0]}/${T1.ounceInch[1]}`);
    // The standard prints 0.396 and 0.53.
    expect(Math.floor((mm as number) * 1000) / 1000).toBe(T1.ounceMmPrinted);
    expect((mm as number) / (irons as number)).toBeCloseTo(T1.ironMmPrinted, 2);
  });

  test("ounces in irons, as a tannery's table has them", () => {
    for (const [i, oz] of T4.ounces.entries()) expect(row("leather", oz)[1]).toBe(T4.irons[i]);
  });

  test("ounces in mm, within a supplier's rounding to 0.4 mm an ounce", () => {
    for (const [i, oz] of T3.ounces.entries()) {
      expect(Math.abs((row("leather", oz)[3] as number) - T3.mm[i]!)).toBeLessThan(0.0033 * oz);
    }
  });

  test("ounces in fractions of an inch", () => {
    const parts = T3inch.ounces.map((oz) => (row("leather", oz)[2] as string).split("/").map(Number));
    expect(parts.map(([top, bottom]) => top! / bottom!)).toEqual(T3inch.inch);
  });

  test("the least for black bridle leather, 0.1 in, lies between 6 and 7 oz", () => {
    const least = bridle.least * INCH;
    expect(row("leather", 6)[3] as number).toBeLessThan(least);
    expect(row("leather", 7)[3] as number).toBeGreaterThan(least);
  });
});

describe("punches", () => {
  const { H35 } = harness.figures;
  const words = table("punches").rows.map((r) => r.cells[0]);

  test("the handbook's numbers and the size it gives, pp. 13-14", () => {
    expect(row("punches", `round, No. ${H35.round[1]} of 1904`)[1]).toBeCloseTo(H35.round16 * INCH, 9);
    expect(words).toContain(`round, No. ${H35.round[0]} to ${H35.round[1]! - 1} of 1904`);
    expect(words).toContain(`oval, No. ${H35.oval[0]} to ${H35.oval[1]} of 1904`);
    expect(words).toContain(`crew, No. ${H35.crew[0]} to ${H35.crew[1]} of 1904`);
  });

  test("sizes that the handbook doesn't give are not made up", () => {
    expect(row("punches", "round, No. 1 to 15 of 1904")[1]).toBeUndefined();
  });

  test("a bench's own round ones span the usual range, said to be habit", () => {
    const own = table("punches").rows.filter((r) => r.cells[0] === "round, by its size");
    const sizes = own.map((r) => r.cells[1] as number);
    expect([Math.min(...sizes), Math.max(...sizes)]).toEqual([holes.figures.P12.from, holes.figures.P12.to]);
    expect(new Set(own.map((r) => r.standing))).toEqual(new Set(["common practice, no source"]));
  });

  test("the hole of the buckle tear test, and that makers' numbers differ", () => {
    expect(row("punches", "round, buckle tear test")[1]).toBe(strength.figures.L3.mm);
    expect(table("punches").note).toContain("Makers' numbers differ");
  });
});

describe("stitch pitches", () => {
  const { S14, S16 } = threads.figures;

  test("irons as sold, beside an inch shared out", () => {
    for (const [i, teeth] of S16.teeth.entries()) {
      const [, shared, sold] = row("stitches", teeth);
      expect(sold).toBe(S16.mm[i]);
      expect(shared as number).toBeLessThan(sold as number);
    }
    // Stitch length = 25.4 ÷ stitches per inch: 2.5 mm is 10.16 to the inch.
    expect(((row("stitches", 10)[1] as number) * 10) / S14.stitchesPerInch).toBeCloseTo(S14.pitch, 9);
  });

  test("the most that an iron strays is what the note says", () => {
    const strays = S16.teeth.map((teeth, i) => (S16.mm[i]! * teeth) / INCH - 1);
    expect(table("stitches").note).toContain(`up to ${Math.ceil(100 * Math.max(...strays))} %`);
  });

  test("what the handbook sews with them", () => {
    for (const { stitches, on, page } of harness.figures.H34.work) {
      const [work] = on.split(",");
      for (const n of stitches) {
        const found = table("stitches").rows.find((r) => r.cells[0] === n)!;
        const words = work === "box-loop blind stitches" ? "blind stitches of a box loop" : work!;
        expect(found.cells[3]).toContain(words);
        expect(found.source).toContain(page);
      }
    }
  });

  test("only the shared inch is worked out; the rest was read", () => {
    const t = table("stitches");
    const standings = t.columns.map((c) => standingOf(t.rows[5]!, c));
    expect(standings).toEqual([
      "read at its source",
      "worked out from figures read",
      "read at its source",
      "read at its source",
    ]);
    expect(sayFacts(t).join("\n")).toContain('"an inch shared out, mm": worked out from figures read');
  });
});

test("threads are the published rows", () => {
  expect(table("threads").rows.map((r) => r.cells)).toEqual(
    threads.figures.S13.rows.map((r) => [r.cords, r.number, r.for]),
  );
});

describe("hardware", () => {
  test("eyelets, snaps and threads are the published ones", () => {
    const { P3, P6, P13, P16 } = holes.figures;
    for (const [i, number] of P16.number.entries())
      expect(row("hardware", `eyelet No. ${number}`)[2]).toBe(P16.mm[i]);
    expect(row("hardware", "snap, line 20")[2]).toBe(P3.line20);
    expect(row("hardware", "snap, line 24")[2]).toBeCloseTo((24 / P3.linesPerInch) * INCH, 9);
    expect(row("hardware", "No. 8 thread")[2]).toBeCloseTo(
      (P6.number0 + 8 * (P6.number1 - P6.number0)) * INCH,
      2,
    );
    expect(row("hardware", "copper rivet No. 9")[2]).toBe(P13.number9);
    expect(row("hardware", "copper rivet No. 12")[2]).toBe(P13.number12);
  });

  test("what was recalled is said to be", () => {
    const recalled = table("hardware")
      .rows.filter((r) => r.standing === "from memory")
      .map((r) => r.cells[0]);
    expect(recalled).toEqual(["copper rivet No. 9", "copper rivet No. 12"]);
  });
});

describe("horse sizes", () => {
  const { M1, M3 } = horses.figures;

  test("headstalls by their measure over the poll", () => {
    const cells = M3.rows.map((r) => [r.size, ...[r.from, r.to, ...r.browband].map((n) => n * INCH)]);
    expect(table("headstalls").rows.map((r) => r.cells)).toEqual(cells);
    expect(table("headstalls").note).toContain("mouth corner");
  });

  test("bridles by part, as the chart has them in both units", () => {
    for (const part of ["headpiece", "browband", "cheek", "noseband"] as const) {
      const found = table("bridles")
        .rows.filter((r) => r.cells[1] === part)
        .map((r) => r.cells);
      expect(found).toEqual(M1.sizes.map((size, i) => [size, part, M1.cm[part][i], M1.inches[part][i]]));
    }
  });

  test("the chart's two units agree to an inch", () => {
    for (const { cells } of table("bridles").rows) {
      expect(Math.abs((cells[2] as number) - (cells[3] as number) * 2.54)).toBeLessThan(2.54);
    }
  });

  test("a headstall's size: none, one, or two where ranges overlap; ends belong to both", () => {
    const sizes = (inches: number): readonly string[] => sizesFor(inches * INCH);
    expect(sizes(37.9)).toEqual([]);
    expect(sizes(38)).toEqual(["cob or small"]);
    expect(sizes(41)).toEqual(["cob or small", "regular"]);
    expect(sizes(41.5)).toEqual(["regular"]);
    expect(sizes(43.5)).toEqual(["regular", "large or mule"]);
    expect(sizes(46)).toEqual(["large or mule"]);
    expect(sizes(46.1)).toEqual([]);
    expect(sizesFor(41 * INCH + 1e-9)).toHaveLength(2);
    expect(sizesFor(Number.NaN)).toEqual([]);
  });

  test("from the least to the most of them there is no gap", () => {
    const [first, last] = [HORSE_SIZES[0]!.from, HORSE_SIZES.at(-1)!.to];
    for (let mm = first; mm <= last; mm += 1) expect(sizesFor(mm).length).toBeGreaterThan(0);
  });
});

describe("papers", () => {
  test("are the published ones", () => {
    const { R1, R2 } = papers.figures;
    const mm = (paper: string) => row("papers", paper).slice(1);
    const inMm = (inches: number): number => Number((inches * INCH).toFixed(6));
    expect(row("papers", "a4").slice(1)).toEqual(R1.a4);
    expect(row("papers", "a3").slice(1)).toEqual(R1.a3);
    expect(mm("letter")).toEqual(R2.letter.map(inMm));
    expect(mm("tabloid")).toEqual(R2.tabloid.map(inMm));
  });

  test("legal has no source, and says so", () => {
    expect(table("papers").rows.find((r) => r.cells[0] === "legal")!.standing).toBe(
      "common practice, no source",
    );
  });
});

describe("hides", () => {
  const { Y1, Y2, Y8 } = hides.figures;

  test("are the published ones", () => {
    expect(row("hides", "whole hide").slice(1, 4)).toEqual([
      Y1.whole.join(" to "),
      ...Y1.wholeFeet.map((f) => f * 12 * INCH).reverse(),
    ]);
    expect(row("hides", "half hide")[1]).toContain(String(Y1.half));
    expect(row("hides", "double shoulder")[1]).toContain(String(Y1.doubleShoulder));
    expect(row("hides", "bend")[4]).toContain(`${Y2.thicker.join(" to ")} oz thicker`);
    expect(row("hides", "strap butt").slice(2, 4)).toEqual([Y8.from * INCH, Y8.to * INCH]);
  });
});

describe("a table", () => {
  test("with a cell too few throws: our own fault", () => {
    const columns = [
      { title: "a", kind: "words" },
      { title: "b", kind: "length" },
    ] as const;
    const rows = [{ cells: ["x"], standing: "from memory", source: "from memory" }] as const;
    expect(() => factTable({ name: "t", title: "T", columns, rows })).toThrow(
      "facts t: 1 cells in 2 columns",
    );
  });

  test("prints lengths in the maker's units, and a dash where nothing is known", () => {
    expect(sayCell(15.875, "length", "in")).toBe("5/8 in (15.9 mm)");
    expect(sayCell(15.875, "length", "mm")).toBe("15.9 mm");
    expect(sayCell(undefined, "length", "in")).toBe("–");
    expect(sayCell("about 24", "words", "in")).toBe("about 24");
  });
});
