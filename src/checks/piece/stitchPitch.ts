import { pathLength } from "../../geometry/length.ts";
import { PITCH } from "../measure/dimensions.ts";
import { measurable } from "../measure/sound.ts";
import { say, sayShare } from "../measure/words.ts";
import { rule } from "../rule.ts";

/** How far a pitch may stray from what was asked; common practice, no source. */
const STRAYS = 0.08;
/** On fewer stitches a whole one more or less can't come nearer: a note, no caution. */
const FEW_STITCHES = 7;
const SLACK = 1e-9;

/** The stitches of a seam lie as far apart as was asked, within 8 %; measured along the drawn seam. */
export const stitchPitch = rule(
  "stitch-pitch",
  "stitches lie as far apart as was asked, within 8 %",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.seams.flatMap((seam) => {
        const pitch = pathLength(seam.path) / seam.stitches;
        const off = Math.abs(pitch / seam.pitchAsked - 1);
        if (!(off > STRAYS + SLACK)) return [];
        const [is, asked] = [say(pitch, "pitch", context), say(seam.pitchAsked, "pitch", context)];
        return [
          {
            severity: seam.stitches >= FEW_STITCHES ? ("caution" as const) : ("note" as const),
            piece: piece.id,
            place: `seam ${seam.id}`,
            at: seam.path.start,
            message: `The ${seam.stitches} stitches of the seam ${seam.id} of ${piece.name} lie ${is} apart, ${sayShare(off)} off the ${asked} that was asked.`,
            value: is,
            limit: `${asked}, give or take ${sayShare(STRAYS)}`,
            mend: `Ask for a pitch of ${is} (${PITCH}), or make the seam longer or shorter by a part of a stitch.`,
          },
        ];
      }),
    ),
);
