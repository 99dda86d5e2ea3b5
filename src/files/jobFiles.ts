import { frontPage } from "../layout/printer.ts";
import type { Job } from "../model/job.ts";
import { jobJson } from "../output/json.ts";
import { markdown } from "../output/markdown.ts";
import { pdf } from "../output/pdf.ts";
import { svg } from "../output/svg.ts";
import { benchDocument } from "../picture/bench/benchDocument.ts";
import type { BenchDocument } from "../picture/bench/document.ts";
import { benchPictures } from "../picture/bench/pages.ts";
import { quoteDocument } from "../picture/bench/quoteDocument.ts";
import { piecePicture } from "../picture/piece.ts";
import { jobSheets } from "../picture/sheet/jobSheets.ts";
import { printerCheck, printerCheckFile } from "../picture/sheet/printerCheck.ts";
import { type Fonts, hashOf, type JobFile, paperSlug } from "./file.ts";

/** A paper in words and tables: as pages to print, and as Markdown. */
async function paperFiles(
  name: string,
  paper: BenchDocument,
  { layout, order }: Job,
  { font, bold }: Fonts,
): Promise<readonly JobFile[]> {
  const { width, height } = frontPage(layout.paper);
  const pages = benchPictures(paper, { width, height, margin: layout.margin });
  const id = hashOf(JSON.stringify([order.text, name, paper]));
  return [
    { path: `${name}.pdf`, data: await pdf(pages, { font, bold, title: paper.title, id }) },
    { path: `${name}.md`, data: markdown(paper) },
  ];
}

/** The same paper, which says on every page that nothing may be made by it. */
const stamped = (paper: BenchDocument, stamp: string): BenchDocument => ({
  ...paper,
  subtitle: [`${stamp.toUpperCase()}: make nothing by this sheet.`, ...paper.subtitle],
  head: `${stamp.toUpperCase()}. ${paper.head}`,
});

/** What lies on the bench, and the customer's quote where there is a price and nothing is wrong. */
async function benchFiles(job: Job, fonts: Fonts & { readonly stamp?: string }): Promise<readonly JobFile[]> {
  const sheet = benchDocument({ ...job, priced: true });
  if (fonts.stamp !== undefined) return paperFiles("bench-sheet", stamped(sheet, fonts.stamp), job, fonts);
  const quote = quoteDocument(job);
  return [
    ...(await paperFiles("bench-sheet", sheet, job, fonts)),
    ...(quote ? await paperFiles("quote", quote, job, fonts) : []),
  ];
}

/** The files of a made job: templates, the printer check, one SVG a piece, and job.json. */
export async function jobFiles(
  job: Job,
  options: Fonts & { readonly stamp?: string },
): Promise<readonly JobFile[]> {
  const { made, layout, order } = job;
  const { paper, margin } = layout;
  const title = `${made.article}${order.forWhom === "" ? "" : ` for ${order.forWhom}`}`;
  const info = {
    font: options.font,
    bold: options.bold,
    title,
    id: hashOf(JSON.stringify([order.text, layout])),
  };
  const pages = jobSheets(job, options.stamp);
  return [
    { path: `template-${paperSlug(paper)}.pdf`, data: await pdf(pages, info) },
    {
      path: printerCheckFile(paper),
      data: await pdf([printerCheck(paper, margin)], { ...info, title: "Printer check" }),
    },
    ...made.pieces.map(
      (p): JobFile => ({ path: `pieces/${p.id}.svg`, data: svg(piecePicture(p, order.units)) }),
    ),
    ...(await benchFiles(job, options)),
    { path: "job.json", data: jobJson(job) },
  ];
}
