import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { jobFiles, makeJob, readPaper } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { piecePicture } from "../../src/picture/piece.ts";
import { sheetPictures } from "../../src/picture/sheet/sheets.ts";
import { bold, font } from "../support/fonts.ts";
import { orderFiles } from "../support/orders.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";

// Every order of the repository, made on several papers: no errors, no word on another or on a line, nothing cut off.

const OTHERS = ["a4", "tabloid", "roll 610 mm"];
/** Letter, and in turn one of the others: each is met by orders of every article. */
const papersOf = (i: number): readonly string[] => ["letter", OTHERS[i % OTHERS.length]!];

function jobOf(text: string, name: string, paperName: string, endsOnly = false): Job {
  const paper = readPaper(paperName);
  if (!paper.ok) throw new Error(paperName);
  const result = makeJob(text, name, { paper: paper.paper, endsOnly });
  if (!result.made) throw new Error(`${name}: ${JSON.stringify(result.faults)}`);
  expect(result.job.findings.filter((f) => f.severity === "error")).toEqual([]);
  return result.job;
}

const pagesOf = ({ made, layout, order, findings }: Job) =>
  sheetPictures({
    pieces: made.pieces,
    layout,
    words: {
      article: made.article,
      forWhom: order.forWhom,
      file: order.file,
      cautions: made.cautions,
      findings,
    },
    units: order.units,
  });

const numbered = orderFiles.map((order, i) => ({ ...order, papers: papersOf(i) }));

describe.each(numbered)("$name", ({ name, text, papers }) => {
  test.each(papers)("on %s: sound, legible, nothing cut off", (paper) => {
    for (const page of pagesOf(jobOf(text, name, paper))) {
      expect(overlaps(page), page.title).toEqual([]);
      expect(cutWords(page), page.title).toEqual([]);
    }
  });

  test("ends only: sound and legible too", () => {
    for (const page of pagesOf(jobOf(text, name, "letter", true)))
      expect(overlaps(page), page.title).toEqual([]);
  });

  test("each piece's own drawing is legible", () => {
    const { made, order } = jobOf(text, name, "letter");
    for (const piece of made.pieces) expect(overlaps(piecePicture(piece, order.units)), piece.id).toEqual([]);
  });

  test("its files: a PDF that qpdf finds no fault with, a job.json of the published shape", async () => {
    const job = jobOf(text, name, "letter");
    const files = await jobFiles(job, { font, bold });
    const folder = mkdtempSync(join(tmpdir(), "whittaw-job-"));
    for (const f of files.filter((f) => f.path.endsWith(".pdf"))) {
      writeFileSync(join(folder, f.path), f.data);
      expect(execFileSync("qpdf", ["--check", join(folder, f.path)], { encoding: "utf8" })).toContain(
        "No syntax or stream encoding errors found",
      );
    }
    const schema = JSON.parse(readFileSync("templates/schemas/job.schema.json", "utf8")) as object;
    const validate = new Ajv2020({ strict: false }).compile(schema);
    const json = JSON.parse(files.find((f) => f.path === "job.json")!.data as string) as {
      derivations: { value: number; steps: { value: number }[]; piece: string; result: string }[];
      pieces: { id: string; sizes: { name: string; value: number }[] }[];
    };
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
    // The last line of each explanation is the size that job.json states.
    for (const d of json.derivations) {
      expect(d.steps.at(-1)!.value).toBe(d.value);
      const size = json.pieces.find((p) => p.id === d.piece)?.sizes.find((s) => s.name === d.result);
      if (size) expect(size.value).toBe(d.value);
    }
  });
});

test("the published shape of job.json refuses a damaged one", async () => {
  const { text, name } = orderFiles[0]!;
  const files = await jobFiles(jobOf(text, name, "letter"), { font, bold });
  const json = JSON.parse(files.find((f) => f.path === "job.json")!.data as string) as Record<
    string,
    unknown
  >;
  const validate = new Ajv2020({ strict: false }).compile(
    JSON.parse(readFileSync("templates/schemas/job.schema.json", "utf8")) as object,
  );
  expect(validate({ ...json, format: 99 })).toBe(false);
  expect(validate({ ...json, extra: 1 })).toBe(false);
  expect(validate({ ...json, pieces: [{}] })).toBe(false);
});
