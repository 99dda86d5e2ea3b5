import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { jobFiles, makeJob } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { bold, font } from "../support/fonts.ts";
import { orderText } from "../support/madeOf.ts";
import { areaOf, ring } from "../support/polygonAreas.ts";

// The sums on the bench sheet, added up from the PDF's own text as pdftotext (poppler) reads it, against the
// pieces as drawn.

const SHOP = { file: "shop.yaml", text: readFileSync("templates/shop.yaml", "utf8") };
const folder = mkdtempSync(join(tmpdir(), "whittaw-bench-"));

async function sheetOf(name: string): Promise<{ readonly job: Job; readonly lines: readonly string[] }> {
  const text = orderText(name);
  const priced = /^shop:/m.test(text) ? text : `${text.trimEnd()}\nshop: shop.yaml\n`;
  const result = makeJob(priced, `${name}.yaml`, { shop: SHOP });
  if (!result.made) throw new Error(name);
  const files = await jobFiles(result.job, { font, bold });
  const path = join(folder, `${name}.pdf`);
  writeFileSync(path, files.find((f) => f.path === "bench-sheet.pdf")!.data);
  const printed = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
  return { job: result.job, lines: printed.split("\n") };
}

/** What the pattern's groups caught, in every line that it fits. */
const rows = (lines: readonly string[], pattern: RegExp): readonly (readonly string[])[] =>
  lines.flatMap((line) => {
    const found = pattern.exec(line);
    return found ? [found.slice(1)] : [];
  });
const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0);

/** Figures of a table are printed to a thousandth, and each may be half of that off. */
const HALF = 0.0005;
const MM2_PER_DM2 = 10_000;
const MM2_PER_FT2 = 304.8 ** 2;

describe.each(["juniper-headstall", "wren-flap-purse", "rowan-tool-tote"])("%s", async (name) => {
  const { job, lines } = await sheetOf(name);
  const { pieces } = job.made;

  test("leather: the nets are the pieces' areas in both units, and what to buy is net over yield", () => {
    const leather = rows(lines, /leather,.* ([\d.]+) +([\d.]+) +(\d+) % +([\d.]+) +([\d.]+) /).map((r) =>
      r.map(Number),
    );
    expect(leather.length).toBe(new Set(pieces.map((p) => p.leather.kind)).size);
    const area = sum(pieces.map((p) => p.count * areaOf([ring(p.outline)])));
    const off = leather.length * HALF;
    expect(Math.abs(sum(leather.map((r) => r[0]!)) - area / MM2_PER_FT2)).toBeLessThan(off + 0.001);
    expect(Math.abs(sum(leather.map((r) => r[1]!)) - area / MM2_PER_DM2)).toBeLessThan(off + 0.01);
    for (const [, net, share, , buy] of leather)
      expect(Math.abs(buy! - (100 * net!) / share!)).toBeLessThan(2 * HALF * (100 / share!));
  });

  test("holes: as many as the pieces have, each piece as often as it is cut", () => {
    const punched = rows(lines, /^round, [\d.]+ mm +\D+(\d+) /).map(([n]) => Number(n));
    const drawn = pieces.map((p) => p.count * p.holes.filter((h) => h.kind === "round").length);
    expect(sum(punched)).toBe(sum(drawn));
  });

  test("thread: its rows come to what stands under them", () => {
    const seams = rows(lines, / (\d+) +(\d+) \+ \d+ back .*\(([\d.]+) m\) +\d+$/).map((r) => r.map(Number));
    const [total] = rows(lines, /^All together +(\d+) .*\(([\d.]+) m\)/).map((r) => r.map(Number));
    expect(seams.length).toBe(job.bench.thread.rows.length);
    expect(sum(seams.map(([times, stitches]) => times! * stitches!))).toBe(total![0]);
    const metres = sum(seams.map(([times, , each]) => times! * each!));
    expect(Math.abs(metres - total![1]!)).toBeLessThan(HALF * (1 + sum(seams.map(([times]) => times!))));
  });

  test("work: the minutes of the steps come to the whole", () => {
    const minutes = rows(lines, /^ +\d+ .* ([\d.]+) min$/).map(([n]) => Number(n));
    const [[whole] = []] = rows(lines, /^Together ([\d.]+) min/);
    expect(minutes.length).toBe(job.bench.steps.length);
    expect(Math.abs(sum(minutes) - Number(whole))).toBeLessThan(0.05 * (minutes.length + 1));
  });
});
