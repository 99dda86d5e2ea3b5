// How large a text is, and what of it can be drawn, known before any output is made.

import type { Box, Point } from "../geometry/path.ts";
import * as trig from "../units/trigonometry.ts";
import {
  ADVANCES,
  ASCENT,
  CAP_HEIGHT,
  DEEP,
  DEEPEST,
  DESCENT,
  TALL,
  TALLEST,
  UNITS_PER_EM,
} from "./advances.generated.ts";
import type { Words } from "./picture.ts";

/** Height of a capital letter, as a share of the font size. */
export const CAPITAL = CAP_HEIGHT / UNITS_PER_EM;
/** How far letters rise above the base line, as a share of the font size; stacked accents rise further. */
export const RISE = ASCENT / UNITS_PER_EM;
/** How far letters hang below the base line, as a share of the font size. */
export const DROP = DESCENT / UNITS_PER_EM;

type Widths = { readonly regular: number; readonly bold: number };

const widths: ReadonlyMap<number, Widths> = new Map(
  ADVANCES.flatMap(([first, regular, bold]) => {
    const heavy = bold.split(" ");
    return regular
      .split(" ")
      .map((w, i): [number, Widths] => [first + i, { regular: Number(w), bold: Number(heavy[i]) }]);
  }),
);

/** Breaks and tabs: drawn as one space. */
const BREAKS: readonly number[] = [0x09, 0x0a, 0x0b, 0x0c, 0x0d, 0x85, 0x2028, 0x2029];

/**
 * Characters without ink that steer others: control characters, the soft hyphen, joiners, bidirectional
 * controls, variation selectors, tags. Left out of drawings, where they could only reorder or hide text.
 */
const UNSEEN: readonly (readonly [first: number, last: number])[] = [
  [0x00, 0x1f],
  [0x7f, 0x9f],
  [0xad, 0xad],
  [0x34f, 0x34f],
  [0x61c, 0x61c],
  [0x180b, 0x180f],
  [0x200b, 0x200f],
  [0x202a, 0x202e],
  [0x2060, 0x206f],
  [0xfe00, 0xfe0f],
  [0xfeff, 0xfeff],
  [0xfff9, 0xfffb],
  [0xe0000, 0xe0fff],
];

const isUnseen = (code: number): boolean => UNSEEN.some(([first, last]) => first <= code && code <= last);
const numbered = (code: number): string => `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;

/** The text on one line: breaks and tabs as spaces, without the characters that only steer others. */
export function steady(text: string): string {
  return Array.from(text, (char) => {
    const code = char.codePointAt(0)!;
    if (BREAKS.includes(code)) return " ";
    return isUnseen(code) ? "" : char;
  }).join("");
}

/**
 * The text as it can be drawn, and the characters (as "U+1F40E") that the fonts lack: each of those stands
 * in the text as a box and its number. The rest is made steady, and letters and accents are joined where
 * one letter has both. Giving the result in again changes nothing.
 */
export function drawable(text: string): { readonly text: string; readonly missing: readonly string[] } {
  const missing: string[] = [];
  const drawn = Array.from(steady(text).normalize("NFC"), (char) => {
    const code = char.codePointAt(0)!;
    if (widths.has(code)) return char;
    const number = numbered(code);
    if (!missing.includes(number)) missing.push(number);
    return `□${number}`;
  });
  return { text: drawn.join(""), missing };
}

const codesOf = (text: string): readonly number[] =>
  Array.from(drawable(text).text, (char) => char.codePointAt(0)!);

/** Width of a text as drawn, mm, for a font size in mm. Letters stand at their own widths: no kerning. */
export function textWidth(text: string, size: number, bold = false): number {
  const units = codesOf(text).reduce((sum, code) => sum + widths.get(code)![bold ? "bold" : "regular"], 0);
  return (units * size) / UNITS_PER_EM;
}

/** Rise and drop of this text, mm: more than usual only when it holds letters that reach further. */
function extent(text: string, size: number): { readonly rise: number; readonly drop: number } {
  const codes = codesOf(text);
  const rise = codes.some((c) => TALL.includes(c)) ? TALLEST : ASCENT;
  const drop = codes.some((c) => DEEP.includes(c)) ? DEEPEST : DESCENT;
  return { rise: (rise * size) / UNITS_PER_EM, drop: (drop * size) / UNITS_PER_EM };
}

/** How far before `at` a text begins, as a share of its width. */
export const alignShare = (align: Words["align"]): number =>
  align === "left" ? 0 : align === "centre" ? 0.5 : 1;

export type Corners = readonly [lowerLeft: Point, lowerRight: Point, upperRight: Point, upperLeft: Point];

/**
 * The four corners of a text's own box, as one reads it, where it lies. A J at the start or a ď at the end
 * reaches out of its own width, by a twentieth to a seventh of the size.
 */
export function textCorners(words: Words): Corners {
  const width = textWidth(words.text, words.size, words.bold);
  const { rise, drop } = extent(words.text, words.size);
  const left = -width * alignShare(words.align);
  const [cos, sin] = [trig.cos(words.angle), trig.sin(words.angle)];
  const at = (x: number, y: number): Point => [
    words.at[0] + x * cos - y * sin,
    words.at[1] + x * sin + y * cos,
  ];
  return [at(left, -drop), at(left + width, -drop), at(left + width, rise), at(left, rise)];
}

/** The smallest upright box round a text, turned or not. */
export function textBox(words: Words): Box {
  const corners = textCorners(words);
  const [xs, ys] = [corners.map((c) => c[0]), corners.map((c) => c[1])];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
