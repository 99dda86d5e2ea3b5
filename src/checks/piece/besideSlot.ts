import { boundsOf } from "../../geometry/bounds.ts";
import { distanceBetween } from "../../geometry/distance.ts";
import type { Made } from "../../model/article.ts";
import type { Cutout, Piece, TurnBack } from "../../model/piece.ts";
import { widthAcross } from "../measure/chords.ts";
import { skiveOf, tongueOf, widthOf } from "../measure/dimensions.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength, sayShare } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Least leather on each side of a tongue's slot, mm, and at least the wrap's thickness; common practice, no source. */
const LEAST_BESIDE_MM = 3;
const SLACK_MM = 1e-6;

type Case = {
  readonly job: Made;
  readonly piece: Piece;
  readonly slot: Cutout;
  readonly t: TurnBack;
  readonly context: Context;
};

function eachSide({ job, piece, slot, t, context }: Case): readonly Remark[] {
  const beside = distanceBetween(slot.outline, piece.outline);
  const least = Math.max(t.wrapThickness, LEAST_BESIDE_MM);
  if (beside >= least - SLACK_MM) return [];
  const [is, limit] = [sayLength(beside, context), sayLength(least, context)];
  return [
    {
      severity: "error",
      piece: piece.id,
      place: `tongue slot ${slot.id}`,
      at: slot.outline.start,
      message: `Beside the tongue slot ${slot.id} of ${piece.name} only ${is} of leather is left; it needs ${limit} on each side.`,
      value: is,
      limit: `at least ${limit}`,
      mend: `Make the strap wider (${widthOf(job, piece)}) or choose a buckle with a narrower tongue (${tongueOf(job, piece, slot)}).`,
    },
  ];
}

/** The least (width − hole) × thickness at any buckle hole of the job, mm²; Infinity without one. */
function leastAtBuckleHole(job: Made): number {
  const left = measurable(job).flatMap((piece) =>
    piece.holes
      .filter((h) => h.use === "buckle")
      .map((h) => ((widthAcross(piece.outline, h.at) ?? Infinity) - h.size) * piece.leather.thickness),
  );
  return Math.min(...left);
}

/** Both legs of the fold carry half the pull each, so the leather beside the slot counts twice. */
function asStrongAsBillet({ job, piece, slot, t }: Case): readonly Remark[] {
  const box = boundsOf(slot.outline);
  const width = widthAcross(piece.outline, [t.centre, (box.minY + box.maxY) / 2]);
  const billet = leastAtBuckleHole(job);
  if (width === undefined || billet === Infinity) return [];
  const both = 2 * (width - (box.maxY - box.minY)) * t.wrapThickness;
  if (both >= billet - SLACK_MM) return [];
  const share = sayShare(both / billet);
  return [
    {
      severity: "caution",
      piece: piece.id,
      place: `tongue slot ${slot.id}`,
      at: slot.outline.start,
      message: `The leather beside the tongue slot ${slot.id} of ${piece.name} is weaker than the strap at a buckle hole: it has ${share} of that section.`,
      value: share,
      limit: "at least 100 %",
      mend: `Skive the fold less (${skiveOf(piece, t)}), or make the strap wider (${widthOf(job, piece)}).`,
    },
  ];
}

/** A tongue's slot lies over its fold: the fold's centre is in it. */
function folds(piece: Piece): readonly { readonly slot: Cutout; readonly t: TurnBack }[] {
  return piece.cutouts
    .filter((c) => c.use === "tongue slot")
    .flatMap((slot) => {
      const { minX, maxX } = boundsOf(slot.outline);
      const t = piece.turnBacks.find((turnBack) => turnBack.centre > minX && turnBack.centre < maxX);
      return t ? [{ slot, t }] : [];
    });
}

/** Leather beside a tongue's slot: enough on each side, and together no weaker than the strap at a hole. */
export const besideSlot = rule(
  "beside-slot",
  "enough leather is left beside a tongue's slot",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      folds(piece).flatMap(({ slot, t }) => {
        const one = { job, piece, slot, t, context };
        return [...eachSide(one), ...asStrongAsBillet(one)];
      }),
    ),
);
