import { describe, expect, test } from "vitest";
import { faultStatus } from "../../src/order/faults.ts";
import { readOrder } from "../../src/order/read.ts";
import { BUCKLE, KEEPER, MEASURES, otherArticle, STRAP, sampleArticle } from "../support/sampleArticle.ts";

const articles = [sampleArticle, otherArticle];
const read = (text: string) => readOrder(text, "wren.yaml", articles);
const belt = (lines = "") => `article: plain belt\nmeasures:\n  waist: 34 1/2\n${lines}`;
/** Code, path, line and column of each fault. */
const told = (text: string) =>
  read(text).faults.map((f) => `${f.code} ${f.key} ${f.place?.line}:${f.place?.column}`);

describe("an order without a fault", () => {
  test("is short, and has a value for everything", () => {
    const { order, faults } = read(belt());
    expect(faults).toEqual([]);
    expect(order).toMatchObject({ file: "wren.yaml", forWhom: "", units: "in", article: sampleArticle });
    expect(order?.paper).toMatchObject({ name: "letter", width: 215.9, height: 279.4 });
    expect(order?.text).toBe(belt());
    // 34 1/2 in, 1 in = 25.4 mm exactly.
    expect(order?.values.of(MEASURES).waist.value).toBeCloseTo(876.3, 9);
    expect(order?.values.of(STRAP).point).toBe("english");
    expect(order?.values.of(STRAP).creased).toBe(true);
    expect(order?.values.of(BUCKLE).overhang).toBeUndefined();
  });

  test("lists every dimension by section, given or not", () => {
    const { order } = read(`${belt("hardware:\n  buckle: { inside: 3/4 }\n")}paper: a4\n`);
    const all = order!.sections.flatMap((s) => s.dimensions);
    const by = (key: string) => all.find((d) => d.key === key);
    expect(order?.sections.map((s) => s.path)).toEqual(["", ...sampleArticle.sections.map((s) => s.path)]);
    expect(by("article")).toMatchObject({ value: "plain belt", origin: "given" });
    expect(by("paper")).toMatchObject({ value: "a4", origin: "given" });
    expect(by("units")).toMatchObject({ value: "in", origin: "default" });
    expect(by("hardware.buckle.inside")).toMatchObject({ origin: "given" });
    expect(by("hardware.buckle.inside")?.value).toBeCloseTo(19.05, 9);
    expect(by("pieces.strap.inside-width")).toMatchObject({ origin: "article" });
    expect(by("pieces.strap.width")?.value).toBeCloseTo(19.05, 9);
  });

  test("hands values on from section to section", () => {
    const { order } = read(belt("pieces: { strap: { width: 24 mm } }\n"));
    expect(order?.values.of(KEEPER).strapWidth.value).toBe(24);
    // 0.45 of 24 mm, which is more than 8 mm.
    expect(order?.values.of(KEEPER).breadth.value).toBeCloseTo(10.8, 9);
  });

  test("reads a bare number in the order's units", () => {
    expect(
      read("units: cm\narticle: plain belt\nmeasures: { waist: 87.6 }\n").order?.values.of(MEASURES).waist
        .value,
    ).toBeCloseTo(876, 9);
    expect(read(`${belt().replace("34 1/2", "876")}units: mm\n`).order?.values.of(MEASURES).waist.value).toBe(
      876,
    );
  });

  test("may leave a section empty, quote a name, be JSON, or be a roll of paper wide", () => {
    expect(read(belt("hardware:\nleather: {}\npieces:\n  # nothing yet\n")).faults).toEqual([]);
    expect(read('{"article": "plain belt", "measures": {"waist": "34 1/2 in"}}').faults).toEqual([]);
    expect(read(`---\n${belt()}...\n`).faults).toEqual([]);
    expect(read(belt("paper: roll 24 in\n")).order?.paper.width).toBeCloseTo(609.6, 9);
    expect(read(belt().replaceAll("\n", "\r\n")).faults).toEqual([]);
  });

  test("tells what was decided on the way", () => {
    const { order } = read(belt("leather:\n  strap: { thickness: 8-9 oz }\n"));
    expect(order?.remarks).toHaveLength(1);
    expect(order?.remarks[0]).toMatchObject({ key: "leather.strap.thickness" });
    // 8 1/2 oz at 1/64 in: ASTM D1814-70 (2000), 1.2.
    expect(order?.sections[2]?.dimensions[0]?.value).toBeCloseTo((8.5 * 25.4) / 64, 9);
  });

  test("asks for a section that the article lacks only by mistake", () => {
    const { order } = read(belt());
    expect(() => order!.values.of({ ...MEASURES, path: "measure" })).toThrow(/not reached/);
  });
});

describe("values are the text that stands there", () => {
  // What YAML itself would make of these: 16, 1000, Infinity, NaN, null, a date, 42 seconds in base 60.
  test.each(["0x10", "1e3", ".inf", "-.Inf", ".NaN", "null", "~", "2001-12-14", "0o17", "1_000", "true"])(
    "%s is no length",
    (text) => {
      const { faults } = read(`article: plain belt\nmeasures:\n  waist: ${text}\n`);
      expect(faults).toHaveLength(1);
      expect(faults[0]).toMatchObject({
        code: "unreadable",
        key: "measures.waist",
        place: { line: 3, column: 10 },
      });
      expect(faults[0]?.problem).toContain(`"${text}"`);
    },
  );

  test.each(["null", "~", "no", "0x10", "1.0", "2001-12-14", "<<"])("%s is a name", (text) => {
    expect(read(belt(`for: ${text}\n`)).order?.forWhom).toBe(text);
  });

  test("quotes and folds are YAML's", () => {
    expect(read(belt("for: 'Wren''s'\n")).order?.forWhom).toBe("Wren's");
    expect(read(belt('for: "W\\u0072en"\n')).order?.forWhom).toBe("Wren");
    expect(read(belt("for: >-\n  Wren, for\n  the fair\n")).order?.forWhom).toBe("Wren, for the fair");
    expect(
      read(belt("measures2: 1\n").replace("34 1/2", '"34 1/2\\""').replace("measures2: 1\n", "")).faults,
    ).toEqual([]);
  });
});

describe("faults", () => {
  test("come all at once, in the file's order", () => {
    const text =
      "paper: lettr\narticle: plain belt\nmeasures:\n  wast: 34\n  height: 14.5\nleather:\n  strap: { thickness: 9 }\npieces:\n  strap:\n    holes: 77\n    point: english\n    creased: on\n";
    expect(told(text)).toEqual([
      "unreadable paper 1:8",
      "unknown-key measures.wast 4:3",
      "unreadable measures.height 5:11",
      "unreadable leather.strap.thickness 7:23",
      "range pieces.strap.holes 10:12",
      "unreadable pieces.strap.creased 12:14",
    ]);
  });

  test("name the nearest right name, or where the line belongs", () => {
    const mends = (lines: string) => read(belt(lines)).faults.map((f) => f.mend);
    expect(mends("hardwear:\n  fixing: stitched\n")).toEqual(["write hardware"]);
    expect(mends("hardware:\n  buckel: { bar: 4 mm }\n")).toEqual(["write buckle"]);
    expect(mends("hardware:\n  buckle: { Bar: 4 mm }\n")).toEqual(["write bar"]);
    expect(mends("pieces: { strap: { holePitch: 1 } }\n")).toEqual(["write hole-pitch"]);
    expect(mends("fixing: stitched\n")).toEqual(["move it under hardware"]);
    expect(mends("buckle: { bar: 4 mm }\n")).toEqual(["move it under hardware"]);
    expect(mends("hardware: { paper: a4 }\n")).toEqual(["move it to the left margin, outside all sections"]);
    expect(mends("xyzzy: 3\n")).toEqual(["take the line out"]);
    expect(mends("pieces: { strap: { inside-width: 1 } }\n")).toEqual(["take the line out"]);
  });

  test("list what is known", () => {
    expect(read("article: saddle\n").faults[0]).toMatchObject({
      key: "article",
      allowed: "plain belt or dog collar",
      place: { line: 1, column: 10 },
    });
    expect(read("article: plain bolt\nmeasures: { waist: 34 }\n").faults).toMatchObject([
      { key: "article", mend: "write plain belt" },
    ]);
    expect(read("for: Wren\n").faults).toMatchObject([
      { code: "missing", key: "article", allowed: "plain belt or dog collar" },
    ]);
    expect(read(belt("hardware: { fixng: stitched }\n")).faults[0]?.allowed).toBe("fixing or buckle");
  });

  test("of a misspelt article don't hide the others", () => {
    expect(told("article: plain bolt\nmeasures:\n  wast: 34\n")).toContain("unknown-key measures.wast 3:3");
  });

  test.each([
    ["measures: 34\n", "section-wanted measures 2:11"],
    ["measures: [34]\n", "section-wanted measures 2:11"],
    ["measures:\n  - 34\n", "section-wanted measures 3:3"],
    ["measures:\n  waist: [34]\n", "value-wanted measures.waist 3:10"],
    ["measures:\n  waist:\n    - 34\n", "value-wanted measures.waist 4:5"],
    ["measures:\n  waist: { in: 34 }\n", "value-wanted measures.waist 3:10"],
    ["measures:\n  waist:\n", "empty measures.waist 3:3"],
    ["measures: { waist: }\n", "empty measures.waist 2:13"],
    ["measures: { waist }\n", "empty measures.waist 2:13"],
    ["measures:\n  waist: # 34\n", "empty measures.waist 3:3"],
    ['measures:\n  waist: ""\n', "unreadable measures.waist 3:10"],
  ])("%j", (lines, fault) => {
    expect(told(`article: plain belt\n${lines}`)).toEqual([fault]);
  });

  test("tell of a slip once: what was meant is not missing as well", () => {
    expect(told("article: plain belt\nmeasures:\n  wast: 34\n")).toEqual(["unknown-key measures.wast 3:3"]);
    expect(told("article: plain belt\nmesures:\n  waist: 34\n")).toEqual(["unknown-key mesures 2:1"]);
    expect(told("article: plain belt\nwaist: 34\n")).toEqual(["unknown-key waist 2:1"]);
    expect(told("article: plain belt\nmeasures: 34\n")).toEqual(["section-wanted measures 2:11"]);
    expect(told("article: plain belt\nmeasures:\n  hight: 14.2\n")).toEqual([
      "missing measures.waist 2:1",
      "unknown-key measures.hight 3:3",
    ]);
    // The name that is nearest stands there already.
    expect(read(belt("pieces: { strap: { holes: 5, hole: 3 } }\n")).faults).toMatchObject([
      { key: "pieces.strap.hole", mend: "take the line out" },
    ]);
  });

  test("don't judge by a default what was given and not understood", () => {
    // 10 oz is more than the default of 9 oz, but nobody knows what the thickness was to be.
    expect(told(belt("leather: { strap: { thickness: [12 oz], skive-to: 10 oz } }\n"))).toEqual([
      "value-wanted leather.strap.thickness 4:32",
    ]);
    expect(told(belt("leather: { strap: { thicknes: 12 oz, skive-to: 10 oz } }\n"))).toEqual([
      "unknown-key leather.strap.thicknes 4:21",
    ]);
  });

  test("of one section don't make others up", () => {
    // The strap needs the measures: its range is not judged by guesses, its texts are.
    const text =
      "article: plain belt\nmeasures:\n  waist: 3,4\npieces:\n  strap: { width: 2, tip: wide, holes: 77 }\n  keeper: { breadth: 2, bredth: 1 }\n";
    expect(told(text)).toEqual([
      "unreadable measures.waist 3:10",
      "unreadable pieces.strap.tip 5:27",
      "range pieces.strap.holes 5:40",
      "unknown-key pieces.keeper.bredth 6:25",
    ]);
  });

  test("of the units keep ranges from being judged", () => {
    expect(told("article: plain belt\nunits: inch\nmeasures: { waist: 876, height: tall }\n")).toEqual([
      "unreadable units 2:8",
      "unreadable measures.height 3:33",
    ]);
  });
});

describe("exit status", () => {
  const status = (text: string) => faultStatus(read(text).faults);
  test("0 without faults, 1 when values contradict each other, 2 for anything else", () => {
    expect(status(belt())).toBe(0);
    // A strap of 2 in can't go through a buckle of 1 in.
    expect(status(belt("pieces: { strap: { width: 2 in } }\n"))).toBe(1);
    expect(status(belt("pieces: { strap: { width: 2 in, holes: 5 }, keeper: { breadth: 3 } }\n"))).toBe(1);
    expect(status(belt("pieces: { strap: { width: 2 in, holes: 77 } }\n"))).toBe(2);
    expect(status(belt("papr: a4\n"))).toBe(2);
    expect(status("article: plain belt\n")).toBe(2);
  });
});
