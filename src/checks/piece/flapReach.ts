import { type Folding, foldings, isNone } from "../measure/closures.ts";
import { drawnEnd, lies } from "../measure/foldedFlap.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** The flap's end as drawn may differ from what is said by this and by what finishing takes off; a knife's width. */
const END_MM = 0.5;
/** The arithmetic's tolerance. */
const REACH_MM = 0.05;

/** The flap's end, folded, lies beyond the closure's half and not below the bag. */
function ends(f: Folding, context: Context): readonly Remark[] {
  const say = (mm: number): string => sayLength(mm, context);
  const { join, flap } = f;
  const fault = (message: string, value: string, limit: string, how: string): Remark => ({
    severity: "error",
    piece: flap.id,
    place: "flap's end",
    at: [join.flap.at[0], join.flapEnd],
    message,
    value,
    limit,
    mend: how,
  });
  const said = join.flapEnd - join.flap.baseLine;
  const drawn = drawnEnd(flap, join.flap.baseLine);
  const closure = [...new Set(["pieces.body.closure-height", join.dimension])].join(" or ");
  const [end, half] = [lies(f.bends, said), lies(f.bends, f.along)];
  const apart = Math.abs(drawn - said);
  if (!(apart <= END_MM + (flap.edgeLoss ?? 0)))
    return [
      fault(
        `The flap of ${flap.name} is drawn ${say(drawn)} long from the base line and said to be ${say(said)}.`,
        say(drawn),
        say(said),
        "Don't cut: change pieces.body.flap-end; if that doesn't help, report it with the order.",
      ),
    ];
  const short = end.v - half.v;
  const below = -end.v;
  return [
    ...(isNone(join) || short < -REACH_MM
      ? []
      : [
          fault(
            `The flap ends ${say(end.v)} over the bag's bottom and doesn't reach past its half of the ${join.what} at ${say(half.v)}.`,
            say(end.v),
            `under ${say(half.v)}`,
            `Lower the flap's end, pieces.body.flap-end, or raise the closure: ${closure}.`,
          ),
        ]),
    ...(below <= REACH_MM
      ? []
      : [
          fault(
            `The flap hangs ${say(below)} below the bag's bottom.`,
            `${say(below)} below`,
            "the bag's bottom",
            `Raise the flap's end, pieces.body.flap-end, by ${say(below)}${isNone(join) ? "" : `; or raise the closure: ${closure}`}.`,
          ),
        ]),
  ];
}

/** The drawn flap, folded over the filled bag, reaches past its closure and not past the bag's bottom. */
export const flapReach = rule(
  "flap-reach",
  "a flap reaches past its closure and ends above the bag's bottom",
  (job, context) => foldings(job).flatMap((f) => ends(f, context)),
);
