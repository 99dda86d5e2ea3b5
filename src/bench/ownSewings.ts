import { boundsOf } from "../geometry/bounds.ts";
import type { Join, Made } from "../model/article.ts";
import type { Piece, SeamLine, TurnBack } from "../model/piece.ts";
import { cutSize } from "./cutSize.ts";
import { foldWords } from "./foldWords.ts";
import { BACK_STITCHES, type LineName, meanPitch, type Sewing, type Stretch } from "./sewing.ts";

// What is sewn on one piece by itself.

/** What is sewn on a piece by itself: its turn-backs' rows, a keeper's ends, and the rest. */
export function ownSewings(made: Made, piece: Piece, lines: readonly SeamLine[]): readonly Sewing[] {
  const folded = piece.turnBacks.flatMap((t) =>
    likeRows(lines.filter((s) => s.turnBack === t.id)).map((rows) => turnBackOf(made, piece, t, rows)),
  );
  const rest = lines.filter((s) => !piece.turnBacks.some((t) => t.id === s.turnBack));
  const join = keeperJoin(made, piece);
  if (join && rest.length > 0) return [...folded, keeperOf(piece, rest, join)];
  return [...folded, ...rest.map((line) => loneRow(piece, line))];
}

/** Rows of one count and pitch, as the two of a turn-back are. */
function likeRows(lines: readonly SeamLine[]): readonly (readonly SeamLine[])[] {
  const alike = new Map<string, readonly SeamLine[]>();
  for (const s of lines) {
    const key = `${s.stitches} ${s.pitch.toFixed(2)}`;
    alike.set(key, [...(alike.get(key) ?? []), s]);
  }
  return [...alike.values()];
}

const named = (piece: Piece, lines: readonly SeamLine[]): readonly LineName[] =>
  lines.map((s) => ({ piece: piece.id, line: s.id }));

/** A short row can't be sewn back further than to its other end. */
const openStretch = ({ stitches }: SeamLine): Stretch => ({
  stitches,
  backStitches: 2 * Math.min(BACK_STITCHES, stitches),
});

/**
 * The rows of a turn-back go through both its legs and what is caught between them, a fixed keeper too where
 * they pass over it; each is sewn by itself.
 */
function turnBackOf(made: Made, piece: Piece, t: TurnBack, rows: readonly SeamLine[]): Sewing {
  const words = (foldWords(piece, t.id) ?? t.id).replace("fold ", "turn-back ");
  const caught = Math.max(t.caught, ...rows.map((r) => keeperUnder(made, piece, r)));
  return {
    name: `${piece.name}, ${words}${rows.length > 1 ? ", each edge" : ""}`,
    lines: named(piece, rows),
    times: piece.count * rows.length,
    stretches: [openStretch(rows[0]!)],
    pitch: meanPitch([rows]),
    stack: t.frontThickness + t.backThickness + caught,
  };
}

/** Thickness of the keeper that a row passes over, mm; its place on the strap is called what the keeper is. */
function keeperUnder(made: Made, piece: Piece, row: SeamLine): number {
  const box = boundsOf(row.path);
  const under = piece.zones.filter((z) => {
    const { minX, maxX } = boundsOf(z.outline);
    return z.kind === "keeper" && minX < box.maxX && maxX > box.minX;
  });
  return Math.max(
    0,
    ...made.pieces
      .filter((p) => under.some((z) => z.label === p.name.toLowerCase()))
      .map((p) => endsTogether(p, keeperJoin(made, p))),
  );
}

type KeeperJoin = Extract<Join, { readonly kind: "keeper round stack" }>;

const keeperJoin = (made: Made, { id }: Piece): KeeperJoin | undefined =>
  made.joins.find((j): j is KeeperJoin => j.kind === "keeper round stack" && j.piece === id);

/** A keeper's ends where they meet: both where they lap, else one, thinned as they are, mm. */
function endsTogether(keeper: Piece, join: KeeperJoin | undefined): number {
  const thinned = keeper.zones.flatMap((z) => (z.kind === "skive" && z.to !== undefined ? [z.to] : []));
  const end = Math.max(0, ...thinned) || keeper.leather.thickness;
  return join && join.lap > 0 ? 2 * end : end;
}

/**
 * A keeper's two ends are sewn to each other once: lapped through both; butted from row to row, out of one edge
 * and into the other.
 */
function keeperOf(piece: Piece, rows: readonly SeamLine[], join: KeeperJoin): Sewing {
  const [first, last] = [rows[0]!.path.start[0], rows.at(-1)!.path.start[0]];
  const across = cutSize(piece).length - Math.abs(last - first);
  const together = endsTogether(piece, join);
  return {
    name: `${piece.name}, its ends`,
    lines: named(piece, rows),
    times: piece.count,
    stretches: [openStretch(rows[0]!)],
    pitch: meanPitch([rows]),
    stack: join.lap > 0 ? together : Math.max(together, across),
  };
}

const loneRow = (piece: Piece, line: SeamLine): Sewing => ({
  name: `${piece.name}, row ${line.id}`,
  lines: named(piece, [line]),
  times: piece.count,
  stretches: [openStretch(line)],
  pitch: meanPitch([[line]]),
  stack: piece.leather.thickness,
});
