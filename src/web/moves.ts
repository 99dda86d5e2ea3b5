import type { PagePiece, PageSize, PageView } from "../job.ts";
import type { Moved } from "./state.ts";

/** Sizes nearer than this are the same, mm: what is said of a size is rounded to 0.1 mm or a 64th of an inch. */
const SAME_SIZE = 0.005;

function movedOf(piece: string, before: readonly PageSize[], after: readonly PageSize[]): readonly Moved[] {
  const was = new Map(before.map((s) => [s.name, s]));
  return after.flatMap((s) => {
    const old = was.get(s.name);
    const moved = old !== undefined && Math.abs(old.value - s.value) > SAME_SIZE && old.says !== s.says;
    return moved ? [{ piece, name: s.name, before: old.says, after: s.says }] : [];
  });
}

const NO_PIECE: Pick<PagePiece, "sizes"> = { sizes: [] };

const saying = (m: Moved): string => `${m.name}: ${m.before} → ${m.after}`;

/** The sizes that a change moved, of the whole first, then piece by piece; what a piece tells is not told twice. */
export function movedSizes(before: PageView, after: PageView): readonly Moved[] {
  if (before.slug !== after.slug) return [];
  const was = new Map(before.pieces.map((p) => [p.id, p]));
  const onPieces = after.pieces.flatMap((p) => movedOf(p.name, (was.get(p.id) ?? NO_PIECE).sizes, p.sizes));
  const told = new Set(onPieces.map(saying));
  return [...movedOf("", before.sizes, after.sizes).filter((m) => !told.has(saying(m))), ...onPieces];
}
