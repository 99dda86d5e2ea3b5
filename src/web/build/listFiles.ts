import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";

/** What stands in the service worker's source for the list and for the version. */
const LIST = '"the list of files"';
const VERSION = '"the version"';

/** Every file under the folder, with forward slashes, in the order of their code units. */
const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll("\\", "/"),
    )
    .sort((a, b) => (a < b ? -1 : 1));

/**
 * Writes into the service worker which files the page consists of, and a version that is a hash of their
 * names and bytes. It looks at the folder after all is written, so that no file can be forgotten.
 */
export const listFiles = (worker: string): Plugin => ({
  name: "whittaw:list-files",
  apply: "build",
  writeBundle: {
    order: "post",
    sequential: true,
    handler({ dir }) {
      if (dir === undefined) throw new Error("listFiles: the page is built into a folder");
      const files = filesIn(dir).filter((path) => path !== worker);
      const source = readFileSync(join(dir, worker), "utf8");
      const hash = createHash("sha256").update(source);
      for (const path of files)
        hash
          .update(path)
          .update("\0")
          .update(readFileSync(join(dir, path)));
      const filled = fill(
        fill(source, LIST, JSON.stringify(files)),
        VERSION,
        JSON.stringify(hash.digest("hex")),
      );
      writeFileSync(join(dir, worker), filled);
    },
  },
});

/** Minifiers choose their own quotes. */
function fill(source: string, place: string, text: string): string {
  const word = place.slice(1, -1);
  const found = ['"', "'", "`"].map((q) => q + word + q).filter((p) => source.includes(p));
  if (found.length !== 1) throw new Error(`listFiles: the service worker must hold ${place} once`);
  return source.replace(found[0]!, () => text);
}
