import { skiveOf, turnBackOf } from "../measure/dimensions.ts";
import { folded } from "../measure/folded.ts";
import { say, sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

const DEGREE = Math.PI / 180;
/** Steeper legs put their pull across the fixings; common practice, no source. */
const EASY_RAD = 15 * DEGREE;
const STEEPEST_RAD = 30 * DEGREE;
/** A turn-back made for the limit comes out a hair off. */
const SLACK_RAD = 1e-6;

/** The legs of a turn-back close at an easy slope, and are held beyond where they leave the bar. */
export const turnBackSlope = rule(
  "turn-back-slope",
  "a turn-back's legs close at an easy slope, beyond the bar",
  (job, context) =>
    job.pieces.flatMap((piece) =>
      piece.turnBacks.flatMap((t): Remark[] => {
        const about = { piece: piece.id, place: `turn-back ${t.id}`, at: [t.centre, 0] as const };
        const mend = `Make the turn-back longer, so that it is held further from the bar (${turnBackOf(piece, t)}), or skive it less (${skiveOf(piece, t)}).`;
        const fold = folded(t);
        const at = Number.isFinite(t.centre) ? about : { piece: about.piece, place: about.place };
        if (!fold) {
          const lift = sayLength(t.liftOff, context);
          return [
            {
              ...at,
              severity: "error",
              message: `The turn-back ${t.id} of ${piece.name} would be held ${lift} from the bar's centre, inside the leather that goes round the bar.`,
              value: lift,
              limit: "beyond where the leather leaves the bar",
              mend,
            },
          ];
        }
        const slope = Math.abs(fold.slope);
        if (slope <= EASY_RAD + SLACK_RAD) return [];
        const error = slope > STEEPEST_RAD + SLACK_RAD;
        const [is, limit] = [
          say(slope, "angle", context),
          say(error ? STEEPEST_RAD : EASY_RAD, "angle", context),
        ];
        return [
          {
            ...at,
            severity: error ? "error" : "caution",
            message: `The legs of the turn-back ${t.id} of ${piece.name} run ${fold.slope > 0 ? "together" : "apart"} at ${is}; ${error ? "no fixing holds well over" : "easy is up to"} ${limit}.`,
            value: is,
            limit: `at most ${limit}`,
            mend,
          },
        ];
      }),
    ),
);
