// The sound pieces as a job: how they meet, and ways to damage it.
import type { Adjustment, Join, Made } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import { bareJob, cases, crownHoles, soundCheek, soundCrown, soundEar, soundKeeper } from "./soundPiece.ts";

const adjustment = (side: string): Adjustment => ({
  kind: "adjustment",
  side,
  piece: "crown",
  holes: crownHoles,
  keeperFar: 30,
  point: 17.6,
  swellAt: 180,
  swellIs: "the cheek's swell",
  tipDimension: "pieces.crown.to-tip",
  bodySection: "pieces.cheek",
  dimension: "straps.holes",
});

export const soundJoins = (): readonly Join[] => [
  {
    kind: "strap in buckle",
    piece: "crown",
    strapWidth: 16,
    inside: 16,
    buckle: "cheek buckle",
    dimension: "straps.width",
  },
  {
    kind: "strap in buckle",
    piece: "cheek",
    strapWidth: 16,
    inside: 16,
    buckle: "cheek buckle",
    dimension: "straps.width",
  },
  {
    kind: "tongue in slot",
    piece: "cheek",
    cutout: "slot",
    turnBack: "buckle",
    tongueThickness: 3,
    tongueBreadth: 3,
    openAngle: Math.PI / 3,
    dimension: "hardware.cheek-buckle.tongue",
  },
  {
    kind: "strap in slot",
    piece: "ear-piece",
    cutout: "slot.near",
    strapWidth: cases.strapSlot.strapWidth,
    strapThickness: cases.strapSlot.strapThickness,
    dimension: "leather.ear.thickness",
  },
  {
    kind: "keeper round stack",
    piece: "keeper-fixed",
    cut: cases.keeperGirth.girth,
    lap: 0,
    width: cases.keeperGirth.width,
    height: cases.keeperGirth.height,
    thickness: cases.keeperGirth.thickness,
    neutral: 0.5,
    dimension: "pieces.keeper.ease-width",
  },
  adjustment("near"),
  adjustment("off"),
];

/** The whole: every rule has something to look at and nothing to find but the cheek's weakest section. */
export const soundJob = (): Made =>
  bareJob([soundCheek(), soundCrown(), soundEar(), soundKeeper()], {
    joins: soundJoins(),
    fit: {
      name: "over the poll",
      wanted: 1050,
      shortest: 1050 - 2 * 57.15,
      longest: 1050 + 2 * 57.15,
      rows: [],
    },
  });

/** The job with one piece changed. */
export const withPiece = (job: Made, id: string, change: (piece: Piece) => Piece): Made => ({
  ...job,
  pieces: job.pieces.map((p) => (p.id === id ? change(p) : p)),
});

/** The job with its joins of one kind changed. */
export const withJoin = <K extends Join["kind"]>(
  job: Made,
  kind: K,
  change: Partial<Extract<Join, { kind: K }>>,
): Made => ({
  ...job,
  joins: job.joins.map((j) => (j.kind === kind ? ({ ...j, ...change } as Join) : j)),
});

/** The piece with one of its parts changed, found by its id. */
export const withPart = <K extends "holes" | "cutouts" | "seams" | "folds" | "turnBacks" | "zones">(
  piece: Piece,
  kind: K,
  id: string,
  change: Partial<Piece[K][number]>,
): Piece => ({
  ...piece,
  [kind]: piece[kind].map((part) => (part.id === id ? { ...part, ...change } : part)),
});
