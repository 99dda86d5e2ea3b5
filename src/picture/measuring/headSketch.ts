// A horse's head from its off (right) side, with bit, headstall and ear loop: our own drawing. One unit is
// a hundredth of the head's length from poll to lips; the origin is the poll.
import type { Point } from "../../geometry/path.ts";
import type { SketchLine } from "./sketch.ts";

/** How far the face leans: its direction, 20 right and 21 down on 29 of length. */
const [COS, SIN] = [20 / 29, 21 / 29];

/** A point of the head: how far down the face from the poll, and how far in front of that line. */
export const onHead = (along: number, front: number): Point => [
  along * COS + front * SIN,
  front * COS - along * SIN,
];

const head = (...points: readonly Point[]): readonly Point[] => points.map(([u, v]) => onHead(u, v));
const bold = (...points: readonly Point[]): SketchLine => ({ kind: "pen", nib: "bold", points });
const plain = (...points: readonly Point[]): SketchLine => ({ kind: "pen", nib: "plain", points });
const fine = (...points: readonly Point[]): SketchLine => ({ kind: "pen", nib: "fine", points });
const black = (...points: readonly Point[]): SketchLine => ({ kind: "blot", points });

/** Middle of the bit's ring, which is the corner of the mouth, and its radius. */
export const RING = onHead(82.6, -5);
const RING_RADIUS = 5.6;
/** Where the cheek bears on the ring. */
export const CHEEK_ON_RING = onHead(77.1, -4);
/** The bar of the cheek's buckle. */
export const BUCKLE = onHead(37, -1.6);
/** The way of cheek and crown, from the ring to the poll. */
export const CHEEK_WAY: readonly Point[] = head(
  [77.1, -4],
  [66, -4],
  [50, -3],
  [37, -1.6],
  [22, 0],
  [11, 1.8],
  [3, 4.8],
  [-2.4, 8.4],
  [-4.6, 10.6],
);

const FACE: readonly SketchLine[] = [
  // Forehead, nose, upper lip.
  bold(
    ...head(
      [11, 18.6],
      [16.5, 20],
      [24, 20.8],
      [32, 20],
      [42, 17],
      [54, 14],
      [68, 11.8],
      [78, 11],
      [85, 10.9],
      [91, 9.9],
      [96, 7],
      [99.4, 2],
      [100.4, -3.2],
      [99.2, -7.2],
      [96.8, -8.8],
    ),
  ),
  // Lower lip, chin, jaw, round of the cheek.
  bold(
    ...head(
      [96.6, -9.2],
      [97.2, -12.6],
      [94.6, -15.8],
      [90, -17.2],
      [86, -16],
      [82, -14.4],
      [74, -15],
      [62, -17.2],
      [52, -20],
      [45, -23.4],
      [38, -27],
      [29, -29.2],
      [20, -28.4],
      [12.4, -24.2],
      [8, -18],
      [6, -11],
    ),
  ),
  // Mouth.
  plain(...head([97.6, -8.9], [92.6, -7.6], [87.4, -6.8], [82.8, -5])),
  // Nostril.
  black(...head([88.4, 4.2], [91, 5.6], [93.8, 4.6], [94.8, 1.6], [93.4, 0.4], [92, 2.4], [90.2, 3.6])),
  fine(...head([85.6, 2], [86.4, 5.6], [90, 7.6], [94.4, 6.6], [97, 2.6], [96, -0.6], [93.2, -1.4])),
  // Facial crest, and the muscle of the jaw.
  fine(...head([45, 3.4], [53, 1.6], [62, 1.6], [70, 2.6])),
  fine(...head([22, -18], [32, -19.6], [41, -18], [48, -14.4])),
];

const EYE: readonly SketchLine[] = [
  black(...head([31, 8.8], [33.4, 11.6], [36.8, 11.6], [39, 9.2], [37.2, 7.2], [33.6, 6.8])),
  { kind: "dot", fill: "white", at: onHead(34.4, 10), radius: 0.55 },
  plain(...head([28, 7.6], [30.6, 10.6], [34, 12.8], [37.6, 12.4], [40.2, 9.8], [42, 6.4])),
  fine(...head([29.6, 8.2], [33, 5.8], [37.6, 5.5], [41.2, 7])),
  fine(...head([26.4, 12], [30, 15], [35.4, 16], [40.6, 14.2])),
];

const FAR_EAR: readonly SketchLine[] = [
  plain(...head([6, 23.4], [2.2, 27.6], [-1.8, 34.6])),
  plain(...head([-1.8, 34.6], [6.6, 31.4], [12.2, 26], [13.6, 20.4], [12, 18.4])),
];

const FORELOCK: readonly SketchLine[] = [
  plain(...head([8.6, 19.8], [15, 17.6], [22, 15.6], [29, 16.6])),
  plain(...head([9.6, 18.4], [16, 15.4], [22, 12.8], [27, 13])),
  fine(...head([11, 16.4], [15.8, 12.8], [21, 10.4])),
];

const NEAR_EAR: readonly SketchLine[] = [
  bold(...head([2.6, 5.4], [-1.4, 8.4], [-5.2, 14], [-8.6, 22], [-9.6, 31])),
  bold(...head([-9.6, 31], [-2, 28.6], [5, 23.4], [9.4, 17.2], [10.4, 11.6])),
  plain(...head([-9, 29.6], [-3.4, 23], [1.6, 16.2], [4.6, 11.4])),
];

/** A lock of the mane: two strands that meet in its tip. */
const lock = (
  a: Point,
  b: Point,
  tip: Point,
  sag: readonly [Point, Point, Point, Point],
): readonly SketchLine[] => [plain(a, sag[0], sag[1], tip), fine(b, sag[2], sag[3], tip)];

const NECK: readonly SketchLine[] = [
  bold([2.6, 10.4], [-3, 12], [-14, 9.6], [-28, 1], [-38, -9.6], [-46, -22]),
  bold([-9.6, -28.4], [-10.4, -35], [-13.4, -44], [-16.6, -51]),
  ...lock(
    [-9, 11.2],
    [-14.6, 9.4],
    [-17.6, -11.6],
    [
      [-11.4, 5],
      [-15.4, -2],
      [-16.6, 3],
      [-18.2, -4],
    ],
  ),
  ...lock(
    [-14.6, 9.4],
    [-20.4, 6.2],
    [-25.6, -21],
    [
      [-19.6, 1],
      [-24.6, -9],
      [-24, -1],
      [-26.4, -10],
    ],
  ),
  ...lock(
    [-20.4, 6.2],
    [-26.4, 2.2],
    [-31.2, -23],
    [
      [-26, -3],
      [-30.4, -13],
      [-30.4, -6],
      [-32.4, -14],
    ],
  ),
  plain([-26.4, 2.2], [-32, -7], [-36, -17], [-37.4, -27]),
  plain([-32.4, -3.2], [-38, -12], [-41.6, -21]),
];

/** The ear loop's half that is seen: from the crown round the front of the ear's base. */
const EAR_LOOP: readonly Point[] = head([3.8, 4.6], [7, 4.4], [10.6, 7.6], [11.8, 13]);

const across = (at: Point, half: number, breadth: number): readonly Point[] => {
  // The cheek runs almost along the face here, so that the face's own directions serve.
  const corner = (along: number, front: number): Point => {
    const [x, y] = onHead(along, front);
    return [at[0] + x, at[1] + y];
  };
  return [corner(-breadth, -half), corner(breadth, -half), corner(breadth, half), corner(-breadth, half)];
};

const HEADSTALL: readonly SketchLine[] = [
  { kind: "band", points: EAR_LOOP, width: 3 },
  { kind: "ring", at: RING, radius: RING_RADIUS, wire: 1.1 },
  { kind: "band", points: CHEEK_WAY, width: 3.4 },
  // Buckle and keeper.
  { kind: "plate", points: across(BUCKLE, 2.9, 1.7) },
  { kind: "plate", points: across(onHead(41.6, -2), 2.3, 0.9) },
];

/** All lines of the head, from the farthest to the nearest. */
export const HEAD_LINES: readonly SketchLine[] = [
  ...FAR_EAR,
  ...FACE,
  ...EYE,
  ...FORELOCK,
  ...NECK,
  ...NEAR_EAR,
  ...HEADSTALL,
];
