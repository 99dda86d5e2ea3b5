import type { ArticleDefinition } from "../articles/definition.ts";
import { type Fonts, hashOf } from "../files/file.ts";
import { frontPage } from "../layout/printer.ts";
import { readPaper } from "../order/paper.ts";
import { pdf } from "../output/pdf.ts";
import { leastPaper, measuringSheet } from "../picture/measuring/measuringSheet.ts";

/** The measuring sheet of an article as a PDF. */
export async function measuringSheetPdf(
  article: ArticleDefinition,
  paperName: string,
  fonts: Fonts,
): Promise<
  { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly message: string }
> {
  const paper = readPaper(paperName);
  if (!paper.ok)
    return {
      ok: false,
      message: `--paper: ${paper.problem}; allowed: ${paper.allowed}. To mend: ${paper.mend}`,
    };
  const size = frontPage(paper.paper);
  const least = leastPaper(article, size.width);
  if (size.width < least.width || size.height < least.height)
    return {
      ok: false,
      message: `--paper: the measuring sheet needs ${Math.ceil(least.width)} x ${Math.ceil(least.height)} mm, ${paper.paper.name} has ${size.width} x ${size.height} mm. To mend: choose a larger paper`,
    };
  const page = measuringSheet(article, size);
  return {
    ok: true,
    bytes: await pdf([page], {
      ...fonts,
      title: `Measuring sheet: ${article.name}`,
      id: hashOf(article.slug),
    }),
  };
}
