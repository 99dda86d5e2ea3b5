import { basename, extname, join, resolve } from "node:path";
import {
  type Finding,
  type Fonts,
  isShopFile,
  type JobOptions,
  jobFiles,
  makeJob,
  printAdvice,
  readPaper,
  sayFault,
  sayFinding,
} from "../job.ts";
import { fonts } from "./fonts.ts";
import { progress } from "./progress.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { shopBeside } from "./readShop.ts";
import { sayWriteError } from "./sayWriteError.ts";
import { allOf, type Ending, refused } from "./terminal.ts";
import { type EarlierOrder, writeFiles } from "./writeFiles.ts";

export type MakeOptions = JobOptions & {
  /** Folder that holds one folder for each order; absent: check only. */
  readonly out?: string;
  readonly evenSo?: boolean;
  readonly json?: boolean;
};

/** What came of one order, for people and for --json. */
type Report = {
  readonly file: string;
  readonly status: 0 | 1 | 2;
  readonly faults: readonly string[];
  readonly findings: readonly Finding[];
  readonly written: readonly string[];
  readonly advice: readonly string[];
};

/** Name of the folder of an order: its file's, without the ending. */
export const stemOf = (file: string): string => basename(file, extname(file));

/** The command's own words, as typed. */
export type MakeWords = {
  readonly out: string;
  readonly paper?: string;
  readonly printed?: string;
  readonly endsOnly?: boolean;
  readonly evenSo?: boolean;
  readonly json?: boolean;
};

/** Makes orders as the command line asks for it. */
export async function makeFromWords(files: readonly string[], words: MakeWords): Promise<Ending> {
  const paper = words.paper === undefined ? undefined : readPaper(words.paper);
  if (paper && !paper.ok)
    return refused(`--paper: ${paper.problem}; allowed: ${paper.allowed}. To mend: ${paper.mend}`);
  return make(files, {
    out: words.out,
    evenSo: words.evenSo ?? false,
    json: words.json ?? false,
    ...(paper ? { paper: paper.paper } : {}),
    ...(words.printed === undefined ? {} : { printed: words.printed }),
    ...(words.endsOnly ? { endsOnly: true } : {}),
  });
}

/** Makes or checks orders, each by itself; good ones are written even when others are not. */
export async function make(files: readonly string[], options: MakeOptions): Promise<Ending> {
  const clash = options.out === undefined ? undefined : sameFolder(files);
  if (clash) return refused(clash);
  const shown = progress(process.stderr, () => performance.now());
  // Read when the first order is written, and once for all of them.
  let read: Fonts | undefined;
  const embedded = (): Fonts => {
    read ??= fonts();
    return read;
  };
  const reports: Report[] = [];
  for (const [i, file] of files.entries()) {
    shown.at(i, files.length, file);
    reports.push(await makeOne(file, options, embedded));
  }
  shown.end();
  if (options.json) {
    const status = Math.max(0, ...reports.map((r) => r.status)) as Ending["status"];
    return {
      status,
      out: [JSON.stringify({ orders: reports.map(({ advice: _, ...r }) => r) }, null, 1)],
      err: [],
    };
  }
  return allOf(reports.map((r) => ending(r, options)));
}

/** Two orders that would be written into the same folder, in words. */
function sameFolder(files: readonly string[]): string | undefined {
  const seen = new Map<string, string>();
  for (const file of files) {
    // Some file systems don't tell capitals apart.
    const stem = stemOf(file).toLowerCase();
    const other = seen.get(stem);
    if (other !== undefined)
      return resolve(other) === resolve(file)
        ? `${file} is named twice. To mend: name it once`
        : `${other} and ${file} would be written into the same folder, ${stem}. To mend: rename one of them, or make them one after the other with different --out`;
    seen.set(stem, file);
  }
  return undefined;
}

const NO_ORDER =
  "this is a shop file, not an order. To mend: name an order, which has a line shop: with this file's name";

async function makeOne(file: string, options: MakeOptions, embedded: () => Fonts): Promise<Report> {
  const none = { file, findings: [], written: [], advice: [] };
  const read = readOrderFile(file);
  if (!read.ok) return { ...none, status: 2, faults: [read.message] };
  if (isShopFile(read.text)) return { ...none, status: 2, faults: [NO_ORDER] };
  const shop = shopBeside(read.text, file);
  const result = makeJob(read.text, basename(file), { ...options, ...(shop ? { shop } : {}) });
  if (!result.made)
    return { ...none, status: result.status, faults: result.faults.map((f) => sayFault(f, file)) };
  const { job, status } = result;
  const report = { ...none, status, faults: [], findings: job.findings };
  if (options.out === undefined || (status !== 0 && !options.evenSo)) return report;
  const folder = join(options.out, stemOf(file));
  const outFiles = await jobFiles(job, { ...embedded(), ...(status === 0 ? {} : { stamp: "has errors" }) });
  let earlier: EarlierOrder | undefined;
  try {
    earlier = writeFiles(folder, outFiles, read.text);
  } catch (e) {
    return {
      ...report,
      status: 2,
      faults: [sayWriteError(folder, e, "choose another folder with --out")],
    };
  }
  return {
    ...report,
    written: outFiles.map((f) => join(folder, ...f.path.split("/"))),
    advice: [...replaced(earlier, job.order), ...printAdvice(job, folder)],
  };
}

/** A line when the folder held the templates of somebody else, or of something else. */
function replaced(
  earlier: EarlierOrder | undefined,
  now: { readonly article: string; readonly forWhom: string },
): readonly string[] {
  if (!earlier || (earlier.article === now.article && earlier.forWhom === now.forWhom)) return [];
  const article = earlier.article === now.article && earlier.forWhom !== "" ? [] : [earlier.article];
  const forWhom = earlier.forWhom === "" ? [] : [`for ${earlier.forWhom}`];
  const whose = [...article, ...forWhom].join(" ");
  return [`  The folder held an earlier order (${whose}); its templates were replaced.`];
}

const COUNTED = [
  ["error", "errors"],
  ["caution", "cautions"],
  ["note", "notes"],
] as const;

/** "(1 caution, 3 notes, which whittaw check shows)"; nothing when there is nothing to tell. */
function countsOf(findings: readonly Finding[], checkOnly: boolean): string {
  const counts = COUNTED.flatMap(([one, many]) => {
    const n = findings.filter((f) => f.severity === one).length;
    const shown = one === "note" && !checkOnly ? ", which whittaw check shows" : "";
    return n === 0 ? [] : [`${n} ${n === 1 ? one : many}${shown}`];
  });
  return counts.length === 0 ? "" : ` (${counts.join(", ")})`;
}

/** Said when errors kept an order from being written. */
export const NOT_WRITTEN =
  "  Nothing was written. Mend the errors, or add --even-so to see the drawing, stamped 'has errors'.";

function ending(r: Report, options: MakeOptions): Ending {
  const checkOnly = options.out === undefined;
  const lines = r.findings.filter((f) => f.severity !== "note" || checkOnly).map((f) => `  ${sayFinding(f)}`);
  const failed = r.status !== 0;
  const faulty = checkOnly ? "has faults" : "nothing was made";
  const came = failed ? (r.faults.length > 0 ? faulty : "has errors") : checkOnly ? "checked" : "made";
  const head = `${r.file}: ${came}`;
  const notWritten =
    failed && r.faults.length === 0 && r.written.length === 0 && !checkOnly ? [NOT_WRITTEN] : [];
  const said = [
    head + (r.faults.length > 0 ? "" : countsOf(r.findings, checkOnly)),
    ...r.faults.map((f) => `  ${f}`),
    ...lines,
    ...notWritten,
  ];
  return failed
    ? { status: r.status, out: r.advice, err: said }
    : { status: 0, out: [...said, ...r.advice], err: [] };
}
