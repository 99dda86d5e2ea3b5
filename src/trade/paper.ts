import type { Paper } from "../model/sheet.ts";
import { nearestWord } from "../model/words.ts";
import { roundMm } from "../units/round.ts";

const ISO_216 = "ISO 216, A series, trimmed sizes";
const ANSI = "ANSI/ASME Y14.1";

/** Papers by name, upright, mm. Inch sizes are exact: 1 in = 25.4 mm. */
export const PAPERS: readonly Paper[] = [
  { name: "letter", width: 215.9, height: 279.4, source: `${ANSI}, size A, 8 1/2 × 11 in` },
  { name: "legal", width: 215.9, height: 355.6, source: "common practice, no source: 8 1/2 × 14 in" },
  { name: "tabloid", width: 279.4, height: 431.8, source: `${ANSI}, size B, 11 × 17 in` },
  { name: "a4", width: 210, height: 297, source: ISO_216 },
  { name: "a3", width: 297, height: 420, source: ISO_216 },
];

/** Home printers keep to 6.4 mm and more at an edge (trade-sources R11); a margin below it may be cut off. */
export const SAFE_MARGIN_MM = 6.4;

/** A roll narrower than a sheet of A5 carries no front page; none is made wider than 1.6 m. */
export const ROLL_WIDTH_MM = { least: 148, most: 1600 } as const;
/**
 * The longest page from a roll. A PDF page can't pass 200 in (14,400 user units of 1/72 in) unless its
 * unit is changed, which some viewers overlook. Common practice, no source.
 */
export const ROLL_LENGTH_MM = 5000;

/** What `paperNamed` found, or what is wrong with the name. */
export type PaperFound =
  | { readonly ok: true; readonly paper: Paper }
  | {
      readonly ok: false;
      readonly got: string;
      /** The names that are known. */
      readonly known: readonly string[];
      readonly nearest?: string;
      /** A roll whose width can't be used, mm. */
      readonly rollWidth?: number;
    };

const known = [...PAPERS.map((p) => p.name), "roll 610 mm"];

const ROLL = /^roll[ :x]*(\d+(?:\.\d+)?) ?(mm|cm|in)?$/;
const MM_IN = { mm: 1, cm: 10, in: 25.4 } as const;

/** A roll of paper of any width, its pages as long as the drawing; mm. */
export const rollOf = (width: number): Paper => ({
  name: `roll ${width} mm`,
  width,
  height: ROLL_LENGTH_MM,
  source: "as ordered",
  roll: true,
});

/**
 * The paper of that name: a sheet of the table, or `roll` and its width (`roll 610 mm`, `roll 24 in`;
 * a bare number is mm). Capitals and spaces don't matter.
 */
export function paperNamed(name: string): PaperFound {
  const plain = name.trim().toLowerCase().replace(/\s+/g, " ");
  const paper = PAPERS.find((p) => p.name === plain.replace(/ /g, ""));
  if (paper) return { ok: true, paper };
  const roll = ROLL.exec(plain);
  if (roll) {
    const width = roundMm(Number(roll[1]) * MM_IN[(roll[2] ?? "mm") as keyof typeof MM_IN]);
    const usable = width >= ROLL_WIDTH_MM.least && width <= ROLL_WIDTH_MM.most;
    return usable ? { ok: true, paper: rollOf(width) } : { ok: false, got: name, known, rollWidth: width };
  }
  const nearest = nearestWord(plain, known);
  return { ok: false, got: name, known, ...(nearest === undefined ? {} : { nearest }) };
}
