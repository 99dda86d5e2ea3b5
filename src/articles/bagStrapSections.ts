import { asLength, least, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import * as keeper from "../pieces/keeper.ts";
import * as strap from "../pieces/strap.ts";
import { defaultInset } from "../trade/seam.ts";
import { overRound, type StrapParts, strapParts } from "../trade/shoulderStrap.ts";
import { bag, bodyLeather, keeperLeather, measures, stitching, strapLeather } from "./bagSections.ts";
import {
  bagFixingTable,
  billetStrapTable,
  buckleStrapTable,
  handleTable,
  ringTable,
  strapBuckleTable,
  strapsTable,
  strapTabTable,
} from "./bagStrapTables.ts";
import { type Resolved, section } from "./definition.ts";
import { buckleOf, fixingsOf, keeperOf, layersInKeeper, leatherOf, thickestOf } from "./handing.ts";

// The sections of a bag's order that its straps are made from, and what each is handed by those before it.

const hasStrap = (done: Resolved): boolean => done.of(bag).carry === "shoulder strap";
const hasSlots = (done: Resolved): boolean => hasStrap(done) && done.of(bag).strapFixed === "through slots";

/** The gusset's two bends take this off its flat width, mm; common practice, no source. */
const BENDS_MM = 4;

/** The flat width that straps have where they are fixed. */
function roomOf(done: Resolved): Quantity {
  const m = done.of(measures);
  const walls = m.measured === "outside" ? [asLength(times(2, done.of(bodyLeather).thickness))] : [];
  return named("room for straps", minus(m.depth, ...walls, BENDS_MM), { kind: "length" });
}

/** Seam and flange beside a strap that is fixed to the back, and what it keeps clear of them, mm. */
const SEAM_AND_CLEAR_MM = 8;
const sideTakes = (done: Resolved): Quantity =>
  named("seam and flange beside a strap", sum(done.of(bag).flange, SEAM_AND_CLEAR_MM), { kind: "length" });

export const straps = section({
  path: "straps",
  label: "straps",
  title: "Width of straps and handles, where and how they are fixed to the bag",
  table: strapsTable,
  handOver: (done) => {
    const [m, s] = [done.of(measures), done.of(stitching)];
    return {
      bagWidth: m.width,
      sideTakes: sideTakes(done),
      onBack: done.of(bag).made === "side gussets",
      bagHeight: m.height,
      drop: m.shoulderDrop,
      room: roomOf(done),
      slots: hasSlots(done),
      thickest: thickestOf(done.of(strapLeather), "strap leather"),
      pitch: s.pitch,
      inset: s.inset ?? LEAST_DEFAULT_INSET,
    };
  },
});

const LEAST_DEFAULT_INSET: Quantity = { value: 2, kind: "length", parts: ["2 mm"], inputs: [] };

const widthOf = (done: Resolved): Quantity => done.of(straps).width;

export const buckle = section({
  path: "hardware.buckle",
  label: "buckle",
  title: "The shoulder strap's buckle",
  table: strapBuckleTable,
  handOver: (done) => ({ strapWidth: widthOf(done) }),
});
export const ring = section({
  path: "hardware.ring",
  label: "ring",
  title: "The rings of the strap tabs",
  table: ringTable,
  handOver: (done) => ({ strapWidth: widthOf(done) }),
});
export const fixing = section({
  path: "hardware.fixing",
  label: "fixing",
  title: "What holds turn-backs at rings, tabs, straps and handles",
  table: bagFixingTable,
  handOver: (done) => ({ strapWidth: widthOf(done) }),
});

/**
 * From the top of the shoulder to where the strap is reckoned from, mm: the ring, which a tab holds over the
 * bag's top edge, or the place below that edge where the strap itself is fixed.
 */
function dropOf(done: Resolved): Quantity {
  const [m, s] = [done.of(measures), done.of(straps)];
  const tab = done.of(strapTab);
  const drop =
    done.of(bag).strapFixed === "ring tabs"
      ? minus(sum(m.shoulderDrop, s.fixedBelow), tab.length, done.of(ring).height)
      : sum(m.shoulderDrop, s.fixedBelow);
  return named("from the shoulder's top to where the strap meets the bag", drop, { kind: "length" });
}

/** The whole shoulder strap, from where it meets the bag on one side to the other, mm. */
export function shoulderLengthOf(done: Resolved): Quantity {
  const [s, l] = [done.of(straps), done.of(strapLeather)];
  return overRound({
    label: "shoulder strap",
    apart: s.ringsApart,
    drop: dropOf(done),
    radius: s.shoulderRadius,
    thickness: l.thickness,
    neutral: l.neutral,
  });
}

/** What all straps, tabs and handles are handed. */
function commonOf(done: Resolved) {
  const [s, l, stitch] = [done.of(straps), done.of(strapLeather), done.of(stitching)];
  return {
    ...leatherOf(l, "strap leather"),
    skiveTo: l.skiveTo,
    width: s.width,
    pitch: stitch.pitch,
    inset: named("strap stitch inset", least(stitch.inset ?? defaultInset(s.width), over(s.width, 3))),
    ...buckleOf(done.of(buckle)),
    ring: done.of(ring).bar,
    ...fixingsOf(done.of(fixing)),
    rivets: s.rivets,
    boxLength: s.boxLength,
    endCorner: s.endCorner,
  };
}

const keeperHandOver = (running: boolean) => (done: Resolved) =>
  keeperOf({
    running,
    pitch: done.of(stitching).pitch,
    strapWidth: widthOf(done),
    layers: layersInKeeper(running, done.of(strapLeather), done.of(buckle).bar),
    leather: done.of(keeperLeather),
  });

export const fixedKeeper = section({
  path: "pieces.keeper",
  label: "fixed keeper",
  title: "The fixed keeper, caught in the buckle's turn-back",
  table: keeper.dimensions,
  handOver: keeperHandOver(false),
});
export const runningKeeper = section({
  path: "pieces.running-keeper",
  label: "running keeper",
  title: "The running keeper",
  table: keeper.dimensions,
  handOver: keeperHandOver(true),
});

/** The end of a part of the shoulder strap that goes to the bag. */
const innerEnd = (done: Resolved): "ring" | "riveted" | "stitched" => {
  const how = done.of(bag).strapFixed;
  return how === "ring tabs" ? "ring" : how === "stitched" ? "stitched" : "riveted";
};

export const buckleStrap = section({
  path: "pieces.buckle-strap",
  label: "buckle strap",
  title: "The part of the shoulder strap that carries the buckle",
  table: buckleStrapTable,
  handOver: (done) => ({
    ...commonOf(done),
    leftEnd: "buckle",
    rightEnd: innerEnd(done),
    throughSlot: hasSlots(done),
    keeperBreadth: done.of(straps).keeper ? done.of(fixedKeeper).breadth : undefined,
    keeperCaught: done.of(straps).keeper ? keeper.caughtThickness(done.of(fixedKeeper)) : undefined,
    whole: shoulderLengthOf(done),
  }),
});

/** Room that a running keeper needs beside the fixed one, and the first keeper beside the frame, mm; common practice, no source. */
const KEEPER_GAP_MM = 4;
const FRAME_GAP_MM = 2;

/** Far edge of the last keeper from the buckle's bar. */
export function keeperFarOf(done: Resolved): Quantity {
  const end = strap.strapEnds(done.of(buckleStrap)).left;
  const frame = sum(done.of(buckle).overhang, FRAME_GAP_MM);
  const far = (end.kind === "buckle" ? end.end.keeperFar : undefined) ?? frame;
  if (!done.of(straps).runningKeeper) return named("last keeper from the bar", far);
  return named("last keeper from the bar", sum(far, KEEPER_GAP_MM, done.of(runningKeeper).breadth));
}

/** Both parts of the shoulder strap: the buckle's as ordered, the billet's the rest. */
export const partsOf = (done: Resolved): StrapParts =>
  strapParts(
    "shoulder strap",
    shoulderLengthOf(done),
    done.of(buckleStrap).length,
    done.of(buckle).holeOffset,
  );

export const billetStrap = section({
  path: "pieces.billet-strap",
  label: "billet strap",
  title: "The part of the shoulder strap with the holes",
  table: billetStrapTable,
  handOver: (done) => ({
    ...commonOf(done),
    leftEnd: innerEnd(done),
    rightEnd: "billet",
    throughSlot: hasSlots(done),
    keeperFar: keeperFarOf(done),
    part: partsOf(done).billet,
    used: hasStrap(done),
  }),
});
export const strapTab = section({
  path: "pieces.strap-tab",
  label: "strap tab",
  title: "The tabs that hold the rings of the shoulder strap",
  table: strapTabTable,
  handOver: commonOf,
});
export const handle = section({
  path: "pieces.handle",
  label: "handle",
  title: "The handles, one on the front and one on the back",
  table: handleTable,
  handOver: (done) => {
    const m = done.of(measures);
    return { ...commonOf(done), bagWidth: m.width, bagHeight: m.height, handDrop: m.handDrop };
  },
});

/** In the order that they are resolved, after a bag's measures, leathers and stitching. */
export const strapSections = [
  straps,
  buckle,
  ring,
  fixing,
  fixedKeeper,
  runningKeeper,
  strapTab,
  buckleStrap,
  billetStrap,
  handle,
] as const;
