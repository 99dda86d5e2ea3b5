import type { InwardFold } from "../../model/article.ts";
import { pieceOf } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** What the two folds leave between them, half on each side; mm, common practice, no source. */
const CLEAR_MM = 3;
const SLACK_MM = 1e-6;
/** What makes side gussets fold inward. */
const FOLDS = "pieces.gusset.inward-fold";

/** How far in the middle of a web comes whose edges lie `apart`: two equal sides of a triangle on that base. */
const depthOf = ({ topWidth, apart }: InwardFold): number => {
  const half = Math.max(topWidth, apart) / 2;
  return Math.sqrt(half ** 2 - (apart / 2) ** 2);
};

/** Shut, the inward folds of both side gussets have room beside each other, and a web high enough to fold. */
export const foldsInward = rule(
  "folds-inward",
  "the side gussets' inward folds don't meet when the bag is shut",
  (job, context) =>
    job.joins.flatMap((join): Remark[] => {
      const piece = join.kind === "inward fold" ? pieceOf(job, join.piece) : undefined;
      if (join.kind !== "inward fold" || !piece) return [];
      const say = (mm: number): string => sayLength(mm, context);
      const depth = depthOf(join);
      const inWidth = join.insideWidth / 2 - CLEAR_MM;
      const most = Math.min(inWidth, join.height);
      if (depth <= most + SLACK_MM) return [];
      const why =
        inWidth < join.height
          ? `half of the bag's inside width less ${say(CLEAR_MM)} is ${say(inWidth)}, so that the two folds meet`
          : `the gusset is only ${say(join.height)} high, so that its top can't come in that far`;
      return [
        {
          severity: "error",
          piece: piece.id,
          place: "inward fold",
          message: `Shut, the fold of ${piece.name} comes ${say(depth)} in; ${why}.`,
          value: say(depth),
          limit: `at most ${say(most)}`,
          mend: `Let the gussets stand open (${FOLDS}: no), or make their tops narrower (${join.dimension}).`,
          change: { dimension: FOLDS, value: "no" },
        },
      ];
    }),
);
