import type { ArticleDefinition } from "./articles/definition.ts";
import { dieSection } from "./articles/dieSection.ts";
import { articles } from "./articles/index.ts";
import { checkPieces, checkSheets } from "./checks/index.ts";
import { dieDerivations } from "./die/about.ts";
import { PRESS_CAUTIONS } from "./die/checks/index.ts";
import { dieFor } from "./die/die.ts";
import type { DieSettings } from "./die/settings.ts";
import { type Fonts, hashOf, paperSlug } from "./files/file.ts";
import { layOut } from "./layout/layOut.ts";
import { type PrintedRead, readPrinted } from "./layout/printed.ts";
import { barLengths, frontPage } from "./layout/printer.ts";
import type { Made } from "./model/article.ts";
import type { Derivation } from "./model/derivation.ts";
import { derivationOf } from "./model/derivation.ts";
import { type Explained, explainPiece } from "./model/explain.ts";
import type { Fault, Finding } from "./model/finding.ts";
import { fitLines } from "./model/fit.ts";
import type { Job } from "./model/job.ts";
import type { Piece } from "./model/piece.ts";
import type { Paper } from "./model/sheet.ts";
import { nearestWord, oneOf } from "./model/words.ts";
import { faultStatus } from "./order/faults.ts";
import type { Order } from "./order/order.ts";
import { readPaper } from "./order/paper.ts";
import { readOrder } from "./order/read.ts";
import { pdf } from "./output/pdf.ts";
import { leastPaper, measuringSheet } from "./picture/measuring/measuringSheet.ts";
import { factTables } from "./trade/facts/index.ts";
import { quote } from "./units/quote.ts";

// The engine's only entry: an order's text goes in, a checked job comes out. It takes texts and bytes,
// never paths, and knows neither files nor the clock.

export type JobOptions = {
  /** Instead of the order's paper. */
  readonly paper?: Paper;
  /** What the bars of the printer check measured, as typed: "179.2x239.5". */
  readonly printed?: string;
  /** Straight straps are printed ends only. */
  readonly endsOnly?: boolean;
};

export type JobResult =
  /** The order can't be read or contradicts itself: nothing was made. */
  | { readonly made: false; readonly status: 1 | 2; readonly faults: readonly Fault[] }
  /** The pieces were made; status 1 when a check found an error. `die` is what the order says of dies. */
  | { readonly made: true; readonly status: 0 | 1; readonly job: Job; readonly die: DieSettings };

/** Makes an order: read, resolve, draw, check, lay out, check again. */
export function makeJob(text: string, file: string, options: JobOptions = {}): JobResult {
  const read = readOrder(text, file, articles);
  if (!read.order)
    return { made: false, status: faultStatus(read.faults) === 1 ? 1 : 2, faults: read.faults };
  const { order } = read;
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
  const findings = gravestFirst([
    ...made.findings,
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

const SEVERITIES = ["error", "caution", "note"];
const gravestFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));

/** How each size of each piece, and of the whole, came about. */
function derivationsOf(made: Made): readonly Derivation[] {
  return [
    ...made.sizes.map((q) => derivationOf("", q)),
    ...made.pieces.flatMap((p) =>
      [...p.sizes, ...p.sections.map((s) => s.estimate)].map((q) => derivationOf(p.id, q)),
    ),
  ];
}

/** What the reader understood that is worth telling. */
const remarksOf = (order: Order): readonly Finding[] =>
  order.remarks.map((r) => ({
    rule: "reading",
    severity: "note",
    piece: "",
    place: r.key,
    message: r.text,
    mend: "nothing to do if that is what you meant",
  }));

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? "" : "s"}`;

/** What to print first and what to measure, in a few plain lines. */
export function printAdvice(job: Job, folder: string): readonly string[] {
  const { paper, margin, sheets } = job.layout;
  const bars = barLengths(paper, margin);
  const slug = paperSlug(paper);
  return [
    `  Wrote ${folder}: ${counted(sheets.length + 1, "sheet")} of templates on ${paper.name}, ${counted(job.made.pieces.length, "piece")} as SVG, and job.json`,
    `  Print first:  printer-check-${slug}.pdf, at 100 % ("actual size", no fitting)`,
    `  Measure:      its bars must be ${bars.x} mm and ${bars.y} mm long. If not, make again with --printed and what they measured, as in --printed ${bars.x - 0.8}x${bars.y - 0.5}`,
    `  Then print:   template-${slug}.pdf, and measure the 50 mm square before you cut`,
  ];
}

/** How the sizes of one piece came about; without a piece, of the whole article and the list of pieces. */
export function explainJob(job: Job, piece: string | undefined): Explained {
  const ids = job.made.pieces.map((p) => p.id);
  const { units } = job.order;
  if (piece === undefined) {
    return {
      ok: true,
      lines: [
        ...explainPiece(job.derivations, "", units),
        ...(job.made.fit ? ["", ...fitLines(job.made.fit, units)] : []),
        "",
        `The pieces: ${ids.join(", ")}. Add a piece's name to see how its sizes came about.`,
      ],
    };
  }
  const id = ids.includes(piece) ? piece : ids.filter((i) => i.startsWith(piece))[0];
  if (id === undefined) return { ok: false, message: noPiece(piece, ids) };
  return { ok: true, lines: explainPiece(job.derivations, id, units) };
}

const noPiece = (piece: string, ids: readonly string[]): string => {
  const near = nearestWord(piece, ids);
  return `There is no piece ${quote(piece)}. The pieces are: ${ids.join(", ")}.${near === undefined ? "" : ` To mend: write ${near}.`}`;
};

export type PiecesFound =
  | { readonly ok: true; readonly pieces: readonly Piece[] }
  | { readonly ok: false; readonly message: string };

/** The job's pieces of these names, each once; or what is wrong with the first that is no piece. */
export function piecesNamed(job: Job, names: readonly string[]): PiecesFound {
  const ids = job.made.pieces.map((p) => p.id);
  const wrong = names.find((name) => !ids.includes(name));
  if (wrong !== undefined) return { ok: false, message: noPiece(wrong, ids) };
  return { ok: true, pieces: job.made.pieces.filter(({ id }) => names.includes(id)) };
}

/** What `explain` calls the die of a piece: this, and the piece's name. */
export const DIE_PREFIX = "die-";

/** How the press load of a piece's die came about, and the pieces for each stroke. */
export function explainDie(job: Job, settings: DieSettings, piece: string): Explained {
  const found = piecesNamed(job, [piece]);
  if (!found.ok) return found;
  const derivations = dieDerivations(dieFor(found.pieces[0]!, settings), piece);
  return { ok: true, lines: [...explainPiece(derivations, piece, job.order.units), "", ...PRESS_CAUTIONS] };
}

export type ArticleFound =
  | { readonly ok: true; readonly article: ArticleDefinition }
  | { readonly ok: false; readonly message: string };

/** The article of that name, written with hyphens or spaces. */
export function articleNamed(name: string): ArticleFound {
  const slug = name.trim().toLowerCase().replaceAll(" ", "-");
  const article = articles.find((a) => a.slug === slug);
  if (article) return { ok: true, article };
  const slugs = articles.map((a) => a.slug);
  return { ok: false, message: noneOf("article", name, slugs, nearestWord(slug, slugs)) };
}

/** A name that is not among those of its kind: the one to write, or all of them. */
function noneOf(kind: string, name: string, names: readonly string[], near: string | undefined): string {
  return `There is no ${kind} "${name}". The ${kind}s are: ${names.join(", ")}. To mend: write ${near ?? oneOf(names)}.`;
}

export type TableFound =
  | { readonly ok: true; readonly table: (typeof factTables)[number] }
  | { readonly ok: false; readonly message: string };

/** The built-in table of that name; else the only one that speaks of it is offered, or the nearest name. */
export function tableNamed(name: string): TableFound {
  const word = name.trim().toLowerCase();
  const table = factTables.find((t) => t.name === word);
  if (table) return { ok: true, table };
  const names = factTables.map((t) => t.name);
  const stem = word.replace(/s$/, "");
  const speaking = factTables.filter((t) => JSON.stringify(t).toLowerCase().includes(stem));
  const near = speaking.length === 1 ? speaking[0]?.name : nearestWord(word, names);
  return { ok: false, message: noneOf("table", name, names, near) };
}

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

export { articles } from "./articles/index.ts";
export { sayDie } from "./die/about.ts";
export { PRESS_CAUTIONS } from "./die/checks/index.ts";
export { type DieAsked, type DieOptions, dieFiles, diesOf } from "./files/dieFiles.ts";
export type { Fonts, JobFile } from "./files/file.ts";
export { jobFiles } from "./files/jobFiles.ts";
export type { Finding } from "./model/finding.ts";
export { ENGINE_VERSION } from "./model/job.ts";
export { sayFinding } from "./model/sayFinding.ts";
export { beginOrder } from "./order/begin.ts";
export { LARGEST_BYTES } from "./order/guard.ts";
export { readPaper } from "./order/paper.ts";
export { sayFault } from "./order/say.ts";
export { jsonSchema as orderJsonSchema } from "./order/schema.ts";
export { jobJsonSchema } from "./output/jobSchema.ts";
export { factTables } from "./trade/facts/index.ts";
export { sayFacts } from "./trade/facts/say.ts";
