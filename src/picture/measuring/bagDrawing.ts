// What is measured for a bag, and what is asked.
import type { Point } from "../../geometry/path.ts";
import { thingNames } from "../../trade/facts/things.ts";
import {
  FOOT,
  FRONT_LINES,
  HALF,
  HANDLE,
  HANDLE_LINES,
  HEIGHT,
  MOUTH,
  RING,
  SHOULDER,
  SIDE_LINES,
} from "./bagSketch.ts";
import type { MeasureDrawing, View } from "./drawing.ts";

const FRONT = 0;
const SIDE = 1;
const HAND = 2;

const front: View = { lines: FRONT_LINES, at: [43, 13], scale: 1 };
const side: View = { lines: SIDE_LINES, at: [109, 13], scale: 1 };
const handle: View = {
  lines: HANDLE_LINES,
  at: [109, 62],
  scale: 0.9,
  window: { minX: 90, minY: 56.5, maxX: 128, maxY: 83 },
};

export const bagDrawing: MeasureDrawing = {
  width: 130,
  height: 84,
  views: [front, side, handle],
  arrows: {
    width: {
      view: FRONT,
      points: [
        [-HALF, -7],
        [HALF, -7],
      ],
      heads: "both",
      number: 0.5,
      guides: [-HALF, HALF].map((x): readonly Point[] => [
        [x, 3],
        [x, -9],
      ]),
    },
    height: {
      view: FRONT,
      points: [
        [-HALF - 9, 0],
        [-HALF - 9, HEIGHT],
      ],
      heads: "both",
      number: 0.5,
      guides: [
        [
          [-HALF + 3, 0],
          [-HALF - 11, 0],
        ],
        [
          [-HALF - 1, HEIGHT],
          [-HALF - 11, HEIGHT],
        ],
      ],
    },
    depth: {
      view: SIDE,
      points: [
        [-FOOT, -7],
        [FOOT, -7],
      ],
      heads: "both",
      number: [FOOT + 6, -7],
      guides: [-FOOT, FOOT].map((x): readonly Point[] => [
        [x, -1],
        [x, -9],
      ]),
    },
    "filled-depth": {
      view: SIDE,
      points: [
        [-MOUTH + 0.2, HEIGHT - 10],
        [MOUTH + 0.2, HEIGHT - 10],
      ],
      heads: "both",
      number: [-MOUTH - 8, HEIGHT - 10],
      guides: [
        [
          [-MOUTH - 5, HEIGHT - 10],
          [-MOUTH, HEIGHT - 10],
        ],
      ],
    },
    "shoulder-drop": {
      view: FRONT,
      points: [
        [HALF + 8, SHOULDER],
        [HALF + 8, RING[1]],
      ],
      heads: "both",
      number: 0.5,
      guides: [
        [
          [2, SHOULDER],
          [HALF + 10, SHOULDER],
        ],
        [
          [RING[0] + 2.6, RING[1]],
          [HALF + 10, RING[1]],
        ],
      ],
    },
    "hand-drop": {
      view: HAND,
      points: [
        [0, 0],
        [0, HANDLE.inside],
      ],
      heads: "both",
      number: [HANDLE.half + 7, 8],
      guides: [
        [
          [0, 8],
          [HANDLE.half + 4, 8],
        ],
      ],
    },
  },
  labels: [
    { lines: ["front"], at: [43, 18.4], align: "centre" },
    { lines: ["side"], at: [109, 24], align: "centre" },
    { lines: ["shoulder"], at: [43, 67.4], align: "centre" },
  ],
  notes: [
    "Lay out what must go in and measure round it.",
    "Depth with the bag filled.",
    "Shoulder drop over the coat.",
    "All twice. Write what you read.",
  ],
  boxes: ["1st", "2nd"],
  asks: {},
  questions: [
    {
      measure: "measured",
      how: "Inside or outside? Width, height and depth are sizes of the bag",
      choices: ["outside", "inside"],
    },
    {
      measure: "holds",
      how: "What must go in? Tick it. Of anything else write the three sizes, and compare them with the sheet that is made.",
      choices: thingNames,
      other: "other:",
    },
  ],
};
