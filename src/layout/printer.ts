import type { Paper, PrinterFactor } from "../model/sheet.ts";

/** A printer that strays further than this doesn't stray: whatever shows the file has scaled the page. */
export const LARGEST_STRAY = 0.03;
/** A bar leaves this much of the printable edge to the bar that meets it at the corner, mm. */
const CORNER_MM = 8;

export const TRUE_FACTOR: PrinterFactor = { x: 1, y: 1 };

/** A page as long as A4 serves to measure a roll's length. */
const ROLL_BAR_PAGE_MM = 297;

/** The page that carries the measuring bars: the sheet, or a short page from the roll. */
export const frontPage = (paper: Paper): { readonly width: number; readonly height: number } =>
  paper.roll
    ? { width: paper.width, height: ROLL_BAR_PAGE_MM }
    : { width: paper.width, height: paper.height };

/**
 * Lengths of the measuring bars along the short edge (x) and the long edge (y), mm: as long as fits in
 * whole 10 mm, also when drawn longer for a printer that shrinks by 3 %. On letter paper with a margin of
 * 10 mm: 180 and 240.
 */
export function barLengths(paper: Paper, margin: number): { readonly x: number; readonly y: number } {
  const page = frontPage(paper);
  const fits = (edge: number): number =>
    Math.max(10, Math.floor(((edge - 2 * margin - CORNER_MM) * (1 - LARGEST_STRAY)) / 10) * 10);
  return { x: fits(page.width), y: fits(page.height) };
}

/** What `factorFrom` says of a measured pair of bars. */
export type FactorFound =
  | { readonly ok: true; readonly factor: PrinterFactor }
  | {
      readonly ok: false;
      /** Both bars are off by the same share: the page was scaled, not stretched. */
      readonly even: boolean;
      readonly nominal: { readonly x: number; readonly y: number };
      readonly measured: { readonly x: number; readonly y: number };
      readonly factor: PrinterFactor;
    };

/** Two axes that differ by less than this are scaled alike; a tape reads half a millimetre in 180. */
const SAME_SCALE = 0.005;

/**
 * How a printer strays, from what its measuring bars measured, mm. Beyond 3 % on either axis the viewer
 * must have scaled the page ("fit to page"): then it isn't corrected, and the data for a message comes back.
 */
export function factorFrom(
  measured: { readonly x: number; readonly y: number },
  paper: Paper,
  margin: number,
): FactorFound {
  const nominal = barLengths(paper, margin);
  const factor = { x: measured.x / nominal.x, y: measured.y / nominal.y };
  const strays = (f: number): boolean => !(Math.abs(f - 1) <= LARGEST_STRAY);
  if (!strays(factor.x) && !strays(factor.y)) return { ok: true, factor };
  return { ok: false, even: Math.abs(factor.x - factor.y) <= SAME_SCALE, nominal, measured, factor };
}
