import { greatest, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import * as cheek from "../pieces/cheek.ts";
import * as crown from "../pieces/crown.ts";
import * as earPiece from "../pieces/earPiece.ts";
import * as keeper from "../pieces/keeper.ts";
import { holeRow } from "../trade/balance.ts";
import { keeperBreadth } from "../trade/keeper.ts";
import { allowancesTable, buckleTable, fixingTable, leatherTable, stitchingTable } from "../trade/tables.ts";
import { type Resolved, section } from "./definition.ts";
import { buckleOf, fixingsOf, keeperOf, leatherOf, stitchesOf, thickestOf } from "./handing.ts";
import { measuresTable, strapsTable } from "./headstallTables.ts";

// The sections of a one-ear headstall's order, and what each is handed by those before it.

const OUNCE = 25.4 / 64;

export const measures = section({
  path: "measures",
  label: "measured",
  title: "Measures of the horse, bit in, tape snug, each taken twice",
  table: measuresTable,
});
export const strapLeather = section({
  path: "leather.strap",
  label: "strap leather",
  title: "Leather of the crown and cheeks",
  table: leatherTable(9 * OUNCE),
});
export const earLeather = section({
  path: "leather.ear",
  label: "ear leather",
  title: "Leather of the ear piece",
  table: leatherTable(7 * OUNCE),
});
export const keeperLeather = section({
  path: "leather.keeper",
  label: "keeper leather",
  title: "Leather of the keepers",
  table: leatherTable(5 * OUNCE, 5),
});
export const buckle = section({
  path: "hardware.cheek-buckle",
  label: "cheek buckle",
  title: "The cheek buckles",
  table: buckleTable,
});
export const bitRing = section({
  path: "hardware.bit-ring",
  label: "bit ring",
  title: "The bit's ring, or the bar of its cheek loop",
  table: {
    bar: {
      kind: "length",
      default: 8,
      least: 3,
      most: 20,
      means: "diameter of the wire where the cheek bears",
      source: "common practice, no source",
    },
  },
});
export const fixing = section({
  path: "hardware.fixing",
  label: "fixing",
  title: "What holds the cheek at the bit",
  table: fixingTable,
  handOver: (done) => ({ strapWidth: done.of(buckle).inside }),
});
export const stitching = section({
  path: "stitching",
  label: "stitch",
  title: "Stitching",
  table: stitchingTable,
});
export const allowances = section({
  path: "allowances",
  label: "allowance",
  title: "Allowances, all none unless you set them",
  table: allowancesTable,
});

/** Bit ring to bit ring; a measure from mouth corner to mouth corner loses the rise on each side. */
export function overPollOf(done: Resolved): Quantity {
  const m = done.of(measures);
  if (m.measuredFrom === "bit ring" || !m.rise) return m.overPoll;
  return named("over poll, ring to ring", minus(m.overPoll, times(2, m.rise)));
}

export const straps = section({
  path: "straps",
  label: "strap",
  title: "Width of the straps, where they buckle and how far they adjust",
  table: strapsTable,
  handOver: (done) => ({
    inside: done.of(buckle).inside,
    tongue: done.of(buckle).tongue,
    overPoll: overPollOf(done),
  }),
});

const edged = (done: Resolved): Quantity => {
  const { edgeFinishing } = done.of(allowances);
  const { width } = done.of(straps);
  return edgeFinishing.value === 0 ? width : named("strap width as cut", sum(width, edgeFinishing));
};

const stitches = (done: Resolved) => stitchesOf(done.of(stitching), done.of(straps).width);

const keeperHandOver = (running: boolean, layers: Quantity, done: Resolved) =>
  keeperOf({
    running,
    pitch: done.of(stitching).pitch,
    strapWidth: edged(done),
    layers,
    leather: done.of(keeperLeather),
  });

/** The strap and the tail on it, at the leather's thickest. */
const strapAndTail = (done: Resolved): Quantity =>
  times(2, thickestOf(done.of(strapLeather), "strap leather"));

export const fixedKeeper = section({
  path: "pieces.keeper",
  label: "fixed keeper",
  title: "The fixed keeper, caught in the cheek's turn-back",
  table: keeper.dimensions,
  handOver: (done) => keeperHandOver(false, strapAndTail(done), done),
});

const lengthFactor = (done: Resolved): Quantity => {
  const a = done.of(allowances);
  return named("allowance for stretch and shrinkage", over(sum(1, a.casingShrinkage), sum(1, a.stretch)), {
    kind: "ratio",
  });
};

/** What the crown's tail reaches at its tightest hole, as far as is known before the crown is worked. */
function tailOf(done: Resolved): Quantity {
  const s = done.of(straps);
  const stitch = done.of(stitching).pitch;
  const past = sum(times(3.3, s.width), keeperBreadth(s.width, stitch));
  return named(
    "crown tail at its tightest",
    { ...sum(past, times(minus(s.holes, 1), s.pitch)), kind: "length" },
    { kind: "length" },
  );
}

export const cheekSection = section({
  path: "pieces.cheek",
  label: "cheek",
  title: "The cheek, from the crown's buckle to the bit",
  table: cheek.dimensions,
  handOver: (done) => {
    return {
      ...leatherOf(done.of(strapLeather), "strap leather"),
      ...stitches(done),
      ...fixingsOf(done.of(fixing)),
      width: edged(done),
      skiveTo: done.of(strapLeather).skiveTo,
      ...buckleOf(done.of(buckle)),
      ring: done.of(bitRing).bar,
      keeperBreadth: done.of(fixedKeeper).breadth,
      keeperCaught: keeper.caughtThickness(done.of(fixedKeeper)),
      overPoll: overPollOf(done),
      measure: overPollOf(done),
      tail: tailOf(done),
      pair: done.of(straps).buckles === "both cheeks",
      lengthFactor: lengthFactor(done),
    };
  },
});

/** It rests beside the fixed keeper, over the turn-back's back leg: that is the largest place it slides over. */
export const runningKeeper = section({
  path: "pieces.running-keeper",
  label: "running keeper",
  title: "The running keeper, beside the fixed one",
  table: keeper.dimensions,
  handOver: (done) => {
    const layers = sum(strapAndTail(done), done.of(cheekSection).skiveAtBuckle);
    return keeperHandOver(true, layers, done);
  },
});

/** The crown's hole nearest the poll, from the poll. */
export function innermostOf(done: Resolved): Quantity {
  const s = done.of(straps);
  const half = minus(
    over(overPollOf(done), 2),
    done.of(cheekSection).effectiveLength,
    done.of(buckle).holeOffset,
  );
  const inner = minus(times(lengthFactor(done), half), over(holeRow(s.holes, s.pitch), 2));
  return named("innermost hole from the poll", { ...greatest(0, inner), kind: "length" });
}

export const earSection = section({
  path: "pieces.ear-piece",
  label: "ear piece",
  title: "The ear piece",
  table: earPiece.dimensions,
  handOver: (done) => ({
    ...leatherOf(done.of(earLeather), "ear leather"),
    earBase: done.of(measures).earBase,
    overPoll: overPollOf(done),
    crownWidth: edged(done),
    crownThickness: thickestOf(done.of(strapLeather), "strap leather"),
    innermost: innermostOf(done),
  }),
});

/** Room that a running keeper needs beside the fixed one, mm; common practice, no source. */
const KEEPER_GAP_MM = 4;

/** Far edge of the last keeper from the buckle's bar. */
export function keeperFarOf(done: Resolved): Quantity {
  const far = cheek.cheekEnds(done.of(cheekSection)).top.keeperFar!;
  if (!done.of(straps).runningKeepers) return far;
  return named("last keeper from the bar", sum(far, KEEPER_GAP_MM, done.of(runningKeeper).breadth));
}

function earPlace(done: Resolved): { readonly earFrom: Quantity; readonly earTo: Quantity } {
  const e = done.of(earSection);
  const half = earPiece.earHalfLength(e);
  const middle = e.ear === "right" ? e.offset : named("ear piece middle", times(-1, e.offset));
  return {
    earFrom: named("ear piece from", minus(middle, half)),
    earTo: named("ear piece to", sum(middle, half)),
  };
}

export const crownSection = section({
  path: "pieces.crown",
  label: "crown",
  title: "The crown, over the poll",
  table: crown.dimensions,
  handOver: (done) => {
    const s = done.of(straps);
    return {
      ...leatherOf(done.of(strapLeather), "strap leather"),
      ...fixingsOf(done.of(fixing)),
      width: edged(done),
      buckles: s.buckles,
      holes: s.holes,
      holePitch: s.pitch,
      holeSize: s.holeSize,
      overPoll: overPollOf(done),
      cheek: done.of(cheekSection).effectiveLength,
      holeOffset: done.of(buckle).holeOffset,
      keeperFar: keeperFarOf(done),
      lengthFactor: lengthFactor(done),
      ring: done.of(bitRing).bar,
      skiveTo: done.of(strapLeather).skiveTo,
      ...earPlace(done),
    };
  },
});
