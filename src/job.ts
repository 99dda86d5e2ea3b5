import { gravestFirst, remarksOf } from "./answers/findings.ts";
import type { JobOptions, JobResult } from "./answers/jobResult.ts";
import type { PagePicture } from "./answers/pageData.ts";
import { type SheetsAsked, sheetsThrough } from "./answers/pagePictures.ts";
import type { Said } from "./answers/said.ts";
import { shopFor } from "./answers/shopFor.ts";
import { finishSection, priceSection } from "./articles/benchSections.ts";
import { dieSection } from "./articles/dieSection.ts";
import { articles } from "./articles/index.ts";
import { benchOf } from "./bench/bench.ts";
import { checkPieces, checkSheets } from "./checks/index.ts";
import { layOut } from "./layout/layOut.ts";
import { type PrintedRead, readPrinted } from "./layout/printed.ts";
import type { Made } from "./model/article.ts";
import { type Derivation, derivationOf } from "./model/derivation.ts";
import type { Fault } from "./model/finding.ts";
import type { Job } from "./model/job.ts";
import { faultStatus } from "./order/faults.ts";
import { readOrder } from "./order/read.ts";

// The engine's only entry: an order's text goes in, a checked job comes out. It takes texts and bytes,
// never paths, and knows neither files nor the clock.

/** Makes an order: read, resolve, draw, check, lay out, check again. */
export function makeJob(text: string, file: string, options: JobOptions = {}): JobResult {
  const read = readOrder(text, file, articles);
  if (!read.order)
    return { made: false, status: faultStatus(read.faults) === 1 ? 1 : 2, faults: read.faults };
  const { order } = read;
  const shop = shopFor(order, options.shop);
  if (!shop.ok) return { made: false, status: 2, faults: shop.faults };
  const made = order.article.make(order.values);
  const context = { units: order.units };
  const { margin, overlap } = order;
  const paper = options.paper ?? order.paper;
  const endsOnly = options.endsOnly || order.endsOnly;
  const printed = options.printed === undefined ? undefined : readPrinted(options.printed, paper, margin);
  if (printed && !printed.ok) return { made: false, status: 2, faults: [printedFault(printed)] };
  const layout = layOut(made.pieces, {
    paper,
    margin,
    overlap,
    endsOnly,
    ...(printed ? { factor: printed.factor } : {}),
  });
  const [finish, price] = [order.values.of(finishSection), order.values.of(priceSection)];
  const { bench, findings: benchFindings } = benchOf({
    made,
    shop: shop.shop,
    finish,
    price,
    units: order.units,
  });
  const findings = gravestFirst([
    ...made.findings,
    ...benchFindings,
    ...shop.findings,
    ...checkPieces(made, context),
    ...checkSheets(made, layout, context),
    ...remarksOf(order),
  ]);
  const job: Job = {
    order: { file, text, article: order.article.name, forWhom: order.forWhom, units: order.units },
    dimensions: order.sections.flatMap((s) => s.dimensions),
    made,
    derivations: derivationsOf(made),
    findings,
    layout,
    bench,
    quantity: price.quantity.value,
    finish: { dye: finish.dye, edges: finish.edges, thread: finish.thread },
    shop: shop.shop,
  };
  const status = findings.some((f) => f.severity === "error") ? 1 : 0;
  return { made: true, status, job, die: order.values.of(dieSection) };
}

const printedFault = ({ problem, allowed, mend }: Extract<PrintedRead, { ok: false }>): Fault => ({
  code: "printed",
  key: "--printed",
  problem,
  allowed,
  mend,
});

/** How each size of each piece, and of the whole, came about. */
function derivationsOf(made: Made): readonly Derivation[] {
  return [
    ...made.sizes.map((q) => derivationOf("", q)),
    ...made.pieces.flatMap((p) =>
      [...p.sizes, ...p.sections.map((s) => s.estimate)].map((q) => derivationOf(p.id, q)),
    ),
  ];
}

/** The sheets as they will print, as pictures of the page. */
export const pageSheets = (text: string, file: string, asked: SheetsAsked): Said<readonly PagePicture[]> =>
  sheetsThrough(makeJob, text, file, asked);

export {
  type BookFile,
  type BookRow,
  bookCsv,
  bookRow,
  bookRowsWith,
  sayBook,
} from "./answers/book.ts";
export { type CompareOptions, compareJobs, type Side } from "./answers/compare.ts";
export { DIE_PREFIX, explainDie, explainJob } from "./answers/explain.ts";
export { grade } from "./answers/grade.ts";
export type { Beside, JobOptions, JobResult } from "./answers/jobResult.ts";
export { measuringSheetPdf } from "./answers/measuringSheet.ts";
export { articleNamed, tableNamed } from "./answers/named.ts";
export { pageAnswer } from "./answers/pageAnswer.ts";
export type {
  Field,
  FieldGroup,
  PageAnswer,
  PageFault,
  PagePicture,
  PagePiece,
  PageSize,
  PageView,
} from "./answers/pageData.ts";
export { pageEdit, pageUnits } from "./answers/pageEdit.ts";
export { pageFindings } from "./answers/pageFindings.ts";
export { pageFolded, pagePiece, type SheetsAsked } from "./answers/pagePictures.ts";
export { piecesNamed } from "./answers/piecesNamed.ts";
export { printAdvice } from "./answers/printAdvice.ts";
export type { Said } from "./answers/said.ts";
export { sayComparison } from "./answers/sayComparison.ts";
export { gradeCsv, sayGrade } from "./answers/sayGrade.ts";
export { readJobJson, summaryOf } from "./answers/summary.ts";
export { articles } from "./articles/index.ts";
export { sayDie, sayPair } from "./die/about.ts";
export { PRESS_CAUTIONS } from "./die/checks/index.ts";
export { type DieAsked, type DieOptions, dieFiles, diesOf } from "./files/dieFiles.ts";
export type { Fonts, JobFile } from "./files/file.ts";
export { jobFiles } from "./files/jobFiles.ts";
export type { Finding } from "./model/finding.ts";
export { ENGINE_VERSION } from "./model/job.ts";
export { asPieceId } from "./model/pieceName.ts";
export { sayFinding } from "./model/sayFinding.ts";
export type { Sentence, Told } from "./model/sentence.ts";
export { oneOf, wordMeant } from "./model/words.ts";
export { beginOrder } from "./order/begin.ts";
export { dieKeys, dieValue } from "./order/dieSetting.ts";
export { LARGEST_BYTES } from "./order/guard.ts";
export { readPaper } from "./order/paper.ts";
export { revisionLine } from "./order/revisionLine.ts";
export { sayFault } from "./order/say.ts";
export { jsonSchema as orderJsonSchema } from "./order/schema.ts";
export { beginShop } from "./order/shopBegin.ts";
export { isShopFile, shopNamedIn } from "./order/shopRead.ts";
export { shopJsonSchema } from "./order/shopSchema.ts";
export { jobJsonSchema } from "./output/jobSchema.ts";
export { factTables } from "./trade/facts/index.ts";
export { sayFacts } from "./trade/facts/say.ts";
export { quote } from "./units/quote.ts";
