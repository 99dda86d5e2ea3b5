import { nearestOnPath } from "../../geometry/distance.ts";
import { pathLength } from "../../geometry/length.ts";
import type { Made, SeamJoin } from "../../model/article.ts";
import type { Piece, SeamLine } from "../../model/piece.ts";
import { pieceOf } from "../measure/sound.ts";
import { CONTRADICTION, say, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** How far two mates' lengths, and two holes that meet, may lie apart, mm: what leather gives unseen. */
const AGREE_MM = 0.2;
const SLACK_MM = 1e-6;

/** One side of a run as it is drawn. */
type Side = {
  readonly piece: Piece;
  readonly seam: SeamLine;
  readonly length: number;
  /** Neutral radius where it is bent when joined; 0 where it isn't. */
  readonly radius: number;
};

function sidesOf(job: Made, join: SeamJoin): readonly Side[] {
  return join.sides.flatMap(({ piece: id, seam: name }, i) => {
    const piece = pieceOf(job, id);
    const seam = piece?.seams.find((s) => s.id === name);
    const radius = join.bend?.radii[i] ?? 0;
    return piece && seam ? [{ piece, seam, length: pathLength(seam.path), radius }] : [];
  });
}

/** |L₁ − L₂ − Θ (r₁ − r₂)|, trade.md section 4. */
const mismatch = (join: SeamJoin, a: Side, b: Side): number =>
  Math.abs(a.length - b.length - (join.bend?.angle ?? 0) * (a.radius - b.radius));

const pairs = <T>(all: readonly T[]): readonly (readonly [T, T])[] =>
  all.flatMap((a, i) => all.slice(i + 1).map((b) => [a, b] as const));

const sideWords = ({ piece, seam }: Side): string => `the seam ${seam.id} of ${piece.name}`;

function lengthsDiffer(join: SeamJoin, sides: readonly Side[], context: Context): readonly Remark[] {
  const apart = pairs(sides)
    .map(([a, b]) => ({ a, b, mm: mismatch(join, a, b) }))
    .filter(({ mm }) => mm > AGREE_MM + SLACK_MM);
  if (apart.length === 0) return [];
  const { a, b, mm } = apart.reduce((worst, p) => (p.mm > worst.mm ? p : worst));
  const length = (value: number): string => sayLength(value, context);
  const bend = join.bend;
  const cause = bend
    ? `; their bend of ${say(bend.angle, "angle", context)} at ${length(a.radius)} and ${length(b.radius)} takes up ${length(bend.angle * (a.radius - b.radius))}, so they miss each other by ${length(mm)}`
    : `; joined flat, one is ${length(mm)} too long`;
  return [
    {
      severity: "error",
      piece: a.piece.id,
      place: `seam ${a.seam.id}`,
      at: a.seam.path.start,
      message: `In "${join.name}", ${sideWords(a)} is ${length(a.length)} long and ${sideWords(b)} ${length(b.length)}${cause}.`,
      value: length(mm),
      limit: `at most ${length(AGREE_MM)}`,
      mend: `Change what sets the seam's length: ${join.dimension}.`,
    },
  ];
}

function countsDiffer(join: SeamJoin, sides: readonly Side[]): readonly Remark[] {
  return sides.slice(1).flatMap((b) => {
    const a = sides[0]!;
    const [m, n] = [a.seam.holes.length, b.seam.holes.length];
    if (m === n && a.seam.stitches === b.seam.stitches) return [];
    return [
      {
        severity: "error" as const,
        piece: a.piece.id,
        place: `seam ${a.seam.id}`,
        at: a.seam.path.start,
        message: `In "${join.name}", ${sideWords(a)} has ${a.seam.stitches} stitches and ${m} holes, ${sideWords(b)} ${b.seam.stitches} and ${n}.`,
        value: `${m} and ${n} holes`,
        limit: "the same on all sides",
        mend: `Change what sets the seam's length: ${join.dimension}.`,
      },
    ];
  });
}

/** Places of a run's holes along its drawn path, mm from its first hole on, in the order of their numbers. */
function alongOf({ piece, seam, length }: Side): readonly number[] | undefined {
  const holes = seam.holes.map((id) => piece.holes.find((h) => h.id === id));
  if (holes.some((h) => h === undefined)) return undefined;
  return holes.map((h, i) => {
    const { at } = nearestOnPath(h!.at, seam.path);
    // A closed run's first hole lies at its path's start, which is its end as well.
    return seam.path.closed && i === 0 && at > length / 2 ? at - length : at;
  });
}

/** Holes of one number must meet: the same way along both sides, or the same share of it in a bend. */
function holesMiss(join: SeamJoin, sides: readonly Side[], context: Context): readonly Remark[] {
  const [a, ...others] = sides;
  const first = a && alongOf(a);
  if (!a || !first) return [];
  return others.flatMap((b) => {
    const second = alongOf(b);
    if (second?.length !== first.length) return [];
    const stretch = join.bend ? b.length / a.length : 1;
    const misses = first.map((s, i) => Math.abs(s * stretch - second[i]!));
    const worst = Math.max(...misses);
    if (!(worst > AGREE_MM + SLACK_MM)) return [];
    const k = misses.indexOf(worst);
    const [mine, mate] = [a.seam.holes[k]!, b.seam.holes[k]!];
    const miss = sayLength(worst, context);
    return [
      {
        severity: "error" as const,
        piece: a.piece.id,
        place: `hole ${mine}`,
        at: a.piece.holes.find((h) => h.id === mine)!.at,
        message: `In "${join.name}", the hole ${mine} of ${a.piece.name} and its mate ${mate} of ${b.piece.name} lie ${miss} apart along the seam.`,
        value: miss,
        limit: `at most ${sayLength(AGREE_MM, context)}`,
        mend: CONTRADICTION,
      },
    ];
  });
}

/**
 * Mated seams agree, run by run, as drawn: one count of stitches, lengths that differ by no more than their
 * bend takes up, and hole i of one side where hole i of every other is.
 */
export const matesAgree = rule(
  "mates-agree",
  "mated seams have the same stitches and lengths, and their holes meet",
  (job, context) =>
    job.joins.flatMap((join) => {
      if (join.kind !== "seam") return [];
      const sides = sidesOf(job, join);
      const found = [...countsDiffer(join, sides), ...lengthsDiffer(join, sides, context)];
      // Where lengths or counts differ the holes can't meet; saying so again helps nobody.
      return found.length > 0 ? found : holesMiss(join, sides, context);
    }),
);
