import type { Job } from "../model/job.ts";
import { jobJson } from "../output/json.ts";
import { pdf } from "../output/pdf.ts";
import { svg } from "../output/svg.ts";
import { piecePicture } from "../picture/piece.ts";
import { printerCheck, printerCheckFile } from "../picture/sheet/printerCheck.ts";
import { sheetPictures } from "../picture/sheet/sheets.ts";
import { type Fonts, hashOf, type JobFile, paperSlug } from "./file.ts";

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
  const words = {
    article: made.article,
    forWhom: order.forWhom,
    file: order.file,
    cautions: made.cautions,
    findings: job.findings,
  };
  const pages = sheetPictures({
    pieces: made.pieces,
    layout,
    words,
    units: order.units,
    ...(made.assembly ? { assembly: made.assembly } : {}),
    ...(made.capacity ? { capacity: made.capacity } : {}),
    ...(options.stamp === undefined ? {} : { stamp: options.stamp }),
  });
  return [
    { path: `template-${paperSlug(paper)}.pdf`, data: await pdf(pages, info) },
    {
      path: printerCheckFile(paper),
      data: await pdf([printerCheck(paper, margin)], { ...info, title: "Printer check" }),
    },
    ...made.pieces.map(
      (p): JobFile => ({ path: `pieces/${p.id}.svg`, data: svg(piecePicture(p, order.units)) }),
    ),
    { path: "job.json", data: jobJson(job) },
  ];
}
