// The dies of a job's pieces: what was found about each, and the files by which it is ordered.
import { checkDie } from "../die/checks/index.ts";
import { pairPressEnough } from "../die/checks/pairPressEnough.ts";
import type { Die } from "../die/die.ts";
import type { Nest } from "../die/nest.ts";
import { pairDie, pairLoad, secondOf } from "../die/pairDie.ts";
import { type Price, priceOf } from "../die/price.ts";
import type { DieSettings } from "../die/settings.ts";
import { type Side, sidesOf } from "../die/sides.ts";
import { boundsOf } from "../geometry/bounds.ts";
import { layOut } from "../layout/layOut.ts";
import { frontPage } from "../layout/printer.ts";
import type { Finding } from "../model/finding.ts";
import type { Job } from "../model/job.ts";
import type { Piece } from "../model/piece.ts";
import type { Quantity } from "../model/quantity.ts";
import { dxf } from "../output/dxf.ts";
import { pdf } from "../output/pdf.ts";
import { plotterSvg } from "../output/plotterSvg.ts";
import { svg } from "../output/svg.ts";
import { cutItems, pairItems } from "../picture/die/cutItems.ts";
import { type DieDrawingInput, type DieTitle, dieDrawing } from "../picture/die/dieDrawing.ts";
import { pairSheet, sayBothSides } from "../picture/die/pairSheet.ts";
import { plotterSheet } from "../picture/die/plotterSheet.ts";
import type { Picture } from "../picture/picture.ts";
import { sheetPictures } from "../picture/sheet/sheets.ts";
import { notesByDie } from "../trade/bodyEdge.ts";
import { ROLL_LENGTH_MM } from "../trade/paper.ts";
import { type Fonts, hashOf, type JobFile } from "./file.ts";

/** Two of a die on one board. */
export type PairAsked = {
  readonly nest: Nest;
  /** What the press must push for both at once, N. */
  readonly load: Quantity;
  readonly findings: readonly Finding[];
  readonly price?: Price;
};

/** One die that is ordered: of one piece, for one side. */
export type DieAsked = Side & {
  readonly piece: Piece;
  /** Errors of the job, what the dies' rules found, and what was found about the pair. */
  readonly findings: readonly Finding[];
  /** Those without the pair's: what holds for the single die. */
  readonly own: readonly Finding[];
  /** On the first die of a piece, when two on one board were asked for. */
  readonly pair?: PairAsked;
};

export type DieOptions = Fonts & {
  /** Also the faces of the rule, in a layer of their own. */
  readonly ruleEdge?: boolean;
  /** Also two of each piece on one board. */
  readonly nest?: boolean;
  /** A plotter cuts what lies inside before the outline; so unless said. */
  readonly insideFirst?: boolean;
};

const STAMP = "has errors";
/** What a view needs beyond the piece itself on a page from the roll, mm. */
const ROUND_VIEW_MM = 170;

function pairOf(die: Die): PairAsked {
  const nest = pairDie(die);
  const load = pairLoad(die, nest);
  const price = priceOf(die.rules, die.settings, 2);
  return { nest, load, findings: pairPressEnough(die, load), ...(price ? { price } : {}) };
}

/** The dies of one piece of a job; with `nest`, also two of the first on one board and what is found about them. */
export function diesOf(
  job: Job,
  settings: DieSettings,
  piece: Piece,
  { nest = false }: Pick<DieOptions, "nest"> = {},
): readonly DieAsked[] {
  const errors = job.findings.filter(({ severity }) => severity === "error");
  return sidesOf(piece, settings).map((side, i) => {
    const own = [...errors, ...checkDie(side.die, job.order.units)];
    const pair = nest && i === 0 ? pairOf(side.die) : undefined;
    const findings = [...own, ...(pair?.findings ?? [])];
    return { ...side, piece, own, findings, ...(pair ? { pair } : {}) };
  });
}

const hasErrors = (findings: readonly Finding[]): boolean =>
  findings.some(({ severity }) => severity === "error");

const stemOf = (file: string): string => file.replace(/\.[^.]*$/, "");

const numberOf = ({ order }: Job, { die, piece }: DieAsked, slug: string): string =>
  `${die.settings.number === "" ? stemOf(order.file) : die.settings.number}-${piece.id}-${slug}`;

/** How many are cut, and of which side. */
function sayHand({ count, hand }: Piece): string {
  if (hand === "pair") return `${count}: ${count / 2} left, ${count / 2} right`;
  return count === 1 ? "1" : `${count}, all alike`;
}

/** Whose drawing it is: what the order says, else the shop and its place. */
const ownerOf = ({ shop }: Job, { owner }: DieSettings): string =>
  owner === "" ? [shop.name, shop.address].filter((s) => s !== "").join(", ") : owner;

/** What the two on one board are called in names of drawings and files. */
const boardSlug = ({ die }: DieAsked): string => (secondOf(die) === "mirrored" ? "pair" : "two");

/** The drawing of the board of two, with its revision. */
const boardNumber = (job: Job, asked: DieAsked): string =>
  `${numberOf(job, asked, boardSlug(asked))}, revision ${asked.die.settings.revision}`;

function titleOf(job: Job, asked: DieAsked, slug: string, side: string): DieTitle {
  const { revision, date } = asked.die.settings;
  return {
    owner: ownerOf(job, asked.die.settings),
    article: job.made.article,
    forWhom: job.order.forWhom,
    piece: asked.piece.name,
    number: numberOf(job, asked, slug),
    revision,
    date,
    side,
    hand: sayHand(asked.piece),
  };
}

/** The paper of the templates; from a roll as much as the view at true scale needs. */
function sheetFor(job: Job, { rules }: Die): DieDrawingInput["sheet"] {
  const { paper } = job.layout;
  if (!paper.roll) return { width: paper.width, height: paper.height };
  const { minX, minY, maxX, maxY } = boundsOf(rules[0]!.path);
  const needed = Math.ceil(Math.max(maxX - minX, maxY - minY) + ROUND_VIEW_MM);
  return { width: paper.width, height: Math.min(ROLL_LENGTH_MM, Math.max(frontPage(paper).height, needed)) };
}

/** A drawing as PDF, and each of its sheets as SVG. */
async function drawingFiles(
  name: string,
  pictures: readonly Picture[],
  job: Job,
  { font, bold }: DieOptions,
): Promise<readonly JobFile[]> {
  const id = hashOf(JSON.stringify([job.order.text, name, pictures]));
  return [
    { path: `${name}.pdf`, data: await pdf(pictures, { font, bold, title: name, id }) },
    ...pictures.map((picture, i): JobFile => {
      const sheet = i === 0 ? "" : `-sheet-${i + 1}`;
      return { path: `${name}${sheet}.svg`, data: svg(picture) };
    }),
  ];
}

function wordsOf(findings: readonly Finding[], title: DieTitle): readonly string[] {
  return [
    ...(hasErrors(findings) ? [STAMP.toUpperCase()] : []),
    `${title.piece}, ${title.side}; seen on the grain side`,
    `${title.number}, revision ${title.revision}${title.date === "" ? "" : `, ${title.date}`}`,
    "Millimetres, true size.",
  ];
}

/**
 * The same whether the board is ordered or not: a file that is out does not change with what else is drawn.
 */
const singleOnly = (board: string): string =>
  `Make this die only if no board of two is ordered in its place (drawing ${board})`;

const boardInstead = (of: string): string =>
  `Make 1 of this board instead of single dies: drawing ${of} defines the outline`;

/** `ordered`: one from these sheets, or two on one board in its place. */
async function dieOwnFiles(
  job: Job,
  asked: DieAsked,
  ordered: "single" | "board",
  options: DieOptions,
): Promise<readonly JobFile[]> {
  const { die, slug, says, piece, own: findings } = asked;
  const board = boardNumber(job, asked);
  const title = { ...titleOf(job, asked, slug, says), ...(ordered === "board" ? { board } : {}) };
  const name = `${piece.id}-${slug}-${die.settings.revision}`;
  const words = wordsOf(findings, title);
  const cut = [...words, singleOnly(board)];
  const { margin } = job.layout;
  const { units } = job.order;
  const pictures = dieDrawing({ die, sheet: sheetFor(job, die), margin, units, title, findings });
  const plotted = {
    title: `${title.number} ${title.revision}`,
    words,
    insideFirst: options.insideFirst ?? true,
  };
  return [
    ...(await drawingFiles(`die-${name}`, pictures, job, options)),
    {
      path: `die-${name}.dxf`,
      data: dxf(cutItems(die, { ruleEdge: options.ruleEdge ?? false, words: cut })),
    },
    { path: `plotter-${name}.svg`, data: plotterSvg(plotterSheet(die, plotted)) },
  ];
}

/** Two of the first of a piece's dies on one board. */
async function nestedFiles(
  job: Job,
  asked: DieAsked,
  { nest, findings }: PairAsked,
  options: DieOptions,
): Promise<readonly JobFile[]> {
  const { die, piece, slug, own } = asked;
  const pair = boardSlug(asked);
  const of = `${numberOf(job, asked, slug)}, revision ${die.settings.revision}`;
  const title = { ...titleOf(job, asked, pair, sayBothSides(nest)), instead: !hasErrors(findings) };
  const name = `die-${piece.id}-${pair}-${die.settings.revision}`;
  const found = [...own, ...findings];
  const sheet = pairSheet({
    die,
    nest,
    sheet: sheetFor(job, die),
    margin: job.layout.margin,
    units: job.order.units,
    title,
    of,
    file: `${name}.dxf`,
    ...(hasErrors(found) ? { stamp: STAMP } : {}),
  });
  const words = [...wordsOf(found, title), ...(title.instead ? [boardInstead(of)] : [])];
  return [
    ...(await drawingFiles(name, [sheet], job, options)),
    { path: `${name}.dxf`, data: dxf(pairItems(die, nest, { ruleEdge: options.ruleEdge ?? false, words })) },
  ];
}

/** `for die drawing tote-front-as-drawn, revision A`; of a pair both numbers. */
function sayForDie(job: Job, dies: readonly DieAsked[]): string {
  const numbers = dies.map((asked) => numberOf(job, asked, asked.slug));
  return `for die drawing${numbers.length === 1 ? "" : "s"} ${numbers.join(" and ")}, revision ${dies[0]!.die.settings.revision}`;
}

/**
 * The piece at true scale on the job's paper, tiled where one sheet doesn't hold it, for the die maker: who has
 * neither the order nor this program, and knows the dies by their numbers.
 */
async function templateFile(
  job: Job,
  dies: readonly DieAsked[],
  { piece: ordered, die, own: findings }: DieAsked,
  options: DieOptions,
): Promise<JobFile> {
  const notches = die.rules.some(({ kind }) => kind === "notch");
  const piece = notches ? { ...ordered, notes: notesByDie(ordered.notes) } : ordered;
  const { paper, margin, overlap, factor } = job.layout;
  const layout = layOut([piece], { paper, margin, overlap, endsOnly: false, factor });
  const { article } = job.made;
  const { forWhom, file, units } = job.order;
  const forDie = { says: sayForDie(job, dies), notches };
  const words = { article, forWhom, file, cautions: [], findings, die: forDie };
  const name = `template-${piece.id}-${die.settings.revision}`;
  const stamp = hasErrors(findings) ? { stamp: STAMP } : {};
  const pages = sheetPictures({ pieces: [piece], layout, words, units, ...stamp });
  const id = hashOf(JSON.stringify([job.order.text, name, layout, forDie]));
  const data = await pdf(pages, { font: options.font, bold: options.bold, title: name, id });
  return { path: `${name}.pdf`, data };
}

/**
 * The files of a piece's dies: its template at true scale; of each side a drawing (PDF, and one SVG a sheet), a DXF and a sheet for a
 * plotter; when asked also two on one board. Names carry piece, side and revision. What has an error is
 * stamped so.
 */
export async function dieFiles(
  job: Job,
  dies: readonly DieAsked[],
  options: DieOptions,
): Promise<readonly JobFile[]> {
  const files: JobFile[] = [];
  const [first] = dies;
  if (!first) return files;
  const pair = options.nest ? (first.pair ?? pairOf(first.die)) : undefined;
  // A board that can't be made is not ordered: then the single die is.
  const ordered = pair && !hasErrors(pair.findings) ? "board" : "single";
  for (const asked of dies) files.push(...(await dieOwnFiles(job, asked, ordered, options)));
  files.push(await templateFile(job, dies, first, options));
  if (pair) files.push(...(await nestedFiles(job, first, pair, options)));
  return files;
}
