import type { FixedJoin, Made, SeamJoin } from "../model/article.ts";
import type { Piece, SeamLine } from "../model/piece.ts";
import { BACK_STITCHES, keyOf, type LineName, meanPitch, type Sewing, type Stretch } from "./sewing.ts";

// Seams between pieces as they are sewn.

/** The runs of a seam share what stands before the colon. */
const seamName = (j: SeamJoin): string => j.name.split(": ")[0]!;

type Sides = readonly { readonly piece: Piece; readonly line: SeamLine }[];

/** The article's seams by their names, each with what is caught in it; then rows that fix parts and are no seam's. */
export function seamSewings(made: Made): readonly Sewing[] {
  const seams = new Map<string, readonly SeamJoin[]>();
  for (const j of made.joins)
    if (j.kind === "seam") seams.set(seamName(j), [...(seams.get(seamName(j)) ?? []), j]);
  const stitched = made.joins.filter((j): j is FixedJoin => j.kind === "fixed" && j.by === "stitch");
  const sewn = [...seams].map(([name, runs]) => seamOf(made, name, runs));
  const caught = stitched.map((j) => ({ join: j, lines: linesAt(made, j) }));
  const joined = sewn.map((s) => withCaught(s, caught));
  const lone = caught.filter(
    (c) => !c.lines.some((l) => joined.some((s) => s.lines.some((o) => same(o, l)))),
  );
  return [...joined, ...lone.map(({ join, lines }) => loneFixed(made, join, lines))];
}

const same = (a: LineName, b: LineName): boolean => a.piece === b.piece && a.line === b.line;

function lineOf(made: Made, piece: string, line: string): Sides {
  const p = made.pieces.find(({ id }) => id === piece);
  const s = p?.seams.find(({ id }) => id === line);
  return p && s ? [{ piece: p, line: s }] : [];
}

function seamOf(made: Made, name: string, joins: readonly SeamJoin[]): Sewing {
  const runs = joins.map((j) => ({
    join: j,
    sides: j.sides.flatMap((s) => lineOf(made, s.piece, s.seam)),
  }));
  const some = runs.filter((r) => r.sides.length > 0);
  return {
    name,
    lines: some.flatMap((r) => r.sides.map((s) => ({ piece: s.piece.id, line: s.line.id }))),
    times: Math.max(1, ...some.map((r) => timesOf(r.sides.map((s) => s.piece)))),
    stretches: stretchesOf(
      some.map((r) => ({ line: r.sides[0]!.line, back: r.join.backStitches[0] + r.join.backStitches[1] })),
    ),
    pitch: meanPitch(some.map((r) => r.sides.map((s) => s.line))),
    stack: Math.max(0, ...joins.map((j) => j.stack)),
  };
}

/**
 * How often a seam is sewn: as often as the piece that is in all of its sewings is there, each side of it that is
 * sewn counted. Two handles go on one front and one back: twice.
 */
function timesOf(pieces: readonly Piece[]): number {
  const sides = (p: Piece): number => pieces.filter(({ id }) => id === p.id).length;
  return Math.max(0, ...pieces.map((p) => p.count * sides(p)));
}

type Run = { readonly line: SeamLine; readonly back: number };

/** Runs that share a hole are sewn on, one after the other; where none is shared the thread ends. */
function stretchesOf(runs: readonly Run[]): readonly Stretch[] {
  let groups: readonly (readonly Run[])[] = [];
  for (const run of runs) {
    const meets = (g: readonly Run[]): boolean =>
      g.some((o) => o.line.holes.some((h) => run.line.holes.includes(h)));
    groups = [...groups.filter((g) => !meets(g)), [...groups.filter(meets).flat(), run]];
  }
  return groups.map((g) => ({
    stitches: g.reduce((n, r) => n + r.line.stitches, 0),
    backStitches: g.reduce((n, r) => n + r.back, 0),
  }));
}

/** The lines that have any of the holes which a stitched join goes through. */
const linesAt = (made: Made, j: FixedJoin): readonly LineName[] =>
  j.sides.flatMap(({ piece, holes }) =>
    (made.pieces.find(({ id }) => id === piece)?.seams ?? [])
      .filter((s) => s.holes.some((h) => holes.includes(h)))
      .map((s) => ({ piece, line: s.id })),
  );

type Caught = { readonly join: FixedJoin; readonly lines: readonly LineName[] };

/** A seam with what is caught in it, as a patch behind a strap's box. */
function withCaught(s: Sewing, caught: readonly Caught[]): Sewing {
  const here = caught.filter((c) => c.lines.some((l) => s.lines.some((o) => same(o, l))));
  const more = here.flatMap((c) => c.lines).filter((l) => !s.lines.some((o) => same(o, l)));
  const unique = [...new Map(more.map((l) => [keyOf(l), l])).values()];
  return {
    ...s,
    lines: [...s.lines, ...unique],
    stack: Math.max(s.stack, ...here.map((c) => c.join.stack)),
  };
}

/** A closed row that fixes parts to each other and is no seam's. */
function loneFixed(made: Made, join: FixedJoin, lines: readonly LineName[]): Sewing {
  const first = join.sides[0]?.piece;
  const sides = lines.flatMap((l) => lineOf(made, l.piece, l.line));
  const row = sides.filter((s) => s.piece.id === first).map((s) => s.line);
  return {
    name: join.name,
    lines,
    times: Math.max(1, ...sides.map((s) => s.piece.count)),
    stretches: stretchesOf(row.map((line, i) => ({ line, back: i === 0 ? BACK_STITCHES + 1 : 0 }))),
    pitch: meanPitch(row.map((line) => [line])),
    stack: join.stack,
  };
}
