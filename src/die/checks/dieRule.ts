import type { Finding } from "../../model/finding.ts";
import { sayFigure, type Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import type { Die } from "../die.ts";

/** A rule on one die. It sees data alone and gives findings. */
export type DieRule = {
  readonly name: string;
  /** What it asks for, in one line. */
  readonly means: string;
  check(die: Die, units: Units): readonly Finding[];
};

type Remark = Omit<Finding, "rule" | "piece">;

/** A rule from its name, its meaning and how it looks at a die. */
export const dieRule = (
  name: string,
  means: string,
  look: (die: Die, units: Units) => readonly Remark[],
): DieRule => ({
  name,
  means,
  check: (die, units) => look(die, units).map((r) => ({ rule: name, piece: die.piece.id, ...r })),
});

/** A size as a die maker reads it: mm to a hundredth, with inches before it where the order is in inches. */
export function saySize(mm: number, units: Units): string {
  const inMm = `${printNumber(mm, 2)} mm`;
  return units === "in" && mm !== 0 ? `${sayFigure(mm, "length", "in")}${sameMm(mm, inMm)}` : inMm;
}

/** A figure that is printed in mm already, too fine for a fraction, is not printed twice. */
const sameMm = (mm: number, inMm: string): string =>
  sayFigure(mm, "length", "in").endsWith("mm") ? "" : ` (${inMm})`;
