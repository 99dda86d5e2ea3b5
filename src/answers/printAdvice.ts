import { paperSlug } from "../files/file.ts";
import { barLengths } from "../layout/printer.ts";
import type { Job } from "../model/job.ts";
import { counted } from "../model/words.ts";

/** Why there is no quote, where the order names a shop file. */
function quoteAdvice({ bench, shop }: Job): readonly string[] {
  if (shop.file === "" || (bench.price && !bench.price.incomplete)) return [];
  const [first, ...more] = bench.unpriced;
  const rest = more.length === 0 ? "" : ` (and ${more.length} more, on the bench sheet)`;
  return [`  No quote:     ${first}${rest}`];
}

/** What to print first and what to measure, in a few plain lines. */
export function printAdvice(job: Job, folder: string): readonly string[] {
  const { paper, margin, sheets } = job.layout;
  const bars = barLengths(paper, margin);
  const slug = paperSlug(paper);
  return [
    `  Wrote ${folder}: ${counted(sheets.length + 1, "sheet")} of templates on ${paper.name}, ${counted(job.made.pieces.length, "piece")} as SVG, bench-sheet.pdf${job.bench.price && !job.bench.price.incomplete ? ", quote.pdf" : ""} and job.json`,
    `  Print first:  printer-check-${slug}.pdf, at 100 % ("actual size", no fitting)`,
    `  Measure:      its bars must be ${bars.x} mm and ${bars.y} mm long. If not, make again with --printed and what they measured, as in --printed ${bars.x - 0.8}x${bars.y - 0.5}`,
    `  Then print:   template-${slug}.pdf, and measure the 50 mm square before you cut`,
    ...quoteAdvice(job),
  ];
}
