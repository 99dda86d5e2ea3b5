// Runs the commands of the documents, in order, in a folder of their own, and compares what they print
// with what the document says: a block of `text` that follows a block of `sh` is its output; a line of
// three dots there stands for any lines.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = resolve(fileURLToPath(import.meta.url), "..", "..", "..");
/** These change the machine or run this very check: a reader runs them, this file does not. */
const LEFT_TO_THE_READER = /^(npm (ci|test|run check|run bench|run fix)|git |cd )/;

export function blocksOf(markdown) {
  const found = [...markdown.matchAll(/^```(sh|text)\n([\s\S]*?)^```$/gm)];
  return found.map((m) => ({ kind: m[1], lines: m[2].trimEnd().split("\n") }));
}

/** The lines that should have been printed and were not, or an empty list. */
export function missingLines(expected, printed) {
  const lines = printed
    .trimEnd()
    .split("\n")
    .map((l) => l.trimEnd());
  let at = 0;
  let jump = false;
  for (const want of expected.map((l) => l.trimEnd())) {
    if (want === "...") {
      jump = true;
      continue;
    }
    const found = jump ? lines.indexOf(want, at) : lines[at] === want ? at : -1;
    if (found < 0) return [want];
    at = found + 1;
    jump = false;
  }
  return jump || at === lines.length ? [] : [`(nothing more, but there is: ${lines[at]})`];
}

function run(command, folder) {
  const words = command.match(/"[^"]*"|\S+/g).map((w) => w.replace(/^"|"$/g, ""));
  const main = join(ROOT, "dist", "cli", "main.js");
  const start = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"))
    .scripts.start.split(" ")
    .slice(2);
  const args = command === "npm start" ? start : words.slice(words.indexOf("whittaw") + 1);
  return spawnSync(process.execPath, [main, ...args], { cwd: folder, encoding: "utf8" });
}

function checkDocument(name, folder) {
  const faults = [];
  let printed = "";
  for (const block of blocksOf(readFileSync(join(ROOT, name), "utf8"))) {
    if (block.kind === "text") {
      for (const line of missingLines(block.lines, printed))
        faults.push(`${name}: the output lacks: ${line}`);
      continue;
    }
    printed = "";
    for (const command of block.lines
      .flatMap((l) => l.split("&&"))
      .map((c) => c.replace(/#.*/, "").trim())
      .filter((c) => c !== "")) {
      if (LEFT_TO_THE_READER.test(command)) continue;
      if (command !== "npm start" && !command.startsWith("npx whittaw ")) {
        faults.push(`${name}: don't know how to check: ${command}`);
        continue;
      }
      const { status, stdout, stderr } = run(command, folder);
      printed += stdout + stderr;
      if (status !== 0) faults.push(`${name}: ${command} ended with ${status}: ${stderr.trim()}`);
    }
  }
  return faults;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = mkdtempSync(join(tmpdir(), "whittaw-documents-"));
  cpSync(join(ROOT, "templates"), join(folder, "templates"), { recursive: true });
  const faults = ["README.md", "DEVELOPERS.md"].flatMap((name) => checkDocument(name, folder));
  rmSync(folder, { recursive: true });
  for (const fault of faults) console.error(fault);
  process.exit(faults.length === 0 ? 0 : 1);
}
