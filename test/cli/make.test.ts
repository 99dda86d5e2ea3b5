import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeJob, printAdvice } from "../../src/job.ts";
import { JUNIPER, newFolder, whittaw } from "../support/whittaw.ts";

const juniper = readFileSync(JUNIPER, "utf8");
const order = (folder: string, name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return name;
};
const everythingIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((e) => e.isFile())
    .map((e) =>
      join(e.parentPath, e.name)
        .slice(folder.length + 1)
        .replaceAll("\\", "/"),
    )
    .sort();

/** A tongue so broad that too little leather is left beside its slot: an error of the drawing, not of the text. */
const WEAK = juniper
  .replace("inside: 5/8", "inside: 5/8, tongue-breadth: 8 mm")
  .replace("width: 5/8", "width: 13 mm");

describe("whittaw make", () => {
  test("writes templates, printer check, pieces and job.json, and says what to print and measure", () => {
    const folder = newFolder();
    const { status, out, err } = whittaw(folder, "make", order(folder, "juniper.yaml", juniper));
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("Print first:  printer-check-letter.pdf");
    expect(out).toContain("180 mm and 240 mm");
    // The order names a shop file that doesn't lie beside it: no quote.
    expect(out).toContain("nothing is priced");
    expect(everythingIn(join(folder, "out"))).toEqual([
      "juniper/bench-sheet.md",
      "juniper/bench-sheet.pdf",
      "juniper/job.json",
      "juniper/pieces/cheek.svg",
      "juniper/pieces/crown.svg",
      "juniper/pieces/ear-piece.svg",
      "juniper/pieces/keeper-fixed.svg",
      "juniper/pieces/keeper-running.svg",
      "juniper/printer-check-letter.pdf",
      "juniper/template-letter.pdf",
    ]);
  });

  test("a shop file beside the order prices it: the customer gets a quote", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    order(folder, "shop.yaml", readFileSync("templates/shop.yaml", "utf8"));
    const { status, out } = whittaw(folder, "make", "juniper.yaml");
    expect([status, out.includes("nothing is priced")]).toEqual([0, false]);
    const files = everythingIn(join(folder, "out"));
    expect(files).toContain("juniper/quote.pdf");
    expect(files).toContain("juniper/quote.md");
  });

  test("a fault in the shop file is told with its place there, and nothing is made", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    order(folder, "shop.yaml", "currency: GBP\nlabour: { per-huor: 28.00 }\n");
    const { status, err } = whittaw(folder, "make", "juniper.yaml");
    expect(status).toBe(2);
    expect(err).toContain("shop.yaml:2:11 labour.per-huor");
    expect(err).toContain("per-hour");
    expect(err.split("To mend:")).toHaveLength(2);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("a shop file that is named as an order is said to be one", () => {
    const folder = newFolder();
    order(folder, "shop.yaml", readFileSync("templates/shop.yaml", "utf8"));
    const { status, err } = whittaw(folder, "make", "shop.yaml");
    expect(status).toBe(2);
    expect(err).toContain("this is a shop file, not an order. To mend: name an order");
    expect(err.split("\n").filter((l) => l.includes("To mend"))).toHaveLength(1);
  });

  test("the same order gives the same bytes, in another folder too", () => {
    const [a, b] = [newFolder(), newFolder()];
    for (const folder of [a, b]) whittaw(folder, "make", order(folder, "juniper.yaml", juniper));
    for (const file of everythingIn(join(a, "out")))
      expect(readFileSync(join(a, "out", file)).equals(readFileSync(join(b, "out", file))), file).toBe(true);
  });

  test("--out and --paper choose folder and paper; an unknown paper gets the nearest name", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    expect(whittaw(folder, "make", "juniper.yaml", "--out", "prints", "--paper", "a4").status).toBe(0);
    expect(existsSync(join(folder, "prints", "juniper", "template-a4.pdf"))).toBe(true);
    const wrong = whittaw(folder, "make", "juniper.yaml", "--paper", "leter");
    expect(wrong.status).toBe(2);
    expect(wrong.err).toContain('got "leter"');
    expect(wrong.err).toContain("write letter");
  });

  test("--printed corrects; a printout that was scaled is refused with the reason", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    expect(whittaw(folder, "make", "juniper.yaml", "--printed", "179.2x239.5").status).toBe(0);
    const job = JSON.parse(readFileSync(join(folder, "out", "juniper", "job.json"), "utf8")) as {
      sheets: { factor: { x: number; y: number } };
    };
    expect(job.sheets.factor.x).toBeCloseTo(179.2 / 180, 6);
    const scaled = whittaw(folder, "make", "juniper.yaml", "--printed", "169x225.5");
    expect(scaled.status).toBe(2);
    expect(scaled.err).toContain("the viewer has scaled the page");
    const muddled = whittaw(folder, "make", "juniper.yaml", "--printed", "big");
    expect(muddled.status).toBe(2);
    expect(muddled.err).toContain('got "big"');
  });

  test("an order with an error writes nothing and leaves what was there; --even-so stamps it", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    whittaw(folder, "make", "juniper.yaml");
    const before = readFileSync(join(folder, "out", "juniper", "template-letter.pdf"));
    order(folder, "juniper.yaml", WEAK);
    const refused = whittaw(folder, "make", "juniper.yaml");
    expect(refused.status).toBe(1);
    expect(refused.err).toContain("Nothing was written");
    expect(readFileSync(join(folder, "out", "juniper", "template-letter.pdf")).equals(before)).toBe(true);
  });

  test("--even-so writes what has errors, and stamps every sheet", () => {
    const folder = newFolder();
    order(folder, "weak.yaml", WEAK);
    const { status, err } = whittaw(folder, "make", "weak.yaml", "--even-so");
    expect(status).toBe(1);
    expect(err).toContain("error");
    const pdf = join(folder, "out", "weak", "template-letter.pdf");
    const pages = Number(execFileSync("pdfinfo", [pdf], { encoding: "utf8" }).match(/Pages: +(\d+)/)![1]);
    for (let page = 1; page <= pages; page++) {
      const text = execFileSync("pdftotext", ["-f", String(page), "-l", String(page), pdf, "-"], {
        encoding: "utf8",
      });
      expect(text.toLowerCase(), `page ${page}`).toContain("has errors");
    }
  });

  test("several orders: the good ones are written, the highest status comes back", () => {
    const folder = newFolder();
    order(folder, "good.yaml", juniper);
    order(folder, "bad.yaml", juniper.replace("over-poll", "over-pole"));
    const { status, err } = whittaw(folder, "make", "bad.yaml", "good.yaml");
    expect(status).toBe(2);
    expect(err).toContain("bad.yaml:");
    expect(err).toContain("over-poll");
    expect(existsSync(join(folder, "out", "good", "job.json"))).toBe(true);
    expect(existsSync(join(folder, "out", "bad"))).toBe(false);
  });

  test("two orders whose folders coincide are refused before anything is written", () => {
    const folder = newFolder();
    mkdirSync(join(folder, "other"));
    order(folder, "juniper.yaml", juniper);
    order(folder, "other/juniper.yaml", juniper);
    const { status, err } = whittaw(folder, "make", "juniper.yaml", "other/juniper.yaml");
    expect(status).toBe(2);
    expect(err).toContain("same folder");
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("an older order's templates don't stay beside the new ones", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    whittaw(folder, "make", "juniper.yaml", "--paper", "a4");
    whittaw(folder, "make", "juniper.yaml");
    expect(
      existsSync(join(folder, "out", "juniper", "template-a4.pdf")),
      "same order, both papers stay",
    ).toBe(true);
    order(folder, "juniper.yaml", juniper.replace("41 1/2", "42"));
    whittaw(folder, "make", "juniper.yaml");
    expect(
      existsSync(join(folder, "out", "juniper", "template-a4.pdf")),
      "another order, the old template goes",
    ).toBe(false);
  });

  test("that the folder held somebody else's order is told, and not when it was the same", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    const held = /The folder held an earlier order \((.*)\); its templates were replaced\./;
    expect(whittaw(folder, "make", "juniper.yaml").out).not.toMatch(held);
    order(folder, "juniper.yaml", juniper.replace("41 1/2", "42"));
    expect(whittaw(folder, "make", "juniper.yaml").out).not.toMatch(held);
    order(folder, "juniper.yaml", juniper.replace(/^for: .*$/m, "for: Bramble"));
    expect(held.exec(whittaw(folder, "make", "juniper.yaml").out)?.[1]).toMatch(/^for Juniper/);
    order(folder, "juniper.yaml", juniper);
    expect(held.exec(whittaw(folder, "make", "juniper.yaml").out)?.[1]).toBe("for Bramble");
    whittaw(folder, "begin", "strap", "--to", "strap.yaml");
    order(folder, "juniper.yaml", readFileSync(join(folder, "strap.yaml"), "utf8"));
    const strap = whittaw(folder, "make", "juniper.yaml").out;
    expect(held.exec(strap)?.[1]).toMatch(/^one-ear headstall for Juniper/);
  });

  test("one piece is one piece", () => {
    const result = makeJob(juniper, "juniper.yaml");
    if (!result.made) throw new Error("the demo order has faults");
    const { job } = result;
    const saidOf = (n: number): string =>
      printAdvice({ ...job, made: { ...job.made, pieces: job.made.pieces.slice(0, n) } }, "out/x")[0]!;
    expect(saidOf(1)).toContain("on letter, 1 piece as SVG, bench-sheet.pdf and job.json");
    expect(saidOf(2)).toContain("on letter, 2 pieces as SVG, bench-sheet.pdf and job.json");
  });

  test("a file where the folder is to be: told in words, and nothing is left behind", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    writeFileSync(join(folder, "mine"), "precious\n");
    const { status, err } = whittaw(folder, "make", "juniper.yaml", "--out", "mine");
    expect(status).toBe(2);
    expect(err).toContain(
      "can't be written: a file stands where a folder is needed. To mend: choose another",
    );
    expect(readFileSync(join(folder, "mine"), "utf8")).toBe("precious\n");
    expect(everythingIn(folder)).toEqual(["juniper.yaml", "mine"]);
  });

  test("a folder where a file is to be: told in words, and no half-written file stays", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    mkdirSync(join(folder, "out", "juniper", "job.json", "x"), { recursive: true });
    const { status, err } = whittaw(folder, "make", "juniper.yaml");
    expect(status).toBe(2);
    expect(err).toContain("a folder stands where a file is to be written");
    expect(everythingIn(folder).filter((f) => f.endsWith(".unfinished"))).toEqual([]);
  });

  test.skipIf(!existsSync("/proc/self"))("a place where no folder can be made is told at once", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    const { status, err } = whittaw(folder, "make", "juniper.yaml", "--out", "/proc/whittaw-none");
    expect(status).toBe(2);
    expect(err).toMatch(
      /can't be written: (its folder is not there or can't be made|you may not write there)/,
    );
  });

  test("--json reports for a program", () => {
    const folder = newFolder();
    order(folder, "juniper.yaml", juniper);
    const { status, out } = whittaw(folder, "make", "juniper.yaml", "--json");
    expect(status).toBe(0);
    const report = JSON.parse(out) as { orders: { status: number; written: string[] }[] };
    expect(report.orders[0]!.status).toBe(0);
    expect(report.orders[0]!.written).toHaveLength(10);
  });
});

describe("orders that can't be read", () => {
  const one = (setUp: (folder: string) => string, word: string): void => {
    const folder = newFolder();
    const { status, err, out } = whittaw(folder, "make", setUp(folder));
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain(word);
    expect(err.trim().split("\n").length).toBeLessThanOrEqual(2);
    expect(existsSync(join(folder, "out"))).toBe(false);
  };

  test("a missing file", () => one(() => "nothing.yaml", "was not found"));
  test("a folder", () => {
    one((f) => {
      mkdirSync(join(f, "orders"));
      return "orders";
    }, "is a folder");
  });
  test("50 MB", () => one((f) => order(f, "big.yaml", "a: b\n".repeat(1e7)), "50 MB"));
  test("no text", () => {
    one((f) => {
      writeFileSync(join(f, "x.yaml"), new Uint8Array([0xff, 0xfe, 0x00, 0x80]));
      return "x.yaml";
    }, "not plain text");
  });
  test("an alias bomb", () => {
    const folder = newFolder();
    const lines = [
      "a: &a [x, x, x, x, x, x, x, x, x]",
      ..."bcdefgh".split("").map((c, i) => `${c}: &${c} [${Array(9).fill(`*${"abcdefg"[i]}`).join(", ")}]`),
    ];
    const { status, err } = whittaw(folder, "make", order(folder, "bomb.yaml", lines.join("\n")));
    expect(status).toBe(2);
    expect(err).toContain("bomb.yaml:1:");
  });
});
