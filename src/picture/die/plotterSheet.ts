// A piece for a knife or laser plotter: one layer for each operation.
import type { Die } from "../../die/die.ts";
import type { DieFeature, FeatureKind } from "../../die/feature.ts";
import { boundsOf, unionBox } from "../../geometry/bounds.ts";
import type { Path, Point } from "../../geometry/path.ts";
import { moved } from "../../geometry/transform.ts";
import { roundMm } from "../../units/index.ts";
import { roundPath } from "../round.ts";

export type OperationName = "words" | "marks" | "notches" | "stitch-holes" | "holes" | "slots" | "outline";

/** One operation: all that is done with one tool or one setting. */
export type Operation = {
  readonly name: OperationName;
  /** What is done, for the list of layers. */
  readonly means: string;
  /** mm, y up, from the sheet's lower left corner, to 0.001 mm. */
  readonly paths: readonly Path[];
  /** Only the layer of words has any. */
  readonly words: readonly { readonly at: Point; readonly size: number; readonly text: string }[];
};

export type PlotterSheet = {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** In the order in which they are to be done. */
  readonly operations: readonly Operation[];
};

const DONE_BY: Readonly<Record<FeatureKind, OperationName>> = {
  outline: "outline",
  slot: "slots",
  opening: "slots",
  "round hole": "holes",
  "staple hole": "holes",
  "stitch holes": "stitch-holes",
  "awl holes": "stitch-holes",
  notch: "notches",
  clip: "notches",
  crease: "marks",
  fold: "marks",
  skive: "marks",
  tooling: "marks",
  glue: "marks",
  trim: "marks",
};

const MEANS: Readonly<Record<OperationName, string>> = {
  words: "words: do not cut",
  marks: "folds, creases, skives, glue: do not cut",
  notches: "notches and clips: cut",
  "stitch-holes": "stitch and awl holes: cut or prick",
  holes: "round holes: cut",
  slots: "slots and openings: cut",
  outline: "outline: cut",
};

/** First what is marked, then what lies inside, the outline last: a piece that is cut free may move. */
const INSIDE_FIRST: readonly OperationName[] = [
  "words",
  "marks",
  "stitch-holes",
  "holes",
  "slots",
  "notches",
  "outline",
];
const OUTSIDE_FIRST: readonly OperationName[] = [...INSIDE_FIRST].reverse();

const EDGE_MM = 5;
const LETTERS_MM = 3;
const LINE_MM = 4.5;

export type PlotterAsked = {
  readonly title: string;
  readonly words: readonly string[];
  readonly insideFirst: boolean;
};

/**
 * The piece as drawn, curves as they are, all its features whether a die would have them or not; the words
 * stand below it, in a layer of their own. Layers without anything in them are left out.
 */
export function plotterSheet({ features }: Die, { title, words, insideFirst }: PlotterAsked): PlotterSheet {
  const all = unionBox(features.flatMap(({ paths }) => paths.map(boundsOf)));
  const room = words.length * LINE_MM + EDGE_MM;
  const shift: Point = [EDGE_MM - all.minX, EDGE_MM + room - all.minY];
  const placedPaths = (some: readonly DieFeature[]): readonly Path[] =>
    some.flatMap(({ paths }) => paths.map((path) => roundPath(moved(path, shift))));
  const lines = words.map((text, i) => ({
    at: [EDGE_MM, roundMm(EDGE_MM + room - EDGE_MM - (i + 1) * LINE_MM + (LINE_MM - LETTERS_MM))] as Point,
    size: LETTERS_MM,
    text,
  }));
  const operations = (insideFirst ? INSIDE_FIRST : OUTSIDE_FIRST).map(
    (name): Operation => ({
      name,
      means: MEANS[name],
      paths: placedPaths(features.filter(({ kind }) => DONE_BY[kind] === name)),
      words: name === "words" ? lines : [],
    }),
  );
  return {
    title,
    width: roundMm(all.maxX - all.minX + 2 * EDGE_MM),
    height: roundMm(all.maxY - all.minY + 2 * EDGE_MM + room),
    operations: operations.filter(({ paths, words: some }) => paths.length + some.length > 0),
  };
}
