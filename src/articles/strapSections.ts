import { from } from "../model/dimension.ts";
import { greatest, minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import * as keeper from "../pieces/keeper.ts";
import * as strap from "../pieces/strap.ts";
import { buckleTable, fixingTable, leatherTable, stitchingTable } from "../trade/tables.ts";
import { type Resolved, section } from "./definition.ts";
import { buckleOf, fixingsOf, keeperOf, layersInKeeper, leatherOf, stitchesOf } from "./handing.ts";

// The sections of a strap's order, and what each is handed by those before it.

const COMMON = "common practice, no source";
const OUNCE = 25.4 / 64;

export const measures = section({
  path: "measures",
  label: "",
  title: "What the strap is: its ends, its width, and how many",
  table: {
    leftEnd: {
      kind: "choice",
      choices: strap.STRAP_ENDS,
      default: "buckle",
      means: "the left end: a billet has holes and a point, a loop goes round another strap",
      source: COMMON,
    },
    rightEnd: {
      kind: "choice",
      choices: strap.STRAP_ENDS,
      default: "billet",
      means: "the right end",
      source: COMMON,
    },
    width: { kind: "length", least: 9, most: 76, means: "width of the strap", source: "measured" },
    count: { kind: "count", default: 1, least: 1, most: 50, means: "how many straps", source: COMMON },
    keeper: {
      kind: "flag",
      default: true,
      means: "a fixed keeper in the buckle's turn-back",
      source: COMMON,
    },
    runningKeeper: { kind: "flag", default: false, means: "a running keeper too", source: COMMON },
  },
});
export const leather = section({
  path: "leather.strap",
  label: "strap leather",
  title: "Leather of the strap",
  table: leatherTable(9 * OUNCE),
});
export const keeperLeather = section({
  path: "leather.keeper",
  label: "keeper leather",
  title: "Leather of the keepers",
  table: leatherTable(5 * OUNCE, 5),
});
export const isBuckled = (done: Resolved): boolean => {
  const m = done.of(measures);
  return m.leftEnd === "buckle" || m.rightEnd === "buckle";
};

/** A strap without a buckle doesn't care which one the order names. */
const anySize = (value: number): Quantity => ({
  value,
  kind: "length",
  parts: ["a strap without a buckle"],
  inputs: [],
});
const ANY_BUCKLE = { least: anySize(9), most: anySize(100) };

export const buckle = section({
  path: "hardware.buckle",
  label: "buckle",
  title: "The buckle, where an end has one",
  table: {
    ...buckleTable,
    strapWidth: {
      kind: "length",
      least: 6,
      most: 80,
      handed: true,
      means: "width of the strap",
      source: "measures",
    },
    buckled: { kind: "flag", default: true, handed: true, means: "an end has a buckle", source: "measures" },
    inside: {
      ...buckleTable.inside,
      default: from(["strapWidth"], (k) => k.q("strapWidth")),
      least: from(["strapWidth", "buckled"], (k) =>
        k.flag("buckled") ? greatest(9, minus(k.q("strapWidth"), 0.3)) : ANY_BUCKLE.least,
      ),
      most: from(["strapWidth", "buckled"], (k) =>
        k.flag("buckled") ? sum(k.q("strapWidth"), 3) : ANY_BUCKLE.most,
      ),
    },
  },
  handOver: (done) => ({ strapWidth: done.of(measures).width, buckled: isBuckled(done) }),
});
export const ring = section({
  path: "hardware.ring",
  label: "ring",
  title: "The ring, where an end has one",
  table: {
    bar: {
      kind: "length",
      default: 5,
      least: 2,
      most: 20,
      means: "diameter of the ring's wire",
      source: COMMON,
    },
  },
});
export const fixing = section({
  path: "hardware.fixing",
  label: "fixing",
  title: "What holds the turn-back at a ring",
  table: fixingTable,
  handOver: (done) => ({ strapWidth: done.of(measures).width }),
});
export const stitching = section({
  path: "stitching",
  label: "stitch",
  title: "Stitching",
  table: stitchingTable,
});

const keeperHandOver = (running: boolean) => (done: Resolved) =>
  keeperOf({
    running,
    pitch: done.of(stitching).pitch,
    strapWidth: done.of(measures).width,
    layers: layersInKeeper(running, done.of(leather), done.of(buckle).bar),
    leather: done.of(keeperLeather),
  });

export const fixedKeeper = section({
  path: "pieces.keeper",
  label: "fixed keeper",
  title: "The fixed keeper",
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

/** From the bar to a keeper's far edge, as far as is known before the strap is worked, mm. */
const keeperFar = (done: Resolved): Quantity => {
  const m = done.of(measures);
  const about = times(1.2, m.width);
  const both = m.runningKeeper ? sum(about, done.of(runningKeeper).breadth, 4) : about;
  return named("last keeper from the bar", m.keeper || m.runningKeeper ? both : times(0, m.width));
};

export const strapSection = section({
  path: "pieces.strap",
  label: "strap",
  title: "The strap",
  table: strap.dimensions,
  handOver: (done) => {
    const [l, m] = [done.of(leather), done.of(measures)];
    return {
      leftEnd: m.leftEnd,
      rightEnd: m.rightEnd,
      ...stitchesOf(done.of(stitching), m.width),
      ...leatherOf(l, "strap leather"),
      skiveTo: l.skiveTo,
      width: m.width,
      ...buckleOf(done.of(buckle)),
      ring: done.of(ring).bar,
      ...fixingsOf(done.of(fixing)),
      keeperBreadth: m.keeper ? done.of(fixedKeeper).breadth : undefined,
      keeperCaught: m.keeper ? keeper.caughtThickness(done.of(fixedKeeper)) : undefined,
      keeperFar: keeperFar(done),
    };
  },
});
