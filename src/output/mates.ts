import type { Join, Made } from "../model/article.ts";

// What meets what when an article is put together, for job.json: hole by hole, and seam by seam.

export type HoleMate = { readonly piece: string; readonly hole: string };
export type SeamMate = { readonly piece: string; readonly seam: string };
export type Mates = {
  readonly ofHole: (piece: string, hole: string) => readonly HoleMate[];
  readonly ofSeam: (piece: string, seam: string) => readonly SeamMate[];
};

type Side = { readonly piece: string; readonly holes: readonly string[] };

/** The sides of a join whose holes meet one by one; none for other joins. */
function sidesOf(join: Join, made: Made): readonly Side[] {
  if (join.kind === "fixed") return join.sides;
  if (join.kind !== "seam") return [];
  return join.sides.map(({ piece, seam }): Side => {
    const line = made.pieces.find((p) => p.id === piece)?.seams.find((s) => s.id === seam);
    return { piece, holes: line?.holes ?? [] };
  });
}

/** One name for a part of a piece; neither may hold a line feed. */
const keyOf = (piece: string, part: string): string => `${piece}\n${part}`;

/**
 * Enters the mates of every side of a join on all its other sides, each once, in the order of the joins. Two
 * sides of one piece are not each other's: one drawing serves both ends of a bag.
 */
function enter<T extends { readonly piece: string }>(
  book: Map<string, T[]>,
  sides: readonly (readonly T[])[],
  key: (one: T) => string,
): void {
  sides.forEach((side, own) => {
    side.forEach((one, i) => {
      const known = book.get(key(one)) ?? [];
      const others = sides.flatMap((other, k) =>
        k !== own && other[i] && other[i].piece !== one.piece ? [other[i]] : [],
      );
      const fresh = others.filter((mate) => !known.some((m) => key(m) === key(mate)));
      book.set(key(one), [...known, ...fresh]);
    });
  });
}

/** The mates of every hole and of every seam line: hole i of one side meets hole i of every other. */
export function matesIn(made: Made): Mates {
  const holes = new Map<string, HoleMate[]>();
  const seams = new Map<string, SeamMate[]>();
  const holeKey = ({ piece, hole }: HoleMate): string => keyOf(piece, hole);
  for (const join of made.joins) {
    const sides = sidesOf(join, made);
    enter(
      holes,
      sides.map(({ piece, holes }) => holes.map((hole): HoleMate => ({ piece, hole }))),
      holeKey,
    );
    if (join.kind === "seam")
      enter(
        seams,
        join.sides.map((side) => [side]),
        ({ piece, seam }) => keyOf(piece, seam),
      );
  }
  return {
    ofHole: (piece, hole) => holes.get(keyOf(piece, hole)) ?? [],
    ofSeam: (piece, seam) => seams.get(keyOf(piece, seam)) ?? [],
  };
}
