import { signal } from "@preact/signals";
import { say } from "../actions.ts";
import { zipped } from "../device/bundle.ts";
import { download } from "../device/download.ts";
import { stemOf } from "../device/names.ts";
import { printing } from "../device/settings.ts";
import { engine } from "../engine/client.ts";
import type { FileKind, MadeFile } from "../engine/engine.ts";
import { order } from "../state.ts";

// Files of the order on the bench, made by the engine and handed over as they are.

/** What is being drawn, in words; "" while nothing is. */
export const making = signal("");
/** Why the last one could not be made; "" where it could. */
export const failed = signal("");

/** What is handed over of a kind: all its files, or the one to print. */
export type Wanted = {
  readonly kind: FileKind;
  /** "the template". */
  readonly what: string;
  /** Of several files only that with this ending; the others are in the .zip of everything. */
  readonly ending?: string;
  readonly pieces?: readonly string[];
};

const TYPES: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
  md: "text/markdown",
  json: "application/json",
  zip: "application/zip",
};
const typeOf = (name: string): string => TYPES[name.split(".").at(-1) ?? ""] ?? "application/octet-stream";

type Handed = { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };

/**
 * One file by itself under the order's name, for templates of two orders must not be taken for each other;
 * several in one .zip, in the order's folder as the command line lays it.
 */
export function handedAs(stem: string, kind: FileKind, files: readonly MadeFile[]): Handed {
  const [only] = files;
  if (only && files.length === 1)
    return { name: `${stem}-${only.path.split("/").at(-1)}`, bytes: only.bytes };
  const inside = Object.fromEntries(files.map((f) => [`${stem}/${f.path}`, f.bytes]));
  return { name: kind === "all" ? `${stem}.zip` : `${stem}-${kind}.zip`, bytes: zipped(inside) };
}

/** Makes files and hands them over; says what comes of it. Answers whether they were made. */
export async function make({ kind, what, ending, pieces }: Wanted): Promise<boolean> {
  const now = order.value;
  if (!now || making.value !== "") return false;
  making.value = `Drawing ${what} …`;
  failed.value = "";
  say(making.value);
  try {
    const options = { ...printing.value, ...(pieces === undefined ? {} : { pieces }) };
    const made = await engine.files(now.text, now.file, now.shop, kind, options);
    if (!made.ok) return fail(what, made.message);
    const files = ending === undefined ? made.value : made.value.filter((f) => f.path.endsWith(ending));
    const { name, bytes } = handedAs(stemOf(now.file), kind, files);
    download(name, bytes, typeOf(name));
    say(`Saved as ${name}.`);
    return true;
  } catch (e) {
    return fail(what, e instanceof Error ? e.message : String(e));
  } finally {
    making.value = "";
  }
}

function fail(what: string, message: string): boolean {
  failed.value = `No file: ${what} could not be made. ${message}`;
  say(failed.value);
  return false;
}

/** The order itself, as it stands, faulty or not. */
export function saveOrderFile(): void {
  const now = order.value;
  if (!now) return;
  download(now.file, now.text, "application/yaml");
  say(`Saved as ${now.file}.`);
}
