import { boundsOf } from "../../geometry/bounds.ts";
import type { Join } from "../../model/article.ts";
import type { Severity } from "../../model/finding.ts";
import type { Piece } from "../../model/piece.ts";
import { halfWayRound } from "../measure/folded.ts";
import { pieceOf } from "../measure/sound.ts";
import { CONTRADICTION, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A keeper's girth may differ by this from what it holds: the arithmetic's tolerance. */
const GIRTH_MM = 0.05;
/** More slack than this and it holds nothing: twice the room usually left; common practice, no source. */
const SLACK_GIRTH_MM = 6;
const SLACK_MM = 1e-6;

type Keeper = Extract<Join, { kind: "keeper round stack" }>;

/** Length of the keeper's neutral fibre all the way round what it holds, going round its corners. */
function girthRound(join: Keeper): number {
  const stack = { kind: "flat", along: join.width, through: join.height, corner: 0 } as const;
  return 2 * halfWayRound(stack, join.neutral * join.thickness).bends.reduce((sum, b) => sum + b.length, 0);
}

function fits(piece: Piece, join: Keeper, context: Context): readonly Remark[] {
  const say = (mm: number): string => sayLength(mm, context);
  const { minX, maxX } = boundsOf(piece.outline);
  const [drawn, round] = [maxX - minX, girthRound(join)];
  const whole = round + join.lap;
  const about = (severity: Severity, words: string, limit: string, mend: string): readonly Remark[] => [
    {
      severity,
      piece: piece.id,
      place: "length",
      at: [maxX, 0],
      message: `${piece.name} is ${words}.`,
      value: say(drawn),
      limit,
      mend,
    },
  ];
  if (Math.abs(drawn - join.cut) > GIRTH_MM + SLACK_MM) {
    return about(
      "error",
      `drawn ${say(drawn)} long and said to be cut ${say(join.cut)}`,
      say(join.cut),
      CONTRADICTION,
    );
  }
  const needs = `it goes ${say(round)} round what it holds${join.lap > 0 ? ` and laps ${say(join.lap)}` : ""}`;
  if (whole - drawn > GIRTH_MM + SLACK_MM) {
    const mend = `Give it more room: change ${join.dimension}.`;
    return about("error", `${say(whole - drawn)} too short: ${needs}`, `at least ${say(whole)}`, mend);
  }
  if (drawn - whole > SLACK_GIRTH_MM + SLACK_MM) {
    const mend = `Give it less room: change ${join.dimension}.`;
    return about(
      "caution",
      `${say(drawn - whole)} slack: ${needs}`,
      `at most ${say(whole + SLACK_GIRTH_MM)}`,
      mend,
    );
  }
  return [];
}

/** A keeper, as drawn, goes round what it holds on its neutral fibre, with its lap, and isn't lost on it. */
export const keeperGirth = rule("keeper-girth", "a keeper goes round what it holds", (job, context) =>
  job.joins.flatMap((join) => {
    const piece = join.kind === "keeper round stack" ? pieceOf(job, join.piece) : undefined;
    return piece && join.kind === "keeper round stack" ? fits(piece, join, context) : [];
  }),
);
