import type { Piece, Section } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { say } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

const CHECKED =
  "Have fit and strength checked by a qualified saddler or fitter, and inspect before each use.";

const weakest = (sections: readonly Section[]): Section | undefined =>
  sections.reduce<Section | undefined>(
    (least, s) => (least && least.estimate.value <= s.estimate.value ? least : s),
    undefined,
  );

/** A section with no leather left holds nothing: a hole wider than its strap, a skive to nothing. */
const empty = (s: Section): boolean => !(s.estimate.value > 0 && Number.isFinite(s.estimate.value));

function remarks(piece: Piece, context: Context): readonly Remark[] {
  const faults = piece.sections.filter(empty).map(
    (s): Remark => ({
      severity: "error",
      piece: piece.id,
      place: s.name,
      message: `No leather is left to hold ${piece.name} at this section: ${s.name}.`,
      value: say(s.estimate.value, "force", context),
      limit: "more than nothing",
      mend: `Make the strap wider, or the hole there smaller, under ${sectionOf(piece)}.`,
    }),
  );
  const least = weakest(piece.sections.filter((s) => !empty(s)));
  if (!least) return faults;
  const force = say(least.estimate.value, "force", context);
  return [
    ...faults,
    {
      severity: "note",
      piece: piece.id,
      place: least.name,
      message: `${piece.name} is weakest here: ${least.name}, about ${force}. An estimate for comparing designs, not a rating.`,
      value: force,
      mend: CHECKED,
    },
  ];
}

/** Names the weakest of each piece's sections; an estimate for comparing designs, not a rating. */
export const weakestSection = rule(
  "weakest-section",
  "the weakest section of each piece is named",
  (job, context) => job.pieces.flatMap((piece) => remarks(piece, context)),
);
