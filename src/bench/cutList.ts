import type { Made } from "../model/article.ts";
import type { CutRow } from "../model/bench.ts";
import type { Values } from "../model/dimension.ts";
import type { Finding } from "../model/finding.ts";
import type { Piece } from "../model/piece.ts";
import type { finishTable } from "../trade/benchTables.ts";
import { printAngle } from "../units/index.ts";
import { piecesByDie } from "./byDie.ts";
import { cutSize, isStrip } from "./cutSize.ts";
import { foldWords } from "./foldWords.ts";

// What is cut, piece by piece.

/**
 * Rows of the cut list, in the article's order of pieces, one a piece; counts are for `quantity` articles.
 * Length lies along the hide's backbone, width across, mm. A finding for each name in `finish.by-die` that is
 * no piece's.
 */
export function cutList(
  made: Made,
  finish: Values<typeof finishTable>,
  quantity: number,
): { readonly rows: readonly CutRow[]; readonly findings: readonly Finding[] } {
  const { ids, findings } = piecesByDie(
    finish.byDie,
    made.pieces.map((p) => p.id),
  );
  return { rows: made.pieces.map((p) => rowOf(p, ids.includes(p.id), quantity)), findings };
}

function rowOf(piece: Piece, byDie: boolean, quantity: number): CutRow {
  const count = piece.count * quantity;
  return {
    piece: piece.id,
    name: piece.name,
    count,
    hand: handWords(piece.hand, count),
    leather: piece.leather.kind,
    thickness: piece.leather.thickness,
    skived: skivedOf(piece),
    ...cutSize(piece),
    grain: grainWords(piece),
    cutBy: byDie ? "die" : isStrip(piece) ? "strap cutter" : "knife",
  };
}

/** Of a pair the odd one is as drawn. */
function handWords(hand: Piece["hand"], count: number): string {
  if (hand === "pair" && count > 1)
    return `${Math.ceil(count / 2)} as drawn, ${Math.floor(count / 2)} turned over`;
  return count === 1 ? "as drawn" : "all alike";
}

/** Thicknesses closer than this are one on a gauge, mm. */
const SAME_THICKNESS_MM = 0.005;

/** Where it is thinned; both ends of a keeper are one line where they are thinned alike. */
function skivedOf(piece: Piece): CutRow["skived"] {
  const all = piece.zones
    .filter((z) => z.kind === "skive")
    .map((z) => ({ to: z.to ?? 0, where: whereOf(piece, z.id, z.label) }));
  const [start, end] = [AT_START, AT_END].map((where) => all.find((s) => s.where === where));
  if (!start || !end || Math.abs(start.to - end.to) > SAME_THICKNESS_MM) return all;
  return all.flatMap((s) => (s === end ? [] : [s === start ? { ...s, where: "at both ends" } : s]));
}

const AT_START = "at the start";
const AT_END = "at the end";

/** A skive's place: its id begins with its turn-back's, or says which end of the piece it lies at. */
function whereOf(piece: Piece, id: string, label: string): string {
  const [first = "", last = ""] = id.split(".");
  const fold = foldWords(piece, first);
  if (fold !== undefined)
    return last === "feather" ? `feathered behind the ${fold}` : `at the ${fold}, and behind it`;
  if (last === "start") return AT_START;
  if (last === "end") return AT_END;
  return label;
}

/** Directions that differ by less are one, radians: a twentieth of what is printed. */
const SAME_ANGLE = 1e-4;
/** A side is called longer when it is longer by this share. */
const CLEARLY = 1.02;

/** The backbone's direction as it lies on the template. */
function grainWords(piece: Piece): string {
  const turn = ((piece.grain % Math.PI) + Math.PI) % Math.PI;
  const level = turn < SAME_ANGLE || turn > Math.PI - SAME_ANGLE;
  const upright = Math.abs(turn - Math.PI / 2) < SAME_ANGLE;
  if (!level && !upright) return `aslant, ${printAngle(turn)} from left to right on the template`;
  const { length, width } = cutSize(piece);
  const on = level ? "left to right on the template" : "up and down the template";
  if (length > width * CLEARLY) return `along the longer side, ${on}`;
  return width > length * CLEARLY ? `along the shorter side, ${on}` : on;
}
