import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { DieAsked, JobFile } from "../job.ts";

// Drawings of dies that stand in the folder from before. What a die was ordered by is its DXF: a sheet
// also looks different on another paper.

/** True when a file of that name holds just this. */
function holds(path: string, data: Uint8Array | string): boolean {
  try {
    return readFileSync(path).equals(Buffer.from(data as string));
  } catch {
    // Nothing stands there, or a folder: then the writing tells.
    return false;
  }
}

const SINGLE = "as-drawn|left|right|left-and-right";
const NESTED = "pair|two";

/** Names of a die's files: which kinds, for which sides, with which ends. */
function namesOf(
  dies: readonly DieAsked[],
  kinds: string,
  sides: string,
  ends: string,
): (n: string) => boolean {
  const forms = dies.map(({ piece, die: { settings } }) => {
    const revision = settings.revision.replaceAll(".", "\\.");
    return new RegExp(`^(${kinds})-${piece.id}-(${sides})-${revision}${ends}$`);
  });
  return (name) => forms.some((form) => form.test(name));
}

function namesIn(folder: string, but: readonly JobFile[]): readonly string[] {
  const kept = new Set(but.map(({ path }) => path));
  const there = existsSync(folder) && statSync(folder).isDirectory() ? readdirSync(folder) : [];
  return there.filter((name) => !kept.has(name)).sort();
}

/**
 * The DXF files of the same revision that stand in the folder and are of another drawing: those that differ
 * from what would be written, and those of sides that would not be written any more.
 */
export function otherDrawings(
  folder: string,
  files: readonly JobFile[],
  dies: readonly DieAsked[],
): readonly string[] {
  const differ = files
    .filter(({ path }) => path.endsWith(".dxf"))
    .filter(({ path, data }) => existsSync(join(folder, path)) && !holds(join(folder, path), data))
    .map(({ path }) => path);
  const single = namesOf(dies, "die", SINGLE, "\\.dxf");
  return [...differ, ...namesIn(folder, files).filter(single)].map((name) => join(folder, name));
}

/** Our files of the same pieces and revision in the folder that are not written anew. */
export function earlierFiles(
  folder: string,
  files: readonly JobFile[],
  dies: readonly DieAsked[],
): readonly string[] {
  const ours = namesOf(dies, "die|plotter", `${SINGLE}|${NESTED}`, "(-sheet-\\d+)?\\.(pdf|svg|dxf)");
  return namesIn(folder, files)
    .filter(ours)
    .map((name) => join(folder, name));
}
