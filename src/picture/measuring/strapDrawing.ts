// What is measured for a strap: the strap from above, its buckle nearer; our own drawing, in millimetres
// from the middle of the buckle's bar.
import type { Point } from "../../geometry/path.ts";
import type { MeasureDrawing, View } from "./drawing.ts";
import type { SketchLine } from "./sketch.ts";

/** Half of the strap's width, and of the buckle's inside width. */
const HALF = 6.4;
const INSIDE = 7;
/** The strap's fold round the bar, and the beginning of its point. */
const FOLD = -2.4;
const POINT = 102;
/** The holes, and the one that is used. */
const HOLES = [68, 76, 84, 92, 100];
const USED = 84;

/** A box from x0 to x1, as high above the middle as below. */
const box = (x0: number, x1: number, half: number, round: number): SketchLine => ({
  kind: "box",
  low: [x0, -half],
  high: [x1, half],
  round,
});

/** Half of an English point: an arc that leaves the edge along it, here 13 long. */
const ENGLISH: readonly Point[] = [
  [POINT, HALF],
  [POINT + 2, 6.28],
  [POINT + 5, 5.62],
  [POINT + 8, 4.32],
  [POINT + 11, 2.16],
  [POINT + 13, 0],
];

const stitches = (y: number): SketchLine => ({
  kind: "thin",
  line: "02.1",
  points: [
    [8, y],
    [32, y],
  ],
});

const BODY: readonly SketchLine[] = [
  box(-12.4, 1.2, INSIDE + 2.2, 2.6),
  box(-10.2, -0.8, INSIDE, 1),
  {
    kind: "cover",
    runs: [
      [
        [FOLD, -HALF],
        [POINT, -HALF],
      ],
      ENGLISH.map(([x, y]): Point => [x, 0 - y]),
      [...ENGLISH].reverse(),
      [
        [POINT, HALF],
        [FOLD, HALF],
      ],
      [
        [FOLD, HALF],
        [FOLD, -HALF],
      ],
    ],
  },
  stitches(HALF - 1.5),
  stitches(1.5 - HALF),
  box(14, 20, HALF + 0.9, 0.8),
  // The bar inside the fold.
  {
    kind: "thin",
    line: "02.1",
    points: [
      [0, -HALF],
      [0, HALF],
    ],
  },
  ...HOLES.map(
    (x): SketchLine => ({ kind: "dot", fill: x === USED ? "black" : "white", at: [x, 0], radius: 1.5 }),
  ),
];

const TONGUE: readonly SketchLine[] = [box(FOLD, 5, 1.8, 1.8), box(-13.2, 0.6, 0.9, 0.9)];

const whole: View = { lines: [...BODY, ...TONGUE], at: [14, 62], scale: 1 };
const near: View = {
  lines: BODY,
  at: [32, 21],
  scale: 1.9,
  window: { minX: 0, minY: 0, maxX: 62, maxY: 42 },
};

export const strapDrawing: MeasureDrawing = {
  width: 130,
  height: 84,
  views: [whole, near],
  arrows: {
    length: {
      view: 0,
      points: [
        [0, 15],
        [USED, 15],
      ],
      heads: "both",
      number: 0.5,
      guides: [
        [
          [0, HALF + 3],
          [0, 17],
        ],
        [
          [USED, 1.5],
          [USED, 17],
        ],
      ],
    },
    width: {
      view: 1,
      points: [
        [-6.4, -INSIDE],
        [-6.4, INSIDE],
      ],
      heads: "both",
      number: 0.5,
    },
  },
  labels: [
    { lines: ["from the buckle's bar"], at: [16.5, 79.8], align: "left" },
    { lines: ["to the hole in use"], at: [96, 79.8], align: "right" },
    { lines: ["inside the buckle,", "its tongue lifted"], at: [65, 22], align: "left" },
  ],
  notes: [
    "Lay the tape the way the strap will run, over all that it goes round.",
    "Tape snug, not pulled in.",
    "All twice. Write what you read.",
    "Over 1/8 in (3 mm) apart? Take a third.",
  ],
  boxes: ["1st", "2nd"],
  asks: {},
};
