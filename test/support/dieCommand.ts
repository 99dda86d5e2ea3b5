import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { JUNIPER, newFolder, type Run, whittaw } from "./whittaw.ts";

// What the tests of `whittaw die` begin with.

export const juniper = readFileSync(JUNIPER, "utf8");
/** The demo order with a section `die` of these lines. */
export const withDie = (lines: string): string => `${juniper.trimEnd()}\ndie:\n${lines}\n`;

/** A folder with an order in it. */
export function shop(text = juniper, name = "juniper.yaml"): string {
  const folder = newFolder();
  writeFileSync(join(folder, name), text);
  return folder;
}
export const dieFolder = (folder: string, stem = "juniper"): string => join(folder, "out", stem, "die");
export const die = (folder: string, ...args: readonly string[]): Run => whittaw(folder, "die", ...args);
