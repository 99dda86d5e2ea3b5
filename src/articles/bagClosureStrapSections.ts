import { greatest, least, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import * as strap from "../pieces/strap.ts";
import { type ClosureKind, closureRoom, closureTable } from "../trade/closure.ts";
import { defaultInset } from "../trade/seam.ts";
import {
  closureBilletTable,
  closureBuckleTable,
  closureTabTable,
  FRAME_CLEAR_MM,
} from "./bagClosureStrapTables.ts";
import { bag, measures, stitching, strapLeather } from "./bagSections.ts";
import { fixing, ring } from "./bagStrapSections.ts";
import { type Resolved, section } from "./definition.ts";
import { buckleOf, fixingsOf, leatherOf } from "./handing.ts";

// The sections of a bag's order that its closure is made from; of these, buckle, tab and billet are used by
// a closure of strap and buckle alone. And where on the bag buckle and tab come to lie.

const STRAPS: ClosureKind = "strap and buckle";

export const hasFlap = (done: Resolved): boolean => done.of(bag).opening === "flap";

/** What holds the flap; an open bag has none. */
export const closureOf = (done: Resolved): ClosureKind => (hasFlap(done) ? done.of(bag).closure : "none");

export const isBuckled = (done: Resolved): boolean => closureOf(done) === STRAPS;

export const closureSection = section({
  path: "hardware.closure",
  label: "closure",
  title: "What holds the flap shut; each kind uses its own sizes",
  table: closureTable,
  handOver: (done) => ({ ...fixingsOf(done.of(fixing)), closure: closureOf(done) }),
});

export const closureBuckle = section({
  path: "hardware.closure-buckle",
  label: "closure buckle",
  title: "The buckle of a closure with strap and buckle",
  table: closureBuckleTable,
  handOver: (done) => {
    const { fixingHole, head } = fixingsOf(done.of(fixing));
    return { bagWidth: done.of(measures).width, fixingHole, head };
  },
});

/** What tab and billet are handed. Where they lie, the bag's height leaves them room. */
function commonOf(done: Resolved) {
  const [b, s] = [done.of(closureBuckle), done.of(stitching)];
  const width = b.strapWidth;
  return {
    ...leatherOf(done.of(strapLeather), "strap leather"),
    skiveTo: done.of(strapLeather).skiveTo,
    width,
    pitch: s.pitch,
    inset: named("closure stitch inset", least(s.inset ?? defaultInset(width), over(width, 3))),
    ...buckleOf(b),
    ring: done.of(ring).bar,
    ...fixingsOf(done.of(fixing)),
    bagHeight: done.of(measures).height,
  };
}

export const closureTab = section({
  path: "pieces.closure-tab",
  label: "closure tab",
  title: "The tab on the front that holds the closure's buckle",
  table: closureTabTable,
  handOver: commonOf,
});

/** Between the frame and what stands out of it, mm; common practice, no source. */
const FRAME_GAP_MM = 2;

export const closureBillet = section({
  path: "pieces.closure-billet",
  label: "closure billet",
  title: "The strap with holes that hangs from the flap into the closure's buckle",
  table: closureBilletTable,
  handOver: (done) => {
    const b = done.of(closureBuckle);
    return {
      ...commonOf(done),
      keeperFar: named("tail past the frame", sum(b.overhang, FRAME_GAP_MM)),
      flapRoom: closureRoom(STRAPS, done.of(closureSection)),
      frameLength: b.frameLength,
      holeOffset: b.holeOffset,
    };
  },
});

/** In the order that they are resolved, after a bag's straps and before its body. */
export const closureSections = [closureSection, closureBuckle, closureTab, closureBillet] as const;

const length = (name: string, q: Quantity): Quantity => named(name, q, { kind: "length" });

/** Lengths along the front of the closed, filled bag, mm, each downward from the middle of the flap's rivets. */
export type ClosureDrops = {
  /** To the billet's middle hole. */
  readonly hole: Quantity;
  /** To the buckle's bar. */
  readonly bar: Quantity;
  /** To the middle of the tab's rivets. */
  readonly rivets: Quantity;
  /** To the tab's lower end. */
  readonly tabEnd: Quantity;
  /** To the billet's tip, in its middle hole. */
  readonly tip: Quantity;
};

/** Billet and tab lie flat on the front, one line with the flap's end: their lengths add up. */
export function closureDrops(done: Resolved): ClosureDrops {
  const [tab, billet] = [done.of(closureTab), done.of(closureBillet)];
  const end = strap.strapEnds(tab).right;
  if (!("fixed" in end)) throw new Error("closure-tab: its right end is not one that is fixed flat");
  const half = over(tab.fixingSpacing, 2);
  const hole = length("closure's rivets to the middle hole", sum(half, billet.length));
  const bar = length("closure's rivets to the bar", sum(hole, done.of(closureBuckle).holeOffset));
  const rivets = length("flap's rivets to the tab's", sum(bar, tab.length, half));
  const row = times(minus(billet.holes, 1), billet.holePitch);
  return {
    hole,
    bar,
    rivets,
    tabEnd: length("flap's rivets to the tab's end", sum(rivets, half, end.fixed.toEnd)),
    tip: length("flap's rivets to the billet's tip", sum(hole, over(row, 2), billet.toTip)),
  };
}

const none: Quantity = { value: 0, kind: "length", parts: ["0 mm, no strap and buckle"], inputs: [] };

/** What a closure of strap and buckle asks of the body; nothing from any other. */
export function closureNeeds(done: Resolved): {
  readonly closureBelow: Quantity;
  readonly closureDrop: Quantity;
} {
  if (!isBuckled(done)) return { closureBelow: none, closureDrop: none };
  const drops = closureDrops(done);
  return {
    closureBelow: length("front below the closure", greatest(drops.tabEnd, drops.tip)),
    closureDrop: length(
      "flap's end over the buckle",
      minus(drops.bar, done.of(closureBuckle).frameLength, FRAME_CLEAR_MM),
    ),
  };
}
