import { distanceToPath } from "../../geometry/distance.ts";
import type { Path, Point } from "../../geometry/path.ts";
import type { Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { sectionOf, widthOf } from "../measure/dimensions.ts";
import { slotEnds } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Diameters from a hole's middle to an edge; common practice for leather, no source. */
const EDGE_CAUTION = 1.5;
const EDGE_ERROR = 1;
/** Lengths that should be equal come out a hair off; far below what a punch can be set to. */
const SLACK_MM = 1e-6;

/** A round hole, or a slot's end, with the edges it must keep away from. */
type Round = {
  readonly place: string;
  readonly at: Point;
  readonly size: number;
  readonly edges: readonly Path[];
};

/** A hole in a slot's very end belongs to the slot's own rule. */
function roundsOf(piece: Piece): readonly Round[] {
  const holes = piece.holes
    .filter((h) => h.kind !== "awl")
    .map(
      (h): Round => ({
        place: `hole ${h.id}`,
        at: h.at,
        size: h.size,
        edges: [piece.outline, ...piece.cutouts.map((c) => c.outline)],
      }),
    );
  const slots = piece.cutouts.filter((c) => c.width !== undefined && c.use !== "tongue slot");
  const ends = slots.flatMap((c) =>
    slotEnds(c).map(
      (end, i): Round => ({
        place: `${c.use} ${c.id}, end ${i + 1}`,
        at: end.at,
        size: end.size,
        edges: [piece.outline, ...piece.cutouts.filter((other) => other !== c).map((other) => other.outline)],
      }),
    ),
  );
  return [...holes, ...ends];
}

function tooNear(job: Made, piece: Piece, round: Round, context: Context): readonly Remark[] {
  const distance = Math.min(...round.edges.map((edge) => distanceToPath(round.at, edge)));
  const least = EDGE_CAUTION * round.size;
  if (distance >= least - SLACK_MM) return [];
  const error = distance < EDGE_ERROR * round.size - SLACK_MM;
  const say = (mm: number): string => sayLength(mm, context);
  const limit = error ? EDGE_ERROR * round.size : least;
  return [
    {
      severity: error ? "error" : "caution",
      piece: piece.id,
      place: round.place,
      at: round.at,
      message: `The middle of the ${round.place} of ${piece.name} lies ${say(distance)} from an edge; ${error ? `under ${say(limit)}, one diameter, it tears out` : `it should be ${say(limit)}, one and a half diameters`}.`,
      value: say(distance),
      limit: `at least ${say(limit)}`,
      mend: `Use a smaller hole, or more leather round it (${[...new Set([widthOf(job, piece), sectionOf(piece)])].join(", ")}).`,
    },
  ];
}

/**
 * Punched holes and slot ends lie 1.5 diameters from every edge, their own piece's cutouts counted; under
 * 1.0 is an error. Awl slits and the tongue's slot have rules of their own.
 */
export const holesToEdge = rule(
  "holes-to-edge",
  "punched holes and slot ends keep 1.5 diameters from every edge",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      roundsOf(piece).flatMap((round) => tooNear(job, piece, round, context)),
    ),
);
