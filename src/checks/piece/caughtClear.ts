import { turnBackOf } from "../measure/dimensions.ts";
import { sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** Room between the bar and layers caught between the legs, mm; common practice, no source. */
export const CLEAR_MM = 1;
const SLACK_MM = 1e-6;

/** What is caught between the legs lies clear of the bar: c′ ≥ half the bar and 1 mm. */
export const caughtClear = rule(
  "caught-clear",
  "layers caught between the legs lie clear of the bar",
  (job, context) =>
    job.pieces.flatMap((piece) =>
      piece.turnBacks.flatMap((t): Remark[] => {
        const bar = t.bar.kind === "round" ? t.bar.diameter : t.bar.along;
        const least = bar / 2 + CLEAR_MM;
        if (!(t.caught > 0 && t.liftOff < least - SLACK_MM)) return [];
        return [
          {
            severity: "error",
            piece: piece.id,
            place: `turn-back ${t.id}`,
            message: `What is caught in the turn-back ${t.id} of ${piece.name} begins ${sayLength(t.liftOff, context)} from the bar's centre and touches the bar; it needs ${sayLength(least, context)}.`,
            value: sayLength(t.liftOff, context),
            limit: `at least ${sayLength(least, context)}`,
            mend: `Make the turn-back longer (${turnBackOf(piece, t)}), or the keeper caught in it narrower.`,
          },
        ];
      }),
    ),
);
