import { signedArea } from "../geometry/area.ts";
import type { Made } from "../model/article.ts";
import type { LeatherRow } from "../model/bench.ts";
import type { Piece } from "../model/piece.ts";
import type { LeatherRate, Shop } from "../model/shop.ts";
import { leatherRateTable, YIELD_SOURCE } from "../trade/shopTables.ts";

// How much leather is bought for the whole order.

/** Thicknesses that print alike, to a hundredth, are one leather. */
const DECIMALS = 2;

/** Of a leather that the shop doesn't know. */
const USUAL: Pick<LeatherRate, "yield" | "yieldFrom" | "side"> = {
  yield: leatherRateTable.yield.default,
  yieldFrom: YIELD_SOURCE,
};

/**
 * Rows of the leather list, one a leather and thickness, in the article's order of pieces, mm². Net is the area
 * inside the pieces' outlines, or inside their rough-cut lines where the order asks for these; slots and holes
 * don't come off it. Needed is net over the yield. All for `quantity` articles.
 */
export function leatherList(made: Made, shop: Shop, quantity: number): readonly LeatherRow[] {
  const groups = new Map<string, readonly Piece[]>();
  for (const p of made.pieces) {
    const key = `${p.leather.kind} ${p.leather.thickness.toFixed(DECIMALS)}`;
    groups.set(key, [...(groups.get(key) ?? []), p]);
  }
  return [...groups.values()].map((pieces) => rowOf(pieces, shop, quantity));
}

/** The area a piece takes out of the leather, mm². */
const areaOf = (p: Piece): number => Math.abs(signedArea(p.rough ?? p.outline));

function rowOf(pieces: readonly Piece[], shop: Shop, quantity: number): LeatherRow {
  const { kind, thickness } = pieces[0]!.leather;
  const rate = Object.hasOwn(shop.leathers, kind) ? shop.leathers[kind]! : USUAL;
  const net = quantity * pieces.reduce((sum, p) => sum + p.count * areaOf(p), 0);
  const needed = net / rate.yield;
  return {
    leather: kind,
    thickness,
    pieces: pieces.map((p) => p.id),
    net,
    yield: rate.yield,
    yieldFrom: rate.yieldFrom,
    needed,
    ...(rate.side === undefined ? {} : { ofSide: needed / rate.side }),
  };
}
