import type { Adjustment, Fit, FitRow, Join } from "../model/article.ts";
import type { Finding } from "../model/finding.ts";
import type { Piece, SeamEdge } from "../model/piece.ts";
import type { Quantity } from "../model/quantity.ts";
import * as keeper from "../pieces/keeper.ts";
import * as strap from "../pieces/strap.ts";
import { pointLength } from "../trade/points.ts";
import { strapRange } from "../trade/shoulderStrap.ts";
import { printLength } from "../units/index.ts";
import { bag } from "./bagSections.ts";
import { type Anchor, anchorOf, type StrapEnd } from "./bagStrapAnchors.ts";
import {
  billetStrap,
  buckle,
  buckleStrap,
  fixedKeeper,
  handle,
  keeperFarOf,
  ring,
  runningKeeper,
  shoulderLengthOf,
  straps,
  strapTab,
} from "./bagStrapSections.ts";
import type { Resolved } from "./definition.ts";
import { keeperJoin } from "./handing.ts";

export { type Anchor, type Fixings, fixAnchors, type Placed, placedParts } from "./bagStrapAnchors.ts";
export { strapSections } from "./bagStrapSections.ts";

// Makes a bag's straps: a shoulder strap in two parts with its tabs and keepers, or two handles. What holds
// them is told as anchors, for the article to place on the bag's other pieces.

export type Straps = {
  readonly pieces: readonly Piece[];
  readonly joins: readonly Join[];
  /** Closed boxes of stitches on the straps; their holes are laid with their mates'. */
  readonly edges: readonly SeamEdge[];
  readonly anchors: readonly Anchor[];
  readonly findings: readonly Finding[];
  readonly sizes: readonly Quantity[];
  readonly fit?: Fit;
};

export const NO_STRAPS: Straps = { pieces: [], joins: [], edges: [], anchors: [], findings: [], sizes: [] };

export function makeStraps(done: Resolved): Straps {
  const { carry } = done.of(bag);
  if (carry === "none") return NO_STRAPS;
  return carry === "handles" ? makeHandles(done) : makeShoulderStrap(done);
}

function makeHandles(done: Resolved): Straps {
  const d = done.of(handle);
  const id = "handle";
  const piece = strap.shape(d, { leather: "strap", count: 2, id, name: "Handle" });
  const below = d.fixedBelow.value;
  const anchors = (["left", "right"] as const).flatMap((side) =>
    (["front", "back"] as const).map((on) => {
      const x = (side === "left" ? -1 : 1) * (d.apart.value / 2);
      return anchorOf(endOf(d, id, side), { on, place: side, x, below });
    }),
  );
  return {
    ...NO_STRAPS,
    pieces: [withFixingNote(piece, d, `${d.fixed === "riveted" ? "rivet" : "sew"} each end to the bag`)],
    edges: strap.stitchedEdges(d, id),
    anchors,
    sizes: [d.length],
  };
}

function makeShoulderStrap(done: Resolved): Straps {
  const [b, t] = [done.of(buckleStrap), done.of(billetStrap)];
  const tabs = done.of(bag).strapFixed === "ring tabs";
  const one = { leather: "strap", count: 1, ring: "ring" };
  const carrier = strap.shape(b, { ...one, id: "buckle-strap", name: "Buckle strap" });
  const billet = strap.shape(t, { ...one, id: "billet-strap", name: "Billet strap" });
  const tab = strap.shape(done.of(strapTab), {
    ...one,
    count: 2,
    id: "strap-tab",
    name: "Strap tab",
  });
  const holding = tabs ? [tab] : [];
  const keepers = keepersOf(done);
  const whole = shoulderLengthOf(done);
  const range = strapRange("shoulder strap", whole, t.holes, t.holePitch);
  const ends = tabs
    ? [endOf(done.of(strapTab), "strap-tab", "right")]
    : [endOf(b, "buckle-strap", "right"), endOf(t, "billet-strap", "left")];
  const below = done.of(straps).fixedBelow.value;
  return {
    pieces: [carrier, billet, ...holding, ...keepers.map((k) => keeper.shape(done.of(k), KEEPER))].map((p) =>
      noted(p, done),
    ),
    joins: [
      ...buckleJoins(done),
      ...(tabs ? [ringJoin(done)] : []),
      ...keepers.map((k) => keeperJoin(k.path, done.of(k))),
      adjustment(done),
    ],
    edges: tabs
      ? strap.stitchedEdges(done.of(strapTab), "strap-tab")
      : [...strap.stitchedEdges(b, "buckle-strap"), ...strap.stitchedEdges(t, "billet-strap")],
    anchors: (["start", "end"] as const).map((place, i) =>
      anchorOf(ends[i] ?? ends[0]!, { on: "gusset", place, x: 0, below }),
    ),
    findings: tailOnFixings(done),
    sizes: [whole, range.shortest, range.longest],
    fit: {
      name: "shoulder strap",
      wanted: whole.value,
      wantedIs: "as reckoned",
      shortest: range.shortest.value,
      longest: range.longest.value,
      rows: rowsOf(done, whole.value),
      sizesNote: "from where it meets the bag on one side, over the shoulder, to the other side",
    },
  };
}

const KEEPER = { count: 1, leather: "keeper" };

const keepersOf = (done: Resolved) => {
  const s = done.of(straps);
  return [...(s.keeper ? [fixedKeeper] : []), ...(s.runningKeeper ? [runningKeeper] : [])];
};

/** A fixed end of a strap, with what fixes it. */
function endOf(d: strap.StrapValues, piece: string, side: "left" | "right"): StrapEnd {
  const end = strap.strapEnds(d)[side];
  if (!("fixed" in end)) throw new Error(`${piece}: its ${side} end is not one that is fixed flat`);
  return {
    piece,
    side,
    end: end.fixed,
    input: end.input,
    by: d.fixing,
    use: d.fixing === "rivet" ? "rivet" : "screw",
    label: piece.replaceAll("-", " "),
  };
}

/** Words for the bench, beside the strap that is fixed. */
const withFixingNote = (piece: Piece, d: strap.StrapValues, what: string): Piece => {
  const n = Math.round(d.rivets?.value ?? 2);
  const each = d.fixing === "rivet" ? "rivet" : "screw";
  const by = what.startsWith("rivet")
    ? `: ${n} ${n === 1 ? each : `${each}s`} through both, holes punched in both`
    : "";
  return { ...piece, notes: [...piece.notes, `${what}${by}`] };
};

/** What a shoulder strap is fixed to. */
const holderOf = (done: Resolved): string =>
  ({
    "flanged gusset": "gusset",
    "turned gusset": "gusset",
    "side gussets": "side of the back, or to the side gusset",
    "end panels": "end panel",
  })[done.of(bag).made];

function noted(piece: Piece, done: Resolved): Piece {
  const how = done.of(bag).strapFixed;
  if (piece.id === "strap-tab") {
    const d = done.of(strapTab);
    return withFixingNote(
      piece,
      d,
      `${d.fixed === "riveted" ? "rivet" : "sew"} the plain end to the ${holderOf(done)}`,
    );
  }
  if (how === "ring tabs" || (piece.id !== "buckle-strap" && piece.id !== "billet-strap")) return piece;
  const d = piece.id === "buckle-strap" ? done.of(buckleStrap) : done.of(billetStrap);
  if (how === "stitched") return withFixingNote(piece, d, `sew the plain end to the ${holderOf(done)}`);
  const through =
    how === "through slots"
      ? "rivet the plain end inside, once it is through its slot"
      : `rivet the plain end to the ${holderOf(done)}`;
  return withFixingNote(piece, d, through);
}

function buckleJoins(done: Resolved): readonly Join[] {
  const b = done.of(buckle);
  const inBuckle = (piece: string): Join => ({
    kind: "strap in buckle",
    piece,
    strapWidth: done.of(straps).width.value,
    inside: b.inside.value,
    buckle: "buckle",
    dimension: "straps.width",
  });
  return [
    inBuckle("buckle-strap"),
    inBuckle("billet-strap"),
    {
      kind: "tongue in slot",
      piece: "buckle-strap",
      cutout: "left.slot",
      turnBack: "left",
      tongueThickness: b.tongue.value,
      tongueBreadth: b.tongueBreadth.value,
      openAngle: b.open.value,
      dimension: "hardware.buckle.tongue",
    },
  ];
}

const ringJoin = (done: Resolved): Join => ({
  kind: "strap in buckle",
  piece: "strap-tab",
  strapWidth: done.of(straps).width.value,
  inside: done.of(ring).inside.value,
  buckle: "ring",
  dimension: "straps.width",
});

const holesFromTip = (done: Resolved): readonly number[] => {
  const t = done.of(billetStrap);
  return Array.from({ length: Math.round(t.holes.value) }, (_, i) => t.toTip.value + i * t.holePitch.value);
};

/** The billet's tail in the buckle; where it must end is a finding of its own, below. */
function adjustment(done: Resolved): Adjustment {
  const t = done.of(billetStrap);
  return {
    kind: "adjustment",
    side: "buckled",
    piece: "billet-strap",
    holes: holesFromTip(done),
    keeperFar: keeperFarOf(done).value,
    point: pointLength(t.point, t.width).value,
    swellAt: Number.POSITIVE_INFINITY,
    swellIs: "the cheek's swell",
    dimension: "pieces.billet-strap.holes",
    tipDimension: "pieces.billet-strap.to-tip",
    bodySection: "pieces.buckle-strap",
  };
}

/** Whole length in each hole; hole 1 is nearest the tip and gives the longest strap, the middle one the length asked. */
function rowsOf(done: Resolved, whole: number): readonly FitRow[] {
  const { holes, holePitch } = done.of(billetStrap);
  const middle = (holes.value - 1) / 2;
  return holesFromTip(done).map((_, i) => ({
    near: i + 1,
    off: undefined,
    measure: whole + (middle - i) * holePitch.value,
    even: true,
    sizes: [],
  }));
}

/** In the tightest hole the tail must end before what fixes the buckle part to its ring or to the bag. */
function tailOnFixings(done: Resolved): readonly Finding[] {
  const d = done.of(buckleStrap);
  const end = strap.strapEnds(d).right;
  const taken =
    end.kind === "ring" ? end.end.reach.value - d.ring.value / 2 : "fixed" in end ? end.fixed.past.value : 0;
  const room = d.length.value - taken;
  const tail = Math.max(...holesFromTip(done));
  if (tail <= room + 1e-6) return [];
  const say = (mm: number): string => printLength(mm, "mm");
  const fit = holesFromTip(done).filter((x) => x <= room).length;
  const most = fit - 1 + (fit % 2);
  const fewer =
    most > 0 ? `punch at most ${most} ${most === 1 ? "hole" : "holes"} (pieces.billet-strap.holes), or ` : "";
  return [
    {
      rule: "tail-and-fixings",
      severity: "caution",
      piece: "billet-strap",
      place: "buckled in the tightest hole",
      message: `the tail reaches ${say(tail)} from the buckle, onto what fixes the buckle part, which begins at ${say(room)}`,
      value: say(tail),
      limit: `at most ${say(room)}`,
      mend: `${fewer}make the buckle part longer (pieces.buckle-strap.length)`,
      ...(most > 0 ? { change: { dimension: "pieces.billet-strap.holes", value: String(most) } } : {}),
    },
  ];
}
