import type { Document, YAMLError } from "yaml";
import type { Fault, TextPlace } from "../model/finding.ts";
import { diagnose, type Where } from "./diagnose.ts";
import type { PlaceAt } from "./place.ts";

/** Tabs come in whole files: said once, with the number of lines. */
function tabsTogether(faults: readonly (Fault & { readonly place: TextPlace })[]): readonly Fault[] {
  const tabs = faults.filter((f) => f.code === "tab");
  const [first, ...more] = tabs;
  if (!first || more.length === 0) return faults;
  const others = more.length === 1 ? `so does line ${more[0]!.place.line}` : `so do ${more.length} more`;
  return [{ ...first, problem: `${first.problem}; ${others}` }, ...faults.filter((f) => f.code !== "tab")];
}

export type Syntax = {
  readonly faults: readonly Fault[];
  /** The first line in which yaml had to guess; Infinity when it never had to. */
  readonly guessedFrom: number;
};

/** In the text's order; of two at one place the one that knows of brackets. */
function inTelling(a: YAMLError, b: YAMLError): number {
  return a.pos[0] - b.pos[0] || Number(b.code === "BLOCK_IN_FLOW") - Number(a.code === "BLOCK_IN_FLOW");
}

/** The faults of a text that is no sound YAML, one for a line: what yaml says after the first is often an echo. */
export function syntaxOf(document: Document.Parsed, text: string, placeAt: PlaceAt): Syntax {
  const where: Where = { text, document, placeAt };
  const seen = { lines: new Set<number>(), offsets: new Set<number>() };
  const faults: (Fault & { readonly place: TextPlace })[] = [];
  let guessedFrom = Number.POSITIVE_INFINITY;
  // Tags are the reader's business, which knows the value's path.
  for (const error of [...document.errors].sort(inTelling)) {
    if (error.code === "TAG_RESOLVE_FAILED" || seen.offsets.has(error.pos[0])) continue;
    seen.offsets.add(error.pos[0]);
    const { code, offset, problem, mend } = diagnose(error, where);
    const place = placeAt(offset);
    guessedFrom = Math.min(guessedFrom, place.line, placeAt(error.pos[0]).line);
    if (seen.lines.has(place.line)) continue;
    seen.lines.add(place.line);
    faults.push({ code, key: "", place, problem, mend });
  }
  return { faults: tabsTogether(faults), guessedFrom };
}
