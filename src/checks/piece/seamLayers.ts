import type { FixedJoin, Made, SeamJoin } from "../../model/article.ts";
import { pieceOf } from "../measure/sound.ts";
import { CONTRADICTION, say } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** Thicker than this asks for a long awl, a harness needle and heavier thread, mm; common practice, no source. */
const THICK_MM = 8;
/** Thicker than this no hand-sewing needle and thread draw tight, mm; common practice, no source. */
const THICKEST_MM = 12;
const SLACK_MM = 1e-6;

type Stitched = SeamJoin | FixedJoin;

/** The leathers of a join, as the order names them. */
function leathersOf(job: Made, join: Stitched): string {
  const kinds = join.sides.flatMap(({ piece }) => pieceOf(job, piece)?.leather.kind ?? []);
  return [...new Set(kinds)].map((kind) => `leather.${kind}.thickness`).join(", ");
}

const seamOf = (join: Stitched): string => (join.kind === "seam" ? join.name.split(":")[0]! : join.name);

/** The thickest run of each seam. */
function thickest(job: Made): readonly Stitched[] {
  const seams = new Map<string, Stitched>();
  for (const join of job.joins) {
    if (join.kind !== "seam" && !(join.kind === "fixed" && join.by === "stitch")) continue;
    const known = seams.get(seamOf(join));
    if (!known || !(join.stack <= known.stack)) seams.set(seamOf(join), join);
  }
  return [...seams.values()];
}

/** The layers of a seam are no thicker than an awl, a needle and a thread manage. */
export const seamLayers = rule(
  "seam-layers",
  "a seam is no thicker than needle and thread manage",
  (job, context) =>
    thickest(job).flatMap((join): readonly Remark[] => {
      const known = join.stack > 0 && join.stack < Infinity;
      if (known && join.stack <= THICK_MM + SLACK_MM) return [];
      const error = !known || join.stack > THICKEST_MM + SLACK_MM;
      const is = say(join.stack, "thickness", context);
      const most = say(error ? THICKEST_MM : THICK_MM, "thickness", context);
      const what = error
        ? `over ${most} needle and thread don't draw tight`
        : `over ${most} it asks for a long awl, heavy needles and heavier thread`;
      return [
        {
          severity: error ? "error" : "caution",
          piece: join.sides[0]?.piece ?? "",
          place: `seam ${seamOf(join)}`,
          message: `The needle goes through ${is} of leather in "${join.name}"; ${what} (common practice).`,
          value: is,
          limit: `at most ${most}`,
          mend: known
            ? `Use thinner leather (${leathersOf(job, join)}), or skive the layers where they meet.`
            : CONTRADICTION,
        },
      ];
    }),
);
