import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** A file to write: its path under the order's folder, with forward slashes. */
export type OutFile = { readonly path: string; readonly data: Uint8Array | string };

/** Ends of names that are still being written. */
const UNFINISHED = ".unfinished";

/**
 * Writes all files of one order, or none: each to a temporary name first, and renamed when all are there.
 * What an earlier, different order left in the folder is taken away last, so that no old template is cut.
 */
export function writeFiles(folder: string, files: readonly OutFile[], orderText: string): void {
  const stale = staleFiles(folder, files, orderText);
  const paths = files.map((f) => join(folder, ...f.path.split("/")));
  try {
    for (const [i, path] of paths.entries()) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path + UNFINISHED, files[i]!.data);
    }
  } catch (e) {
    for (const path of paths) rmSync(path + UNFINISHED, { force: true });
    throw e;
  }
  for (const path of paths) renameSync(path + UNFINISHED, path);
  for (const path of stale) rmSync(path, { force: true });
}

const OURS = /^(template-.*|printer-check-.*)\.pdf$/;

/** Files of ours that belong to an order whose text was another. */
function staleFiles(folder: string, files: readonly OutFile[], orderText: string): readonly string[] {
  if (previousText(folder) === orderText) return [];
  const kept = new Set(files.map((f) => f.path));
  const list = (sub: string): readonly string[] =>
    existsSync(join(folder, sub)) ? readdirSync(join(folder, sub)) : [];
  const here = previousText(folder) === undefined ? [] : list("").filter((n) => OURS.test(n));
  const pieces =
    previousText(folder) === undefined
      ? []
      : list("pieces")
          .filter((n) => n.endsWith(".svg"))
          .map((n) => `pieces/${n}`);
  return [...here, ...pieces].filter((p) => !kept.has(p)).map((p) => join(folder, ...p.split("/")));
}

/** The text of the order that was made into this folder before, if there was one. */
function previousText(folder: string): string | undefined {
  try {
    const job: unknown = JSON.parse(readFileSync(join(folder, "job.json"), "utf8"));
    const order = (job as { order?: { text?: unknown } }).order;
    return typeof order?.text === "string" ? order.text : undefined;
  } catch {
    return undefined;
  }
}
