// A bag in lines: from the front with its strap over a shoulder, from the side, and a handle; our own drawing,
// in millimetres of the sheet. Each view's origin is the middle of the bag's base, the handle's that of its top.
import type { Point } from "../../geometry/path.ts";
import type { SketchLine } from "./sketch.ts";

/** The bag as drawn: half its width, its height, half its depth at the base and at the top. */
export const HALF = 25;
export const HEIGHT = 36;
export const FOOT = 9;
export const MOUTH = 6.5;
/** Where the strap meets the bag: the rings at its sides. */
export const RING: Point = [HALF - 1, HEIGHT + 2.6];
/** The strap's inside on the shoulder. */
export const SHOULDER = 66;

const ROUND = 7;
const INSET = 2.2;

/** A quarter of a circle of radius 1, from its left end down to its foot, from its square's lower left corner. */
const QUARTER: readonly Point[] = [
  [0, 1],
  [0.076, 0.617],
  [0.293, 0.293],
  [0.617, 0.076],
  [1, 0],
];

/** Down one side, round the base, up the other, `d` inside the edge; smooth runs. */
function panelRuns(d: number): readonly (readonly Point[])[] {
  const [x, r] = [HALF - d, ROUND - d];
  const left = QUARTER.map(([u, v]): Point => [r * u - x, d + r * v]);
  const right = [...left].reverse().map(([u, v]): Point => [0 - u, v]);
  return [[[-x, HEIGHT], left[0]!], left, [left.at(-1)!, right[0]!], right, [right.at(-1)!, [x, HEIGHT]]];
}

const stitches: readonly SketchLine[] = panelRuns(INSET).map(
  (points): SketchLine => ({ kind: "thin", line: "02.1", points }),
);

const across = (y: number): readonly Point[] => [
  [HALF, y],
  [-HALF, y],
];

/** Half of a shoulder's breadth. */
const ARM = 9.4;

/** The shoulder that the strap lies on, seen from its end, and the strap over it. */
const strapLines: readonly SketchLine[] = [
  {
    kind: "pen",
    nib: "plain",
    points: [
      [-ARM * 0.64, SHOULDER - 1.77 * ARM],
      [-ARM, SHOULDER - ARM],
      [-ARM * 0.71, SHOULDER - 0.29 * ARM],
      [0, SHOULDER],
      [ARM * 0.71, SHOULDER - 0.29 * ARM],
      [ARM, SHOULDER - ARM],
      [ARM * 0.64, SHOULDER - 1.77 * ARM],
    ],
  },
  {
    kind: "band",
    width: 2.4,
    points: [
      [-RING[0], RING[1]],
      [-18, 49],
      [-12, SHOULDER - 7.4],
      [-7.6, SHOULDER - 1.2],
      [0, SHOULDER + 1.5],
      [7.6, SHOULDER - 1.2],
      [12, SHOULDER - 7.4],
      [18, 49],
      RING,
    ],
  },
];

const FLAP: readonly Point[] = [
  [-HALF, 21],
  [-17, 13.6],
  [0, 10.4],
  [17, 13.6],
  [HALF, 21],
];

export const FRONT_LINES: readonly SketchLine[] = [
  ...strapLines,
  { kind: "ring", at: [-RING[0], RING[1] - 0.6], radius: 2, wire: 0.8 },
  { kind: "ring", at: [RING[0], RING[1] - 0.6], radius: 2, wire: 0.8 },
  { kind: "cover", runs: [...panelRuns(0), across(HEIGHT)] },
  ...stitches,
  {
    kind: "cover",
    runs: [
      FLAP,
      [
        [HALF, 21],
        [HALF, HEIGHT],
      ],
      across(HEIGHT),
      [
        [-HALF, HEIGHT],
        [-HALF, 21],
      ],
    ],
  },
  { kind: "dot", fill: "white", at: [0, 15], radius: 1.9 },
  { kind: "dot", fill: "black", at: [0, 15], radius: 0.7 },
];

/** A panel seen on its edge. */
const edge = (...points: readonly Point[]): SketchLine => ({ kind: "band", width: 1.3, points });

export const SIDE_LINES: readonly SketchLine[] = [
  { kind: "ring", at: [0, HEIGHT + 1.6], radius: 1.8, wire: 0.8 },
  {
    kind: "plate",
    points: [
      [-FOOT, 0],
      [FOOT, 0],
      [MOUTH, HEIGHT],
      [-MOUTH, HEIGHT],
    ],
  },
  edge([FOOT, 0], [MOUTH, HEIGHT]),
  { kind: "box", low: [-1.6, HEIGHT - 6], high: [1.6, HEIGHT + 0.6], round: 1.2 },
  edge(
    [-FOOT, 0],
    [-MOUTH, HEIGHT - 2],
    [-MOUTH + 2, HEIGHT + 4.4],
    [MOUTH, HEIGHT + 3.4],
    [MOUTH + 2, HEIGHT - 3],
    [FOOT + 0.8, 10.4],
  ),
];

/** Half of the handle's foot to foot, and its inside over the bag's top edge. */
export const HANDLE = { half: 8, inside: 14 } as const;

export const HANDLE_LINES: readonly SketchLine[] = [
  {
    kind: "plate",
    points: [
      [-17, -30],
      [17, -30],
      [17, 0],
      [-17, 0],
    ],
  },
  {
    kind: "band",
    width: 2.6,
    points: [
      [-HANDLE.half, -6],
      [-HANDLE.half, 5],
      [-5.4, 12.4],
      [0, HANDLE.inside + 1.3],
      [5.4, 12.4],
      [HANDLE.half, 5],
      [HANDLE.half, -6],
    ],
  },
];
