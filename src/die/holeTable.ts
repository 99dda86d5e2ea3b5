// The table of holes that stands on a die's drawing.
import type { Point } from "../geometry/path.ts";
import { roundMm } from "../units/index.ts";
import type { DieFeature } from "./feature.ts";

/** One hole, slot or opening: its middle from the datum, and its size; mm, to 0.001. */
export type HoleRow = {
  readonly letter: string;
  readonly kind: DieFeature["kind"];
  readonly made: DieFeature["made"];
  readonly x: number;
  readonly y: number;
  readonly size: DieFeature["size"];
  readonly angle?: number;
  readonly id: string;
};

/** To 0.001 mm, a tie away from 0: holes that lie alike on both sides of the datum have the same figures. */
const roundAlike = (mm: number): number => (mm < 0 ? -roundMm(-mm) : roundMm(mm)) + 0; // adding 0 turns -0 into 0

/** The rows of all lettered features, their middles counted from `datum` (the piece's origin unless said). */
export const holeTable = (features: readonly DieFeature[], datum: Point = [0, 0]): readonly HoleRow[] =>
  features.flatMap(({ letter, kind, made, at, size, angle, id }) =>
    letter === undefined ? [] : [{ letter, kind, made, x: roundAlike(at[0] - datum[0]), y: roundAlike(at[1] - datum[1]), size, ...(angle === undefined ? {} : { angle }), id }],
  );
