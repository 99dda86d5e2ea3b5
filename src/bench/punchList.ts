import { boundsOf } from "../geometry/bounds.ts";
import type { Made } from "../model/article.ts";
import type { PunchRow } from "../model/bench.ts";
import type { Cutout, Piece } from "../model/piece.ts";
import type { Shop } from "../model/shop.ts";
import { ROUND_PUNCHES_MM } from "../trade/facts/punches.ts";
import { FIXING_ROOM_MM } from "../trade/tables.ts";
import { SLOT_STEP_MM } from "../trade/tongueSlot.ts";
import { printNumber } from "../units/index.ts";

// Every round hole and every slot of every piece, by size and use, and the punch for it. Awl slits are
// pricked, and are not here; stitch holes that the order wants round are.

/**
 * A punch may be this much smaller than the hole as drawn: what a fixing's hole has over its shank. Larger it
 * may be by the rest of a step of punches, so that between two of them one always does. Mm.
 */
const SMALLER_MM = FIXING_ROOM_MM;
const STEP_MM = 0.5;
const LARGER_MM = STEP_MM - SMALLER_MM;
/** The arithmetic's tolerance, mm. */
const SLACK_MM = 1e-9;

type Cut = Pick<PunchRow, "what" | "size" | "use"> & {
  readonly length?: number;
  readonly piece: string;
  readonly count: number;
  readonly way: "punch" | "after folding" | "slot" | "knife";
};

/** Rows of the punch list, round holes first, small ones first; counts are for `quantity` articles. Lengths mm. */
export function punchList(made: Made, shop: Shop, quantity: number): readonly PunchRow[] {
  const groups = new Map<string, readonly Cut[]>();
  for (const cut of made.pieces.flatMap((p) => cutsOf(p, quantity)))
    groups.set(keyOf(cut), [...(groups.get(keyOf(cut)) ?? []), cut]);
  return [...groups.values()].map((alike) => rowOf(alike, shop)).sort(byKindAndSize);
}

/** Sizes that print alike to a hundredth are punched alike. */
const DECIMALS = 2;
const keyOf = (c: Cut): string =>
  JSON.stringify([c.what, c.size.toFixed(DECIMALS), c.length?.toFixed(DECIMALS), c.use, c.way]);

function cutsOf(piece: Piece, quantity: number): readonly Cut[] {
  const count = piece.count * quantity;
  const round = piece.holes.filter((h) => h.kind !== "awl");
  const holes = round.map(
    ({ size, use }): Cut => ({ what: "round", size, use, piece: piece.id, count, way: "punch" }),
  );
  const after = afterFolding(piece).map(
    ({ size, use }): Cut => ({ what: "round", size, use, piece: piece.id, count, way: "after folding" }),
  );
  return [...holes, ...after, ...piece.cutouts.map((c): Cut => ({ ...slotOf(c), piece: piece.id, count }))];
}

/** Holes of a front leg without a mate: the back leg's are not drawn, and are punched once it is folded. */
const afterFolding = (piece: Piece): Piece["holes"] =>
  piece.turnBacks
    .filter((t) => t.mates.length === 0)
    .flatMap((t) =>
      piece.holes.filter((h) => h.kind === "round" && h.id.startsWith(`${t.id}.${h.use}.front.`)),
    );

/** A slot by its sizes; an opening has none of its own and is cut along its line. */
function slotOf({
  use,
  outline,
  length,
  width,
}: Cutout): Pick<Cut, "what" | "size" | "length" | "use" | "way"> {
  if (length !== undefined && width !== undefined)
    return { what: "slot", size: width, length, use, way: "slot" };
  const box = boundsOf(outline);
  const [a, b] = [box.maxX - box.minX, box.maxY - box.minY];
  return { what: "slot", size: Math.min(a, b), length: Math.max(a, b), use, way: "knife" };
}

function rowOf(alike: readonly Cut[], shop: Shop): PunchRow {
  const { what, size, length, use, way } = alike[0]!;
  const near = way === "knife" ? undefined : punchFor(size, shop);
  const pieces = [...new Set(alike.map((c) => c.piece))];
  const sum = (cuts: readonly Cut[]): number => cuts.reduce((n, c) => n + c.count, 0);
  return {
    what,
    size,
    ...(length === undefined ? {} : { length }),
    use,
    count: sum(alike),
    places: pieces.map((piece) => ({ piece, count: sum(alike.filter((c) => c.piece === piece)) })),
    ...(near ? { punch: near.size } : {}),
    ...(near?.number === undefined ? {} : { number: near.number }),
    how: howOf(alike[0]!, near),
  };
}

type Punch = { readonly size: number; readonly number?: string };

/** The punch nearest to a hole's size, of the shop's own, else of the usual ones; the larger of two as near. */
export function punchFor(size: number, shop: Shop): Punch | undefined {
  const usual = ROUND_PUNCHES_MM.map((mm): Punch => ({ size: mm }));
  return nearestOf(shop.punches, size) ?? nearestOf(usual, size);
}

function nearestOf(punches: readonly Punch[], size: number): Punch | undefined {
  const off = (p: Punch): number => Math.abs(p.size - size);
  const does = punches.filter(
    (p) => p.size >= size - SMALLER_MM - SLACK_MM && p.size <= size + LARGER_MM + SLACK_MM,
  );
  return [...does].sort((a, b) =>
    Math.abs(off(a) - off(b)) < SLACK_MM ? b.size - a.size : off(a) - off(b),
  )[0];
}

/** Slot punches are sold by their length, in whole steps. */
const isPunchLength = (length: number): boolean =>
  Math.abs(length - Math.round(length / SLOT_STEP_MM) * SLOT_STEP_MM) < SLACK_MM;

const mm = (n: number): string => printNumber(n, 1);
const sayPunch = ({ size, number }: Punch): string =>
  number ? `punch No. ${number} (${mm(size)} mm)` : `punch ${mm(size)} mm`;

function howOf({ size, length, use, way }: Cut, near: Punch | undefined): string {
  if (way === "knife") return "knife, along the line";
  if (way === "slot") {
    const ends = `${near ? sayPunch(near) : `a hole of ${mm(size)} mm`} at both ends and a knife between them`;
    return isPunchLength(length ?? 0) ? `slot punch ${mm(length ?? 0)} by ${mm(size)} mm, or ${ends}` : ends;
  }
  const punch = near ? sayPunch(near) : `no usual punch is near: one of ${mm(size)} mm`;
  if (use === "stitch") return `${punch}, or a pricking iron with round teeth`;
  return way === "after folding" ? `${punch}, once folded, through the front leg's holes` : punch;
}

const byKindAndSize = (a: PunchRow, b: PunchRow): number =>
  Number(a.what === "slot") - Number(b.what === "slot") ||
  a.size - b.size ||
  (a.length ?? 0) - (b.length ?? 0) ||
  (a.use < b.use ? -1 : Number(a.use > b.use));
