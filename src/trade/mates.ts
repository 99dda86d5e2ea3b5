import { pathLength, pointAt, subPath, tangentAt } from "../geometry/length.ts";
import { closedPath, type Path } from "../geometry/path.ts";
import type { SeamJoin } from "../model/article.ts";
import type { Finding } from "../model/finding.ts";
import type { Hole, Piece, SeamEdge, SeamLine } from "../model/piece.ts";
import type { Units } from "../model/say.ts";
import { ironFindings } from "./ironPitch.ts";
import { type SeamRun, seamRuns } from "./seamRuns.ts";
import { SLIT_SHARE, SLIT_SLANT } from "./stitchRow.ts";
import { bentSpacing, ironSpacing, type Spacing, spreadSpacing } from "./stitchSpacing.ts";

export type StitchMode = "spread" | "iron";
export type StitchMarks = "awl slits" | "round holes" | "groove";

/** What lays a seam's holes. All sides run in one direction; all are open, or all closed. Lengths mm. */
export type MatesInput = {
  /** The seam's name, "front to gusset". */
  readonly name: string;
  readonly sides: readonly SeamEdge[];
  readonly pitch: number;
  readonly mode: StitchMode;
  readonly marks: StitchMarks;
  /** Length of an awl's slit, or diameter of a round hole. */
  readonly markSize: number;
  /** Thickness of all that the needle goes through. */
  readonly stack: number;
  readonly backStitches: readonly [start: number, end: number];
  /** What sets the seam's length. */
  readonly dimension: string;
  /** Runs whose sides are bent when they are joined, by the run's name. */
  readonly bends?: Readonly<Record<string, RunBend>>;
  /** Runs without holes, by name. */
  readonly unstitched?: readonly string[];
  /** What sets the pitch. */
  readonly pitchDimension: string;
  /** −1 for a side whose slits lean the other way, so that they lie over their mates' when joined. */
  readonly slants?: readonly (1 | -1)[];
  /** Units of the findings' words; mm unless said. */
  readonly units?: Units;
};
/** How a run is bent when it is joined: each side's neutral radius, in the sides' order. */
export type RunBend = {
  readonly angle: number;
  readonly radii: readonly number[];
  /** What sets the bend; the seam's dimension unless said. */
  readonly dimension?: string;
};
export type LaidSide = {
  readonly piece: string;
  readonly seams: readonly SeamLine[];
  readonly holes: readonly Hole[];
};
export type Laid = {
  readonly sides: readonly LaidSide[];
  readonly joins: readonly SeamJoin[];
  readonly findings: readonly Finding[];
};

/** A run with its stitches and the numbers of its holes. */
type LaidRun = {
  readonly run: SeamRun;
  readonly name: string;
  readonly spacing: Spacing;
  readonly numbers: readonly number[];
  /** Length of its longest side, which has the pitch that was asked. */
  readonly longest: number;
  /** Whether the thread begins here, or ends. */
  readonly ends: readonly [start: boolean, end: boolean];
};

const spanOf = (run: SeamRun, side: number): number => {
  const [from, to] = run.spans[side]!;
  return Math.max(0, to - from);
};

/** An iron has one pitch, so a bend in which each side has its own is spread, whatever pricks the rest. */
function spacingOf(i: MatesInput, run: SeamRun, longest: number, shortest: number): Spacing {
  if (i.bends?.[run.name]) return bentSpacing(longest, shortest, i.pitch);
  return i.mode === "iron" ? ironSpacing(longest, i.pitch) : spreadSpacing(longest, i.pitch);
}

/** Lays the stitches run by run and numbers the holes on through the seam. */
function layRuns(i: MatesInput, runs: readonly SeamRun[], closed: boolean): readonly LaidRun[] {
  const bare = (k: number): boolean => {
    const run = closed ? runs.at(k % runs.length) : runs[k];
    return run === undefined || (i.unstitched ?? []).includes(run.name);
  };
  const laid: LaidRun[] = [];
  let last = 0;
  runs.forEach((run, k) => {
    if (bare(k)) return;
    const lengths = run.spans.map((_, side) => spanOf(run, side));
    const longest = Math.max(...lengths);
    const spacing = spacingOf(i, run, longest, Math.min(...lengths));
    const first = k > 0 && !bare(k - 1) ? last : last + 1;
    last = first + spacing.stitches;
    // The last run of a closed seam ends in the hole that the first began with.
    const closes = closed && k === runs.length - 1 && !bare(0);
    const numbers = spacing.shares.map((_, h) => (closes && h === spacing.stitches ? 1 : first + h));
    const ring = closed && runs.every((_, r) => !bare(r));
    const ends = ring ? ([k === 0, k === runs.length - 1] as const) : ([bare(k - 1), bare(k + 1)] as const);
    laid.push({ run, name: `${i.name}: ${run.name}`, spacing, numbers, longest, ends });
  });
  return laid;
}

/** The stretch of a side's path that a run lies on; a run all round a closed path is closed. */
function pathOf({ path }: SeamEdge, run: SeamRun, side: number): Path {
  const [from, to] = run.spans[side]!;
  const total = pathLength(path);
  const whole = run.name === "edge";
  if (whole && from === 0) return path;
  const part = subPath(path, from, Math.max(from, path.closed ? Math.min(to, from + total) : to));
  return whole && path.closed ? closedPath(part.start, part.segments) : part;
}

const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "es"}`;

/** What the maker must know of a run: its back-stitches, and a pitch of its own in a bend. */
function noteOf(i: MatesInput, r: LaidRun, pitch: number, side: number): string | undefined {
  const [start, end] = i.backStitches.map((n, e) => (r.ends[e] ? n : 0)) as [number, number];
  const back = (n: number): string => plural(n, "back-stitch");
  const backStitches =
    start > 0 && start === end
      ? [`${back(start)} at each end`]
      : [
          ...(start > 0 ? [`${back(start)} at the start`] : []),
          ...(end > 0 ? [`${back(end)} at the end`] : []),
        ];
  const bent = i.bends?.[r.run.name] && spanOf(r.run, side) < r.longest * 0.99;
  const own = bent ? [`stitches ${Math.round(pitch * 100) / 100} mm apart here, to meet its mate`] : [];
  const notes = [...backStitches, ...own];
  return notes.length > 0 ? notes.join("; ") : undefined;
}

function laySide(i: MatesInput, laid: readonly LaidRun[], side: number): LaidSide {
  const edge = i.sides[side]!;
  const slant = SLIT_SLANT * (i.slants?.[side] ?? 1);
  const holes = new Map<number, Hole>();
  const seams = laid.map((r, k): SeamLine => {
    const path = pathOf(edge, r.run, side);
    const length = pathLength(path);
    const pitch = length * r.spacing.pitchShare;
    const round = i.marks === "round holes";
    r.numbers.forEach((number, h) => {
      if (holes.has(number)) return;
      const s = r.spacing.shares[h]! * length;
      holes.set(number, {
        id: `${edge.id}.${number}`,
        kind: round ? "round" : "awl",
        at: pointAt(path, s),
        size: round ? i.markSize : Math.min(i.markSize, SLIT_SHARE * pitch),
        angle: round ? 0 : tangentAt(path, s) + slant,
        use: "stitch",
      });
    });
    const numbers = path.closed ? r.numbers.slice(0, -1) : r.numbers;
    const note = noteOf(i, r, pitch, side);
    return {
      id: laid.length === 1 ? edge.id : `${edge.id}.${k + 1}`,
      path,
      pitchAsked: i.pitch,
      pitch,
      stitches: r.spacing.stitches,
      inset: edge.inset,
      holes: numbers.map((n) => `${edge.id}.${n}`),
      numberFrom: r.numbers[0]!,
      joins: r.name,
      ...(i.marks === "groove" ? { groove: true as const } : {}),
      ...(note === undefined ? {} : { note }),
    };
  });
  return { piece: edge.piece, seams, holes: [...holes.values()] };
}

/** Breaks that the sides have in different orders can't be matched. */
const clash = (i: MatesInput, name: string): Finding => ({
  rule: "mates-agree",
  severity: "error",
  piece: i.sides[0]!.piece,
  place: `seam ${i.name}`,
  message: `In the seam ${i.name} the place "${name}" doesn't come in the same order on ${[...new Set(i.sides.map((s) => s.piece))].join(" and ")}.`,
  value: name,
  limit: "one order on all sides",
  mend: `Change what sets the seam's length: ${i.dimension}.`,
});

/**
 * Lays the holes of a seam on all its sides, run by run (see `seamRuns`): each run has one count of stitches,
 * from the longest side's pitch (see `bentSpacing` for bends); on a side that is shorter there the same holes lie closer, so that hole i of
 * each side meets hole i of every other when they are joined. A run's seam is `<edge id>`, or
 * `<edge id>.1`, `.2` … of several stitched runs; holes are `<edge id>.<number>`, numbered on through the
 * seam; a hole between two runs belongs to both.
 */
export function layMates(i: MatesInput): Laid {
  const closed = i.sides[0]?.path.closed ?? false;
  if (i.sides.some((s) => s.path.closed !== closed))
    throw new RangeError(`layMates: ${i.name} has open and closed sides`);
  const lengths = i.sides.map((s) => pathLength(s.path));
  // A side without a length is reported with its piece; there is nothing to lay on it.
  if (lengths.length === 0 || !lengths.every((l) => l > 0 && l < Infinity) || !(i.pitch > 0))
    return { sides: i.sides.map(({ piece }) => ({ piece, seams: [], holes: [] })), joins: [], findings: [] };
  const { runs, clashes } = seamRuns(i.sides, i.pitch / 2);
  const laid = layRuns(i, runs, closed);
  const sides = i.sides.map((_, side) => laySide(i, laid, side));
  const joins = laid.map((r, k): SeamJoin => {
    const bend = i.bends?.[r.run.name];
    return {
      kind: "seam",
      name: r.name,
      sides: sides.map((s) => ({ piece: s.piece, seam: s.seams[k]!.id })),
      ...(bend ? { bend: { angle: bend.angle, radii: bend.radii } } : {}),
      stack: i.stack,
      backStitches: [r.ends[0] ? i.backStitches[0] : 0, r.ends[1] ? i.backStitches[1] : 0],
      dimension: bend?.dimension ?? i.dimension,
    };
  });
  const findings = [...clashes.map((name) => clash(i, name)), ...ironFindings(i, laid)];
  return { sides, joins, findings };
}

/** The piece with the seams and holes that were laid on it; sides of other pieces are passed over. */
export function withSeams(piece: Piece, laid: readonly LaidSide[]): Piece {
  const own = laid.filter((side) => side.piece === piece.id);
  return {
    ...piece,
    seams: [...piece.seams, ...own.flatMap((side) => side.seams)],
    holes: [...piece.holes, ...own.flatMap((side) => side.holes)],
  };
}
