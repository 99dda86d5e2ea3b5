import { aside, type Folding, foldings, isNone } from "../measure/closures.ts";
import { hungAt, lies } from "../measure/foldedFlap.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** How far a closure's halves may miss each other: a stud or a prong still enters. Common practice, no source. */
const MISS_MM = 0.5;
/** Air between flap and front that a closure still bridges without pulling; common practice, no source. */
const AIR_MM = 1.5;
/** Leather can't lie inside leather: the arithmetic's tolerance. */
const INSIDE_MM = 0.05;
/** From here on the empty bag's flap is seen to hang low; common practice, no source. */
const LOW_MM = 8;
const SLACK_MM = 1e-6;

const remark = (
  f: Folding,
  severity: Remark["severity"],
  message: string,
  value: string,
  limit: string,
  mend: string,
): Remark => ({
  severity,
  piece: f.flap.id,
  place: isNone(f.join) ? "flap's end" : f.join.what,
  at: f.join.flap.at,
  message,
  value,
  limit,
  mend,
});

const mendOf = ({ join }: Folding): string => {
  const places = [...new Set([join.dimension, "pieces.body.closure-height"])].join(" or ");
  return `Change ${isNone(join) ? "pieces.body.flap-end" : places}. If that doesn't help, don't cut: report it with the order.`;
};

/** Where the flap's half comes to lie on the filled bag: at the front's height, on the front's face, not aside. */
function misses(f: Folding, context: Context): readonly Remark[] {
  const say = (mm: number): string => sayLength(mm, context);
  const { u, v } = lies(f.bends, f.along);
  const [up, off, side] = [v - f.height, u - f.join.reach, aside(f)];
  const folded = `Folded over the filled bag, ${f.half}`;
  const error = (words: string, value: string, limit: string): Remark =>
    remark(f, "error", `${folded} ${words}.`, value, limit, mendOf(f));
  const allowed = `at most ${say(MISS_MM)}`;
  return [
    ...(Math.abs(up) <= MISS_MM + SLACK_MM
      ? []
      : [
          error(
            `comes ${say(Math.abs(up))} ${up > 0 ? "above" : "below"} its place on the front`,
            say(Math.abs(up)),
            allowed,
          ),
        ]),
    ...(side <= MISS_MM + SLACK_MM
      ? []
      : [error(`comes ${say(side)} beside its place on the front`, say(side), allowed)]),
    ...(off >= -INSIDE_MM - SLACK_MM && off <= AIR_MM + SLACK_MM
      ? []
      : [
          error(
            off > 0
              ? `stands ${say(off)} off the front`
              : `would lie ${say(-off)} inside the front: the flap is too tight over the top`,
            say(Math.abs(off)),
            off > 0 ? `at most ${say(AIR_MM)}` : "on the front's face",
          ),
        ]),
  ];
}

/** How much lower the flap's half hangs when there is nothing in the bag. */
function low(f: Folding, context: Context): readonly Remark[] {
  const by = f.height - lies(hungAt(f.bends, f.join.reachEmpty), f.along).v;
  if (isNone(f.join) || !(by > LOW_MM + SLACK_MM)) return [];
  const is = sayLength(by, context);
  return [
    remark(
      f,
      "note",
      `The ${f.join.what} is placed for the filled bag; on the empty bag its half on the flap comes ${is} low.`,
      is,
      `under ${sayLength(LOW_MM, context)} goes unnoticed`,
      "Fill the bag before you mark the closure on it; a bag carried half empty wants a smaller measures.filled-depth.",
    ),
  ];
}

/** The drawn flap, folded over the filled bag, brings its half of the closure onto the front's. */
export const closureMeets = rule(
  "closure-meets",
  "a closure's halves meet when the flap is folded over the filled bag",
  (job, context) =>
    foldings(job).flatMap((f) => {
      const missed = misses(f, context);
      return missed.length > 0 ? missed : low(f, context);
    }),
);
