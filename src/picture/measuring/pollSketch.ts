// The top of a horse's head from the front, the crown behind its ears: our own drawing. One unit is about
// a millimetre at full scale; the origin is the middle of the poll.
import type { Point } from "../../geometry/path.ts";
import type { SketchLine } from "./sketch.ts";

const mirrored = (points: readonly Point[]): readonly Point[] => points.map(([x, y]): Point => [0 - x, y]);

/** A line of the right half of the picture, and its mirror image. */
const twice = (nib: "bold" | "plain" | "fine", ...points: readonly Point[]): readonly SketchLine[] => [
  { kind: "pen", nib, points },
  { kind: "pen", nib, points: mirrored(points) },
];

/** Middle of the base of the horse's right ear, which is at the left when one stands before it. */
export const EAR_MIDDLE: Point = [-10, 0.4];

const EAR_OUTSIDE: readonly Point[] = [
  [14.6, -2],
  [17, 6],
  [16.6, 15],
  [13, 25],
];
const EAR_INSIDE: readonly Point[] = [
  [13, 25],
  [8, 17.4],
  [5.4, 9],
  [5.6, 1.6],
];
const EAR_FOOT: readonly Point[] = [
  [5.6, 1.6],
  [9.6, -1.8],
  [14.6, -2],
];
const EAR = [EAR_OUTSIDE, EAR_INSIDE, EAR_FOOT];

/** All lines, from the farthest to the nearest: the crown passes behind the ears. */
export const POLL_LINES: readonly SketchLine[] = [
  {
    kind: "band",
    width: 3,
    points: [
      [-15, -24],
      [-14.6, -10],
      [-13.4, -2],
      [-7, 3],
      [0, 4],
      [7, 3],
      [13.4, -2],
      [14.6, -10],
      [15, -24],
    ],
  },
  { kind: "cover", runs: EAR },
  { kind: "cover", runs: EAR.map(mirrored) },
  // Ears: outer edge, inner edge, opening.
  ...twice("bold", ...EAR_OUTSIDE),
  ...twice("bold", ...EAR_INSIDE),
  ...twice("plain", [12.6, 22.6], [13.6, 13], [11.6, 3]),
  ...twice("fine", [12, 20.6], [9.4, 13], [9, 5]),
  // Sides of the face.
  ...twice("bold", [16.4, -4], [17.6, -10], [18.4, -16], [18, -25]),
  // Forelock, falling to the horse's left.
  {
    kind: "pen",
    nib: "plain",
    points: [
      [-1.4, 2.4],
      [1, -3],
      [5, -8.4],
      [6.4, -15],
    ],
  },
  {
    kind: "pen",
    nib: "plain",
    points: [
      [0.6, 2.4],
      [3.4, -2.6],
      [7.2, -8],
      [6.4, -15],
    ],
  },
  {
    kind: "pen",
    nib: "fine",
    points: [
      [2.4, 2.2],
      [5.6, -2.6],
      [9.4, -6.4],
      [9.8, -12],
    ],
  },
];
