// Makes sheets of hand-made pieces for the tests of pictures, and reads them as an output would.
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Box } from "../../src/geometry/path.ts";
import { type LayoutOptions, layOut } from "../../src/layout/layOut.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Layout } from "../../src/model/sheet.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Words } from "../../src/picture/picture.ts";
import { type SheetsInput, sheetPictures } from "../../src/picture/sheet/sheets.ts";
import * as samples from "./samplePieces.ts";

export const TITLE = {
  article: "one-ear headstall",
  forWhom: "Juniper, bay mare, 15.1 hands",
  file: "juniper.yaml",
  cautions: ["Inspect before each use. Never tie a horse by a bridle."],
};

export type Made = { readonly layout: Layout; readonly pictures: readonly Picture[] };
const known = new Map<string, Made>();
/** Makes sheets, each kind once. */
export function make(
  pieces: readonly Piece[],
  options: LayoutOptions,
  more: Partial<SheetsInput> = {},
): Made {
  const key = JSON.stringify([
    pieces.map((p) => [p.id, p.holes.length, p.outline.segments.length]),
    options,
    more,
  ]);
  const before = known.get(key) ?? makeAfresh(pieces, options, more);
  known.set(key, before);
  return before;
}
export function makeAfresh(
  pieces: readonly Piece[],
  options: LayoutOptions,
  more: Partial<SheetsInput> = {},
): Made {
  const layout = layOut(pieces, options);
  return { layout, pictures: sheetPictures({ pieces, layout, words: TITLE, units: "mm", ...more }) };
}

export const pictureOf = ({ pictures }: Made, name: string): Picture =>
  pictures.find((p) => p.title === `sheet ${name}`)!;
export const wordsOn = (picture: Picture): readonly Words[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "words" ? [item] : []));
export const textsOn = (picture: Picture): readonly string[] => wordsOn(picture).map((w) => w.text);
export const allText = (picture: Picture): string => textsOn(picture).join("\n");

/** Black areas: bars, squares, rulers, arrows. */
export const areasOn = (picture: Picture): readonly Box[] =>
  flattenPicture(picture).flatMap(({ item }) =>
    item.kind === "stroke" && item.fill === "black" && item.layer === "sheet" ? [boundsOf(item.path)] : [],
  );

export const SETS: Readonly<Record<string, readonly Piece[]>> = {
  "a headstall": samples.sampleHeadstall(),
  "a panel": [samples.panel()],
  "a headstall and a panel": [...samples.sampleHeadstall(), samples.panel()],
  "six straps": Array.from({ length: 6 }, (_, i) => samples.longStrap(`strap-${i}`)),
  "a washer": [samples.tinyPiece()],
};
