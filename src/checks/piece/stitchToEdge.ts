import { distanceToPath } from "../../geometry/distance.ts";
import type { Point } from "../../geometry/path.ts";
import type { Hole, Piece, SeamLine } from "../../model/piece.ts";
import { INSET, sectionOf } from "../measure/dimensions.ts";
import { depthInside } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A stitch nearer an edge than this pulls through, mm; common practice, no source. */
const LEAST_TO_EDGE_MM = 1.5;
/** A seam follows its edge this closely. */
const INSET_GIVES_MM = 0.05;
/** From a slot's end, or an edge that a mated seam runs towards, to the first stitch, mm; common practice, no source. */
const TO_END_MM = 2;
const SLACK_MM = 1e-6;

/**
 * True for the first or the last stitch of a mated seam, where no run of its own goes on: it may lie nearer
 * the edge that the seam runs towards, e.g. a notched corner, than the edge it follows.
 */
function endsSeam({ seams }: Piece, { joins, path, holes }: SeamLine, { id }: Hole): boolean {
  const end = joins !== undefined && !path.closed && (holes[0] === id || holes.at(-1) === id);
  return end && seams.filter((s) => s.holes.includes(id)).length === 1;
}

/** The worst of a hole's distances to the edges, by how much of its limit it keeps. */
function worst(
  piece: Piece,
  seam: SeamLine,
  hole: Hole,
): { readonly distance: number; readonly limit: number; readonly what: string } {
  const atEnd = Math.min(seam.inset, TO_END_MM);
  const limit = endsSeam(piece, seam, hole) ? atEnd : seam.inset;
  const edge = { distance: distanceToPath(hole.at, piece.outline), limit, what: "the edge" };
  const slots = piece.cutouts.map((c) => ({
    distance: distanceToPath(hole.at, c.outline),
    limit: atEnd,
    what: `the ${c.use}`,
  }));
  return [edge, ...slots].reduce((a, b) => (b.distance - b.limit < a.distance - a.limit ? b : a));
}

function tooNear(piece: Piece, seam: SeamLine, hole: Hole, context: Context): readonly Remark[] {
  const { distance, limit, what } = worst(piece, seam, hole);
  const error = distance < LEAST_TO_EDGE_MM - SLACK_MM;
  if (!error && distance >= limit - INSET_GIVES_MM - SLACK_MM) return [];
  const [is, least] = [sayLength(distance, context), sayLength(error ? LEAST_TO_EDGE_MM : limit, context)];
  return [
    {
      severity: error ? "error" : "caution",
      piece: piece.id,
      place: `hole ${hole.id}`,
      at: hole.at,
      message: `The stitch ${hole.id} of ${piece.name} lies ${is} from ${what}; ${error ? "it pulls through under" : "the seam was to keep"} ${least}.`,
      value: is,
      limit: `at least ${least}`,
      mend: `Set the stitches further in (${INSET}), or make the piece wider there.`,
    },
  ];
}

/** Where the awl comes through the back leg: a turn-back's own seam, mirrored at its fold. */
function throughBack(piece: Piece, seam: SeamLine, hole: Hole): Point | undefined {
  const turnBack = piece.turnBacks.find((t) => t.id === seam.turnBack);
  return turnBack && [2 * turnBack.centre - hole.at[0], hole.at[1]];
}

/** The back leg must reach as far as the stitches that hold it. */
function missesBack(piece: Piece, seam: SeamLine, hole: Hole, context: Context): readonly Remark[] {
  const at = throughBack(piece, seam, hole);
  const depth = at ? depthInside(piece.outline, at) : Infinity;
  if (!at || depth >= LEAST_TO_EDGE_MM - SLACK_MM) return [];
  const [is, least] = [sayLength(Math.max(depth, 0), context), sayLength(LEAST_TO_EDGE_MM, context)];
  return [
    {
      severity: "error",
      piece: piece.id,
      place: `hole ${hole.id}, back leg`,
      at,
      message:
        depth > 0
          ? `The stitch ${hole.id} of ${piece.name} comes through the back leg ${is} from its edge; it pulls through under ${least}.`
          : `The stitch ${hole.id} of ${piece.name} misses the back leg, which is too short for it.`,
      value: is,
      limit: `at least ${least}`,
      mend: `Make the turn-back longer, under ${sectionOf(piece)}.`,
    },
  ];
}

/** No stitch lies nearer an edge than its seam's inset; under 1.5 mm, on either leg, is an error. */
export const stitchToEdge = rule(
  "stitch-to-edge",
  "no stitch lies nearer an edge than its inset",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.seams.flatMap((seam) =>
        seam.holes.flatMap((id) => {
          const hole = piece.holes.find((h) => h.id === id);
          return hole
            ? [...tooNear(piece, seam, hole, context), ...missesBack(piece, seam, hole, context)]
            : [];
        }),
      ),
    ),
);
