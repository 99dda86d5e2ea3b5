import type { LineType } from "../picture/picture.ts";

/** What a line looks like on paper, mm. `dash` alternates drawn and empty lengths; empty for a whole line. */
export type LineStyle = { readonly width: number; readonly dash: readonly number[] };

/** Line group 0.5 for sheets up to A2: wide lines 0.5 mm, narrow ones half of that (ISO 128-20, DIN EN ISO 128-20). */
const THIN = 0.25;
const THICK = 0.5;

/**
 * Lengths of line elements as multiples of the line's width (ISO 128-20 and ISO 128-2, lengths of line
 * elements; from memory): dash 12, gap 3, space 18, short dash 6, long dash 24, dot at most 0.5.
 */
const DASH = 12;
const GAP = 3;
const SPACE = 18;
const SHORT_DASH = 6;
const LONG_DASH = 24;
const DOT = 0.5;

const style = (width: number, elements: readonly number[]): LineStyle => ({
  width,
  dash: elements.map((n) => n * width),
});

/** The line types' looks; black on white and told apart without colour. */
export const LINE_STYLES: Readonly<Record<LineType, LineStyle>> = {
  "01.1": style(THIN, []),
  "01.2": style(THICK, []),
  "02.1": style(THIN, [DASH, GAP]),
  "03.1": style(THIN, [DASH, SPACE]),
  "04.1": style(THIN, [LONG_DASH, GAP, DOT, GAP]),
  "05.1": style(THIN, [LONG_DASH, GAP, DOT, GAP, DOT, GAP]),
  "07.1": style(THIN, [DOT, GAP]),
  "08.1": style(THIN, [LONG_DASH, GAP, SHORT_DASH, GAP]),
};
