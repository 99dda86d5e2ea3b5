import type { Closure, Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { bendsAbove, type FlatBend } from "./foldedFlap.ts";
import { pieceOf } from "./sound.ts";

/** A closure whose pieces can be measured, with the flap's bends as they are drawn. */
export type Folding = {
  readonly join: Closure;
  readonly flap: Piece;
  readonly bends: readonly FlatBend[];
  /** The flap's half, from the base line along the piece. */
  readonly along: number;
  /** Height of the front's half over the base line. */
  readonly height: number;
  /** What lies on the flap there, in words. */
  readonly half: string;
};

/** A closure's name for none: the flap's end alone is looked at. */
const NONE = "none";
export const isNone = (join: Closure): boolean => join.what === NONE;

/** A front in one piece with the flap is drawn head down, below the base. */
const inOne = ({ flap, front }: Closure): boolean => flap.piece === front.piece;

/** How far to the side the halves miss each other. Seen from the front, a back's left is a front's right. */
export const aside = ({ join }: Folding): number =>
  Math.abs(inOne(join) ? join.flap.at[0] - join.front.at[0] : join.flap.at[0] + join.front.at[0]);

/** The closures of a job that can be folded. */
export const foldings = (job: Made): readonly Folding[] =>
  job.joins.flatMap((join) => {
    if (join.kind !== "closure") return [];
    const flap = pieceOf(job, join.flap.piece);
    if (!flap || !pieceOf(job, join.front.piece)) return [];
    const up = join.front.at[1] - join.front.baseLine;
    return [
      {
        join,
        flap,
        bends: bendsAbove(flap, join.flap.baseLine),
        along: join.flap.at[1] - join.flap.baseLine,
        height: inOne(join) ? -up : up,
        half: isNone(join) ? "the flap's end" : `the flap's half of the ${join.what}`,
      },
    ];
  });
