import type { TurnBack } from "../../model/piece.ts";
import { skiveOf } from "../measure/dimensions.ts";
import { halfWayRound } from "../measure/folded.ts";
import { orderLength, say, sayShare } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

/** Strain of the grain at which it may crack; common practice, no source. */
const STRAIN_CAUTION = 0.35;
const STRAIN_ERROR = 0.5;
const SLACK = 1e-9;
/** Leather thinner than this is not left in a fold; common practice, no source. */
const THINNEST_MM = 0.8;

/** How much the grain is stretched where the leather bends sharpest. */
function strainOf(t: TurnBack): number {
  const fibre = t.neutral * t.wrapThickness;
  const radii = halfWayRound(t.bar, fibre)
    .bends.filter((b) => b.bend !== 0)
    .map((b) => 1 / b.bend);
  const sharpest = Math.min(...radii);
  // The grain lies outside the neutral fibre, on a wider bend; what it is longer by is its strain.
  return (sharpest + t.wrapThickness - fibre) / sharpest - 1;
}

/** The thickest wrap whose grain is strained no more than the limit, on the same bar; mm. */
function thickestWrap(t: TurnBack, limit: number): number {
  let [low, high] = [0, t.wrapThickness];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (strainOf({ ...t, wrapThickness: middle }) <= limit) low = middle;
    else high = middle;
  }
  return low;
}

/** The leather in a fold is thin enough for what it goes round. */
export const foldStrain = rule("fold-strain", "the leather is thin enough for its fold", (job, context) =>
  job.pieces.flatMap((piece) =>
    piece.turnBacks.flatMap((t): Remark[] => {
      const strain = strainOf(t);
      if (!(strain > STRAIN_CAUTION + SLACK)) return [];
      const error = strain > STRAIN_ERROR + SLACK;
      const limit = error ? STRAIN_ERROR : STRAIN_CAUTION;
      // Down to what a skiving knife can be set to.
      const thin = Math.floor(thickestWrap(t, STRAIN_CAUTION) * 100) / 100;
      const dimension = skiveOf(piece, t);
      const change = thin >= THINNEST_MM ? { change: { dimension, value: orderLength(thin) } } : {};
      return [
        {
          severity: error ? "error" : "caution",
          piece: piece.id,
          place: `turn-back ${t.id}`,
          message: `The grain of ${piece.name} is stretched ${sayShare(strain)} in the fold ${t.id}; over ${sayShare(limit)} it ${error ? "cracks" : "may crack"}. Damp before folding.`,
          value: sayShare(strain),
          limit: `at most ${sayShare(limit)}`,
          mend: `Skive the fold to ${say(thin, "thickness", context)} or thinner (${dimension}), or ${t.bar.kind === "round" ? "choose a thicker bar" : "round the edges of what it goes round"}.`,
          ...change,
        },
      ];
    }),
  ),
);
