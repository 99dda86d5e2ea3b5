import type { Paper } from "../../src/model/sheet.ts";
import { paperNamed } from "../../src/trade/paper.ts";

/** A paper of that name; a test that misspells one fails at once. */
export function paper(name: string): Paper {
  const found = paperNamed(name);
  if (!found.ok) throw new Error(`no paper ${name}`);
  return found.paper;
}
