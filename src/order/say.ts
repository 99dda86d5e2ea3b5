import type { Fault } from "../model/finding.ts";
import { codePoint } from "./guard.ts";

/** Control characters and those that turn the reading direction: none may reach a terminal. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

const sentence = (text: string): string => (/[.!?…]$/.test(text) ? text : `${text}.`);

/**
 * One fault in one line: `juniper.yaml:12:14 measures.over-poll: got 12 in (304.8 mm); allowed: 20 in
 * (508 mm) to 60 in (1524 mm). To mend: raise over-poll to at least 20 in (508 mm).`
 */
export function sayFault(fault: Fault, file: string): string {
  const { key, place, problem, allowed, mend } = fault;
  const where = place ? `${file}:${place.line}:${place.column}` : file;
  const whose = key === "" ? "" : ` ${key}`;
  const limits = allowed === undefined ? "" : `; allowed: ${allowed}`;
  const line = `${where}${whose}: ${sentence(`${problem}${limits}`)} To mend: ${sentence(mend)}`;
  return line.replace(UNSEEN, (char) => `[${codePoint(char)}]`);
}
