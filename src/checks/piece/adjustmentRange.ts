import type { Fit, Made } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { adjustments, drawnBillets, rowLength } from "../measure/billet.ts";
import { measurable } from "../measure/sound.ts";
import { CONTRADICTION, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Sums of drawn lengths agree within this. */
const DRAWN_MM = 0.05;
const SLACK_MM = 1e-6;

function misses(job: Made, fit: Fit, context: Context): readonly Remark[] {
  const under = fit.wanted < fit.shortest - SLACK_MM;
  const over = fit.wanted > fit.longest + SLACK_MM;
  if (!under && !over) return [];
  const say = (mm: number): string => sayLength(mm, context);
  const by = under ? fit.shortest - fit.wanted : fit.wanted - fit.longest;
  const named = adjustments(job).map(({ join }) => join.dimension);
  const dimension = [...new Set(named)].join(", ") || "the measures";
  return [
    {
      severity: "error",
      piece: "",
      place: fit.name,
      message: `The ${fit.name} is to be ${say(fit.wanted)}; the holes give ${say(fit.shortest)} to ${say(fit.longest)}, ${say(by)} too ${under ? "long" : "short"}.`,
      value: say(fit.wanted),
      limit: `${say(fit.shortest)} to ${say(fit.longest)}`,
      mend: `Punch more holes or space them wider (${dimension}), or make the strap ${under ? "shorter" : "longer"}.`,
    },
  ];
}

/** True when each of the told holes is drawn, as far from one of the piece's ends as it is told. */
const drawnAs = (piece: Piece, told: readonly number[]): boolean =>
  drawnBillets(piece).some((drawn) =>
    told.every((t) => drawn.some((d) => Math.abs(d - t) <= DRAWN_MM + SLACK_MM)),
  );

/** Holes as the ends' joins tell them against the holes that are drawn. */
function drawnOtherwise(job: Made, context: Context): readonly Remark[] {
  const ends = adjustments(job);
  return ends.flatMap(({ join, piece }) => {
    const told = ends.reduce((sum, end) => sum + (end.piece === piece ? end.join.holes.length : 0), 0);
    const drawn = drawnBillets(piece)[0]?.length ?? 0;
    if (drawn === told && drawnAs(piece, join.holes)) return [];
    const words = join.holes.map((d) => sayLength(d, context)).join("; ");
    const message = `The buckle holes of ${piece.name} are not drawn as its ${join.side} end was worked out: at ${words} from the tip.`;
    return [
      contradiction(piece.id, `${join.side} end`, message, `${drawn} holes, or drawn elsewhere`, words),
    ];
  });
}

/** The range that a fit table claims is what the drawn rows of holes give together. */
function rangeOtherwise(job: Made, fit: Fit, context: Context): readonly Remark[] {
  const ends = adjustments(job).filter(({ join }) => !join.outsideFit);
  if (ends.length === 0 || measurable(job).length < job.pieces.length) return [];
  const drawn = ends.reduce((sum, { join }) => sum + rowLength(join.holes), 0);
  const told = fit.longest - fit.shortest;
  if (Math.abs(drawn - told) <= DRAWN_MM + SLACK_MM) return [];
  const [is, says] = [sayLength(drawn, context), sayLength(told, context)];
  return [
    contradiction(
      "",
      fit.name,
      `The drawn holes adjust the ${fit.name} by ${is}; the fit table says ${says}.`,
      says,
      is,
    ),
  ];
}

const contradiction = (
  piece: string,
  place: string,
  message: string,
  value: string,
  limit: string,
): Remark => ({
  severity: "error",
  piece,
  place,
  message,
  value,
  limit,
  mend: CONTRADICTION,
});

/** The drawn holes give the range the fit table says, and the measure lies in it. */
export const adjustmentRange = rule(
  "adjustment-range",
  "the adjustment covers the measure that was taken",
  (job, context) => [
    ...(job.fit ? [...misses(job, job.fit, context), ...rangeOtherwise(job, job.fit, context)] : []),
    ...drawnOtherwise(job, context),
  ],
);
