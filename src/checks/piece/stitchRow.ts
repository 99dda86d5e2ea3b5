import { nearestOnPath } from "../../geometry/distance.ts";
import { pathLength } from "../../geometry/length.ts";
import type { Hole, Piece, SeamLine } from "../../model/piece.ts";
import { measurable } from "../measure/sound.ts";
import { CONTRADICTION, say, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A hole lies on its seam within the arithmetic's tolerance. */
const ON_SEAM_MM = 0.05;
/** The last stitches before a corner may share out a left-over, at most this share each. */
const UNEVEN = 0.1;
const SLACK_MM = 1e-6;

type Row = {
  readonly piece: Piece;
  readonly seam: SeamLine;
  readonly holes: readonly Hole[];
  readonly context: Context;
};

const fault = (
  { piece, seam }: Row,
  hole: Hole | undefined,
  message: string,
  value: string,
  limit: string,
): Remark => ({
  severity: "error",
  piece: piece.id,
  place: hole ? `hole ${hole.id}` : `seam ${seam.id}`,
  at: hole?.at ?? seam.path.start,
  message,
  value,
  limit,
  mend: CONTRADICTION,
});

/** An open run of n stitches has n + 1 holes, a closed one n. */
function miscounted(row: Row): readonly Remark[] {
  const { piece, seam } = row;
  const wanted = seam.stitches + (seam.path.closed ? 0 : 1);
  if (seam.holes.length === wanted) return [];
  return [
    fault(
      row,
      undefined,
      `The seam ${seam.id} of ${piece.name} has ${seam.stitches} stitches and ${seam.holes.length} holes; it needs ${wanted}.`,
      `${seam.holes.length}`,
      `${wanted}`,
    ),
  ];
}

function offLine(row: Row): readonly Remark[] {
  const { piece, seam, holes, context } = row;
  return holes.flatMap((hole) => {
    const off = nearestOnPath(hole.at, seam.path).distance;
    if (off <= ON_SEAM_MM + SLACK_MM) return [];
    return [
      fault(
        row,
        hole,
        `The stitch ${hole.id} of ${piece.name} lies ${sayLength(off, context)} beside its seam.`,
        sayLength(off, context),
        `at most ${sayLength(ON_SEAM_MM, context)}`,
      ),
    ];
  });
}

/** Steps along the seam from hole to hole; on a closed seam also from the last to the first. */
function steps({ seam, holes }: Row): readonly { readonly hole: Hole; readonly step: number }[] {
  const total = pathLength(seam.path);
  const along = holes.map((h) => nearestOnPath(h.at, seam.path).at);
  const { closed } = seam.path;
  return holes.flatMap((hole, i) => {
    if (i === 0 && !closed) return [];
    const step = along[i]! - along.at(i - 1)!;
    return [{ hole, step: closed ? ((step % total) + total) % total : step }];
  });
}

function uneven(row: Row): readonly Remark[] {
  const { piece, seam, context } = row;
  return steps(row).flatMap(({ hole, step }) => {
    if (Math.abs(step - seam.pitch) <= seam.pitch * UNEVEN + SLACK_MM) return [];
    const [is, pitch] = [say(step, "pitch", context), say(seam.pitch, "pitch", context)];
    return [
      fault(
        row,
        hole,
        `The stitch to ${hole.id} of ${piece.name} is ${is} long where its seam's pitch is ${pitch}.`,
        is,
        `${pitch}, give or take 10 %`,
      ),
    ];
  });
}

/** A seam has as many holes as its stitches need; they lie on it, in order, evenly. */
export const stitchRow = rule("stitch-row", "a seam's holes lie on it, in order and evenly", (job, context) =>
  measurable(job).flatMap((piece) =>
    piece.seams.flatMap((seam) => {
      const holes = seam.holes.flatMap((id) => piece.holes.find((h) => h.id === id) ?? []);
      const row = { piece, seam, holes, context };
      const found = [...miscounted(row), ...offLine(row)];
      // Steps between holes that are missing or astray would only say it again.
      return found.length > 0 ? found : uneven(row);
    }),
  ),
);
