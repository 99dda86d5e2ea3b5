import { rmSync } from "node:fs";
import { basename, join } from "node:path";
import {
  type DieAsked,
  dieFiles,
  diesOf,
  type JobFile,
  makeJob,
  PRESS_CAUTIONS,
  piecesNamed,
  readPaper,
  revisionLine,
  sayDie,
  sayFault,
  sayFinding,
  sayPair,
} from "../job.ts";
import { fonts } from "./fonts.ts";
import { NOT_WRITTEN, stemOf } from "./make.ts";
import { progress } from "./progress.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { shopBeside } from "./readShop.ts";
import { sayWriteError } from "./sayWriteError.ts";
import { earlierFiles, otherDrawings } from "./standing.ts";
import { type Ending, refused } from "./terminal.ts";
import { writeFiles } from "./writeFiles.ts";

/** The command's own words, as typed. */
export type DieWords = {
  readonly out: string;
  readonly paper?: string;
  readonly ruleEdge?: boolean;
  readonly nest?: boolean;
  readonly insideFirst?: boolean;
  readonly evenSo?: boolean;
  readonly replace?: boolean;
  readonly json?: boolean;
};

type Ordered = Extract<ReturnType<typeof makeJob>, { readonly made: true }>;

/** What came of it, for people and for --json. */
type Report = {
  readonly file: string;
  readonly status: 0 | 1;
  readonly units: Ordered["job"]["order"]["units"];
  readonly dies: readonly DieAsked[];
  /** Those of pieces with errors: nothing of them is written, unless even so. */
  readonly kept: readonly DieAsked[];
  readonly written: readonly string[];
  /** DXF files of the same revision that stand there, or stood there, and are of another drawing. */
  readonly changed: readonly string[];
  /** Files of the earlier drawing that are not made any more. */
  readonly gone: readonly string[];
  /** How to raise the revision, where that is why nothing was written. */
  readonly raise?: string;
};

/** Writes drawings and files for the dies of some pieces of an order; good ones even when others have errors. */
export async function die(file: string, names: readonly string[], words: DieWords): Promise<Ending> {
  const paper = words.paper === undefined ? undefined : readPaper(words.paper);
  if (paper && !paper.ok)
    return refused(`--paper: ${paper.problem}; allowed: ${paper.allowed}. To mend: ${paper.mend}`);
  const read = readOrderFile(file);
  if (!read.ok) return refused(read.message);
  const shop = shopBeside(read.text, file);
  const result = makeJob(read.text, basename(file), {
    ...(paper ? { paper: paper.paper } : {}),
    ...(shop ? { shop } : {}),
  });
  if (!result.made)
    return { status: result.status, out: [], err: result.faults.map((f) => sayFault(f, file)) };
  if (names.length === 0) return refused(whichPieces(file, result));
  const found = piecesNamed(result.job, names);
  if (!found.ok) return refused(found.message);
  const dies = found.pieces.map((piece) =>
    diesOf(result.job, result.die, piece, { nest: words.nest ?? false }),
  );
  const good = words.evenSo ? dies : dies.filter((sides) => !hasError(sides));
  const report: Report = {
    file,
    status: hasError(dies.flat()) ? 1 : 0,
    units: result.job.order.units,
    dies: dies.flat(),
    kept: dies.filter((sides) => !good.includes(sides)).flat(),
    written: [],
    changed: [],
    gone: [],
  };
  return good.length === 0 ? ending(report, words) : write(result, good, report, words);
}

const hasError = (dies: readonly DieAsked[]): boolean =>
  dies.some(({ findings }) => findings.some(({ severity }) => severity === "error"));

/** Writes the files, unless drawings of the same revision would be lost. */
async function write(
  result: Ordered,
  dies: readonly (readonly DieAsked[])[],
  report: Report,
  words: DieWords,
): Promise<Ending> {
  const files = await filesOf(result, dies, words);
  const { text } = result.job.order;
  const folder = join(words.out, stemOf(report.file), "die");
  const pathOf = ({ path }: JobFile): string => join(folder, path);
  const asked = dies.flat();
  const differ = otherDrawings(folder, files, asked);
  const changed = differ.length === 0 ? [] : await beyondFaces(differ, folder, result, dies, words);
  if (changed.length > 0 && !words.replace)
    return ending({ ...report, status: 1, changed, raise: howToRaise(report.file, text) }, words);
  const gone = changed.length > 0 ? earlierFiles(folder, files, asked) : [];
  try {
    writeFiles(folder, files, text);
    for (const path of gone) rmSync(path, { force: true });
  } catch (e) {
    return refused(sayWriteError(folder, e, "choose another folder with --out"));
  }
  const replaced = changed.filter((path) => !gone.includes(path));
  return ending({ ...report, written: files.map(pathOf), changed: replaced, gone }, words);
}

/** Those that differ in more than the faces of the rule: these lie beside the die, asked for or not. */
async function beyondFaces(
  differ: readonly string[],
  folder: string,
  result: Ordered,
  dies: readonly (readonly DieAsked[])[],
  words: DieWords,
): Promise<readonly string[]> {
  const files = await filesOf(result, dies, { ...words, ruleEdge: !words.ruleEdge });
  const others = otherDrawings(folder, files, dies.flat());
  return differ.filter((path) => others.includes(path));
}

function whichPieces(file: string, { job }: Ordered): string {
  const ids = job.made.pieces.map(({ id }) => id);
  return `No piece was named. The pieces of ${file} are: ${ids.join(", ")}. To mend: add one or several, as in: whittaw die ${file} ${ids[0]}`;
}

/** Where the order says which revision it is, or where to. */
function howToRaise(file: string, text: string): string {
  const line = revisionLine(text);
  return line === undefined
    ? `add a later die.revision to ${file}, as in  die: { revision: B }`
    : `raise die.revision (${file}, line ${line})`;
}

async function filesOf(
  { job }: Ordered,
  dies: readonly (readonly DieAsked[])[],
  { ruleEdge = false, nest = false, insideFirst = true }: DieWords,
): Promise<readonly JobFile[]> {
  const shown = progress(process.stderr, () => performance.now());
  const embedded = fonts();
  const files: JobFile[] = [];
  for (const [i, sides] of dies.entries()) {
    shown.at(i, dies.length, sides[0]?.piece.name ?? "");
    files.push(...(await dieFiles(job, sides, { ...embedded, ruleEdge, nest, insideFirst })));
  }
  shown.end();
  return files;
}

/** Each once, whichever side or piece it was found on. */
function findingsOf(dies: readonly DieAsked[]): DieAsked["findings"] {
  const all = dies.flatMap(({ findings }) => findings);
  const said = all.map(sayFinding);
  return all.filter((_, i) => said.indexOf(said[i]!) === i);
}

function asJson({ file, status, dies, kept, written, changed, gone, raise }: Report): string {
  const each = dies.map(({ piece, slug, pair, die: { load, press, price } }) => ({
    piece: piece.id,
    side: slug,
    ...(kept.some((k) => k.piece.id === piece.id) ? { hasErrors: true } : {}),
    pressLoadN: load.value,
    ...(press ? { piecesPerStroke: press.pieces.value } : {}),
    ...(price === undefined ? {} : { price }),
    ...(pair ? { pair: { pressLoadN: pair.load.value, ...(pair.price ? { price: pair.price } : {}) } } : {}),
  }));
  const refusal = raise === undefined ? {} : { refused: changed.map((path) => sayLost(path, raise)) };
  return JSON.stringify(
    { file, status, dies: each, findings: findingsOf(dies), written, changed, gone, ...refusal },
    null,
    1,
  );
}

/** A die that is out must not be drawn anew under the name it was ordered by. */
const sayLost = (path: string, raise: string): string =>
  `${path} stands there and is different: ${raise} or, if the drawing isn't out yet, add --replace`;

/** Each die in a line, and what was found about them. */
const sayDies = (dies: readonly DieAsked[], units: Report["units"]): readonly string[] => [
  ...dies.flatMap(({ piece, says, die: one, pair }) => [
    `  ${piece.id}, ${says}: ${sayDie(one, units)}`,
    ...(pair ? [`  ${piece.id}, two on one board: ${sayPair(pair)}`] : []),
  ]),
  ...findingsOf(dies).map((f) => `  ${sayFinding(f)}`),
];

function ending(report: Report, { json }: DieWords): Ending {
  const { file, status, units, dies, kept, written, changed, gone, raise } = report;
  if (json) return { status, out: [asJson(report)], err: [] };
  const after = [
    ...(raise === undefined ? changed : []).map((path) => `  ${path} held another drawing and was replaced.`),
    ...gone.map((path) => `  ${path} was of the earlier drawing and was taken away.`),
    ...written.map((path) => `  Wrote ${path}`),
    ...(written.length === 0 ? [] : PRESS_CAUTIONS.map((caution) => `  ${caution}`)),
  ];
  if (written.length > 0 && kept.length > 0) {
    const good = dies.filter((one) => !kept.includes(one));
    return {
      status,
      out: [`${file}: dies drawn`, ...sayDies(good, units), ...after],
      err: [`${file}: has errors`, ...sayDies(kept, units), sayKept(kept)],
    };
  }
  const head = status === 0 ? "dies drawn" : raise === undefined ? "has errors" : "no dies drawn";
  const lines = [
    `${file}: ${head}`,
    ...sayDies(dies, units),
    ...(raise === undefined ? [] : changed.map((path) => `  ${sayLost(path, raise)}`)),
    ...(written.length > 0 ? [] : [raise === undefined ? NOT_WRITTEN : "  Nothing was written."]),
  ];
  return status === 0 ? { status, out: [...lines, ...after], err: [] } : { status, out: after, err: lines };
}

const sayKept = (kept: readonly DieAsked[]): string =>
  `  Of ${allOfThem([...new Set(kept.map(({ piece }) => piece.id))])} nothing was written. Mend the errors, or add --even-so to see the drawing, stamped 'has errors'.`;

const allOfThem = (names: readonly string[]): string =>
  names.length === 1 ? names[0]! : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
