import { adjustments } from "../measure/billet.ts";
import { sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

const SLACK_MM = 1e-6;

/** Buckled in the hole furthest from its tip, the tail stays clear of the cheek's swell and of the bit end's fixings. */
export const tailAndSwell = rule(
  "tail-and-swell",
  "in the tightest hole the tail stays clear of the cheek's swell",
  (job, context) =>
    adjustments(job).flatMap(({ join, piece }): Remark[] => {
      const tail = Math.max(...join.holes);
      if (!(tail > join.swellAt + SLACK_MM)) return [];
      const [is, limit] = [sayLength(tail, context), sayLength(join.swellAt, context)];
      return [
        {
          severity: "caution",
          piece: piece.id,
          place: `${join.side} end`,
          message: `In the tightest hole the ${join.side} end of ${piece.name} reaches ${is} from the buckle, onto what begins at ${limit}: the cheek's swell, or its fixings at the bit.`,
          value: is,
          limit: `at most ${limit}`,
          mend: `Punch fewer holes or make the cheek longer: change ${join.dimension}.`,
        },
      ];
    }),
);
