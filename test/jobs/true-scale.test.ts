import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PNG } from "pngjs";
import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Point } from "../../src/geometry/path.ts";
import { placedPoint } from "../../src/geometry/transform.ts";
import { jobFiles, makeJob, readPaper } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { pdf } from "../../src/output/pdf.ts";
import { svg } from "../../src/output/svg.ts";
import { piecePicture } from "../../src/picture/piece.ts";
import { bold, font } from "../support/fonts.ts";
import { orderFiles } from "../support/orders.ts";
import {
  differingShare,
  firstLine,
  type Image,
  measureSquare,
  renderPdfPage,
  renderSvg,
} from "../support/render.ts";

// What is printed is measured on the rendered page, by renderers that are not ours: pdf.js and poppler.
// 300 dots an inch: 50 mm = 590.55 dots (1 in = 25.4 mm exactly, ISO 80000-3 / international yard, 1959).

const DPI = 300;
const DOTS_PER_MM = DPI / 25.4;
const heron = orderFiles.find((o) => o.name === "heron-bag-strap.yaml")!;

function jobOn(paperName: string, printed?: string): Job {
  const paper = readPaper(paperName);
  if (!paper.ok) throw new Error(paperName);
  const result = makeJob(heron.text, heron.name, { paper: paper.paper, ...(printed ? { printed } : {}) });
  if (!result.made) throw new Error(JSON.stringify(result.faults));
  return result.job;
}

async function template(job: Job): Promise<Uint8Array> {
  const files = await jobFiles(job, { font, bold });
  return files.find((f) => f.path.startsWith("template"))!.data as Uint8Array;
}

function byPoppler(bytes: Uint8Array, page: number): Image {
  const folder = mkdtempSync(join(tmpdir(), "whittaw-poppler-"));
  writeFileSync(join(folder, "t.pdf"), bytes);
  execFileSync("pdftoppm", [
    "-r",
    String(DPI),
    "-f",
    String(page),
    "-l",
    String(page),
    "-png",
    "-singlefile",
    join(folder, "t.pdf"),
    join(folder, "p"),
  ]);
  const { width, height, data } = PNG.sync.read(readFileSync(join(folder, "p.png")));
  return { width, height, data: new Uint8ClampedArray(data) };
}

/** A place inside the calibration square on a page, in dots, found from the words in it. */
async function insideSquare(bytes: Uint8Array, page: number): Promise<readonly [number, number]> {
  const folder = mkdtempSync(join(tmpdir(), "whittaw-text-"));
  writeFileSync(join(folder, "t.pdf"), bytes);
  const html = execFileSync(
    "pdftotext",
    ["-bbox", "-f", String(page), "-l", String(page), join(folder, "t.pdf"), "-"],
    { encoding: "utf8" },
  );
  const words = [
    ...html.matchAll(
      /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<\/word>/g,
    ),
  ];
  const i = words.findIndex((w, at) => w[5] === "50" && words[at + 1]?.[5] === "mm");
  expect(i, "the words 50 mm").toBeGreaterThanOrEqual(0);
  // 18 mm beside the words' middle, so that neither they nor a tick of a whole 10 mm lies in the way.
  const [x, y] = [
    (Number(words[i]![1]) + Number(words[i + 1]![3])) / 2 + (18 * 72) / 25.4,
    Number(words[i]![2]),
  ];
  return [Math.round((x * DPI) / 72), Math.round((y * DPI) / 72)];
}

describe("the calibration square on the printed page", () => {
  test.each([
    ["uncorrected", undefined, 1, 1],
    [
      "corrected for a printer that prints 179.2 for 180 and 239.5 for 240",
      "179.2x239.5",
      180 / 179.2,
      240 / 239.5,
    ],
  ])("%s: 590.55 dots ± 1, times its factor, on both axes, by two renderers", async (_, printed, fx, fy) => {
    const job = jobOn("letter", printed);
    const bytes = await template(job);
    const page = 2;
    // The sheet's own axes: a sheet on its side has them the other way round.
    const [sx, sy] = job.layout.sheets[0]!.landscape ? [fy, fx] : [fx, fy];
    for (const image of [await renderPdfPage(bytes, page, DPI), byPoppler(bytes, page)]) {
      const { x, y } = measureSquare(image, await insideSquare(bytes, page));
      expect(Math.abs(x.outer - 590.55 * sx)).toBeLessThanOrEqual(1);
      expect(Math.abs(y.outer - 590.55 * sy)).toBeLessThanOrEqual(1);
    }
  });

  test("a page that is 1 % too large is seen", async () => {
    const bytes = await template(jobOn("letter"));
    const image = await renderPdfPage(bytes, 2, DPI * 1.01);
    const [px, py] = await insideSquare(bytes, 2);
    const { x } = measureSquare(image, [Math.round(px * 1.01), Math.round(py * 1.01)]);
    expect(Math.abs(x.outer - 590.55)).toBeGreaterThan(1);
  });
});

describe("a strap on the printed page", () => {
  // On a roll the whole strap lies on one page: 30 in from bar to middle hole, 1 in wide.
  test("is 1 in wide, and as long as its cut length, to 0.1 mm", async () => {
    const job = jobOn("roll 610 mm");
    const strap = job.made.pieces.find((p) => p.id === "strap")!;
    const placed = job.layout.plates.flatMap((p) => p.placed).find((p) => p.piece === "strap")!;
    const sheet = job.layout.sheets.find((s) => s.pieces.includes("strap"))!;
    const along = Math.abs(Math.cos(placed.placement.angle)) > 0.5;
    const bytes = await template(job);
    const image = await renderPdfPage(bytes, 2, DPI);
    const cut = strap.sizes[0]!.value;
    // Half way between the fold and the first hole, a third of the width off the middle: clear of all words and marks.
    const onPiece = [strap.sizes[2]!.value * 0.4, strap.sizes[1]!.value * 0.33] as const;
    const dotsOf = (p: Point): readonly [number, number] => {
      const [x, y] = placedPoint(p, placed.placement);
      const paper = [
        x - sheet.window.minX + sheet.origin[0],
        y - sheet.window.minY + sheet.origin[1],
      ] as const;
      return [Math.round(paper[0] * DOTS_PER_MM), Math.round(image.height - paper[1] * DOTS_PER_MM)];
    };
    const dots = dotsOf(onPiece);
    const across = (dir: readonly [number, number]): number => {
      const line = firstLine(image, dots[0], dots[1], dir);
      if (!line) throw new Error("no line");
      return line.middle;
    };
    const [lo, hi] = along ? [across([0, -1]), across([0, 1])] : [across([-1, 0]), across([1, 0])];
    expect(Math.abs(Math.abs(hi - lo) / DOTS_PER_MM - 25.4)).toBeLessThan(0.1);
    // A third of the width off its middle the half-round point ends before its tip by h − √(h² − y²).
    const [h, y] = [12.7, onPiece[1]];
    const short = h - Math.sqrt(h * h - y * y);
    const box = boundsOf(strap.outline);
    const ends = [box.minX - 2, box.maxX + 2].map((x) => {
      const at = dotsOf([x, onPiece[1]]);
      const inward = x < 0 ? 1 : -1;
      return firstLine(image, at[0], at[1], along ? [inward, 0] : [0, -inward])!.middle;
    });
    expect(Math.abs(Math.abs(ends[1]! - ends[0]!) / DOTS_PER_MM - (cut - short))).toBeLessThan(0.1);
  });
});

/** Share of dots that two renderers may paint differently: edges of letters. */
const MOST_DIFFERENT = 0.002;

test("each piece's SVG and the same drawing as PDF agree: resvg against pdf.js", async () => {
  const { made, order } = jobOn("letter");
  for (const piece of made.pieces) {
    const drawn = piecePicture(piece, order.units);
    // Whole millimetres at 10 dots each: neither renderer has to round the page.
    const picture = { ...drawn, width: Math.ceil(drawn.width), height: Math.ceil(drawn.height) };
    const bytes = await pdf([picture], { font, bold, title: piece.name, id: piece.id });
    const [a, b] = [await renderPdfPage(bytes, 1, 254), renderSvg(svg(picture), 254)];
    expect([b.width, b.height], piece.id).toEqual([a.width, a.height]);
    expect(differingShare(a, b), piece.id).toBeLessThan(MOST_DIFFERENT);
    // A drawing that is half a millimetre off is seen.
    const aside = { at: [0.5, 0], angle: 0 } as const;
    const moved = { ...picture, items: [{ kind: "group", placement: aside, items: picture.items }] } as const;
    expect(differingShare(a, renderSvg(svg(moved), 254)), piece.id).toBeGreaterThan(MOST_DIFFERENT);
  }
});
