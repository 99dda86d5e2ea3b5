// A small sound job made by hand, for the tests of the checks: a cheek with a buckle's and a bit's turn-back,
// a crown, an ear piece's tab, a keeper, and sheets for them. No formula of the engine stands behind its
// sizes: the turn-backs' are those of fixtures/published/worked-cases.json, the rest are invented.
import published from "../../fixtures/published/worked-cases.json" with { type: "json" };
import {
  arc,
  closedPath,
  line,
  openPath,
  type Path,
  type Point,
  rectanglePath,
  slotPath,
} from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import type { Hole, Piece, SeamLine, TurnBack } from "../../src/model/piece.ts";
import { leaf } from "../../src/model/quantity.ts";

export const { cases } = published;

/** A piece with nothing on it; what is given replaces the rest. */
export function barePiece(id: string, outline: Path, over: Partial<Piece> = {}): Piece {
  return {
    id,
    name: id,
    count: 1,
    hand: "same",
    leather: { kind: "strap", thickness: 3.5, thickest: 3.6 },
    outline,
    corners: outline.segments.map(({ to }, i) => ({ name: `corner ${i + 1}`, at: to })),
    cutouts: [],
    holes: [],
    seams: [],
    folds: [],
    turnBacks: [],
    zones: [],
    marks: [],
    grain: 0,
    straight: false,
    controls: [],
    sizes: [],
    sections: [],
    notes: [],
    ...over,
  };
}

/** A job of these pieces and nothing else. */
export const bareJob = (pieces: readonly Piece[], over: Partial<Made> = {}): Made => ({
  article: "test",
  pieces,
  joins: [],
  findings: [],
  sizes: [],
  cautions: [],
  ...over,
});

export const punched = (id: string, at: Point, size: number, use = "screw"): Hole => ({
  id,
  kind: "round",
  at,
  size,
  angle: 0,
  use,
});

/** A straight row of stitches from x0 on, `count` stitches of `pitch`. */
export function stitched(
  id: string,
  x0: number,
  y: number,
  count: number,
  pitch: number,
  over: Partial<SeamLine> = {},
): { readonly seam: SeamLine; readonly holes: readonly Hole[] } {
  const holes = Array.from(
    { length: count + 1 },
    (_, i): Hole => ({
      id: `${id}.${i + 1}`,
      kind: "awl",
      at: [x0 + i * pitch, y],
      size: 1.8,
      angle: Math.PI / 4,
      use: "stitch",
    }),
  );
  const path = openPath([x0, y], [line([x0 + count * pitch, y])]);
  return {
    seam: {
      id,
      path,
      pitchAsked: pitch,
      pitch,
      stitches: count,
      inset: 2,
      holes: holes.map((h) => h.id),
      ...over,
    },
    holes,
  };
}

/** Where the leather leaves the bar: half of hole to mate, less the straight part (Pythagoras on the worked case). */
const wrapOf = (holeToMate: number, clamp: number, gap: number, radius: number): number =>
  holeToMate / 2 - Math.sqrt(clamp ** 2 + gap ** 2 - radius ** 2);

const { skivedBack: top, bitEnd: bit } = cases;
const thin = {
  neutral: 0.5,
  frontThickness: top.front,
  backThickness: top.back,
  wrapThickness: top.wrap,
  caught: 0,
};

/** The worked case "skived back leg", its fold at x = 60, the strap beyond it. */
export const buckleFold: TurnBack = {
  ...thin,
  id: "buckle",
  fold: "buckle.fold",
  centre: 60,
  direction: 1,
  bar: { kind: "round", diameter: top.bar },
  clamp: top.clamp,
  liftOff: top.clamp,
  mates: [],
  wrapHalf: wrapOf(top.holeToMate, top.clamp, 1.4, 3.05),
};

/** The worked case "bit end, two screws", its fold at x = 400, the strap before it. */
export const bitFold: TurnBack = {
  ...thin,
  id: "bit",
  fold: "bit.fold",
  centre: 400,
  direction: -1,
  bar: { kind: "round", diameter: bit.bar },
  clamp: bit.clamp,
  liftOff: bit.clamp,
  mates: [
    ["bit.front.1", "bit.back.1"],
    ["bit.front.2", "bit.back.2"],
  ],
  wrapHalf: wrapOf(bit.first, bit.clamp, 1.4, 5.05),
};

const foldLine = (t: TurnBack): Piece["folds"][number] => ({
  id: t.fold,
  from: [t.centre, -8],
  to: [t.centre, 8],
  label: "fold",
});

/** A straight cheek 16 mm wide along x from 0 to 452. */
export function soundCheek(): Piece {
  const first = 60 + top.holeToMate / 2;
  const rows = [
    stitched("upper", first, 6, 8, 3, { turnBack: "buckle" }),
    stitched("lower", first, -6, 8, 3, { turnBack: "buckle" }),
  ];
  const mate = (leg: 1 | -1, d: number): Point => [400 + (leg * d) / 2, 0];
  return barePiece("cheek", rectanglePath([0, -8], 452, 16), {
    cutouts: [{ id: "slot", use: "tongue slot", outline: slotPath([60, 0], 22, 4), length: 22, width: 4 }],
    holes: [
      ...rows.flatMap((r) => r.holes),
      punched("bit.front.1", mate(-1, bit.first), 4.2),
      punched("bit.front.2", mate(-1, bit.second), 4.2),
      punched("bit.back.1", mate(1, bit.first), 4.2),
      punched("bit.back.2", mate(1, bit.second), 4.2),
    ],
    seams: rows.map((r) => r.seam),
    folds: [foldLine(buckleFold), foldLine(bitFold)],
    turnBacks: [buckleFold, bitFold],
    zones: [
      {
        id: "feather",
        kind: "skive",
        outline: rectanglePath([0, -8], 12, 16),
        from: 2.1,
        to: 0,
        label: "feather",
      },
      {
        id: "skive",
        kind: "skive",
        outline: rectanglePath([12, -8], 66, 16),
        from: 3.5,
        to: 2.1,
        label: "skive",
      },
      { id: "tooling", kind: "tooling", outline: rectanglePath([180, -4], 100, 8), label: "tooling" },
    ],
    marks: [{ id: "crease", kind: "crease", path: openPath([110, 6], [line([340, 6])]), label: "crease" }],
    sections: [
      {
        name: "beside the slot",
        estimate: leaf("beside the slot", 504, "force", { kind: "fact", source: "invented" }),
      },
      {
        name: "at a screw hole",
        estimate: leaf("at a screw hole", 495, "force", { kind: "fact", source: "invented" }),
      },
    ],
  });
}

/** Half of the English point of the worked cases, as arcs. */
const point = (tip: number, out: 1 | -1): { readonly root: number; readonly segments: Path["segments"] } => {
  const { length, radius, width } = cases.englishPoint;
  const [root, h] = [tip - out * length, (out * width) / 2];
  return {
    root,
    segments: [
      arc([tip, 0], [root, -h + out * radius], true),
      arc([root, h], [root, h - out * radius], true),
    ],
  };
};

const CROWN = 900;
const { holes: count, pitch } = cases.crown;
/** First hole to tip of the crown. */
export const TO_TIP = 60;
export const crownHoles: readonly number[] = Array.from({ length: count }, (_, i) => TO_TIP + i * pitch);

/** A crown 16 mm wide from x = 0 to 900, pointed at both ends, seven holes in each. */
export function soundCrown(): Piece {
  const [far, near] = [point(CROWN, 1), point(0, -1)];
  const outline = closedPath(
    [near.root, -8],
    [line([far.root, -8]), ...far.segments, line([near.root, 8]), ...near.segments],
  );
  return barePiece("crown", outline, {
    corners: [
      { name: "off tip", at: [CROWN, 0] },
      { name: "near tip", at: [0, 0] },
    ],
    holes: crownHoles.flatMap((d, i) => [
      punched(`near.${i + 1}`, [d, 0], 4, "buckle"),
      punched(`off.${i + 1}`, [CROWN - d, 0], 4, "buckle"),
    ]),
    straight: true,
  });
}

/** A tab with the worked slot for a strap 16 by 6. */
export const soundEar = (): Piece =>
  barePiece("ear-piece", rectanglePath([0, 0], 60, 60), {
    cutouts: [
      {
        id: "slot.near",
        use: "strap slot",
        outline: slotPath([30, 30], cases.strapSlot.slotLength, cases.strapSlot.slotWidth, Math.PI / 2),
        length: cases.strapSlot.slotLength,
        width: cases.strapSlot.slotWidth,
      },
    ],
  });

/** The worked keeper, butted. */
export const soundKeeper = (): Piece =>
  barePiece("keeper-fixed", rectanglePath([0, -5], cases.keeperGirth.girth, 10), { straight: true });
