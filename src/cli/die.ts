import { existsSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
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
  sayDie,
  sayFault,
  sayFinding,
} from "../job.ts";
import { fonts } from "./fonts.ts";
import { NOT_WRITTEN, stemOf } from "./make.ts";
import { progress } from "./progress.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { sayWriteError } from "./sayWriteError.ts";
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
  readonly json?: boolean;
};

type Ordered = Extract<ReturnType<typeof makeJob>, { readonly made: true }>;

/** What came of it, for people and for --json. */
type Report = {
  readonly file: string;
  readonly status: 0 | 1;
  readonly units: Ordered["job"]["order"]["units"];
  readonly dies: readonly DieAsked[];
  readonly written: readonly string[];
  /** DXF files of the same revision that stood there and were different. */
  readonly changed: readonly string[];
  /** Files of the earlier drawing that are not made any more. */
  readonly gone: readonly string[];
};

/** Writes drawings and files for the dies of some pieces of an order. */
export async function die(file: string, names: readonly string[], words: DieWords): Promise<Ending> {
  const paper = words.paper === undefined ? undefined : readPaper(words.paper);
  if (paper && !paper.ok)
    return refused(`--paper: ${paper.problem}; allowed: ${paper.allowed}. To mend: ${paper.mend}`);
  const read = readOrderFile(file);
  if (!read.ok) return refused(read.message);
  const result = makeJob(read.text, basename(file), paper ? { paper: paper.paper } : {});
  if (!result.made)
    return { status: result.status, out: [], err: result.faults.map((f) => sayFault(f, file)) };
  const found = piecesNamed(result.job, names);
  if (!found.ok) return refused(found.message);
  const dies = found.pieces.map((piece) => diesOf(result.job, result.die, piece));
  const status = findingsOf(dies.flat()).some(({ severity }) => severity === "error") ? 1 : 0;
  const report = { file, status, units: result.job.order.units, dies: dies.flat() } as const;
  if (status !== 0 && !words.evenSo) return ending({ ...report, written: [], changed: [], gone: [] }, words);
  const files = await filesOf(result, dies, words);
  const folder = join(words.out, stemOf(file), "die");
  const pathOf = ({ path }: JobFile): string => join(folder, path);
  // The DXF tells whether a die has changed; a drawing also looks different on another paper.
  const lines = files.filter(({ path }) => path.endsWith(".dxf"));
  const changed = lines.filter((f) => existsSync(pathOf(f)) && !holds(pathOf(f), f.data)).map(pathOf);
  const same = lines.every((f) => holds(pathOf(f), f.data));
  const gone = same ? [] : earlierFiles(folder, files, dies.flat());
  try {
    writeFiles(folder, files, read.text);
    for (const path of gone) rmSync(path, { force: true });
  } catch (e) {
    return refused(sayWriteError(folder, e, "choose another folder with --out"));
  }
  return ending({ ...report, written: files.map(pathOf), changed, gone }, words);
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

/** True when a file of that name holds just this. */
function holds(path: string, data: Uint8Array | string): boolean {
  try {
    return readFileSync(path).equals(Buffer.from(data as string));
  } catch {
    // Nothing stands there, or a folder: then the writing tells.
    return false;
  }
}

const PARTS = "(die|plotter)";
const SIDES = "(as-drawn|left|right|left-and-right|pair|two)";
const ENDS = "(-sheet-\\d+)?\\.(pdf|svg|dxf)";

/** Our files of the same pieces and revision in the folder that are not written anew: nobody may order by them. */
function earlierFiles(
  folder: string,
  files: readonly JobFile[],
  dies: readonly DieAsked[],
): readonly string[] {
  const kept = new Set(files.map(({ path }) => path));
  const ours = dies.map(({ piece, die: { settings } }) => {
    const revision = settings.revision.replaceAll(".", "\\.");
    return new RegExp(`^${PARTS}-${piece.id}-${SIDES}-${revision}${ENDS}$`);
  });
  const there = existsSync(folder) && statSync(folder).isDirectory() ? readdirSync(folder) : [];
  return there
    .filter((name) => !kept.has(name) && ours.some((form) => form.test(name)))
    .map((name) => join(folder, name));
}

/** Each once, whichever side or piece it was found on. */
function findingsOf(dies: readonly DieAsked[]): DieAsked["findings"] {
  const all = dies.flatMap(({ findings }) => findings);
  const said = all.map(sayFinding);
  return all.filter((_, i) => said.indexOf(said[i]!) === i);
}

function asJson({ file, status, dies, written, changed, gone }: Report): string {
  const each = dies.map(({ piece, slug, die: { load, press, price } }) => ({
    piece: piece.id,
    side: slug,
    pressLoadN: load.value,
    ...(press ? { piecesPerStroke: press.pieces.value } : {}),
    ...(price === undefined ? {} : { price }),
  }));
  return JSON.stringify(
    { file, status, dies: each, findings: findingsOf(dies), written, changed, gone },
    null,
    1,
  );
}

function ending(report: Report, { json }: DieWords): Ending {
  const { file, status, units, dies, written, changed, gone } = report;
  if (json) return { status, out: [asJson(report)], err: [] };
  const lines = [
    `${file}: ${status === 0 ? "dies drawn" : "has errors"}`,
    ...dies.map(({ piece, says, die: one }) => `  ${piece.id}, ${says}: ${sayDie(one, units)}`),
    ...findingsOf(dies).map((f) => `  ${sayFinding(f)}`),
    ...(written.length === 0 ? [NOT_WRITTEN] : []),
  ];
  const after = [
    ...changed.map(
      (path) =>
        `  ${path} held something else under the same revision. If it is out, raise die.revision and make it again.`,
    ),
    ...gone.map((path) => `  ${path} was of the earlier drawing and was taken away.`),
    ...written.map((path) => `  Wrote ${path}`),
    ...(written.length === 0 ? [] : PRESS_CAUTIONS.map((caution) => `  ${caution}`)),
  ];
  return status === 0 ? { status, out: [...lines, ...after], err: [] } : { status, out: after, err: lines };
}
