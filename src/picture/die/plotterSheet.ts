// A piece for a knife or laser plotter: one layer for each operation.
import type { Die } from "../../die/die.ts";
import type { DieFeature, FeatureKind } from "../../die/feature.ts";
import { boundsOf, unionBox } from "../../geometry/bounds.ts";
import { type Path, type Point, rectanglePath } from "../../geometry/path.ts";
import { moved } from "../../geometry/transform.ts";
import { roundMm } from "../../units/index.ts";
import { roundPath } from "../round.ts";
import { SQUARE_MM } from "../sheet/square.ts";
import { textWidth } from "../words.ts";
import { withFieldEdges } from "./fieldEdges.ts";

export type OperationName =
  | "words"
  | "check-square"
  | "flesh-skive"
  | "flesh-glue"
  | "flesh-notches"
  | "marks"
  | "notches"
  | "clips"
  | "stitch-holes"
  | "holes"
  | "slots"
  | "outline";

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

/** Notches are cut where the order has them in the die; else they are marked, for a cut in an edge may show. */
const DONE_BY: Readonly<Record<FeatureKind, OperationName>> = {
  outline: "outline",
  slot: "slots",
  opening: "slots",
  "round hole": "holes",
  "staple hole": "holes",
  "stitch holes": "stitch-holes",
  "awl holes": "stitch-holes",
  notch: "notches",
  clip: "clips",
  crease: "marks",
  fold: "marks",
  skive: "flesh-skive",
  tooling: "marks",
  glue: "flesh-glue",
  trim: "marks",
};

const doneBy = ({ kind, made }: DieFeature): OperationName =>
  kind === "notch" && made === "by hand afterwards" ? "flesh-notches" : DONE_BY[kind];

const MEANS: Readonly<Record<OperationName, string>> = {
  words: "words: do not cut",
  "check-square": "square of 50 mm to measure first: do not cut",
  "flesh-skive": "flesh side: skive; not on the face, do not cut",
  "flesh-glue": "flesh side: glue; not on the face, do not cut",
  "flesh-notches": "flesh side: notches to mark; not on the face, do not cut",
  marks: "folds, creases, tooling, trims: do not cut",
  notches: "notches: cut",
  clips: "clips in the allowance: cut",
  "stitch-holes": "stitch and awl holes: cut or prick",
  holes: "round holes: cut",
  slots: "slots and openings: cut",
  outline: "outline: cut",
};

/** Work on the other side of the leather: nothing of it is plotted on the face, which lies up. */
const FLESH_SIDE: readonly OperationName[] = ["flesh-skive", "flesh-glue", "flesh-notches"];
/** What is looked at before anything is done to the piece, whatever the order. */
const BEFORE: readonly OperationName[] = ["words", "check-square", ...FLESH_SIDE];
/** First what is marked, then what lies inside, the outline last: a piece that is cut free may move. */
const INSIDE_FIRST: readonly OperationName[] = [
  "marks",
  "stitch-holes",
  "holes",
  "slots",
  "notches",
  "clips",
  "outline",
];
const OUTSIDE_FIRST: readonly OperationName[] = [...INSIDE_FIRST].reverse();

const EDGE_MM = 5;
const LETTERS_MM = 3;
const LINE_MM = 4.5;
/** From the piece to the check square, and from that to the words beside it, mm. */
export const CLEAR_MM = 25;
const APART_MM = 8;
/** Another font than the one that widths are known of may be so much wider. */
const OTHER_FONT = 1.35;
const NOT_ON_FACE =
  "Layers “flesh side” are work on the other side, seen through from the grain side: do not plot them on the face.";
const MEASURE = "Measure the square before cutting: it is 50 mm wide and high.";

export type PlotterAsked = {
  readonly title: string;
  readonly words: readonly string[];
  readonly insideFirst: boolean;
};

type Wording = Operation["words"][number];

/** The words to the right of the square, from its top down; they may need more height than it has. */
function besideSquare(words: readonly string[]): {
  readonly lines: readonly Wording[];
  readonly width: number;
  readonly height: number;
} {
  const texts = [...words, MEASURE];
  const height = Math.max(SQUARE_MM, texts.length * LINE_MM);
  const x = EDGE_MM + SQUARE_MM + APART_MM;
  const lines = texts.map((text, i) => ({
    at: [x, roundMm(EDGE_MM + height - LETTERS_MM - i * LINE_MM)] as Point,
    size: LETTERS_MM,
    text,
  }));
  const widest = Math.max(...texts.map((text) => textWidth(text, LETTERS_MM)));
  return { lines, width: x + widest * OTHER_FONT + EDGE_MM, height };
}

/**
 * The piece as drawn, curves as they are, all its features whether a die would have them or not; of a field
 * only the edges that do not lie on the outline. Well below the piece, each in a layer of its own, a square of
 * 50 mm and the words. What is done on the flesh side has layers of its own, which the words say are not for the
 * face. Layers without anything in them are left out.
 */
export function plotterSheet(
  { features: all }: Die,
  { title, words, insideFirst }: PlotterAsked,
): PlotterSheet {
  const features = withFieldEdges(all);
  const box = unionBox(features.flatMap(({ paths }) => paths.map(boundsOf)));
  const flesh = features.some((f) => FLESH_SIDE.includes(doneBy(f)) && f.paths.length > 0);
  const { lines, width, height } = besideSquare([...words, ...(flesh ? [NOT_ON_FACE] : [])]);
  const room = height + CLEAR_MM;
  const shift: Point = [EDGE_MM - box.minX, EDGE_MM + room - box.minY];
  const square = rectanglePath([EDGE_MM, EDGE_MM + height - SQUARE_MM], SQUARE_MM, SQUARE_MM);
  const pathsOf = (name: OperationName): readonly Path[] =>
    name === "check-square"
      ? [roundPath(square)]
      : features
          .filter((feature) => doneBy(feature) === name)
          .flatMap(({ paths }) => paths.map((path) => roundPath(moved(path, shift))));
  const operations = [...BEFORE, ...(insideFirst ? INSIDE_FIRST : OUTSIDE_FIRST)].map(
    (name): Operation => ({
      name,
      means: MEANS[name],
      paths: pathsOf(name),
      words: name === "words" ? lines : [],
    }),
  );
  return {
    title,
    width: roundMm(Math.max(box.maxX - box.minX + 2 * EDGE_MM, width)),
    height: roundMm(box.maxY - box.minY + 2 * EDGE_MM + room),
    operations: operations.filter(({ paths, words: some }) => paths.length + some.length > 0),
  };
}
