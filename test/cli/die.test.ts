import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Resvg } from "@resvg/resvg-js";
import { describe, expect, test } from "vitest";
import { die, dieFolder, juniper, shop, withDie } from "../support/dieCommand.ts";
import { type Run, whittaw } from "../support/whittaw.ts";

const read = (folder: string, file: string): string => readFileSync(join(dieFolder(folder), file), "utf8");

/** A tongue so broad that too little leather is left beside its slot: an error of the job's own checks. */
const WEAK = juniper
  .replace("inside: 5/8", "inside: 5/8, tongue-breadth: 8 mm")
  .replace("width: 5/8", "width: 13 mm");

const CHEEK = [
  "die-cheek-left-and-right-A.dxf",
  "die-cheek-left-and-right-A.pdf",
  "die-cheek-left-and-right-A.svg",
  "plotter-cheek-left-and-right-A.svg",
  "template-cheek-A.pdf",
];
const withoutSheets = (files: readonly string[]): readonly string[] =>
  files.filter((f) => !/-sheet-\d+\.svg$/.test(f)).sort();

describe("whittaw die", () => {
  test("writes drawing, DXF and plotter file by piece, side and revision, and the cautions of the press", () => {
    const folder = shop();
    const { status, out, err } = die(folder, "juniper.yaml", "cheek", "keeper-fixed", "cheek");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("press load about");
    expect(out).toContain("Press guarding and two-hand control");
    const files = withoutSheets(readdirSync(dieFolder(folder)));
    expect(files).toEqual(
      [
        ...CHEEK,
        "die-keeper-fixed-as-drawn-A.dxf",
        "die-keeper-fixed-as-drawn-A.pdf",
        "die-keeper-fixed-as-drawn-A.svg",
        "plotter-keeper-fixed-as-drawn-A.svg",
        "template-keeper-fixed-A.pdf",
      ].sort(),
    );
    for (const file of files) expect(out).toContain(join("out", "juniper", "die", file));
  });

  test("every sheet of the PDF has its SVG", () => {
    const folder = shop();
    die(folder, "juniper.yaml", "cheek");
    const pdf = join(dieFolder(folder), CHEEK[1]!);
    const pages = Number(execFileSync("pdfinfo", [pdf], { encoding: "utf8" }).match(/Pages: +(\d+)/)![1]);
    const sheets = readdirSync(dieFolder(folder)).filter((f) => /^die-.*\.svg$/.test(f));
    expect(sheets.length).toBe(pages);
  });

  test("what the order says of owner and number stands on the drawing", () => {
    const folder = shop(withDie("  owner: Thornfield Saddlery\n  number: TS-104\n  date: 2026-11-25"));
    die(folder, "juniper.yaml", "cheek");
    const pdf = join(dieFolder(folder), CHEEK[1]!);
    const words = execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8" });
    for (const word of ["Thornfield Saddlery", "TS-104-cheek-left-and-right", "2026-11-25"])
      expect(words).toContain(word);
    expect(read(folder, CHEEK[0]!)).toContain("TS-104-cheek-left-and-right, revision A, 2026-11-25");
  });

  test("the same order gives the same bytes", () => {
    const [a, b] = [shop(), shop()];
    for (const folder of [a, b]) die(folder, "juniper.yaml", "cheek", "--nest", "--rule-edge");
    const files = readdirSync(dieFolder(a));
    expect(files.length).toBeGreaterThan(6);
    for (const file of files)
      expect(
        readFileSync(join(dieFolder(a), file)).equals(readFileSync(join(dieFolder(b), file))),
        file,
      ).toBe(true);
  });

  test("--rule-edge adds the rule's faces to the DXF, and only then", () => {
    const folder = shop();
    const faces = (): number => read(folder, CHEEK[0]!).split(/\n {2}8\nRULE_FACES\n/).length - 1;
    die(folder, "juniper.yaml", "cheek");
    expect(faces()).toBe(0);
    die(folder, "juniper.yaml", "cheek", "--rule-edge");
    expect(faces()).toBeGreaterThanOrEqual(4);
  });

  test("--nest adds two on one board, drawn and as DXF", () => {
    const folder = shop();
    die(folder, "juniper.yaml", "cheek", "--nest");
    expect(withoutSheets(readdirSync(dieFolder(folder)))).toEqual(
      [...CHEEK, "die-cheek-two-A.dxf", "die-cheek-two-A.pdf", "die-cheek-two-A.svg"].sort(),
    );
    const outlines = read(folder, "die-cheek-two-A.dxf").split(/\n {2}8\nCUT\n/).length - 1;
    expect(outlines).toBe(2);
  });

  test("--out, --paper and --json", () => {
    const folder = shop();
    const { status, out } = die(folder, "juniper.yaml", "cheek", "--out", "dies", "--paper", "a3", "--json");
    expect(status).toBe(0);
    const report = JSON.parse(out) as {
      dies: { piece: string; side: string; pressLoadN: number }[];
      written: string[];
    };
    expect(report.dies).toHaveLength(1);
    expect(report.dies[0]).toMatchObject({ piece: "cheek", side: "left-and-right" });
    for (const file of report.written) expect(existsSync(join(folder, file)), file).toBe(true);
    const pdf = join(folder, "dies", "juniper", "die", CHEEK[1]!);
    // A3 is 842 by 1191 points, either way round.
    expect(execFileSync("pdfinfo", [pdf], { encoding: "utf8" })).toMatch(
      /1190\.55 x 841\.89|841\.89 x 1190\.55/,
    );
  });
});

describe("what is not understood, and what has errors", () => {
  test("an unknown piece: the nearest word and the list, nothing is written", () => {
    const folder = shop();
    const { status, out, err } = die(folder, "juniper.yaml", "cheek", "cheak");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain('There is no piece "cheak"');
    expect(err).toContain("crown, cheek, ear-piece, keeper-fixed, keeper-running");
    expect(err).toContain("write cheek");
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test.each([["../../../etc/passwd"], ["\u001b[31mcheek"], [""], ["\u202ekeehc"], ["__proto__"]])(
    "%j is no piece and does no harm",
    (name) => {
      const folder = shop();
      const { status, out, err } = die(folder, "juniper.yaml", name);
      expect([status, out]).toEqual([2, ""]);
      for (const unseen of ["\u001b", "\u202e"]) expect(err).not.toContain(unseen);
      expect(readdirSync(folder)).toEqual(["juniper.yaml"]);
    },
  );

  test("an unknown paper, a missing order", () => {
    const folder = shop();
    const paper = die(folder, "juniper.yaml", "cheek", "--paper", "leter");
    expect([paper.status, paper.err.includes("write letter")]).toEqual([2, true]);
    expect(die(folder, "none.yaml", "cheek").status).toBe(2);
  });

  test.each([
    ["  press: 20 tons", "there is more than one ton"],
    ["  press: strong", "write a number and its unit"],
    ["  revision: ../../up", "it stands in the files' names"],
    ['  revision: "A\\u202eB"', "it stands in the files' names"],
    ["  rule: 5 pt", "2 pt"],
    ["  presse: 20 t", "press"],
  ])("%s is a fault with its place", (lines, word) => {
    const folder = shop(withDie(lines));
    const place = `juniper.yaml:${juniper.trimEnd().split("\n").length + 2}:`;
    for (const run of [die(folder, "juniper.yaml", "cheek"), whittaw(folder, "check", "juniper.yaml")]) {
      expect([run.status, run.out]).toEqual([2, ""]);
      expect(run.err).toContain(place);
      expect(run.err).toContain(word);
    }
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("an error of the job's own checks: nothing is written, --even-so stamps drawing, DXF and plotter", () => {
    const folder = shop(WEAK);
    const refused = die(folder, "juniper.yaml", "cheek");
    expect(refused.status).toBe(1);
    expect(refused.err).toContain("Nothing was written");
    expect(existsSync(join(folder, "out"))).toBe(false);
    const stamped = die(folder, "juniper.yaml", "cheek", "--even-so");
    expect(stamped.status).toBe(1);
    const file = (end: RegExp): string => readdirSync(dieFolder(folder)).find((f) => end.test(f))!;
    const pdf = join(dieFolder(folder), file(/\.pdf$/));
    expect(execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8" }).toLowerCase()).toContain("has errors");
    expect(read(folder, file(/\.dxf$/))).toContain("HAS ERRORS");
    expect(read(folder, file(/^plotter/))).toContain("HAS ERRORS");
  });

  test("one piece's die with an error: the others are written all the same, and it is told which isn't", () => {
    // Loads: the cheek's over 50 kN, a keeper's under 30 kN.
    const folder = shop(withDie("  press: 50 kN"));
    const { status, out, err } = die(folder, "juniper.yaml", "cheek", "keeper-fixed");
    expect(status).toBe(1);
    expect(err).toContain("[die-press-load]");
    expect(err).toContain("Of cheek nothing was written");
    expect(err).not.toContain("keeper-fixed, ");
    expect(out).toContain("dies drawn");
    expect(out).toContain("keeper-fixed, ");
    const files = readdirSync(dieFolder(folder));
    expect(files.filter((f) => f.includes("cheek"))).toEqual([]);
    expect(files.filter((f) => f.endsWith(".dxf"))).toEqual(["die-keeper-fixed-as-drawn-A.dxf"]);
    expect(read(folder, "die-keeper-fixed-as-drawn-A.dxf")).not.toContain("HAS ERRORS");
    const json = die(folder, "juniper.yaml", "cheek", "keeper-fixed", "--json");
    const { dies } = JSON.parse(json.out) as { dies: { piece: string; hasErrors?: true }[] };
    expect([json.status, dies.map((d) => [d.piece, d.hasErrors ?? false])]).toEqual([
      1,
      [
        ["cheek", true],
        ["keeper-fixed", false],
      ],
    ]);
    const all = die(folder, "juniper.yaml", "cheek", "keeper-fixed", "--even-so");
    expect([all.status, readdirSync(dieFolder(folder)).some((f) => f.includes("cheek"))]).toEqual([1, true]);
  });

  test("two on one board that the press can't take keep no other piece back", () => {
    const folder = shop(withDie("  press: 90 kN"));
    const { status, out, err } = die(folder, "juniper.yaml", "keeper-fixed", "cheek", "--nest");
    expect([status, err.includes("Of cheek nothing was written")]).toEqual([1, true]);
    expect(out).toContain("keeper-fixed");
    expect(readdirSync(dieFolder(folder))).toContain("die-keeper-fixed-two-A.dxf");
  });

  test("a press that is too weak is found by the die's own rules", () => {
    const folder = shop(withDie("  press: 5 kN"));
    const { status, err, out } = die(folder, "juniper.yaml", "cheek");
    expect(`${err}${out}`).toContain("[die-press");
    expect(existsSync(join(folder, "out"))).toBe(status === 0);
    const strong = die(shop(withDie("  press: 25 US tons")), "juniper.yaml", "cheek");
    expect(strong.status).toBe(0);
    expect(strong.out).toContain("for each stroke");
  });

  test("a file where the folder is to be is told in words, and nothing half-written stays", () => {
    const folder = shop();
    mkdirSync(join(folder, "out", "juniper"), { recursive: true });
    writeFileSync(join(folder, "out", "juniper", "die"), "precious");
    const { status, err } = die(folder, "juniper.yaml", "cheek");
    expect(status).toBe(2);
    expect(err).toContain("can't be written");
    expect(readFileSync(join(folder, "out", "juniper", "die"), "utf8")).toBe("precious");
    expect(readdirSync(join(folder, "out", "juniper"))).toEqual(["die"]);
  });

  test("hostile names of file, horse and shop come out as plain text", () => {
    const text = `${juniper.replace(/^for: .*$/m, 'for: "<script>&\\"; \\u202e %% {\\\\P} 鞍"')}\ndie: { owner: "]]><svg onload=x>", number: "../<b>&" }\n`;
    const folder = shop(text, "J&<b> ö.yaml");
    const { status, err } = die(folder, "J&<b> ö.yaml", "cheek", "--nest");
    expect([status, err]).toEqual([0, ""]);
    const files = readdirSync(dieFolder(folder, "J&<b> ö"));
    expect(withoutSheets(files)).toEqual(
      [...CHEEK, "die-cheek-two-A.dxf", "die-cheek-two-A.pdf", "die-cheek-two-A.svg"].sort(),
    );
    for (const file of files.filter((f) => f.endsWith(".svg"))) {
      const svg = readFileSync(join(dieFolder(folder, "J&<b> ö"), file), "utf8");
      expect(svg).not.toContain("<script");
      expect(svg).not.toContain("<svg onload");
      expect(() => new Resvg(svg), file).not.toThrow();
    }
  });
});

describe("explain ORDER die-PIECE", () => {
  test("shows every allowance of the press load, and the pieces for each stroke", () => {
    const folder = shop(withDie("  press: 150 kN"));
    const { status, out } = whittaw(folder, "explain", "juniper.yaml", "die-cheek");
    expect(status).toBe(0);
    for (const word of [
      "load on the rule",
      "load on the tubes",
      "extra for small tubes",
      "load on the ejection rubber",
      "press load = ",
      "pieces for each stroke = ",
      "you gave it, die.press",
    ])
      expect(out).toContain(word);
  });
  test("no such piece", () => {
    const { status, err } = whittaw(shop(), "explain", "juniper.yaml", "die-cheak");
    expect(status).toBe(2);
    expect(err).toContain("write die-cheek.");
  });
  test("of several that begin so, all are offered; capitals and spaces do not matter", () => {
    const folder = shop();
    const explained = (piece: string): Run => whittaw(folder, "explain", "juniper.yaml", piece);
    expect(explained("keeper").err).toContain("write keeper-fixed or keeper-running.");
    expect(explained("die-keeper").err).toContain("write die-keeper-fixed or die-keeper-running.");
    expect(explained("Die Cheek").out).toBe(explained("die-cheek").out);
    expect(explained(" CHEEK").out).toBe(explained("cheek").out);
    expect(explained("crow").out).toBe(explained("crown").out);
  });
});
