import type { Fold, Piece, TurnBack } from "../../model/piece.ts";
import { folded } from "../measure/folded.ts";
import { measurable } from "../measure/sound.ts";
import { CONTRADICTION, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";
import { MEET_MM } from "./matesMeet.ts";

const SLACK_MM = 1e-9;

const fault = (
  piece: Piece,
  place: string,
  x: number,
  message: string,
  value: string,
  limit: string,
): Remark => ({
  severity: "error",
  piece: piece.id,
  place,
  at: [x, 0],
  message,
  value,
  limit,
  mend: CONTRADICTION,
});

/** The fold's line lies across the strap at the turn-back's centre. */
function lineOff(piece: Piece, t: TurnBack, fold: Fold, context: Context): readonly Remark[] {
  const off = Math.max(Math.abs(fold.from[0] - t.centre), Math.abs(fold.to[0] - t.centre));
  if (off <= MEET_MM + SLACK_MM) return [];
  const by = sayLength(off, context);
  return [
    fault(
      piece,
      `fold ${fold.id}`,
      t.centre,
      `The fold line ${fold.id} of ${piece.name} lies ${by} from where its turn-back bends.`,
      by,
      `at most ${sayLength(MEET_MM, context)}`,
    ),
  ];
}

/** The wrap's ends lie where the folded legs leave the bar. */
function wrapOff(piece: Piece, t: TurnBack, context: Context): readonly Remark[] {
  const fold = folded(t);
  if (!fold || Math.abs(fold.leaves - t.wrapHalf) <= MEET_MM + SLACK_MM) return [];
  const [says, is] = [sayLength(t.wrapHalf, context), sayLength(fold.leaves, context)];
  return [
    fault(
      piece,
      `turn-back ${t.id}`,
      t.centre,
      `The leather of ${piece.name} leaves the bar ${is} from the fold, not ${says} as the turn-back ${t.id} says.`,
      says,
      is,
    ),
  ];
}

/** The fold and the wrap are drawn where the leather bends. */
export const foldAsDrawn = rule(
  "fold-as-drawn",
  "the fold and its wrap are drawn where the leather bends",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.turnBacks.flatMap((t) => [
        ...piece.folds.filter((f) => f.id === t.fold).flatMap((f) => lineOff(piece, t, f, context)),
        ...wrapOff(piece, t, context),
      ]),
    ),
);
