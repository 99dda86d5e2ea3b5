import type { Adjustment } from "../../model/article.ts";
import { alikeEnds, endsOf } from "../measure/billet.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

const SLACK_MM = 1e-6;

/** The most holes, an odd count, whose tail still ends before the swell; 0 when not even one does. */
function mostHoles(join: Adjustment): number {
  const fits = join.holes.filter((h) => h <= join.swellAt + SLACK_MM).length;
  return fits === 0 ? 0 : fits - 1 + (fits % 2);
}

/** What a maker may do: fewer holes, another body, or a longer cheek. */
function mendFor(join: Adjustment, over: number, context: Context): string {
  const n = mostHoles(join);
  const holes = n > 0 ? [`punch at most ${n} ${n === 1 ? "hole" : "holes"} (${join.dimension})`] : [];
  const body =
    join.swellIs === "the cheek's swell" ? [`cut the cheek straight (${join.bodySection}.body)`] : [];
  const longer = `make the cheek about ${sayLength(over, context)} longer (${join.bodySection}.effective-length)`;
  const ways = [...holes, ...body, longer];
  const sentence = ways.length > 1 ? `${ways.slice(0, -1).join(", ")}, or ${ways.at(-1)}` : ways.join("");
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}

/** Buckled in the hole furthest from its tip, the tail stays clear of the cheek's swell and of the bit end's fixings. */
export const tailAndSwell = rule(
  "tail-and-swell",
  "in the tightest hole the tail stays clear of the cheek's swell",
  (job, context) =>
    alikeEnds(job).flatMap(({ join, piece, sides }): Remark[] => {
      const tail = Math.max(...join.holes);
      if (!(tail > join.swellAt + SLACK_MM)) return [];
      const [is, limit] = [sayLength(tail, context), sayLength(join.swellAt, context)];
      const n = mostHoles(join);
      const ends = endsOf(sides);
      return [
        {
          severity: "caution",
          piece: piece.id,
          place: ends,
          message: `In the tightest hole ${piece.name}, ${ends}, reaches ${is} from the buckle, onto ${join.swellIs}, which begins at ${limit}.`,
          value: is,
          limit: `at most ${limit}`,
          mend: mendFor(join, tail - join.swellAt, context),
          ...(n > 0 ? { change: { dimension: join.dimension, value: String(n) } } : {}),
        },
      ];
    }),
);
