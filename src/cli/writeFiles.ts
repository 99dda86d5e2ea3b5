import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

/** A file to write: its path under the order's folder, with forward slashes. */
export type OutFile = { readonly path: string; readonly data: Uint8Array | string };

/** Ends of names that are still being written. */
const UNFINISHED = ".unfinished";

/**
 * Writes all files of one order, or none: each to a temporary name first, and renamed when all are there.
 * What an earlier, different order left in the folder is taken away last, so that no old template is cut.
 * Gives back the order that was made into the folder before, if there was one.
 */
export function writeFiles(
  folder: string,
  files: readonly OutFile[],
  orderText: string,
): EarlierOrder | undefined {
  const earlier = earlierOrder(folder);
  const other = earlier !== undefined && earlier.text !== orderText;
  const stale = [...(other ? staleFiles(folder, files) : []), ...staleQuote(folder, files)];
  const paths = files.map((f) => join(folder, ...f.path.split("/")));
  try {
    for (const [i, path] of paths.entries()) {
      makeFolder(dirname(resolve(path)));
      writeFileSync(path + UNFINISHED, files[i]!.data);
    }
    for (const path of paths) renameSync(path + UNFINISHED, path);
  } catch (e) {
    for (const path of paths) removeQuietly(path + UNFINISHED);
    throw e;
  }
  for (const path of stale) rmSync(path, { force: true });
  return earlier;
}

/** Makes a folder and those above it one by one: asked for all at once, some systems never answer. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder);
}

/** What hindered the writing hinders this too, and only the first is worth telling. */
function removeQuietly(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // Nothing was written there.
  }
}

const OURS = /^(template-.*|printer-check-.*)\.pdf$/;

/** Files of ours in the folder that are not written anew. */
function staleFiles(folder: string, files: readonly OutFile[]): readonly string[] {
  const kept = new Set(files.map((f) => f.path));
  const list = (sub: string): readonly string[] =>
    existsSync(join(folder, sub)) ? readdirSync(join(folder, sub)) : [];
  const pieces = list("pieces").filter((n) => n.endsWith(".svg"));
  const ours = [...list("").filter((n) => OURS.test(n)), ...pieces.map((n) => `pieces/${n}`)];
  return ours.filter((p) => !kept.has(p)).map((p) => join(folder, ...p.split("/")));
}

const QUOTE = ["quote.pdf", "quote.md"];

/** A quote at prices that don't hold any more, of the same order too: nobody may send it. */
function staleQuote(folder: string, files: readonly OutFile[]): readonly string[] {
  const paths = files.map((f) => f.path);
  if (!paths.includes("bench-sheet.pdf")) return [];
  return QUOTE.filter((name) => !paths.includes(name) && existsSync(join(folder, name))).map((name) =>
    join(folder, name),
  );
}

/** An order that was made into a folder before. */
export type EarlierOrder = { readonly text: string; readonly article: string; readonly forWhom: string };

/** The order that was made into the folder before, if there was one. */
function earlierOrder(folder: string): EarlierOrder | undefined {
  try {
    const job: unknown = JSON.parse(readFileSync(join(folder, "job.json"), "utf8"));
    const { text, article, forWhom } = (job as { order: Record<string, unknown> }).order;
    const word = (v: unknown): string => (typeof v === "string" ? v : "");
    return typeof text === "string" ? { text, article: word(article), forWhom: word(forWhom) } : undefined;
  } catch {
    return undefined;
  }
}
