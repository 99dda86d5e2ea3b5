// Flaps made by hand for the tests of the checks, folded by paper and pencil. The upright one is the worked
// case "flap to its stud" (fixtures/published/worked-cases.json): its bends' flat lengths are a quarter of the
// rounds 7 and 5, 10.9956 and 7.8540; the parts up the back, over the top and down the front are 176, 52, 68.
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Closure, Made } from "../../src/model/article.ts";
import type { Bend, Fold, Piece } from "../../src/model/piece.ts";
import { leaf } from "../../src/model/quantity.ts";
import { bareJob, barePiece, cases } from "./soundPiece.ts";

const { flapUpright: c } = cases;
const QUARTER = Math.PI / 2;
/** The front ends 2 under the flap; the flap's end hangs 50 below the stud. */
const FRONT = c.flapHeight - 2;
const BELOW_STUD = 50;

const bend = (inner: number, angle: number): Bend => ({
  inner,
  angle,
  thickness: c.thickness,
  neutral: 0.5,
  inside: "flesh",
});
const across = (id: string, y: number, b: Bend): Fold => ({
  id,
  from: [-110, y],
  to: [110, y],
  label: "fold",
  bend: b,
});

/** Middles of the two bends from the base line: half a bend past each straight part. */
const BACK_BEND = 176 + 10.9956 / 2;
const AFTER_TOP = 176 + 10.9956 + 52;
export const FRONT_BEND = AFTER_TOP + 7.854 / 2;
export const END = c.alongPiece + BELOW_STUD;

export const closure: Closure = {
  kind: "closure",
  what: "press stud",
  flap: { piece: "back", at: [0, c.alongPiece], baseLine: 0 },
  front: { piece: "front", at: [0, c.studHeight], baseLine: 0 },
  reach: c.depth,
  reachEmpty: c.depth - 7,
  flapEnd: END,
  dimension: "pieces.body.closure-height",
};

const folds = (at: number): readonly Fold[] => [
  across("flap.back", at + BACK_BEND, bend(c.backRadius, QUARTER)),
  across("flap.front", at + FRONT_BEND, bend(c.frontRadius, QUARTER)),
];

/** A job of these pieces whose flap closes so. */
const closed = (pieces: readonly Piece[], over: Partial<Closure> = {}): Made =>
  bareJob(pieces, { joins: [{ ...closure, ...over }] });

const back = (end: number, over: Partial<Piece> = {}): Piece =>
  barePiece("back", rectanglePath([-110, 0], 220, end), { folds: folds(0), ...over });
const front = (): Piece => barePiece("front", rectanglePath([-110, 0], 220, FRONT));

/** A front, and a back with its flap; they meet. */
export const soundFlap = (over: Partial<Closure> = {}, ofBack: Partial<Piece> = {}): Made =>
  closed([front(), back(over.flapEnd ?? END, ofBack)], over);

/** The flap's fold drawn elsewhere or otherwise. */
export const withFold = (id: string, change: Partial<Fold>): Made =>
  soundFlap({}, { folds: folds(0).map((f) => (f.id === id ? { ...f, ...change } : f)) });

/** The same with the front in one piece with the back, head down, and two bends round the base. */
export function soundWrap(over: Partial<Closure> = {}): Made {
  const [up, down] = [25, -27];
  // A bend of 8 inside: its round of 9 takes 14.1372, and it ends 8 + 2 above the bag's bottom.
  const base = [
    across("base.back", up + 10 - 14.1372 / 2, bend(8, QUARTER)),
    across("base.front", down - 10 + 14.1372 / 2, bend(8, QUARTER)),
  ];
  const outline = rectanglePath([-110, down - FRONT], 220, FRONT - down + up + END);
  return closed([barePiece("body", outline, { folds: [...base, ...folds(up)] })], {
    flap: { piece: "body", at: [0, up + c.alongPiece], baseLine: up },
    front: { piece: "body", at: [0, down - c.studHeight], baseLine: down },
    flapEnd: up + END,
    ...over,
  });
}

/**
 * A front that bulges: from the second bend the flap runs 50 down on a slant of 7 in 25 (sine 0.28, cosine
 * 0.96). From that bend's middle, 58 forward and 178 up, the half lies 4 × 0.96 + 50 × 0.28 further forward and
 * 50 × 0.96 − 4 × 0.28 down. The bend turns a quarter less 16.2602°.
 */
export function soundBulge(over: Partial<Closure> = {}): Made {
  const turn = QUARTER - (16.2602 * Math.PI) / 180;
  const round = 5 * turn;
  const along = AFTER_TOP + round + 50;
  const height = 178 - (48 - 1.12);
  const job = soundFlap({
    flap: { ...closure.flap, at: [0, along] },
    front: { ...closure.front, at: [0, height] },
    reach: 58 + 3.84 + 14,
    reachEmpty: 70,
    flapEnd: along + 40,
    ...over,
  });
  const slanted = [folds(0)[0]!, across("flap.front", AFTER_TOP + round / 2, bend(c.frontRadius, turn))];
  return { ...job, pieces: job.pieces.map((p) => (p.id === "back" ? { ...p, folds: slanted } : p)) };
}

/** A bag and something that must go in; `goes` as a search would have found it. */
export const holding = (
  sizes: readonly [number, number, number],
  inside: readonly [number, number, number],
  goes: boolean,
  wanted = "A5 book",
): Made =>
  bareJob([front()], {
    capacity: {
      volume: leaf("volume", inside[0] * inside[1] * inside[2], "number", {
        kind: "fact",
        source: "invented",
      }),
      inside,
      things: [{ name: "A5 book", sizes, goes, source: "invented" }],
      wanted,
    },
  });

/** What each rule on flaps and room must find, for the test that no rule is dead. */
export const flapDamages: readonly (readonly [what: string, job: Made, rules: readonly string[]])[] = [
  [
    "a closure 1 mm too far down the flap",
    soundFlap({ flap: { ...closure.flap, at: [0, c.alongPiece + 1] } }),
    ["closure-meets"],
  ],
  ["a flap too short for its closure", soundFlap({ flapEnd: c.alongPiece - 1 }), ["flap-reach"]],
  ["a thing that doesn't go in", holding([210, 148, 20], [200, 150, 60], false), ["goes-in"]],
];
