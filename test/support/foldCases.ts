import type { Bar, TurnBack } from "../../src/model/piece.ts";
import { buckleFold, cases } from "./soundPiece.ts";

// Published here: fixtures/published/worked-cases.json, computed by independent simulation (taut strings by
// convex hull, folds by stepping), not by the engine's formulas.

export const round = (diameter: number): Bar => ({ kind: "round", diameter });
export const flat: Bar = {
  kind: "flat",
  along: cases.flatBar.along,
  through: cases.flatBar.through,
  corner: cases.flatBar.corner,
};

export const turnBack = (
  bar: Bar,
  thickness: number,
  clamp: number,
  over: Partial<TurnBack> = {},
): TurnBack => ({
  ...buckleFold,
  bar,
  frontThickness: thickness,
  backThickness: thickness,
  wrapThickness: thickness,
  clamp,
  liftOff: clamp,
  ...over,
});

const { roundBar, caughtLayer, flatBar, skivedBack, bitEnd } = cases;
const thinned = { backThickness: skivedBack.back, wrapThickness: skivedBack.wrap };
type Case = readonly [name: string, t: TurnBack, holeToMate: number];
export const workedCases: readonly Case[] = [
  [
    "a turn-back round a bar",
    turnBack(round(roundBar.bar), roundBar.thickness, roundBar.clamp),
    roundBar.holeToMate,
  ],
  [
    "a caught layer that begins before the clamp",
    turnBack(round(caughtLayer.bar), caughtLayer.thickness, caughtLayer.clamp, {
      caught: caughtLayer.caught,
      liftOff: caughtLayer.clamp - caughtLayer.nearer,
    }),
    caughtLayer.holeToMate,
  ],
  ["a flat bar", turnBack(flat, flatBar.thickness, flatBar.clamp), flatBar.holeToMate],
  [
    "a skived back leg",
    turnBack(round(skivedBack.bar), skivedBack.front, skivedBack.clamp, thinned),
    skivedBack.holeToMate,
  ],
  [
    "the first screw of a bit end",
    turnBack(round(bitEnd.bar), bitEnd.front, bitEnd.clamp, {
      backThickness: bitEnd.back,
      wrapThickness: bitEnd.wrap,
    }),
    bitEnd.first,
  ],
];
