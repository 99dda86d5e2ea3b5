import type { Currency } from "./money.ts";
import type { WorkKind } from "./work.ts";

// The bench sheet as data: what lies on the bench from cutting to delivery. Lengths mm, areas mm².

export type CutRow = {
  readonly piece: string;
  readonly name: string;
  readonly count: number;
  /** "all alike", "1 as drawn, 1 turned over". */
  readonly hand: string;
  readonly leather: string;
  readonly thickness: number;
  /** What it is skived down to, and where: "1.8 mm at the buckle". Empty when it isn't. */
  readonly skived: readonly { readonly to: number; readonly where: string }[];
  readonly length: number;
  readonly width: number;
  /** How the hide's backbone lies on it, in words. */
  readonly grain: string;
  readonly cutBy: "die" | "strap cutter" | "knife";
};

export type StripRow = {
  readonly leather: string;
  readonly thickness: number;
  readonly width: number;
  readonly straps: readonly {
    readonly piece: string;
    readonly name: string;
    readonly count: number;
    readonly length: number;
  }[];
  /** Sum of the straps, the allowance on it, and both together. */
  readonly sum: number;
  readonly allowance: number;
  readonly total: number;
};

export type HardwareRow = {
  readonly kind: string;
  readonly name: string;
  readonly count: number;
  readonly spares: number;
  readonly size?: number;
  readonly details: readonly string[];
  /** Of screws and rivets: the stack, what lengths would do, and the one from the shop's list. */
  readonly shank?: {
    readonly diameter: number;
    readonly stack: number;
    readonly from: number;
    readonly to: number;
    /** Undefined when none in the list does. */
    readonly chosen?: number;
    readonly listFrom: string;
  };
  readonly brought: boolean;
  readonly pieces: readonly string[];
};

export type PunchRow = {
  readonly what: "round" | "slot";
  /** Diameter, or the slot's width. */
  readonly size: number;
  /** Of slots. */
  readonly length?: number;
  readonly use: string;
  /** How many in all, counted over every piece that is cut. */
  readonly count: number;
  readonly places: readonly { readonly piece: string; readonly count: number }[];
  /** The punch to take, mm, of the sizes a bench has; undefined when none is near. */
  readonly punch?: number;
  /** The shop's number of it. */
  readonly number?: string;
  /** How it is made, in words: "punch 4 mm", "slot punch 26 × 4 mm, or a 4 mm hole at each end and a knife". */
  readonly how: string;
};

export type ThreadRow = {
  readonly seam: string;
  readonly pieces: readonly string[];
  /** How many times it is sewn. */
  readonly times: number;
  readonly stitches: number;
  readonly backStitches: number;
  readonly pitch: number;
  readonly stack: number;
  /** Thread for one sewing, tails included. */
  readonly length: number;
  /** How many lengths of thread for one sewing. */
  readonly needlefuls: number;
};

export type ThreadList = {
  readonly rows: readonly ThreadRow[];
  readonly total: number;
  readonly stitches: number;
  /** Habits: weight of thread, needles, awl, each with its standing. */
  readonly advice: readonly { readonly what: string; readonly says: string; readonly source: string }[];
};

export type LeatherRow = {
  readonly leather: string;
  readonly thickness: number;
  readonly pieces: readonly string[];
  /** Area of the pieces as cut. */
  readonly net: number;
  readonly yield: number;
  readonly yieldFrom: string;
  /** net / yield. */
  readonly needed: number;
  /** needed over the side's area, where the shop says how large that is. */
  readonly ofSide?: number;
};

export type WorkStep = {
  readonly id: string;
  readonly does: WorkKind;
  /** What to do, plainly: "Skive the cheek to 1.8 mm at the buckle, over 22 mm". */
  readonly says: string;
  readonly pieces: readonly string[];
  readonly tool: string;
  /** How the tool is set: "3 mm from the edge"; "" where nothing is set. */
  readonly setting: string;
  /** How much of it, in what WORK counts it by. */
  readonly amount: number;
  /** Minutes, where the shop says how long one takes. */
  readonly minutes?: number;
  readonly after: readonly string[];
};

/** A line of the price; amounts in the currency's minor unit, whole. */
export type PriceLine = {
  readonly what: string;
  /** How it was reckoned: "2.35 square feet at 14.50". */
  readonly how: string;
  readonly minor: number;
};

export type Price = {
  readonly currency: Currency;
  readonly materials: readonly PriceLine[];
  readonly labour: readonly PriceLine[];
  readonly overhead: PriceLine;
  readonly cost: number;
  readonly margin: PriceLine;
  /** Rounding up to what the shop likes. */
  readonly rounding: number;
  readonly beforeTax: number;
  readonly tax: PriceLine;
  readonly total: number;
  readonly deposit: number;
  readonly balance: number;
  /** Something has no rate: it is not in the price, and no quote can be given with it. See `Bench.unpriced`. */
  readonly incomplete: boolean;
};

export type Bench = {
  readonly cut: readonly CutRow[];
  readonly strips: readonly StripRow[];
  readonly hardware: readonly HardwareRow[];
  readonly punches: readonly PunchRow[];
  readonly thread: ThreadList;
  readonly leather: readonly LeatherRow[];
  readonly steps: readonly WorkStep[];
  /** Minutes of all steps that have them. */
  readonly minutes: number;
  /** Undefined when nothing can be priced. */
  readonly price?: Price;
  /** What could not be priced or timed, and what to write in the shop file. */
  readonly unpriced: readonly string[];
};
