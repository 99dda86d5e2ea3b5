import { readFileSync, statSync } from "node:fs";
import type { TextRead } from "./readOrderFile.ts";

/** The largest job.json of a real order has a few MB; what is much larger was named by mistake. */
const LARGEST_KEPT = 64_000_000;

const refuse = (message: string): TextRead => ({ ok: false, message });
const MEND = "To mend: name an order, or the job.json in the folder that whittaw make wrote";

/** Reads the text of a job.json, or says in one line why it can't be read. */
export function readKept(file: string): TextRead {
  try {
    const about = statSync(file);
    if (!about.isFile()) return refuse(`${file} is not a file. ${MEND}`);
    if (about.size > LARGEST_KEPT)
      return refuse(`${file} has ${Math.round(about.size / 1e6)} MB and is no job.json. ${MEND}`);
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(file)) };
  } catch (e) {
    const { code } = e as NodeJS.ErrnoException;
    if (code === "ENOENT") return refuse(`${file} was not found. ${MEND}`);
    if (e instanceof TypeError) return refuse(`${file} is not plain text (UTF-8). ${MEND}`);
    return refuse(`${file} can't be read (${code ?? String(e)}). ${MEND}`);
  }
}
