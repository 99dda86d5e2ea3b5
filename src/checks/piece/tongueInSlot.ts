import { boundsOf } from "../../geometry/bounds.ts";
import type { Join, Made } from "../../model/article.ts";
import type { Cutout, Piece, TurnBack } from "../../model/piece.ts";
import { outlinePoints, spansInside } from "../measure/chords.ts";
import { folded } from "../measure/folded.ts";
import { pieceOf } from "../measure/sound.ts";
import { tongueNeeds } from "../measure/tongue.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A solid that touches within this still goes in: what a knife can follow, ten times over. */
const FIT_MM = 0.01;
/** Places across the tongue's breadth at which the slot's length is measured; its corners among them. */
const ACROSS = 9;

type Tongue = Extract<Join, { kind: "tongue in slot" }>;
type Case = {
  readonly piece: Piece;
  readonly slot: Cutout;
  readonly t: TurnBack;
  readonly join: Tongue;
  readonly context: Context;
};

/** How far the drawn slot is open from the fold's centre over the tongue's whole breadth; undefined if it is too narrow. */
function openFor(
  slot: Cutout,
  t: TurnBack,
  breadth: number,
): { readonly front: number; readonly back: number } | undefined {
  const box = boundsOf(slot.outline);
  const middle = (box.minY + box.maxY) / 2;
  const points = outlinePoints(slot.outline);
  let [low, high] = [-Infinity, Infinity];
  for (let i = 0; i < ACROSS; i++) {
    const y = middle + (breadth / 2 - FIT_MM / 2) * ((2 * i) / (ACROSS - 1) - 1);
    const span = spansInside(points, "x", y).find(([a, b]) => a <= t.centre && b >= t.centre);
    if (!span) return undefined;
    low = Math.max(low, span[0]);
    high = Math.min(high, span[1]);
  }
  const [toLow, toHigh] = [t.centre - low, high - t.centre];
  return t.direction === 1 ? { front: toHigh, back: toLow } : { front: toLow, back: toHigh };
}

function fault(
  { piece, slot, join }: Case,
  place: string,
  message: string,
  value: string,
  limit: string,
): Remark {
  return {
    severity: "error",
    piece: piece.id,
    place: `tongue slot ${slot.id}, ${place}`,
    at: slot.outline.start,
    message,
    value,
    limit: `at least ${limit}`,
    mend: `Cut a larger slot: change ${join.dimension}, or measure the tongue again.`,
  };
}

function tooSmall(c: Case): readonly Remark[] {
  const { piece, slot, t, join, context } = c;
  const fold = folded(t);
  if (!fold) return [];
  const say = (mm: number): string => sayLength(mm, context);
  const open = openFor(slot, t, join.tongueBreadth);
  if (!open) {
    const box = boundsOf(slot.outline);
    const width = say(box.maxY - box.minY);
    return [
      fault(
        c,
        "width",
        `The tongue is ${say(join.tongueBreadth)} broad and the slot ${slot.id} of ${piece.name} only ${width} wide.`,
        width,
        say(join.tongueBreadth),
      ),
    ];
  }
  const tongue = { thickness: join.tongueThickness, openAngle: join.openAngle };
  return (["front", "back"] as const).flatMap((leg) => {
    const needs = tongueNeeds(t, fold, tongue, leg === "front");
    if (open[leg] >= needs - FIT_MM) return [];
    return [
      fault(
        c,
        `${leg} leg`,
        `The slot ${slot.id} of ${piece.name} is open ${say(open[leg])} from the fold on the ${leg} leg; the tongue needs ${say(needs)}.`,
        say(open[leg]),
        say(needs),
      ),
    ];
  });
}

const turnBackOf = (job: Made, piece: Piece, id: string): TurnBack | undefined =>
  piece.turnBacks.find((t) => t.id === id) ?? job.pieces.flatMap((p) => p.turnBacks).find((t) => t.id === id);

/** The tongue swings freely in its slot: its eye round the bar, its blade open and closed. */
export const tongueInSlot = rule(
  "tongue-in-slot",
  "a buckle's tongue swings freely in its slot",
  (job, context) =>
    job.joins.flatMap((join) => {
      if (join.kind !== "tongue in slot") return [];
      const piece = pieceOf(job, join.piece);
      const slot = piece?.cutouts.find((c) => c.id === join.cutout);
      const t = piece && turnBackOf(job, piece, join.turnBack);
      return piece && slot && t ? tooSmall({ piece, slot, t, join, context }) : [];
    }),
);
