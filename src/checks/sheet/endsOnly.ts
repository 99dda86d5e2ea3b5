import { boundsOf } from "../../geometry/bounds.ts";
import type { Piece } from "../../model/piece.ts";
import type { Kept } from "../../model/sheet.ts";
import { outlinePoints } from "../measure/chords.ts";
import { drawnParts, OUTLINE, piecesOnPlates, ROUGH } from "../measure/drawn.ts";
import { BAD_SHEETS } from "../measure/words.ts";
import { type Remark, sheetRule } from "../rule.ts";

/** A part left out of the print runs straight within this. */
const LEVEL_MM = 0.01;

const fault = (piece: Piece, place: string, words: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece: piece.id,
  place,
  message: `${words}.`,
  value,
  limit,
  mend: BAD_SHEETS,
});

type Stretch = readonly [from: number, to: number];

/** Stretches of a piece's x that are left out when its ends alone are printed. */
function leftOut(piece: Piece, kept: readonly Kept[]): readonly Stretch[] {
  const { minX, maxX } = boundsOf(piece.outline);
  const ends = [minX, ...kept.map(([, to]) => to)];
  const starts = [...kept.map(([from]) => from), maxX];
  return ends.map((end, i): Stretch => [end, starts[i]!]).filter(([from, to]) => to - from > LEVEL_MM);
}

/** True when the outline runs level all through a stretch. */
function level(piece: Piece, [from, to]: Stretch): boolean {
  const points = outlinePoints(piece.outline);
  return points.every((a, i) => {
    const b = points[(i + 1) % points.length]!;
    const beside = Math.max(a[0], b[0]) <= from + LEVEL_MM || Math.min(a[0], b[0]) >= to - LEVEL_MM;
    return beside || Math.abs(a[1] - b[1]) <= LEVEL_MM;
  });
}

/** Lines that may run on level through what is left out: edges, creases, centre lines. */
const runsOn = (what: string): boolean => what === OUTLINE || what === ROUGH || what.startsWith("mark ");

function lost(piece: Piece, gaps: readonly Stretch[]): readonly Remark[] {
  return drawnParts(piece)
    .filter((p) => !runsOn(p.what))
    .filter(({ path }) => gaps.some(([from, to]) => boundsOf(path).maxX > from && boundsOf(path).minX < to))
    .map(({ what }) =>
      fault(
        piece,
        what,
        `The ${what} of ${piece.name} lies in the part that is not printed`,
        "left out",
        "printed",
      ),
    );
}

function shaped(piece: Piece, gaps: readonly Stretch[]): readonly Remark[] {
  if (piece.straight && gaps.every((gap) => level(piece, gap))) return [];
  const words = `${piece.name} is printed ends only, and the part left out is not a plain strap`;
  return [fault(piece, "ends only", words, "shaped", "two parallel edges")];
}

function overEachOther(piece: Piece, kept: readonly Kept[]): readonly Remark[] {
  const over = kept.some(([from, , moved], i) => i > 0 && from - moved < kept[i - 1]![1] - kept[i - 1]![2]);
  if (!over) return [];
  return [
    fault(
      piece,
      "ends only",
      `The two printed ends of ${piece.name} are drawn over each other`,
      "overlapping",
      "apart",
    ),
  ];
}

/** What is left out between a strap's ends is plain strap, and the ends are not drawn over each other. */
export const endsOnly = sheetRule(
  "ends-only",
  "a strap printed ends only leaves out nothing but plain strap",
  (job, layout) =>
    piecesOnPlates(job, layout).flatMap(({ placed, piece }) => {
      if (!placed.kept) return [];
      const kept = [...placed.kept].sort((a, b) => a[0] - b[0]);
      const gaps = leftOut(piece, kept);
      return [...lost(piece, gaps), ...shaped(piece, gaps), ...overEachOther(piece, kept)];
    }),
);
