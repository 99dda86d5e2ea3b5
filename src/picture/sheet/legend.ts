import { circlePath, type Path, type Point, polyline, slotPath } from "../../geometry/path.ts";
import type { Mark, Piece, ZoneKind } from "../../model/piece.ts";
import type { Item, LineType } from "../picture.ts";
import { arrow, dimensionBeside, dimensionStrokes } from "../piece/dimension.ts";
import { stroke } from "../piece/strokes.ts";
import { beside, type Flowing, heading } from "./flow.ts";

// What every line means, each drawn as it is on the pieces. The numbers are those of ISO 128-2, which
// names lines by type and width: .1 narrow, .2 wide.

const SAMPLE_MM = 20;
const WORDS_FROM_MM = 24;
const ROW_MM = 4.6;

type Entry = { readonly draw: (at: Point) => readonly Item[]; readonly says: string };

const level = ([x, y]: Point): Path =>
  polyline([
    [x, y],
    [x + SAMPLE_MM, y],
  ]);
const plain =
  (line: LineType) =>
  (at: Point): readonly Item[] => [stroke("sheet", line, level(at))];

const slits = ([x, y]: Point): readonly Item[] =>
  [2, 5, 8, 11, 14, 17].map((dx) =>
    stroke(
      "sheet",
      "01.1",
      polyline([
        [x + dx - 0.7, y - 0.7],
        [x + dx + 0.7, y + 0.7],
      ]),
    ),
  );

function hole([x, y]: Point): readonly Item[] {
  const c: Point = [x + 4, y];
  return [
    stroke("sheet", "01.1", circlePath(c, 1.5)),
    stroke(
      "sheet",
      "01.1",
      polyline([
        [c[0] - 2.2, y],
        [c[0] + 2.2, y],
      ]),
    ),
    stroke(
      "sheet",
      "01.1",
      polyline([
        [c[0], y - 2.2],
        [c[0], y + 2.2],
      ]),
    ),
    stroke("sheet", "01.2", slotPath([x + 14, y], 9, 2.4)),
  ];
}

function diamond([x, y]: Point): readonly Item[] {
  const c = x + 10;
  return [
    stroke(
      "sheet",
      "01.1",
      polyline([
        [c, y - 2.2],
        [c, y + 2.2],
      ]),
    ),
    stroke(
      "sheet",
      "01.1",
      polyline(
        [
          [c - 1.8, y],
          [c, y + 1.8],
          [c + 1.8, y],
          [c, y - 1.8],
        ],
        true,
      ),
    ),
  ];
}

/** A field to skive and a feathered end beside it, as on a strap's end. */
function skived([x, y]: Point): readonly Item[] {
  const [low, high] = [y - 1.8, y + 1.8];
  const edges = [0, 12, SAMPLE_MM].map((dx) =>
    polyline([
      [x + dx, low],
      [x + dx, high],
    ]),
  );
  const strokes = [0.6, 4.2, 7.8, 12.4, 14.2, 16];
  return [
    ...edges.map((e) => stroke("sheet", "07.1", e)),
    ...strokes.map((dx) =>
      stroke(
        "sheet",
        "01.1",
        polyline([
          [x + dx, high],
          [x + dx + high - low, low],
        ]),
      ),
    ),
  ];
}

const backbone = ([x, y]: Point): readonly Item[] => [
  stroke("sheet", "01.1", level([x, y])),
  arrow("sheet", [x, y], [-1, 0]),
  arrow("sheet", [x + SAMPLE_MM, y], [1, 0]),
];

const zigzag = ([x, y]: Point): readonly Item[] => [
  stroke(
    "sheet",
    "01.1",
    polyline([
      [x, y],
      [x + 7, y],
      [x + 8.5, y + 1.6],
      [x + 11.5, y - 1.6],
      [x + 13, y],
      [x + SAMPLE_MM, y],
    ]),
  ),
];

/** Clips down from an edge, or a notch with its triangle. */
const cuts =
  (flag: boolean) =>
  ([x, y]: Point): readonly Item[] => [
    stroke("sheet", "01.2", level([x, y])),
    ...(flag ? [10] : [4, 10, 16]).map((dx) =>
      stroke(
        "sheet",
        flag ? "01.1" : "01.2",
        polyline([
          [x + dx, y],
          [x + dx, y - 2],
        ]),
      ),
    ),
    ...(flag
      ? [
          stroke(
            "sheet",
            "01.1",
            polyline(
              [
                [x + 10, y + 0.5],
                [x + 11, y + 2.4],
                [x + 9, y + 2.4],
              ],
              true,
            ),
          ),
        ]
      : []),
  ];

/** A groove with a tick. */
const grooved = ([x, y]: Point): readonly Item[] => [
  stroke("sheet", "01.1", level([x, y])),
  stroke(
    "sheet",
    "01.1",
    polyline([
      [x + 10, y - 1.25],
      [x + 10, y + 1.25],
    ]),
  ),
];

const rings = ([x, y]: Point): readonly Item[] => [
  stroke("sheet", "01.1", level([x, y])),
  ...[2, 6, 10, 14, 18].map((dx) => stroke("sheet", "01.1", circlePath([x + dx, y], 0.6))),
];

/** A band along an edge. */
const band = ([x, y]: Point): readonly Item[] => [
  stroke("sheet", "01.2", level([x, y + 1.6])),
  stroke("sheet", "07.1", level([x, y - 1.4])),
];

/** What only some jobs draw is explained in those alone. */
export type Used = {
  readonly breaks: boolean;
  readonly notches: boolean;
  /** Notches that the die cuts which these sheets were made with. */
  readonly dieNotches: boolean;
  readonly clips: boolean;
  readonly grooves: boolean;
  readonly stitchHoles: boolean;
  readonly glue: boolean;
  readonly trim: boolean;
};

/** What of that these pieces use; `dieCuts` where a die cuts their notches. */
export function usedBy(pieces: readonly Piece[], breaks: boolean, dieCuts = false): Used {
  const mark = (kind: Mark["kind"]): boolean => pieces.some((p) => p.marks.some((m) => m.kind === kind));
  const zone = (kind: ZoneKind): boolean => pieces.some((p) => p.zones.some((z) => z.kind === kind));
  return {
    breaks,
    notches: mark("notch") && !dieCuts,
    dieNotches: mark("notch") && dieCuts,
    clips: mark("clip"),
    grooves: pieces.some((p) => p.seams.some((s) => s.groove)),
    stitchHoles: pieces.some((p) => p.holes.some((h) => h.kind === "round" && h.use === "stitch")),
    glue: zone("glue"),
    trim: zone("trim"),
  };
}

type Row = Entry & { readonly when?: keyof Used };

const ROWS: readonly Row[] = [
  { draw: plain("01.2"), says: "01.2  cut, through the middle of the line" },
  {
    when: "notches",
    draw: cuts(true),
    says: "01.1  notch, by its triangle: mark it on the flesh side; it meets the other piece's notch",
  },
  {
    when: "dieNotches",
    draw: cuts(true),
    says: "01.1  notch, by its triangle: the die cuts it; it meets the other piece's notch",
  },
  { when: "clips", draw: cuts(false), says: "01.2  clips: short cuts from the edge, so that it can bend" },
  { draw: hole, says: "01.1 a hole to punch, by its cross; 01.2 a slot" },
  {
    draw: (at) => [...plain("01.1")(at), ...slits(at)],
    says: "01.1  stitches: a line to groove and a mark for every awl hole; every tenth is numbered",
  },
  {
    when: "stitchHoles",
    draw: rings,
    says: "01.1  stitches through punched holes: a ring for every hole; every tenth is numbered",
  },
  {
    when: "grooves",
    draw: grooved,
    says: "01.1  stitches in a groove: no holes are drawn; every tenth stitch has a tick and its number",
  },
  { draw: plain("02.1"), says: "02.1  fold; outside a piece, where to cut roughly first" },
  { draw: plain("03.1"), says: "03.1  crease, pressed and not cut" },
  { draw: plain("04.1"), says: "04.1  middle of the piece" },
  { draw: plain("05.1"), says: "05.1  where another part lies" },
  { draw: plain("07.1"), says: "07.1  edge of a field to skive or to tool" },
  { when: "glue", draw: band, says: "07.1  band to glue, between the dots and the edge" },
  {
    when: "trim",
    draw: plain("08.1"),
    says: "08.1  trim to this line when the seam is done; cut the piece to its thick line first",
  },
  {
    draw: skived,
    says: "01.1 strokes in such a field: skive it, flesh side; close strokes: feather to nothing",
  },
  {
    draw: ([x, y]) => dimensionStrokes("sheet", dimensionBeside([x, y], [x + SAMPLE_MM, y], 0)),
    says: "01.1  length to check on the joined paper",
  },
  { draw: backbone, says: "01.1  backbone: along the hide's back line" },
  { draw: diamond, says: "01.1  edge of the next sheet, with a joining mark" },
  { when: "breaks", draw: zigzag, says: "01.1  break: plain strap is left out" },
];

/** The legend: the lines that every job may have, and those that this one has. */
export function legend(width: number, used: Used): readonly Flowing[] {
  const shown = ROWS.filter(({ when }) => when === undefined || used[when]);
  const rows = shown.map(({ draw, says }): Flowing => {
    const drawing: Flowing = { height: ROW_MM, draw: (left, top) => draw([left, top - ROW_MM / 2 - 0.6]) };
    return beside(drawing, WORDS_FROM_MM, says, width);
  });
  return [heading("Lines, numbered as in ISO 128-2"), ...rows];
}
