import { alikeEnds, endsOf } from "../measure/billet.ts";
import { orderLength, sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** Strap that should stand out beyond the last keeper, besides the point; mm, common practice, no source. */
export const BEYOND_MM = 10;
/** A size typed again as it was printed, to a hundredth of a millimetre, meets its own limit. */
const SLACK_MM = 0.005;

/** Buckled in the hole nearest its tip, the tail still passes its keepers by 10 mm and the point. */
export const tailInKeeper = rule(
  "tail-in-keeper",
  "in the loosest hole the tail still passes its keepers",
  (job, context) =>
    alikeEnds(job).flatMap(({ join, piece, sides }): Remark[] => {
      const tail = Math.min(...join.holes);
      const [reached, least] = [join.keeperFar, join.keeperFar + BEYOND_MM + join.point];
      if (!(tail < least - SLACK_MM)) return [];
      const error = tail < reached - SLACK_MM;
      const [is, limit] = [sayLength(tail, context), sayLength(error ? reached : least, context)];
      const ends = endsOf(sides);
      return [
        {
          severity: error ? "error" : "caution",
          piece: piece.id,
          place: ends,
          message: error
            ? `In the loosest hole ${piece.name}, ${ends}, reaches ${is} from the buckle and misses its keeper, whose far edge lies at ${limit}.`
            : `In the loosest hole ${piece.name}, ${ends}, reaches ${is} from the buckle; to stay in its keeper it should reach ${limit}.`,
          value: is,
          limit: `at least ${limit}`,
          mend: `Leave more strap from the first hole to the tip: ${join.tipDimension} at least ${sayLength(least, context)}.`,
          change: { dimension: join.tipDimension, value: orderLength(least) },
        },
      ];
    }),
);
