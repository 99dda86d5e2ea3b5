import { describe, expect, test } from "vitest";
import type { DimensionTable } from "../../src/model/dimension.ts";
import type { Fault } from "../../src/model/finding.ts";
import { resolve } from "../../src/model/resolve.ts";
import { CUT, faultsOf, source, strap, work } from "../support/resolving.ts";

describe("faults of one line", () => {
  const cases: readonly (readonly [string, Record<string, string>, Fault])[] = [
    [
      "an unknown key: the nearest one",
      { widht: "16" },
      {
        code: "unknown-key",
        key: "pieces.strap.widht",
        place: { line: 11, column: 7 },
        problem: '"widht" is not known here',
        allowed: "width, leather, point, crease, remark, cut, holes, pitch, row or spare",
        mend: "write width",
      },
    ],
    [
      "an unknown key that is like no other",
      { "buckle-maker": "x" },
      {
        code: "unknown-key",
        key: "pieces.strap.buckle-maker",
        place: { line: 11, column: 7 },
        problem: '"buckle-maker" is not known here',
        allowed: "width, leather, point, crease, remark, cut, holes, pitch, row or spare",
        mend: "take the line out",
      },
    ],
    [
      "a length that can't be read",
      { width: "wide" },
      {
        code: "unreadable",
        key: "pieces.strap.width",
        place: { line: 11, column: 7 },
        problem: 'got "wide", which cannot be read as a length',
        mend: 'write a number and its unit, as in "41 1/2 in", "1054 mm" or "105.4 cm"',
      },
    ],
    [
      "not a number",
      { width: ".nan" },
      {
        code: "unreadable",
        key: "pieces.strap.width",
        place: { line: 11, column: 7 },
        problem: 'got ".nan", which is not a length',
        mend: 'write a number and its unit, as in "41 1/2 in", "1054 mm" or "105.4 cm"',
      },
    ],
    [
      "a word that is no choice: the nearest one",
      { point: "English" },
      {
        code: "unreadable",
        key: "pieces.strap.point",
        place: { line: 11, column: 7 },
        problem: 'got "English"',
        allowed: "english, round or spear",
        mend: "write english",
      },
    ],
    [
      "a word that is like no choice",
      { point: "zigzag-edge" },
      {
        code: "unreadable",
        key: "pieces.strap.point",
        place: { line: 11, column: 7 },
        problem: 'got "zigzag-edge"',
        allowed: "english, round or spear",
        mend: "write one of the allowed words",
      },
    ],
    [
      "neither yes nor no",
      { crease: "perhaps" },
      {
        code: "unreadable",
        key: "pieces.strap.crease",
        place: { line: 11, column: 7 },
        problem: 'got "perhaps"',
        allowed: "yes or no",
        mend: "write yes or no",
      },
    ],
    [
      "too many letters, counted as a reader counts them",
      { remark: "🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴" },
      {
        code: "unreadable",
        key: "pieces.strap.remark",
        place: { line: 11, column: 7 },
        problem: "got 13 letters",
        allowed: "up to 12 letters",
        mend: "shorten it",
      },
    ],
    [
      "too small",
      { width: "-3" },
      {
        code: "range",
        key: "pieces.strap.width",
        place: { line: 11, column: 7 },
        problem: "width: got -3 mm",
        allowed: "8 mm to 60 mm",
        mend: "raise width to at least 8 mm",
      },
    ],
    [
      "too large",
      { holes: "22" },
      {
        code: "range",
        key: "pieces.strap.holes",
        place: { line: 11, column: 7 },
        problem: "how many holes: got 22",
        allowed: "1 to 21",
        mend: "lower holes to at most 21",
      },
    ],
    [
      "less than a bound that follows from another value: a contradiction, and from which",
      { pitch: "12" },
      {
        code: "contradiction",
        key: "pieces.strap.pitch",
        place: { line: 11, column: 7 },
        problem: "hole to hole: got 12 mm",
        allowed: "16 mm (from strap width) to 80 mm",
        mend: "raise pitch to at least 16 mm",
      },
    ],
    [
      "over the fixed one of its two bounds: out of range",
      { pitch: "81", holes: "2" },
      {
        code: "range",
        key: "pieces.strap.pitch",
        place: { line: 11, column: 7 },
        problem: "hole to hole: got 81 mm",
        allowed: "16 mm (from strap width) to 80 mm",
        mend: "lower pitch to at most 80 mm",
      },
    ],
    [
      "a default that no longer fits: what it follows from, and that it can be given",
      { holes: "21" },
      {
        code: "contradiction",
        key: "pieces.strap.row",
        place: { line: 9, column: 1 },
        problem: "row of holes: got 380 mm (by default, from strap holes, strap pitch)",
        allowed: "10 mm to 300 mm (from strap cut)",
        mend: "give row, at most 300 mm",
      },
    ],
  ];
  test.each(cases)("%s", (_, texts, fault) => expect(faultsOf({ ...CUT, ...texts })).toEqual([fault]));

  test("missing: what it is for, and where to write it", () => {
    expect(faultsOf({})).toEqual([
      {
        code: "missing",
        key: "pieces.strap.cut",
        place: { line: 9, column: 1 },
        problem: "length to cut: not given, and it has no default",
        allowed: "100 mm to 2000 mm",
        mend: "add cut under pieces.strap, as in cut: 1050 mm",
      },
    ]);
    expect(faultsOf({}, { section: "" })[0]?.mend).toBe("add cut at the top level, as in cut: 1050 mm");
  });

  test("without a place for the section there is none in the fault", () => {
    const { place: _, ...rest } = {
      place: 0,
      table: strap,
      section: "s",
      label: "",
      given: {},
      units: "mm" as const,
      file: "f",
    };
    expect("place" in resolve(rest).faults[0]!).toBe(false);
  });

  test("inches are said with millimetres beside, the mend in inches alone", () => {
    expect(faultsOf({ cut: "1 in" }, { units: "in" })[0]).toMatchObject({
      problem: "length to cut: got 1 in (25.4 mm)",
      // 78 3/4 in are 2000.25 mm: the bound is rounded inward, so that it passes as written.
      allowed: "3 15/16 in (100 mm) to 78 23/32 in (2000 mm)",
      mend: "raise cut to at least 3 15/16 in",
    });
  });

  test("what would read like the bound that it crosses is said to the last figure", () => {
    expect(faultsOf({ ...CUT, width: "7.99" })[0]).toMatchObject({
      problem: "width: got 7.99 mm",
      allowed: "8 mm to 60 mm",
    });
    expect(faultsOf({ ...CUT, spare: "20.02" })[0]).toMatchObject({
      problem: "spare: got 20.02 mm",
      allowed: "1 mm to 20 mm",
    });
  });

  test("so with angles and ratios, and with thickness and pitch", () => {
    const close = {
      open: { kind: "angle", least: 0, most: Math.PI / 3, means: "open", source },
      ease: { kind: "ratio", least: 0.25, most: 1, means: "ease", source },
      fold: { kind: "thickness", least: 2, most: 3, means: "fold", source },
      stitch: { kind: "pitch", least: 2, most: 3, means: "stitch", source },
    } as const satisfies DimensionTable;
    const { faults } = work(close, { open: "60.01", ease: "0.24999", fold: "3.001 mm", stitch: "3.001 mm" });
    expect(faults.map((f) => `${f.problem}; ${f.allowed}`)).toEqual([
      "open: got 60.01°; 0° to 60°",
      "ease: got 0.24999; 0.25 to 1",
      "fold: got 3.001 mm; 2 mm to 3 mm",
      "stitch: got 3.001 mm; 2 mm to 3 mm",
    ]);
  });

  test("a message shows no more of a text than a person needs, and nothing unseen", () => {
    const long = faultsOf({ ...CUT, point: "x".repeat(3000) })[0]!;
    expect(long.problem.length).toBeLessThan(60);
    const unseen = `\u001b[31m`;
    expect(faultsOf({ ...CUT, point: unseen })[0]!.problem).toBe('got "[U+001B][31m"');
    expect(faultsOf({ ...CUT, "\u202ewidth": "3" })[0]!.problem).toBe('"[U+202E]width" is not known here');
  });
});

describe("slips of sign and of unit", () => {
  const mendOf = (texts: Record<string, string>, units: "in" | "mm" | "cm" = "mm") =>
    faultsOf({ ...CUT, ...texts }, { units })[0]!.mend;

  test("a minus is taken away where the number fits without it", () => {
    expect(mendOf({ cut: "-39 in" })).toBe("take the minus away");
    expect(mendOf({ cut: "-39 in" }, "in")).toBe("take the minus away");
    // Without its minus it would not fit either.
    expect(mendOf({ cut: "-39 mm" })).toBe("raise cut to at least 100 mm");
  });

  test.each([
    ["39 mm", "raise cut to at least 100 mm, or did you mean 39 in or 39 cm?"],
    ["41 1/2 mm", "raise cut to at least 100 mm, or did you mean 41 1/2 in?"],
    ["39", "raise cut to at least 100 mm, or did you mean 39 in or 39 cm?"],
    ["1054 cm", "lower cut to at most 2000 mm, or did you mean 1054 mm?"],
    ['1054"', "lower cut to at most 2000 mm, or did you mean 1054 mm?"],
    ["3 mm", "raise cut to at least 100 mm"],
    ["10 ft 2 in", "lower cut to at most 2000 mm"],
  ])("%s: the unit that would fit is offered beside", (cut, mend) => expect(mendOf({ cut })).toBe(mend));

  test("not where the range follows from other values", () => {
    expect(mendOf({ width: "16", pitch: "2 mm" })).toBe("raise pitch to at least 16 mm");
  });
});

describe("an example for what is missing", () => {
  const mendOf = (d: DimensionTable[string], more: Parameters<typeof work>[2] = {}) =>
    work({ size: d }, {}, more as object).faults[0]!;
  const length = { kind: "length", least: 150, most: 305, means: "size", source } as const;

  test("is the article's where there is one that fits, else from the middle of the range", () => {
    expect(mendOf(length, { units: "in" })).toMatchObject({
      allowed: "5 29/32 in (150 mm) to 12 in (305 mm)",
      mend: "add size under pieces.strap, as in size: 9 in",
    });
    expect(mendOf(length, { sample: { size: "8 1/2 in" } }).mend).toMatch(/, as in size: 8 1\/2 in$/);
    expect(mendOf(length, { sample: { size: "85 in" } }).mend).toMatch(/, as in size: 230 mm$/);
  });

  test("of a choice one of its words, of an odd number an odd one", () => {
    expect(mendOf({ kind: "choice", choices: ["round", "spear"], means: "size", source })).toMatchObject({
      allowed: "round or spear",
      mend: "add size under pieces.strap, as in size: round",
    });
    expect(mendOf({ kind: "count", least: 1, most: 7, odd: true, means: "size", source }).mend).toMatch(
      /: [1357]$/,
    );
  });
});

describe("several faults", () => {
  test("are all told at once", () => {
    const faults = faultsOf({ widht: "3", point: "oval", holes: "0", leather: "9", spare: "50" });
    expect(faults.map((f) => [f.code, f.key.split(".").at(-1)])).toEqual([
      ["unknown-key", "widht"],
      ["unreadable", "leather"],
      ["unreadable", "point"],
      ["missing", "cut"],
      ["range", "holes"],
      ["range", "spare"],
    ]);
  });

  test("no values come of them", () => {
    const r = work(strap, { ...CUT, holes: "0" });
    expect(r.values).toBeUndefined();
    expect(r.resolved.map((d) => d.key)).not.toContain("pieces.strap.holes");
    expect(r.resolved.map((d) => d.key)).toContain("pieces.strap.width");
  });

  test("an unknown key alone is one too", () =>
    expect(work(strap, { ...CUT, x: "1" }).values).toBeUndefined());
});

describe("one broken line makes one fault", () => {
  test("not a second one where its value is needed", () => {
    expect(faultsOf({ ...CUT, width: "wide" }).map((f) => f.key)).toEqual(["pieces.strap.width"]);
    expect(faultsOf({ cut: "10000" }).map((f) => f.key)).toEqual(["pieces.strap.cut"]);
    expect(faultsOf({ ...CUT, holes: "900" }).map((f) => f.key)).toEqual(["pieces.strap.holes"]);
  });

  test("what doesn't need it is judged all the same", () => {
    expect(faultsOf({ ...CUT, width: "wide", spare: "50" }).map((f) => f.key)).toEqual([
      "pieces.strap.width",
      "pieces.strap.spare",
    ]);
  });

  test("a misspelt key is not missing as well", () => {
    expect(faultsOf({ cutt: "600" }).map((f) => f.mend)).toEqual(["write cut"]);
  });

  test("a misspelt twin of a key that was given is taken out", () => {
    expect(faultsOf({ ...CUT, cutt: "600" }).map((f) => f.mend)).toEqual([
      "take the line out; cut is given already",
    ]);
  });
});
