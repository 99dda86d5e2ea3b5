import { spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const MAIN = resolve("dist", "cli", "main.js");

export type Run = { readonly status: number | null; readonly out: string; readonly err: string };

/** Runs the built command in a folder, as a maker would. */
export function whittaw(folder: string, ...args: readonly string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    cwd: folder,
    encoding: "utf8",
  });
  return { status, out: stdout, err: stderr };
}

export const newFolder = (): string => mkdtempSync(join(tmpdir(), "whittaw-"));

/** The demo order's text, as a base for others. */
export const JUNIPER = resolve("templates", "juniper-headstall.yaml");
