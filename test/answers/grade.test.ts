import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { type Grade, type GradeResult, grade } from "../../src/answers/grade.ts";
import { gradeCsv, sayGrade } from "../../src/answers/sayGrade.ts";
import { makeJob } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { HORSE_SIZES } from "../../src/trade/horseSizes.ts";
import { orderText } from "../support/madeOf.ts";

const SHOP = { file: "shop.yaml", text: readFileSync("templates/shop.yaml", "utf8") };
const JUNIPER = orderText("juniper-headstall");
const WREN = orderText("wren-flap-purse");
const INCH = 25.4;

const make = (text: string) => makeJob(text, "a.yaml", { shop: SHOP });
const graded = (text: string, names?: string): GradeResult => grade(text, "a.yaml", names, make);
function tableOf(text: string, names?: string): Grade {
  const result = graded(text, names);
  if (!result.ok) throw new Error(result.messages.join("\n"));
  return result.grade;
}
function jobOf(text: string): Job {
  const result = make(text);
  if (!result.made) throw new Error(JSON.stringify(result.faults));
  return result.job;
}
const messages = (r: GradeResult): string => (r.ok ? "" : r.messages.join("\n"));

/** Every size of a job as the table has them. */
const sizesOf = (job: Job): readonly (readonly [string, number])[] => [
  ...job.made.sizes.map((q) => [`: ${q.name}`, q.value] as const),
  ...job.made.pieces.flatMap((p) => p.sizes.map((q) => [`${p.id}: ${q.name}`, q.value] as const)),
];
const column = (t: Grade, i: number): readonly (readonly [string, number])[] =>
  [...t.rows, ...t.same].flatMap((r) => {
    const v = r.values[i];
    return v === undefined ? [] : [[`${r.piece}: ${r.name}`, v] as const];
  });

describe("a workshop's own sizes", () => {
  const BY_HAND: Readonly<Record<string, readonly [string, string]>> = {
    pony: ["36", "7 1/2"],
    cob: ["39 1/2", "8 1/2"],
    large: ["44", "9 1/2"],
  };

  test("each column is what comes of writing its measures into the order by hand", () => {
    const t = tableOf(JUNIPER, "large, Pony,cob");
    expect(t.columns.map((c) => [c.size, c.state])).toEqual([
      ["pony", "made"],
      ["cob", "made"],
      ["large", "made"],
    ]);
    for (const [i, { size }] of t.columns.entries()) {
      const [poll, ear] = BY_HAND[size]!;
      const text = JUNIPER.replace("over-poll: 41 1/2", `over-poll: ${poll}`).replace(
        "ear-base: 9 ",
        `ear-base: ${ear} `,
      );
      expect(new Map(column(t, i)), size).toEqual(new Map(sizesOf(jobOf(text))));
    }
  });

  test("what changes and what doesn't are told apart, each size once", () => {
    const t = tableOf(JUNIPER, "pony,large");
    const changing = t.rows.map((r) => r.name);
    expect(changing).toContain("crown cut length");
    expect(t.same.map((r) => r.name)).toContain("cheek cut length");
    for (const r of t.rows) expect(r.values[0], r.name).not.toBe(r.values[1]);
    for (const r of t.same) expect(r.values[0], r.name).toBeCloseTo(r.values[1]!, 2);
    const crown = t.rows.find((r) => r.name === "crown cut length")!;
    // The cheeks are given, so the crown takes the whole difference of 44 − 36 in.
    expect(crown.values[1]! - crown.values[0]!).toBeCloseTo(8 * INCH, 6);
    expect(t.fixed).toContain("pieces.cheek.effective-length");
  });

  test("the order's own text is not needed to have the measure: one that lacks it gets it", () => {
    const own = {
      ...SHOP,
      text: SHOP.text.replace("small: width 7 in", "small: shoulder-drop 18 in, width 8 in"),
    };
    const text = WREN.replace(/^ *shoulder-drop:.*\n/m, "");
    expect(text).not.toBe(WREN);
    const result = grade(text, "a.yaml", "small", (t) => makeJob(t, "a.yaml", { shop: own }));
    const job = make(
      text
        .replace("height: 6 1/4", "height: 5 1/2")
        .replace("depth: 2 1/4", "depth: 2")
        .replace("measures:", "measures:\n  shoulder-drop: 18"),
    );
    expect(result.ok && job.made && new Map(column(result.grade, 0))).toEqual(
      job.made && new Map(sizesOf(job.job)),
    );
  });

  test("a size that its checks refuse says so in its column, and the status is 1", () => {
    const result = graded(WREN, "small,market");
    if (!result.ok) throw new Error(messages(result));
    expect(result.status).toBe(1);
    expect(result.grade.columns.map((c) => c.state)).toEqual(["has errors", "made"]);
    expect(sayGrade(result.grade).join("\n")).toMatch(/small: front: The phone does not go in/);
  });

  test("a size whose order contradicts itself has an empty column, and the others are made", () => {
    const long = JUNIPER.replace("effective-length: 10", "effective-length: 12");
    const t = tableOf(long, "pony,full");
    expect(t.columns.map((c) => c.state)).toEqual(["contradicts itself", "made"]);
    expect(t.columns[0]!.reasons.join()).toContain("pieces.cheek.effective-length");
    expect([...t.rows, ...t.same].every((r) => r.values[0] === undefined)).toBe(true);
    expect(column(t, 1).length).toBeGreaterThan(20);
    expect(sayGrade(t).join("\n")).toMatch(/contradicts itself/);
  });
});

describe("sizes read at a source", () => {
  test("are made at the middle of their range, measured as the source does; the ear stays the order's", () => {
    const withRise = JUNIPER.replace("  ear-base:", "  rise: 1\n  ear-base:");
    const t = tableOf(withRise, "regular");
    const [regular] = t.columns;
    const { from, to } = HORSE_SIZES.find((s) => s.name === "regular")!;
    // 41 to 44 in: americantrailgear.com, Measurements (read; see the reference beside HORSE_SIZES).
    expect([from / INCH, to / INCH]).toEqual([41, 44]);
    const poll = t.rows.concat(t.same).find((r) => r.piece === "" && r.name === "over poll, ring to ring");
    expect(poll?.values[0]).toBeCloseTo((42.5 - 2) * INCH, 6);
    expect(regular?.reach).toMatchObject({ from, to });
    // Five holes 3/4 in apart on both sides: 2 × 2 × 3/4 in each way of the middle.
    expect(regular?.reach?.shortest).toBeCloseTo((42.5 - 3) * INCH, 6);
    expect(regular?.reach?.longest).toBeCloseTo((42.5 + 3) * INCH, 6);
    expect(t.kept).toContainEqual({ measure: "measures.ear-base", sizes: ["regular"] });
    expect(t.riseUnknown).toBe(false);
    const said = sayGrade(t).join("\n");
    expect(said).toContain(
      "regular: sold as 41 in to 44 in; the holes reach 39 1/2 in to 45 1/2 in: all of it",
    );
    expect(said).toContain("mouth corner");
  });

  test("without the bit's rise that is said; too few holes don't cover the range", () => {
    const few = JUNIPER.replace("holes: 5", "holes: 1");
    const t = tableOf(few, "regular");
    expect(t.riseUnknown).toBe(true);
    const said = sayGrade(t).join("\n");
    expect(said).toContain("all but its shortest and its longest");
    expect(said).toContain("measures.rise");
  });

  test("an order without a shop file has those alone", () => {
    const alone = grade(JUNIPER.replace("shop: shop.yaml", ""), "a.yaml", undefined, make);
    expect(alone.ok && alone.grade.columns.map((c) => c.size)).toEqual(HORSE_SIZES.map((s) => s.name));
  });
});

describe("what can't be graded", () => {
  test("an article without sizes says what to write, and that can be written", () => {
    const text = "article: strap\nunits: in\nmeasures: { width: 1 }\npieces: { strap: { length: 30 } }\n";
    const none = grade(text, "a.yaml", undefined, (t) => makeJob(t, "a.yaml"));
    expect(none.ok || none.status).toBe(2);
    expect(messages(none)).toContain("no source: enter your own");
    const example = messages(none).slice(messages(none).indexOf("sizes:"));
    const own = { file: "own.yaml", text: `${example}\n` };
    const named = `${text}shop: own.yaml\n`;
    const after = grade(named, "a.yaml", undefined, (t) => makeJob(t, "a.yaml", { shop: own }));
    expect(after.ok && after.grade.columns.map((c) => c.size)).toEqual(["your-size"]);
  });

  test("an unknown size gets the nearest", () => {
    const wrong = graded(JUNIPER, "pony,larg");
    expect(wrong.ok || wrong.status).toBe(2);
    expect(messages(wrong)).toContain('To mend: write "large".');
  });

  test("an order that can't be read says why", () => {
    const faulty = graded(JUNIPER.replace("over-poll", "over-pole"));
    expect(faulty.ok || faulty.status).toBe(2);
    expect(messages(faulty)).toContain("over-pole");
  });
});

describe("the table as CSV", () => {
  test("another reader gets the sizes in mm, one column for each", () => {
    const t = tableOf(JUNIPER, "pony,full");
    const read = parse(gradeCsv(t), { columns: true }) as Record<string, string>[];
    // And the price of each, for the order has a shop.
    expect(read).toHaveLength(t.rows.length + t.same.length + 1);
    const poll = read.find((r) => r.size === "measured over poll");
    expect(poll).toEqual({
      piece: "",
      size: "measured over poll",
      unit: "mm",
      pony: "914.4",
      full: "1054.1",
    });
  });
});

describe("sizes that set more than measures", () => {
  const STRAP = orderText("heron-bag-strap");
  const sizes = (lines: string): string => `${SHOP.text.replace(/^sizes:[\s\S]*/m, "")}\nsizes:\n${lines}`;
  const withSizes = (text: string, lines: string, names?: string): Grade => {
    const shop = { ...SHOP, text: sizes(lines) };
    const result = grade(text, "a.yaml", names, (t) => makeJob(t, "a.yaml", { shop }));
    if (!result.ok) throw new Error(result.messages.join("\n"));
    return result.grade;
  };

  test("a strap's length is set by its section: each column is that long, and costs what its order costs", () => {
    const t = withSizes(
      `shop: shop.yaml\n${STRAP}`,
      "  strap:\n    short: pieces.strap.length 30 in\n    long: pieces.strap.length 40 in\n",
    );
    expect(t.columns.map((c) => c.state)).toEqual(["made", "made"]);
    const length = t.rows.find((r) => r.name === "strap length")!;
    expect(length.values.map((v) => v! / INCH)).toEqual([expect.closeTo(30, 6), expect.closeTo(40, 6)]);
    expect(t.fixed).not.toContain("pieces.strap.length");
    const [short, long] = t.columns.map((c) => c.price!.total);
    expect(long).toBeGreaterThan(short!);
    const said = sayGrade(t).join("\n");
    expect(said).toMatch(/^order +pieces\.strap\.length +30 in +40 in$/m);
    expect(said).toContain((short! / 100).toFixed(2));
  });

  test("own sizes from ring to ring and published ones beside them: each column says how it is measured", () => {
    const t = withSizes(
      JUNIPER.replace(/^ *measured-from:.*$/m, ""),
      "  one-ear-headstall:\n    mine: over-poll 41 in\n",
    );
    expect(t.columns.map((c) => c.measured)).toEqual([
      "bit ring to bit ring",
      ...HORSE_SIZES.map(() => "mouth corner to mouth corner"),
    ]);
    expect(sayGrade(t).join("\n")).toMatch(/^ +measured from +bit ring to bit ring +mouth corner/m);
  });

  test("where all are measured alike the head says nothing of it", () => {
    expect(tableOf(JUNIPER, "pony,large").columns.every((c) => c.measured === undefined)).toBe(true);
  });
});
