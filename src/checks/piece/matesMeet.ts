import type { Hole, Piece, TurnBack } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { alongLeg, type Folded, folded } from "../measure/folded.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** How far two mates may miss each other: the arithmetic's tolerance, not the bench's. */
export const MEET_MM = 0.05;
/** A difference that lies on the tolerance by rounding is within it. */
const SLACK_MM = 1e-9;

type Bent = { readonly piece: Piece; readonly t: TurnBack; readonly fold: Folded; readonly context: Context };

const fault = ({ piece, t }: Bent, hole: Hole, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece: piece.id,
  place: `hole ${hole.id}`,
  at: hole.at,
  message,
  value,
  limit,
  mend: `Don't cut: the drawing contradicts itself. Report it with the order; or punch the back leg of the turn-back ${t.id} after folding, through the front leg.`,
});

/** Where a hole lies when folded, along the folded strap from the bar's centre; on its own leg. */
const folds = ({ t, fold }: Bent, hole: Hole, leg: 1 | -1): number => {
  const s = alongLeg(t, hole.at[0]) * leg;
  return s < 0 ? -Infinity : fold.at(s).x;
};

function pairMisses(bent: Bent, front: Hole, back: Hole): readonly Remark[] {
  const { piece, context } = bent;
  const along = folds(bent, front, 1) - folds(bent, back, -1);
  const astray = !Number.isFinite(along);
  const miss = astray ? Infinity : Math.hypot(along, front.at[1] - back.at[1]);
  if (miss <= MEET_MM + SLACK_MM) return [];
  const by = astray ? "on the wrong leg" : sayLength(miss, context);
  const words = astray ? "don't lie on their own legs of the fold" : `miss each other by ${by} when folded`;
  const message = `The mated holes ${front.id} and ${back.id} of ${piece.name} ${words}.`;
  return [fault(bent, back, message, by, `at most ${sayLength(MEET_MM, context)}`)];
}

/** Uses of holes that fix the legs to each other. */
const FIXES = new Set(["stitch", "screw", "rivet"]);

/** The fixing on the front leg that lies nearest the bar: the first mate, else the first stitch or screw. */
function firstFixing({ piece, t }: Bent): Hole | undefined {
  const first = t.mates[0]?.[0];
  if (first !== undefined) return piece.holes.find((h) => h.id === first);
  const along = (h: Hole): number => alongLeg(t, h.at[0]);
  const sewn = piece.seams.filter((s) => s.turnBack === t.id).flatMap((s) => s.holes);
  const fixes = (h: Hole): boolean => (sewn.length > 0 ? sewn.includes(h.id) : FIXES.has(h.use));
  return piece.holes.filter((h) => fixes(h) && along(h) > 0).sort((a, b) => along(a) - along(b))[0];
}

function clampMisses(bent: Bent): readonly Remark[] {
  const { piece, t, context } = bent;
  const hole = firstFixing(bent);
  if (!hole) {
    return [
      {
        severity: "error",
        piece: piece.id,
        place: `turn-back ${t.id}`,
        at: [t.centre, 0],
        message: `Nothing holds the turn-back ${t.id} of ${piece.name} to its strap: no stitch, screw or rivet lies on its front leg.`,
        value: "no fixing",
        limit: "stitches, screws or rivets",
        mend: `Choose how it is fixed, under ${sectionOf(piece)}.`,
      },
    ];
  }
  const at = folds(bent, hole, 1);
  // A front hole on the back leg is the pair's own fault.
  if (!Number.isFinite(at)) return [];
  const off = Math.abs(at - t.clamp);
  if (off <= MEET_MM + SLACK_MM) return [];
  const message = `The hole ${hole.id} of ${piece.name} comes to lie ${sayLength(at, context)} from the bar's centre when folded, not ${sayLength(t.clamp, context)} as the turn-back ${t.id} was worked out for.`;
  return [
    fault(
      bent,
      hole,
      message,
      sayLength(at, context),
      `${sayLength(t.clamp, context)}, give or take ${sayLength(MEET_MM, context)}`,
    ),
  ];
}

function bentMisses(bent: Bent): readonly Remark[] {
  const hole = (id: string): Hole | undefined => bent.piece.holes.find((h) => h.id === id);
  const pairs = bent.t.mates.flatMap(([f, b]) => {
    const [front, back] = [hole(f), hole(b)];
    return front && back ? pairMisses(bent, front, back) : [];
  });
  return [...pairs, ...clampMisses(bent)];
}

/**
 * Folds the drawn data along the neutral fibre: mated holes must meet within 0.05 mm, and the fixing nearest
 * the bar must lie where the turn-back was clamped. A turn-back that can't be folded is another rule's.
 */
export const matesMeet = rule(
  "mates-meet",
  "mated holes meet when the drawn piece is folded",
  (job, context) =>
    measurable(job).flatMap((piece) =>
      piece.turnBacks.flatMap((t) => {
        const fold = folded(t);
        return fold ? bentMisses({ piece, t, fold, context }) : [];
      }),
    ),
);
