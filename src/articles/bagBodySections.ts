import { asLength, greatest, minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import * as gusset from "../pieces/gusset.ts";
import * as lining from "../pieces/lining.ts";
import * as patch from "../pieces/patch.ts";
import * as pocket from "../pieces/pocket.ts";
import * as body from "../pieces/purseBody.ts";
import { wrapsRound } from "../trade/bagKinds.ts";
import { closureRoom } from "../trade/closure.ts";
import { grainBeyond } from "../trade/gusset.ts";
import { closureNeeds, closureOf, closureSection, hasFlap } from "./bagClosureStrapSections.ts";
import { pocketRoom } from "./bagPocketRoom.ts";
import {
  bag,
  bodyLeather,
  gussetLeather,
  liningLeather,
  measures,
  patchLeather,
  stitching,
} from "./bagSections.ts";
import { handle, straps } from "./bagStrapSections.ts";
import { type Resolved, section } from "./definition.ts";
import { leatherOf, thickestOf } from "./handing.ts";

// The sections of a bag's body, gusset and fittings, and what each is handed by those before it.

export { closureOf, closureSection, hasFlap } from "./bagClosureStrapSections.ts";

const none = (what: string): Quantity => ({ value: 0, kind: "length", parts: [what], inputs: [] });

export const isWrapped = (done: Resolved): boolean => wrapsRound(done.of(bag).made);
export const isFlanged = (done: Resolved): boolean =>
  done.of(bag).made === "flanged gusset" || done.of(bag).made === "side gussets";
export const isTurned = (done: Resolved): boolean => done.of(bag).made === "turned gusset";

/** The lining on one face; nothing where there is none. */
const liningsOf = (done: Resolved, faces = 1): readonly Quantity[] =>
  done.of(bag).lining ? [asLength(times(faces, done.of(liningLeather).thickness))] : [];

/** What the gusset takes of the width on each side: its leather and lining, and its flange where it has one. */
function wallOf(done: Resolved): Quantity {
  const { thickness } = done.of(gussetLeather);
  const flange = isFlanged(done) ? [done.of(bag).flange] : [];
  return asLength(sum(...flange, asLength(times(1, thickness)), ...liningsOf(done)));
}

/** What the base takes of the height. */
const floorOf = (done: Resolved): Quantity =>
  isWrapped(done)
    ? asLength(sum(asLength(times(1, done.of(bodyLeather).thickness)), ...liningsOf(done)))
    : wallOf(done);

const twoWalls = (done: Resolved): Quantity => asLength(times(2, done.of(bodyLeather).thickness));

/**
 * Sizes of the finished bag outside and inside, mm: whichever were measured, the others follow. A turned
 * bag's panels are smaller than the bag: the gusset's grain side lies outside their rolled edges.
 */
export function bagSizes(done: Resolved) {
  const m = done.of(measures);
  const inside = m.measured === "inside";
  const wall = times(2, wallOf(done));
  const floor = floorOf(done);
  const size = (name: string, q: Quantity): Quantity => named(name, q, { kind: "length" });
  const width = size("bag's width outside", inside ? sum(m.width, wall) : m.width);
  const height = size("bag's height outside", inside ? sum(m.height, floor) : m.height);
  const [body, gussets] = [done.of(bodyLeather).thickness, done.of(gussetLeather).thickness];
  const leatherDepth = inside ? sum(m.depth, ...liningsOf(done, 2)) : minus(m.depth, twoWalls(done));
  const beyond = grainBeyond("gusset's grain side beyond the panel's rolled edge", body, gussets);
  return {
    width,
    height,
    panelWidth: isTurned(done)
      ? size("panel's width between its rolled edges", minus(width, times(2, beyond)))
      : width,
    panelHeight: isTurned(done) ? size("panel's height over its rolled edge", minus(height, beyond)) : height,
    depth: size("between the leather of front and back", leatherDepth),
    insideDepth: size("bag's depth inside", minus(leatherDepth, ...liningsOf(done, 2))),
    insideWidth: size("bag's width inside", inside ? m.width : minus(m.width, wall)),
    overBase: size("height over the base's leather", minus(height, asLength(times(1, body)))),
    insideHeight: size("bag's height inside", inside ? m.height : minus(m.height, floor)),
  };
}

/** Flanges' stitches lie this far from the edge, mm, and others at least this; common practice, no source. */
const FLANGE_INSET_MM = 4;
const LEAST_INSET_MM = 3;

/** The line of stitches from the finished edge, or from the cut edge of a turned seam. */
export function seamInset(done: Resolved): Quantity {
  const { inset } = done.of(stitching);
  if (isTurned(done)) return done.of(bag).allowance;
  if (inset) return inset;
  const thick = asLength(times(1.2, done.of(bodyLeather).thickness));
  return named("seam inset", isFlanged(done) ? FLANGE_INSET : greatest(LEAST_INSET_MM, thick));
}

const FLANGE_INSET: Quantity = {
  value: FLANGE_INSET_MM,
  kind: "length",
  parts: [`${FLANGE_INSET_MM} mm on a flange`],
  inputs: [],
};

/** Leather at the top that handles take. */
function topClear(done: Resolved): Quantity {
  const h = done.of(handle);
  if (done.of(bag).carry !== "handles") return none("no handles");
  return named("taken by the handles", sum(h.fixedBelow, times(2, h.width)), { kind: "length" });
}

/** Between the leather of front and back at the top, with the bag filled. */
function filledDepth(done: Resolved): Quantity {
  const { filledDepth: given } = done.of(measures);
  if (!given) return bagSizes(done).depth;
  return named("filled bag at the top, between the leather", sum(given, ...liningsOf(done, 2)), {
    kind: "length",
  });
}

export const bodySection = section({
  path: "pieces.body",
  label: "body",
  title: "The front, the back and the flap; or the body that wraps round",
  table: body.dimensions,
  handOver: (done) => {
    const [b, s, size] = [done.of(bag), done.of(stitching), bagSizes(done)];
    return {
      ...leatherOf(done.of(bodyLeather), "body leather"),
      made: b.made,
      opening: b.opening,
      closure: closureOf(done),
      width: size.panelWidth,
      height: size.panelHeight,
      depth: size.depth,
      filledDepth: filledDepth(done),
      wetMoulded: b.wetMoulded,
      flapLining: liningsOf(done)[0] ?? none("the flap is not lined"),
      inset: seamInset(done),
      pitch: s.pitch,
      allowance: isTurned(done) ? b.allowance : none("not turned"),
      flange: isFlanged(done) ? b.flange : none("no flange"),
      gussetThickness: done.of(gussetLeather).thickness,
      closureRoom: closureRoom(closureOf(done), done.of(closureSection)),
      topClear: topClear(done),
      ...closureNeeds(done),
    };
  },
});

/** The seam's straight sides, measured on the body's drawn seam lines. */
function sideRun(done: Resolved): Quantity {
  const d = done.of(bodySection);
  const turned = isTurned(done) ? [d.thickness, d.neutral] : [d.inset];
  const drawn = isWrapped(done)
    ? [d.height, d.baseFold, d.seamStart]
    : [d.width, d.height, d.topWidth, d.baseSag, d.cornerRadius, d.clipRound, d.seamStart, ...turned];
  const value = isWrapped(done)
    ? d.height.value - d.baseFold.value - d.seamStart.value
    : gusset.sideRun(body.edges(d).front, body.edges(d).back);
  const parts = [
    "the straight sides of the drawn seam line, from ",
    ...drawn.flatMap((q, i) => (i === 0 ? [q] : [", ", q])),
  ];
  return named("seam's straight side", { value, kind: "length", parts, inputs: drawn });
}

export const gussetSection = section({
  path: "pieces.gusset",
  label: "gusset",
  title: "The gusset, the side gussets or the end panels",
  table: gusset.dimensions,
  handOver: (done) => {
    const [b, d, size] = [done.of(bag), done.of(bodySection), bagSizes(done)];
    return {
      ...leatherOf(done.of(gussetLeather), "gusset leather"),
      made: b.made,
      bodyThickness: done.of(bodyLeather).thickness,
      bodyNeutral: done.of(bodyLeather).neutral,
      depth: size.depth,
      height: isWrapped(done) ? size.overBase : size.panelHeight,
      insideWidth: size.insideWidth,
      baseFold: d.baseFold,
      inset: d.inset,
      allowance: d.allowance,
      flange: d.flange,
      wetMoulded: b.wetMoulded,
      seamStart: d.seamStart,
      sideRun: sideRun(done),
    };
  },
});

export const pocketSection = section({
  path: "pieces.pocket",
  label: "pocket",
  title: "The patch pocket, where there is one",
  table: pocket.dimensions,
  handOver: (done) => ({
    ...leatherOf(done.of(bodyLeather), "body leather"),
    where: done.of(bag).pocket === "inside" ? "inside" : "outside",
    inset: pocketInset(done),
    ...(done.of(bag).pocket === "none"
      ? pocket.NO_POCKET_ROOM
      : pocketRoom(done.of(bodySection), pocketOn(done), takenAtTop(done))),
  }),
});

/** An outside pocket lies on the front, or on the back where a flap closes over the front; an inside one on the back. */
export const pocketOn = (done: Resolved): "front" | "back" =>
  done.of(bag).pocket === "outside" && !hasFlap(done) ? "front" : "back";

/** Side gussets that fold inward have no room for straps: these are fixed at the sides of the back. */
export const strapsOnBack = (done: Resolved): boolean =>
  done.of(bag).made === "side gussets" &&
  done.of(bag).carry === "shoulder strap" &&
  done.of(gussetSection).inwardFold;

/** What handles take at the top edge, or straps that are fixed to the back. */
function takenAtTop(done: Resolved): Quantity {
  if (!strapsOnBack(done)) return topClear(done);
  const s = done.of(straps);
  return named("taken by the straps", sum(s.fixedBelow, times(3, s.width)), { kind: "length" });
}

/** A pocket's stitches lie as far from its edge as leather of its thickness asks. */
const pocketInset = (done: Resolved): Quantity =>
  named("pocket inset", greatest(LEAST_INSET_MM, asLength(times(1.2, done.of(bodyLeather).thickness))));

/** Leather that is only glued on: where its neutral fibre lies doesn't matter. */
function thin(thickness: Quantity, name: string) {
  const neutral: Quantity = { value: 0.5, kind: "ratio", parts: ["0.5, the middle"], inputs: [] };
  return { thickness, thickest: thickestOf({ thickness, neutral }, name), neutral };
}

export const liningSection = section({
  path: "pieces.lining",
  label: "lining",
  title: "The lining, where there is one",
  table: lining.dimensions,
  handOver: (done) => thin(done.of(liningLeather).thickness, "lining"),
});

export const patchSection = section({
  path: "pieces.patch",
  label: "patch",
  title: "Reinforcement behind studs, locks and the roots of straps and handles",
  table: patch.dimensions,
  handOver: (done) => thin(done.of(patchLeather).thickness, "patch"),
});
