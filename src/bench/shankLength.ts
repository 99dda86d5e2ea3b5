import type { HardwareRow } from "../model/bench.ts";
import type { Fitting, FittingKind } from "../model/fitting.ts";
import type { HardwareRate } from "../model/shop.ts";
import { shankRange } from "../trade/shankLength.ts";
import { printNumber } from "../units/index.ts";

// Which of the shop's lengths a screw or rivet is taken in.

export type Shank = NonNullable<HardwareRow["shank"]>;

/** Lengths that differ by less are the same, mm: the arithmetic's tolerance. */
const SAME_LENGTH_MM = 1e-9;

/**
 * The shank of a screw or rivet: its stack, what lengths would do (see `shankRange`), and of the shop's lengths
 * the one nearest to the middle of these; none where none does. Undefined for what has no shank. Lengths mm.
 */
export function shankOf({ kind, through }: Fitting, rate: HardwareRate): Shank | undefined {
  if (!through || (kind !== "binding screw" && kind !== "rivet")) return undefined;
  const { from, to } = shankRange(kind, through.shank, through.stack);
  const does = rate.lengths.filter((l) => l >= from - SAME_LENGTH_MM && l <= to + SAME_LENGTH_MM);
  const middle = (from + to) / 2;
  const [chosen] = [...does].sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b);
  return {
    diameter: through.shank,
    stack: through.stack,
    from,
    to,
    ...(chosen === undefined ? {} : { chosen }),
    listFrom: rate.lengthsFrom,
  };
}

/** sustainablebushcraft.blogspot.com, 2017, Choosing rivets and Chicago screws: less than 1/8 in longer. */
const TWO_PARTS =
  "lengths are of solid rivets; a two-part rivet's post is less than 3 mm longer than the leather";

/**
 * What to know of a screw's or rivet's length, in words: where none of the shop's lengths does, which is the next
 * longer and what to do with it.
 */
export const shankWords = (
  kind: FittingKind,
  shank: Shank,
  lengths: readonly number[],
): readonly string[] => [
  ...(kind === "rivet" ? [TWO_PARTS] : []),
  ...(shank.chosen === undefined ? [noneDoes(kind, shank, lengths)] : []),
];

function noneDoes(kind: FittingKind, { from, to }: Shank, lengths: readonly number[]): string {
  const range = `${printNumber(from, 1)} to ${printNumber(to, 1)} mm`;
  const longer = lengths.filter((l) => l > to);
  if (lengths.length === 0) return `buy a length of ${range}`;
  if (longer.length === 0) return `none of the lengths listed is long enough: buy one of ${range}`;
  const next = printNumber(Math.min(...longer), 1);
  const shorten =
    kind === "rivet"
      ? "nip it off to length"
      : "file its barrel down, or put a leather washer under its head";
  return `none of the lengths listed is ${range}; the next longer is ${next} mm: ${shorten}`;
}
