// What is measured for a one-ear headstall: the head from the off side, the bit nearer, the poll from the
// front; and where each tape runs.
import type { Point } from "../../geometry/path.ts";
import type { MeasureDrawing, View } from "./drawing.ts";
import { BUCKLE, CHEEK_ON_RING, CHEEK_WAY, HEAD_LINES, onHead, RING } from "./headSketch.ts";
import { EAR_MIDDLE, POLL_LINES } from "./pollSketch.ts";

const WIDTH = 130;
const HEIGHT = 97;

const HEAD = 0;
const BIT = 1;
const POLL = 2;

/** Nearer by this much than on the head. */
const BIT_SCALE = 1.8;
const BIT_WINDOW = { minX: 0, minY: 0, maxX: 38, maxY: 27 };
const POLL_WINDOW = { minX: 91, minY: 60, maxX: 130, maxY: 97 };

const head: View = { lines: HEAD_LINES, at: [44, 68], scale: 0.86 };
const bit: View = {
  lines: HEAD_LINES,
  at: [13 - BIT_SCALE * RING[0], 14.5 - BIT_SCALE * RING[1]],
  scale: BIT_SCALE,
  window: BIT_WINDOW,
};
const poll: View = { lines: POLL_LINES, at: [110.5, 76], scale: 0.8, window: POLL_WINDOW };

const way = (...points: readonly Point[]): readonly Point[] => points.map(([u, v]) => onHead(u, v));

/** On beyond the poll, where the tape goes over to the other side. */
const OVER_THE_POLL: readonly Point[] = [
  [4, 14.6],
  [2.6, 19.4],
];

export const headDrawing: MeasureDrawing = {
  width: WIDTH,
  height: HEIGHT,
  views: [head, bit, poll],
  arrows: {
    "over-poll": { view: HEAD, points: [...CHEEK_WAY, ...OVER_THE_POLL], heads: "both", number: 0.58 },
    "ear-base": {
      view: HEAD,
      points: way([-1.4, 9.4], [3.4, 10], [7.4, 12.8], [9.4, 17.6]),
      hidden: way([9.4, 17.6], [5.4, 19], [0.2, 14.6], [-1.4, 9.4]),
      heads: "end",
      number: [36, 16],
      guides: [[[36, 16], way([10.6, 18.4])[0]!]],
    },
    rise: { view: BIT, points: [RING, CHEEK_ON_RING], heads: "both", number: [RING[0] - 1.8, RING[1] - 2.2] },
    cheek: {
      view: HEAD,
      points: way([77.1, -11], [66, -11], [50, -10], [37, -8.6]),
      heads: "both",
      number: 0.5,
      guides: [
        [CHEEK_ON_RING, onHead(77.1, -13)],
        [BUCKLE, onHead(37, -10.6)],
      ],
    },
    "ear-offset": {
      view: POLL,
      points: [
        [0, -8],
        [EAR_MIDDLE[0], -8],
      ],
      heads: "both",
      number: [-5, -14.6],
      guides: [
        [
          [0, 6],
          [0, -10],
        ],
        [EAR_MIDDLE, [EAR_MIDDLE[0], -10]],
      ],
    },
  },
  labels: [
    { lines: ["over the poll behind the ears,", "down to the other ring"], at: [0, 88], align: "left" },
    { lines: ["from the front"], at: [110.5, 56], align: "centre" },
    { lines: ["at the bit"], at: [0, 28.5], align: "left" },
  ],
  notes: [
    "Bit in. The horse quiet, held by a helper, never tied by the bridle.",
    "Tape snug: flat on the hair, not pulled in.",
    "All twice, and once on the other side. Write what you read.",
    "Over 1/4 in (6 mm) apart? Take a third.",
  ],
  boxes: ["1st", "2nd", "other side"],
  asks: {
    "over-poll": { question: "Tape held at the", choices: ["bit ring", "mouth corner"] },
    "ear-base": { question: "The horse's", choices: ["right ear", "left ear"] },
  },
};
