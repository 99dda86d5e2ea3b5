// What is common to all files that come of a job.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Paper } from "../model/sheet.ts";

/** TrueType fonts to embed, as bytes: regular and bold. */
export type Fonts = { readonly font: Uint8Array; readonly bold: Uint8Array };

/** A file to write: its path under the order's folder, with forward slashes. */
export type JobFile = { readonly path: string; readonly data: Uint8Array | string };

/** A mark of its own: equal texts have equal ones. */
export const hashOf = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

export const paperSlug = (paper: Paper): string => paper.name.replaceAll(" ", "-");
