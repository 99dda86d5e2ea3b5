// What each line of this drawing means; only those that it has.

import type { Die } from "../../die/die.ts";
import type { FeatureKind } from "../../die/feature.ts";
import { circlePath, type Point, polyline } from "../../geometry/path.ts";
import type { Item, LineType } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { beside, type Flowing } from "../sheet/flow.ts";
import { BY_HAND_LOOKS } from "./partLines.ts";

const SAMPLE_MM = 20;
const WORDS_FROM_MM = 24;
const ROW_MM = 4.6;

type Entry = { readonly draw: (at: Point) => readonly Item[]; readonly says: string };

const plain =
  (line: LineType) =>
  ([x, y]: Point): readonly Item[] => [
    stroke(
      "sheet",
      line,
      polyline([
        [x, y],
        [x + SAMPLE_MM, y],
      ]),
    ),
  ];

const symmetric = ([x, y]: Point): readonly Item[] => [
  ...plain("04.1")([x, y]),
  ...[0.4, 1.2, SAMPLE_MM - 1.2, SAMPLE_MM - 0.4].map((dx) =>
    stroke(
      "sheet",
      "01.1",
      polyline([
        [x + dx, y - 1.5],
        [x + dx, y + 1.5],
      ]),
    ),
  ),
];

const datum = ([x, y]: Point): readonly Item[] => [
  ...plain("01.1")([x, y]),
  { ...stroke("sheet", "01.1", circlePath([x + 3, y], 0.9)), fill: "white" },
];

/** Kinds of one line type, in words. */
const BY_HAND: readonly (readonly [line: LineType, says: (kinds: readonly string[]) => string])[] = [
  ["01.1", (kinds) => `01.1 narrow  by hand afterwards: ${kinds.join(", ")}`],
  ["02.1", () => "02.1 dashed  fold, by hand afterwards"],
  ["03.1", () => "03.1 widely dashed  crease, pressed by hand afterwards"],
  ["07.1", (kinds) => `07.1 dotted  edge of a field for the bench: ${kinds.join(", ")}`],
  ["08.1", () => "08.1 long and short dashes  trimmed by hand when it is put together"],
];

function byHandEntries(die: Die): readonly Entry[] {
  const kinds = [...new Set(die.features.filter((f) => f.made === "by hand afterwards").map((f) => f.kind))];
  return BY_HAND.flatMap(([line, says]) => {
    const here = kinds.filter((kind: FeatureKind) => BY_HAND_LOOKS[kind].line === line);
    return here.length === 0 ? [] : [{ draw: plain(line), says: says(here) }];
  });
}

/** The lines of this drawing, each drawn as it is. */
export function lineKey(die: Die, width: number): readonly Flowing[] {
  const entries: readonly Entry[] = [
    { draw: plain("01.2"), says: "01.2 wide  IN THE DIE: the cutting edge, through the middle of the line" },
    ...byHandEntries(die),
    ...(die.axis
      ? [
          {
            draw: symmetric,
            says: "04.1 long dash and dot, with two strokes at each end  centre line: what the die cuts is alike on both sides",
          },
        ]
      : []),
    ...(die.features.some(({ kind }) => kind === "round hole" || kind === "staple hole")
      ? [{ draw: plain("04.1"), says: "04.1 long dash and dot  middle of a hole" }]
      : []),
    { draw: datum, says: "01.1 narrow, from a ring  sizes that run from the datum; the ring is 0" },
  ];
  return entries.map(({ draw, says }): Flowing => {
    const drawing: Flowing = { height: ROW_MM, draw: (left, top) => draw([left, top - ROW_MM / 2 - 0.6]) };
    return beside(drawing, WORDS_FROM_MM, says, width);
  });
}
