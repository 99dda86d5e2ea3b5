import { checkPieces, checkSheets } from "../../src/checks/index.ts";
import type { Made } from "../../src/model/article.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Layout } from "../../src/model/sheet.ts";

/** Findings of one rule, with words in millimetres. */
export const found = (job: Made, rule: string): readonly Finding[] =>
  checkPieces(job, { units: "mm" }).filter((f) => f.rule === rule);

/** Severity and place of each finding of one rule, as "error hole a". */
export const told = (job: Made, rule: string): readonly string[] =>
  found(job, rule).map((f) => `${f.severity} ${f.place}`);

/** The severity of the one finding of a rule; "none" without any. */
export function verdict(job: Made, rule: string): string {
  const severities = [...new Set(found(job, rule).map((f) => f.severity))];
  return severities.length === 0 ? "none" : severities.join(" and ");
}

export const foundOnSheets = (job: Made, layout: Layout, rule: string): readonly Finding[] =>
  checkSheets(job, layout, { units: "mm" }).filter((f) => f.rule === rule);
