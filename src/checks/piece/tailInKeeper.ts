import { adjustments } from "../measure/billet.ts";
import { sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** Strap that should stand out beyond the last keeper, besides the point; mm, common practice, no source. */
export const BEYOND_MM = 10;
const SLACK_MM = 1e-6;

/** Buckled in the hole nearest its tip, the tail still passes its keepers by 10 mm and the point. */
export const tailInKeeper = rule(
  "tail-in-keeper",
  "in the loosest hole the tail still passes its keepers",
  (job, context) =>
    adjustments(job).flatMap(({ join, piece }): Remark[] => {
      const tail = Math.min(...join.holes);
      const [reached, least] = [join.keeperFar, join.keeperFar + BEYOND_MM + join.point];
      if (!(tail < least - SLACK_MM)) return [];
      const error = tail < reached - SLACK_MM;
      const [is, limit] = [sayLength(tail, context), sayLength(error ? reached : least, context)];
      return [
        {
          severity: error ? "error" : "caution",
          piece: piece.id,
          place: `${join.side} end`,
          message: error
            ? `In the loosest hole the ${join.side} end of ${piece.name} reaches ${is} from the buckle and misses its keeper, whose far edge lies at ${limit}.`
            : `In the loosest hole the ${join.side} end of ${piece.name} reaches ${is} from the buckle; to stay in its keeper it should reach ${limit}.`,
          value: is,
          limit: `at least ${limit}`,
          mend: `Leave more strap from the first hole to the tip: change ${join.dimension}.`,
        },
      ];
    }),
);
