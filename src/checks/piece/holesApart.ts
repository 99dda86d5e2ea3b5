import type { Made } from "../../model/article.ts";
import type { Hole, Piece } from "../../model/piece.ts";
import { HOLE_SIZE, holesOf, PITCH, sectionOf } from "../measure/dimensions.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Diameters from middle to middle; common practice for leather, no source. */
const APART_CAUTION = 2;
/** Under this less leather is left between two holes than an edge may have: half a diameter. */
const APART_ERROR = 1.5;
const SLACK_MM = 1e-6;

function tooClose(job: Made, piece: Piece, a: Hole, b: Hole, context: Context): readonly Remark[] {
  const distance = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
  const size = Math.max(a.size, b.size);
  if (distance >= APART_CAUTION * size - SLACK_MM) return [];
  const error = distance < APART_ERROR * size - SLACK_MM;
  const limit = sayLength((error ? APART_ERROR : APART_CAUTION) * size, context);
  return [
    {
      severity: error ? "error" : "caution",
      piece: piece.id,
      place: `hole ${a.id}`,
      at: a.at,
      message: `The holes ${a.id} and ${b.id} of ${piece.name} lie ${sayLength(distance, context)} from middle to middle; the leather between them needs at least ${limit}.`,
      value: sayLength(distance, context),
      limit: `at least ${limit}`,
      mend:
        a.use === "stitch"
          ? `Use a smaller stitch hole (${HOLE_SIZE}) or a longer pitch (${PITCH}), or bend the seam round a larger radius (${sectionOf(piece)}).`
          : `Space the holes wider or use a smaller punch: ${holesOf(job, piece)}.`,
    },
  ];
}

/** Punched holes keep two diameters of the larger from middle to middle; awl slits don't count. */
export const holesApart = rule(
  "holes-apart",
  "punched holes keep two diameters from middle to middle",
  (job, context) =>
    measurable(job).flatMap((piece) => {
      const holes = piece.holes.filter((h) => h.kind !== "awl");
      return holes.flatMap((a, i) => holes.slice(i + 1).flatMap((b) => tooClose(job, piece, a, b, context)));
    }),
);
