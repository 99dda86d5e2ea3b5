import type { Hole, Piece, SeamLine } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";

// Every tenth stitch hole is ticked and numbered, so that two mated rows can be counted against each other.

export type Tenth = {
  readonly hole: Hole;
  readonly number: number;
  /** Direction of the seam there, radians. */
  readonly along: number;
};

const STEP = 10;

/** The direction of a seam at one of its holes, from the holes beside it; 0 for a lone hole. */
function directionAt(seam: SeamLine, holes: ReadonlyMap<string, Hole>, index: number): number {
  const at = (i: number): Hole | undefined => holes.get(seam.holes[i] ?? "");
  const [a, b] = [at(index - 1) ?? at(index), at(index + 1) ?? at(index)];
  return a && b ? trig.atan2(b.at[1] - a.at[1], b.at[0] - a.at[0]) : 0;
}

/**
 * Every tenth hole of every seam, or of those asked for; numbers go on over a seam's runs, and a hole of two
 * runs is named once.
 */
export function tenthsOf(piece: Piece, asked: (seam: SeamLine) => boolean = () => true): readonly Tenth[] {
  const holes = new Map(piece.holes.map((h) => [h.id, h]));
  const done = new Set<string>();
  return piece.seams.filter(asked).flatMap((seam) =>
    seam.holes.flatMap((id, index): readonly Tenth[] => {
      const number = (seam.numberFrom ?? 1) + index;
      const hole = number % STEP === 0 && !done.has(id) ? holes.get(id) : undefined;
      if (!hole) return [];
      done.add(id);
      return [{ hole, number, along: directionAt(seam, holes, index) }];
    }),
  );
}
