import { pathLength } from "../../geometry/length.ts";
import type { Made, SeamJoin } from "../../model/article.ts";
import type { Piece, SeamLine } from "../../model/piece.ts";
import { INSET, PITCH } from "../measure/dimensions.ts";
import { measurable } from "../measure/sound.ts";
import { say, sayShare } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** How far a pitch may stray from what was asked; common practice, no source. */
const STRAYS = 0.08;
/** On fewer stitches a whole one more or less can't come nearer: a note, no caution. */
const FEW_STITCHES = 7;
/** Stitches nearer than this share of what was asked crowd; nearer than 1 mm the holes run together. Common practice, no source. */
const CROWDED = 0.5;
const RUN_TOGETHER_MM = 1;
/** Two sides as long as each other: the first of them is judged. */
const AS_LONG_MM = 0.01;
const SLACK = 1e-9;

/**
 * The join in which a seam has its stitches from a longer mate (or one as long and named first): the mate's
 * pitch is the one that was asked.
 */
function setByMate(job: Made, piece: Piece, seam: SeamLine): SeamJoin | undefined {
  const join = job.joins.find((j) => j.kind === "seam" && j.name === seam.joins);
  if (join?.kind !== "seam") return undefined;
  const lengths = join.sides.map((side) => {
    const mate = job.pieces.find((p) => p.id === side.piece)?.seams.find((s) => s.id === side.seam);
    return mate ? pathLength(mate.path) : 0;
  });
  const longest = Math.max(...lengths);
  const judged = join.sides[lengths.findIndex((l) => l > longest - AS_LONG_MM)];
  return judged?.piece === piece.id && judged.seam === seam.id ? undefined : join;
}

type Row = {
  readonly piece: Piece;
  readonly seam: SeamLine;
  readonly pitch: number;
  readonly context: Context;
};

function strayed({ piece, seam, pitch, context }: Row): readonly Remark[] {
  const off = Math.abs(pitch / seam.pitchAsked - 1);
  if (!(off > STRAYS + SLACK)) return [];
  const [is, asked] = [say(pitch, "pitch", context), say(seam.pitchAsked, "pitch", context)];
  return [
    {
      severity: seam.stitches >= FEW_STITCHES ? "caution" : "note",
      piece: piece.id,
      place: `seam ${seam.id}`,
      at: seam.path.start,
      message: `The ${seam.stitches} stitches of the seam ${seam.id} of ${piece.name} lie ${is} apart, ${sayShare(off)} off the ${asked} that was asked.`,
      value: is,
      limit: `${asked}, give or take ${sayShare(STRAYS)}`,
      mend: `Ask for a pitch of ${is} (${PITCH}), or make the seam longer or shorter by a part of a stitch.`,
    },
  ];
}

/** In a bend the inner side has as many stitches on less leather. */
function crowded({ piece, seam, pitch, context }: Row, join: SeamJoin): readonly Remark[] {
  const least = CROWDED * seam.pitchAsked;
  if (pitch >= least - SLACK) return [];
  const error = pitch < RUN_TOGETHER_MM - SLACK;
  const [is, limit] = [say(pitch, "pitch", context), say(error ? RUN_TOGETHER_MM : least, "pitch", context)];
  return [
    {
      severity: error ? "error" : "caution",
      piece: piece.id,
      place: `seam ${seam.id}`,
      at: seam.path.start,
      message: `To meet its mate in "${join.name}", the seam ${seam.id} of ${piece.name} has its ${seam.stitches} stitches ${is} apart; under ${limit} ${error ? "the holes run together" : "they crowd, and weaken the edge"}.`,
      value: is,
      limit: `at least ${limit}`,
      mend: `Bend it round a larger radius (${join.dimension}), or set the stitches nearer the edge (${INSET}).`,
    },
  ];
}

/**
 * The stitches of a seam lie as far apart as was asked, within 8 %; measured along the drawn seam. Of mated
 * sides the longest is judged; the others must not crowd.
 */
export const stitchPitch = rule(
  "stitch-pitch",
  "stitches lie as far apart as was asked, within 8 %",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.seams.flatMap((seam) => {
        const row = { piece, seam, pitch: pathLength(seam.path) / seam.stitches, context };
        const join = setByMate(job, piece, seam);
        return join ? crowded(row, join) : strayed(row);
      }),
    ),
);
