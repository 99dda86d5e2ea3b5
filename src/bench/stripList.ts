import type { Made } from "../model/article.ts";
import type { StripRow } from "../model/bench.ts";
import type { Shop } from "../model/shop.ts";
import { cutSize, isStrip } from "./cutSize.ts";

// Strips to cut before the straps are cut off them.

/** Widths closer than this are cut with one setting of the strap cutter, mm. */
const SAME_WIDTH_MM = 0.05;
/** Thicknesses that print alike, to a hundredth, are one leather. */
const DECIMALS = 2;

type Strap = StripRow["straps"][number] & Pick<StripRow, "leather" | "thickness" | "width">;

/**
 * Rows of the strip list: straps of one leather, thickness and width together, wide ones first within a leather.
 * The allowance is the shop's share of the sum; a strip can't be cut in strips shorter than its longest strap.
 * Counts and lengths are for `quantity` articles, mm. A row's width is that of its widest strap.
 */
export function stripList(made: Made, shop: Shop, quantity: number): readonly StripRow[] {
  const straps = made.pieces.filter(isStrip).map(
    (p): Strap => ({
      ...{ piece: p.id, name: p.name, count: p.count * quantity, length: cutSize(p).length },
      ...{ leather: p.leather.kind, thickness: p.leather.thickness, width: cutSize(p).width },
    }),
  );
  const leathers = new Map<string, readonly Strap[]>();
  for (const s of straps) {
    const key = `${s.leather} ${s.thickness.toFixed(DECIMALS)}`;
    leathers.set(key, [...(leathers.get(key) ?? []), s]);
  }
  return [...leathers.values()].flatMap(byWidth).map((group) => rowOf(group, shop.stripAllowance));
}

/** Straps of one leather by their widths, wide ones first; all of a group are within the tolerance of its widest. */
function byWidth(straps: readonly Strap[]): readonly (readonly Strap[])[] {
  const groups: Strap[][] = [];
  for (const s of [...straps].sort((a, b) => b.width - a.width)) {
    const last = groups.at(-1);
    if (last && last[0]!.width - s.width <= SAME_WIDTH_MM) last.push(s);
    else groups.push([s]);
  }
  return groups;
}

function rowOf(group: readonly Strap[], share: number): StripRow {
  const { leather, thickness, width } = group[0]!;
  const sum = group.reduce((all, s) => all + s.count * s.length, 0);
  const allowance = sum * share;
  const straps = group.map(({ piece, name, count, length }) => ({ piece, name, count, length }));
  return { leather, thickness, width, straps, sum, allowance, total: sum + allowance };
}
