import type { Finding } from "./finding.ts";

const bare = (sentence: string): string => sentence.replace(/[.\s]+$/, "");

/** A finding in one line: how grave, where, what, the value and its limit, and how to mend it. */
export function sayFinding(f: Finding): string {
  const where = [f.piece, f.place].filter((w) => w !== "").join(", ");
  const message = bare(f.message);
  // A value that the message names already is not said twice.
  const value = f.value === undefined || message.includes(f.value) ? [] : [f.value];
  const limit = f.limit === undefined ? [] : [`allowed: ${f.limit}`];
  const figures = [...value, ...limit];
  const inBrackets = figures.length === 0 ? "" : ` (${figures.join("; ")})`;
  const mend = f.severity === "note" ? "" : ` To mend: ${bare(f.mend)}.`;
  return `${f.severity}: ${where === "" ? "" : `${where}: `}${message}${inBrackets}.${mend} [${f.rule}]`;
}
