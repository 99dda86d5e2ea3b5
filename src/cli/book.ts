import { readdirSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import {
  type BookFile,
  type BookRow,
  bookCsv,
  bookRow,
  bookRowsWith,
  makeJob,
  quote,
  sayBook,
} from "../job.ts";
import { progress } from "./progress.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { shopBeside } from "./readShop.ts";
import { type Ending, refused } from "./terminal.ts";

export type BookWords = { readonly csv?: boolean; readonly json?: boolean };

/** Folders that hold no orders: what whittaw make writes, and packages. */
const PASSED_BY = ["out", "node_modules"];
const ORDER_FILE = /\.ya?ml$/i;

/** A path from the book's folder, or a folder that can't be looked into. */
type Found = { readonly path: string; readonly problem?: string };

/** All files that may be orders, in the folder and those under it; no link to a folder is followed. */
function filesIn(folder: string, under = ""): readonly Found[] {
  return readdirSync(join(folder, under), { withFileTypes: true }).flatMap((entry): readonly Found[] => {
    const path = under === "" ? entry.name : `${under}/${entry.name}`;
    if (entry.name.startsWith(".")) return [];
    if (!entry.isDirectory()) return ORDER_FILE.test(entry.name) ? [{ path }] : [];
    if (PASSED_BY.includes(entry.name)) return [];
    try {
      return filesIn(folder, path);
    } catch (e) {
      return [{ path, problem: `the folder can't be read (${(e as NodeJS.ErrnoException).code})` }];
    }
  });
}

const two = (n: number): string => String(n).padStart(2, "0");

/** The day by the clock of this place, as ISO 8601 writes it. */
const dayOf = (time: Date): string =>
  `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;

function changedOn(path: string): string {
  try {
    return dayOf(statSync(path).mtime);
  } catch {
    return "";
  }
}

function fileAt(folder: string, { path, problem }: Found): BookFile {
  const whole = join(folder, path);
  const about = { file: path, changed: changedOn(whole) };
  if (problem !== undefined) return { ...about, problem };
  const read = readOrderFile(whole);
  return read.ok ? { ...about, text: read.text } : { ...about, problem: read.message };
}

function rowAt(folder: string, found: Found): BookRow | undefined {
  const path = join(folder, found.path);
  return bookRow(fileAt(folder, found), (text) => {
    const shop = shopBeside(text, path);
    return makeJob(text, basename(path), shop ? { shop } : {});
  });
}

/** Lists a folder of orders, those that hold every word; nothing is written. */
export function book(folder: string, words: readonly string[], { csv, json }: BookWords): Ending {
  if (csv && json) return refused("--csv and --json are two forms of one list. To mend: choose one");
  let found: readonly Found[];
  try {
    found = [...filesIn(folder)].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  } catch (e) {
    return refused(sayFolderError(folder, e));
  }
  const shown = progress(process.stderr, () => performance.now());
  const rows = found.flatMap((f, i) => {
    shown.at(i, found.length, f.path);
    return rowAt(folder, f) ?? [];
  });
  shown.end();
  const chosen = bookRowsWith(rows, words);
  const form = json
    ? [JSON.stringify(chosen, null, 1)]
    : csv
      ? [bookCsv(chosen).trimEnd()]
      : chosen.length === 0 && rows.length > 0
        ? [`None of ${rows.length} orders holds ${words.map(quote).join(" and ")}.`]
        : sayBook(chosen);
  return { status: 0, out: form, err: [] };
}

function sayFolderError(folder: string, e: unknown): string {
  const { code } = e as NodeJS.ErrnoException;
  const mend = "To mend: name the folder that holds your orders";
  if (code === "ENOENT") return `${folder} was not found. ${mend}`;
  if (code === "ENOTDIR") return `${folder} is not a folder. ${mend}`;
  if (code === "EACCES" || code === "EPERM") return `${folder} may not be read. To mend: allow reading it`;
  return `${folder} can't be read (${code ?? String(e)}). ${mend}`;
}
