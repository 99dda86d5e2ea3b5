import { widthAcross } from "../measure/chords.ts";
import { widthOf } from "../measure/dimensions.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { rule } from "../rule.ts";

/** A hole that takes more than this share of the strap leaves too little; common practice, no source. */
const WIDEST_SHARE = 1 / 3;
const SLACK_MM = 0.005;

/** A punched hole takes no more than a third of the piece's drawn width there. */
export const holeToWidth = rule(
  "hole-to-width",
  "a punched hole takes no more than a third of the strap",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.holes
        .filter((h) => h.kind !== "awl")
        .flatMap((hole) => {
          const width = widthAcross(piece.outline, hole.at);
          if (width === undefined || hole.size <= width * WIDEST_SHARE + SLACK_MM) return [];
          return [
            {
              severity: "caution" as const,
              piece: piece.id,
              place: `hole ${hole.id}`,
              at: hole.at,
              message: `The hole ${hole.id} of ${piece.name} is ${sayLength(hole.size, context)} wide, more than a third of the ${sayLength(width, context)} of leather there.`,
              value: sayLength(hole.size, context),
              limit: `at most ${sayLength(width * WIDEST_SHARE, context)}`,
              mend: `Use a smaller hole or a wider strap: ${widthOf(job, piece)}.`,
            },
          ];
        }),
    ),
);
