import { readFileSync, statSync } from "node:fs";
import { LARGEST_BYTES } from "../job.ts";

export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly message: string };

const refuse = (message: string): TextRead => ({ ok: false, message });

/** Reads an order's text, or says in one line why it can't be read. */
export function readOrderFile(file: string): TextRead {
  try {
    const about = statSync(file);
    if (about.isDirectory()) return refuse(`${file} is a folder. To mend: name the order file in it`);
    if (!about.isFile()) return refuse(`${file} is not a file. To mend: name an order file`);
    if (about.size > LARGEST_BYTES)
      return refuse(
        `${file} has ${Math.round(about.size / 1e6)} MB; an order has less than 1 MB. To mend: name an order file`,
      );
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(file)) };
  } catch (e) {
    return refuse(sayReadError(file, e));
  }
}

function sayReadError(file: string, e: unknown): string {
  const code = (e as NodeJS.ErrnoException).code;
  if (code === "ENOENT")
    return `${file} was not found. To mend: look at the name, or begin one with: whittaw begin one-ear-headstall --to ${file}`;
  if (code === "EACCES" || code === "EPERM") return `${file} may not be read. To mend: allow reading it`;
  if (e instanceof TypeError) return `${file} is not plain text (UTF-8). To mend: save it as UTF-8 text`;
  return `${file} can't be read (${code ?? String(e)})`;
}
