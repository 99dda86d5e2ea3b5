import type { FixedJoin, Made } from "../../model/article.ts";
import type { Hole, Piece } from "../../model/piece.ts";
import { pieceOf } from "../measure/sound.ts";
import { CONTRADICTION, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** How far two holes that one rivet goes through may lie apart, mm. */
const MEET_MM = 0.2;
/** A shank that fills one hole and has this much room in another sits loose there, mm; common practice, no source. */
const LOOSE_MM = 0.5;
const SLACK_MM = 1e-6;

type Side = { readonly piece: Piece; readonly holes: readonly Hole[] };

function sidesOf(job: Made, join: FixedJoin): readonly Side[] {
  return join.sides.flatMap(({ piece: id, holes }) => {
    const piece = pieceOf(job, id);
    const found = holes.flatMap((name) => piece?.holes.find((h) => h.id === name) ?? []);
    return piece && found.length === holes.length ? [{ piece, holes: found }] : [];
  });
}

const fault = (
  join: FixedJoin,
  { piece }: Side,
  hole: Hole | undefined,
  over: Pick<Remark, "message" | "value" | "limit"> & Partial<Remark>,
): Remark => ({
  severity: "error",
  piece: piece.id,
  place: hole ? `hole ${hole.id}` : join.name,
  ...(hole ? { at: hole.at } : {}),
  mend: `Change what sets the holes: ${join.dimension}.`,
  ...over,
});

function miscounted(join: FixedJoin, a: Side, b: Side): readonly Remark[] {
  const [m, n] = [a.holes.length, b.holes.length];
  if (m === n) return [];
  return [
    fault(join, a, a.holes[0], {
      message: `"${join.name}" has ${m} holes in ${a.piece.name} and ${n} in ${b.piece.name}.`,
      value: `${m} and ${n} holes`,
      limit: "the same on all sides",
      mend: CONTRADICTION,
    }),
  ];
}

const apart = (a: Hole, b: Hole): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);

/** Laid on one another, two rows of holes meet when all distances within each are the same. */
function missing(join: FixedJoin, a: Side, b: Side, context: Context): readonly Remark[] {
  const off = a.holes.flatMap((hole, i) =>
    a.holes.slice(0, i).map((other, j) => {
      const [mine, mate] = [apart(hole, other), apart(b.holes[i]!, b.holes[j]!)];
      return { hole, other, mine, mate, by: Math.abs(mine - mate) };
    }),
  );
  const misses = off.filter((o) => !(o.by <= MEET_MM + SLACK_MM));
  if (misses.length === 0) return [];
  const { hole, other, mine, mate, by } = misses.reduce((worst, o) => (o.by > worst.by ? o : worst));
  const length = (mm: number): string => sayLength(mm, context);
  return [
    fault(join, a, hole, {
      message: `"${join.name}": the holes ${other.id} and ${hole.id} of ${a.piece.name} lie ${length(mine)} apart, their mates in ${b.piece.name} ${length(mate)}.`,
      value: length(by),
      limit: `at most ${length(MEET_MM)}`,
    }),
  ];
}

/** What goes through punched holes fills them all; a stitch asks only for the same kind of mark. */
function misfits(join: FixedJoin, a: Side, b: Side, context: Context): readonly Remark[] {
  const k = a.holes.findIndex((h, i) => {
    const mate = b.holes[i]!;
    const punched = join.by !== "stitch" && (h.kind === "awl" || mate.kind === "awl");
    const loose = join.by !== "stitch" && Math.abs(h.size - mate.size) > LOOSE_MM + SLACK_MM;
    return punched || loose;
  });
  const [hole, mate] = [a.holes[k], b.holes[k]];
  if (!hole || !mate) return [];
  const length = (mm: number): string => sayLength(mm, context);
  const awl = [hole, mate].some((h) => h.kind === "awl");
  return [
    fault(join, a, hole, {
      message: awl
        ? `A ${join.by} of "${join.name}" goes through ${hole.id} of ${a.piece.name} and ${mate.id} of ${b.piece.name}, of which one is an awl's slit.`
        : `The hole ${hole.id} of ${a.piece.name} is ${length(hole.size)} across and its mate ${mate.id} of ${b.piece.name} ${length(mate.size)}; one ${join.by} goes through both.`,
      value: awl ? "an awl's slit" : `${length(Math.abs(hole.size - mate.size))} apart in size`,
      limit: awl ? "a punched hole" : `at most ${length(LOOSE_MM)}`,
      mend: awl ? CONTRADICTION : `Give both the same hole: ${join.dimension}.`,
    }),
  ];
}

/** Holes that were made on the flat for one rivet, screw or stitch lie alike in every part, and are of a size. */
export const fixedHolesMeet = rule(
  "fixed-holes-meet",
  "holes for one rivet, screw or stitch lie alike in every part",
  (job, context) =>
    job.joins.flatMap((join) => {
      if (join.kind !== "fixed") return [];
      const [first, ...others] = sidesOf(job, join);
      if (!first) return [];
      return others.flatMap((other) => {
        const count = miscounted(join, first, other);
        return count.length > 0
          ? count
          : [...missing(join, first, other, context), ...misfits(join, first, other, context)];
      });
    }),
);
