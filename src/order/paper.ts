import type { Paper } from "../model/sheet.ts";
import { oneOf } from "../model/words.ts";
import { paperNamed, ROLL_WIDTH_MM } from "../trade/paper.ts";
import { quote } from "../units/quote.ts";

export type PaperRead =
  | { readonly ok: true; readonly paper: Paper }
  | { readonly ok: false; readonly problem: string; readonly allowed: string; readonly mend: string };

/** Reads the name of a paper, as an order or a command has it. */
export function readPaper(text: string): PaperRead {
  const found = paperNamed(text);
  if (found.ok) return found;
  const problem = `got ${quote(text)}`;
  if (found.rollWidth !== undefined) {
    const allowed = `a roll of ${ROLL_WIDTH_MM.least} mm to ${ROLL_WIDTH_MM.most} mm`;
    return { ok: false, problem, allowed, mend: 'write the width of the roll, as in "roll 610 mm"' };
  }
  const mend = found.nearest === undefined ? "write one of these names" : `write ${found.nearest}`;
  return { ok: false, problem, allowed: oneOf(found.known), mend };
}
