import { type DimensionTable, from, type Known } from "../model/dimension.ts";
import { asLength, greatest, least, millimetres, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { MADE, type Made, wrapsRound } from "../trade/bagKinds.ts";
import { CLOSURES } from "../trade/closureTable.ts";
import { FLAP_EDGES, TONGUE_FILLET_MM } from "../trade/flapEdge.ts";
import { closes, edgeOf, FLAP_OVER_MM, LEAST_TONGUE_MM, leastShape, mostFlapCorner, mostShape, PAST_BEND_MM, SHAPE, SHAPED } from "../trade/flapRoom.ts";
import { easyFootFold, GATHER_CAUTION, GATHER_CAUTION_WET, GATHER_ERROR, leastCornerRadius, leastEndFold, leastFootFold } from "../trade/gusset.ts";
import { CORNERS, mostClipRound, mostCorner } from "../trade/panel.ts";
import { handedLeather } from "../trade/tables.ts";
import { deepestDip } from "../trade/topEdge.ts";
import * as trig from "../units/trigonometry.ts";

// What may be set of a bag's front, back and flap, or of a body that wraps round.

const COMMON = "common practice, no source";

/** A closure stays this far from edges, seams and bends, mm; common practice, no source. */
const CLOSURE_CLEAR_MM = 12;
/** A flap without a closure still hangs this far down the front, mm. */
const LEAST_DROP_MM = 20;
/** Straight side left between the first stitch and a corner, mm. */
const SIDE_LEFT_MM = 4;
/** Half of what stays flat of a base between its bends, mm. */
const BASE_FLAT_MM = 2;
const LEAST_TOP_MM = 40;

const wraps = (k: Known): boolean => wrapsRound(k.choice("made") as Made);

const BUCKLED = "strap and buckle";
/** Where closures may be on the front: over the base's seam or bend, and over where the flap ends. */
const LOW = ["made", "closureRoom", "closureBelow", "flange", "gussetThickness", "baseFold", "thickness"];
function leastClosure(k: Known): Quantity {
  const base = wraps(k) ? sum(k.q("baseFold"), k.q("thickness"), CLOSURE_CLEAR_MM) : sum(k.q("flange"), k.q("gussetThickness"), CLOSURE_CLEAR_MM);
  return greatest(k.q("closureRoom"), asLength(k.choice("closure") === BUCKLED ? sum(base, k.q("closureBelow")) : base));
}

const ROUND = ["made", "wetMoulded", "corners", "flange", "gussetThickness", "inset"];
const flanged = (k: Known): boolean => k.choice("made") === "flanged gusset";
const isRound = (k: Known): boolean => !wraps(k) && k.choice("corners") === "round";
const isClipped = (k: Known): boolean => !wraps(k) && k.choice("corners") === "clipped";
const cornerFor = (k: Known, strain: number): Quantity => leastCornerRadius(k.q("flange"), k.q("gussetThickness"), k.q("inset"), strain);
const LEAST_CORNER_MM = 6;
/** A clip is longer by this share than its rounded ends take of it, so that both fit. */
const CLIP_SPARE = 0.03;

/** How far the edge turns at a corner of the base, at most: a base that sags takes some of it off. */
const turnOf = (k: Known): number => Math.PI / 2 + trig.atan2((k.q("width").value - k.q("topWidth").value) / 2, k.q("height").value - k.q("baseSag").value);
/** Each end of a clip turns by half of it; beyond the clip its round takes this much of side and base. */
const beyondClip = (k: Known, round: Quantity): number => round.value * trig.tan(turnOf(k) / 4);

function leastCorner(k: Known): Quantity {
  if (isRound(k) && flanged(k)) return greatest(LEAST_CORNER_MM, cornerFor(k, GATHER_ERROR));
  if (!isClipped(k) || !flanged(k)) return millimetres(LEAST_CORNER_MM);
  const round = cornerFor(k, GATHER_ERROR);
  const shaped = ["width", "topWidth", "height", "baseSag"].map((n) => k.q(n));
  const value = ((1 + CLIP_SPARE) * beyondClip(k, round)) / trig.cos(turnOf(k) / 2) + 1;
  const between = shaped.flatMap((q, i) => (i === 0 ? [q] : [", ", q]));
  return { value, kind: "length", parts: ["what both rounded ends take of a clip, ", round, " each, on a panel of ", ...between], inputs: [round, ...shaped] };
}

const PANEL = [...ROUND, "height", "width", "topWidth", "baseSag", "seamStart"];
const shapeOf = (k: Known) => ({ height: k.q("height").value, topWidth: k.q("topWidth").value, baseWidth: k.q("width").value, corners: k.choice("corners") as (typeof CORNERS)[number], baseSag: k.q("baseSag").value });
const drawnOf = (k: Known, what: string, value: number, more: readonly Quantity[]): Quantity => {
  const inputs = [...["width", "height", "topWidth", "baseSag", "seamStart", "inset"].map((n) => k.q(n)), ...more];
  return { value, kind: "length", parts: [`the greatest that fits ${what} between `, ...inputs.flatMap((q, i) => (i === 0 ? [q] : [", ", q]))], inputs };
};

/** The greatest corner that leaves both sides their first stitches and the base a middle. */
function cornerRoom(k: Known): Quantity {
  if (!isRound(k) && !isClipped(k)) return k.q("width");
  const inset = k.q("inset").value;
  const rounds = isClipped(k) && flanged(k) ? [cornerFor(k, GATHER_ERROR)] : [];
  const beyond = rounds[0] ? (1 + CLIP_SPARE) * beyondClip(k, rounds[0]) : 0;
  const room = { below: k.q("seamStart").value + inset + SIDE_LEFT_MM + beyond, beside: isClipped(k) ? inset + 1 + beyond : 0 };
  return drawnOf(k, "both corners", mostCorner(shapeOf(k), room), rounds);
}

function defaultCorner(k: Known): Quantity {
  const wanted = times(0.5, least(k.q("width"), k.q("height")));
  const easy = isRound(k) && flanged(k) ? least(wanted, cornerFor(k, k.flag("wetMoulded") ? GATHER_CAUTION_WET : GATHER_CAUTION)) : times(0.5, wanted);
  return least(cornerRoom(k), greatest(leastCorner(k), easy));
}

const CLIP = [...PANEL, "cornerRadius"];
const roundsClip = (k: Known): boolean => isClipped(k) && flanged(k);
function mostClip(k: Known): Quantity {
  if (!isClipped(k)) return k.q("width");
  const inset = k.q("inset").value;
  const room = { below: k.q("seamStart").value + inset + SIDE_LEFT_MM, beside: inset + 1 };
  return drawnOf(k, "both clips' ends", mostClipRound({ ...shapeOf(k), cornerSize: k.q("cornerRadius").value }, room), [k.q("cornerRadius")]);
}

export const dimensions = {
  ...handedLeather,
  made: { kind: "choice", choices: MADE, handed: true, means: "how the bag is made", source: "bag" },
  opening: { kind: "choice", choices: ["flap", "open"], handed: true, means: "a flap or an open top", source: "bag" },
  closure: { kind: "choice", choices: CLOSURES, handed: true, means: "what holds the flap shut", source: "bag" },
  width: { kind: "length", least: 60, most: 700, handed: true, means: "width of the bag at its base, finished", source: "measures" },
  height: { kind: "length", least: 50, most: 600, handed: true, means: "height of the front, finished", source: "measures" },
  depth: { kind: "length", least: 10, most: 320, handed: true, means: "depth between the inner faces of front and back", source: "measures" },
  filledDepth: { kind: "length", least: 5, most: 320, handed: true, means: "the same at the top, with the bag filled", source: "measures" },
  inset: { kind: "length", least: 1.5, most: 15, handed: true, means: "line of stitches from the edge that is cut", source: "stitching" },
  pitch: { kind: "pitch", least: 1.5, most: 6.5, handed: true, means: "stitch pitch", source: "stitching" },
  allowance: { kind: "length", least: 0, most: 15, handed: true, means: "from a turned seam to the edge that is cut", source: "bag" },
  flange: { kind: "length", least: 0, most: 20, handed: true, means: "the gusset's web from the finished edge", source: "bag" },
  gussetThickness: { kind: "thickness", least: 0.5, most: 8, handed: true, means: "thickness of the gusset's leather", source: "leather" },
  wetMoulded: { kind: "flag", default: true, handed: true, means: "the gusset is moulded round the corners", source: "bag" },
  closureRoom: { kind: "length", least: 0, most: 150, handed: true, means: "leather from the closure's middle to the flap's end", source: "hardware" },
  closureBelow: { kind: "length", default: 0, least: 0, most: 1500, handed: true, means: "what strap and buckle take of the front below the closure's middle", source: "hardware" },
  closureDrop: { kind: "length", default: 0, least: 0, most: 1000, handed: true, means: "how far below the closure's middle the flap may end, over the buckle", source: "hardware" },
  flapLining: { kind: "length", default: 0, least: 0, most: 4, handed: true, means: "thickness of the flap's lining, which lies on the front", source: "leather" },
  topClear: { kind: "length", least: 0, most: 150, handed: true, means: "leather kept free at the top edge", source: "bag" },
  seamStart: {
    kind: "length",
    default: from(["thickness", "inset", "height"], (k) => least(greatest(8, asLength(times(1, k.q("thickness"))), sum(k.q("inset"), 4)), over(k.q("height"), 4))),
    least: from(["thickness", "inset"], (k) => greatest(3, asLength(times(1, k.q("thickness"))), k.q("inset"))),
    most: from(["height"], (k) => over(k.q("height"), 4)),
    means: "from the top edge down to the first stitch",
    source: COMMON,
  },
  topWidth: {
    kind: "length",
    default: from(["width"], (k) => times(1, k.q("width"))),
    least: from(["made", "width", "height"], (k) => (wraps(k) ? times(1, k.q("width")) : greatest(LEAST_TOP_MM, times(0.6, k.q("width")), minus(k.q("width"), times(0.5, k.q("height")))))),
    most: from(["made", "width", "height"], (k) => (wraps(k) ? times(1, k.q("width")) : least(times(1.4, k.q("width")), sum(k.q("width"), times(0.5, k.q("height")))))),
    means: "width at the top, where the sides slope; a body that wraps round is straight",
    source: COMMON,
  },
  baseSag: {
    kind: "length",
    default: 0,
    least: 0,
    most: from(["made", "width", "height"], (k) => (wraps(k) ? times(0, k.q("width")) : least(times(0.15, k.q("width")), times(0.2, k.q("height"))))),
    means: "how far the middle of the base hangs below its corners",
    source: COMMON,
  },
  corners: { kind: "choice", choices: CORNERS, default: "round", means: "corners of the base", source: COMMON },
  cornerRadius: {
    kind: "length",
    default: from(PANEL, (k) => defaultCorner(k)),
    least: from(PANEL, (k) => leastCorner(k)),
    most: from(PANEL, (k) => cornerRoom(k)),
    means: "radius of round corners; of clipped ones what is cut off each edge",
    source: COMMON,
  },
  clipRound: {
    kind: "length",
    default: from(CLIP, (k) => (roundsClip(k) ? greatest(cornerFor(k, GATHER_ERROR), least(cornerFor(k, GATHER_CAUTION_WET), mostClip(k))) : millimetres(0))),
    least: from(CLIP, (k) => (roundsClip(k) ? cornerFor(k, GATHER_ERROR) : millimetres(0))),
    most: from(CLIP, (k) => mostClip(k)),
    means: "radius that rounds both ends of a clipped corner, for a flanged gusset to gather round",
    source: COMMON,
  },
  baseFold: {
    kind: "length",
    default: from(["made", "thickness", "gussetThickness", "inset", "depth", "height"], (k) => {
      const easy =
        k.choice("made") === "side gussets"
          ? easyFootFold(k.q("gussetThickness"), k.q("inset"))
          : k.choice("made") === "end panels"
            ? sum(leastEndFold(k.q("inset")), greatest(3, k.q("inset")), asLength(times(0.5, k.q("thickness"))))
            : millimetres(6);
      return greatest(leastBaseFold(k), least(asLength(easy), mostBaseFold(k)));
    }),
    least: from(["made", "thickness", "gussetThickness", "inset"], (k) => leastBaseFold(k)),
    most: from(["depth", "height"], (k) => mostBaseFold(k)),
    means: "inner radius of the folds beside the base, where the body wraps round",
    source: COMMON,
  },
  backFold: {
    kind: "length",
    default: from(["thickness", "seamStart", "filledDepth"], (k) => least(times(2.5, k.q("thickness")), mostBackFold(k))),
    least: from(["thickness"], (k) => asLength(times(1, k.q("thickness")))),
    most: from(["thickness", "seamStart", "filledDepth"], (k) => mostBackFold(k)),
    means: "inner radius of the flap's bend at the back",
    source: COMMON,
  },
  frontFold: {
    kind: "length",
    default: from(["thickness", "backFold", "filledDepth"], (k) => least(asLength(times(2, k.q("thickness"))), mostFrontFold(k))),
    least: from(["thickness"], (k) => asLength(times(1, k.q("thickness")))),
    most: from(["thickness", "backFold", "filledDepth"], (k) => mostFrontFold(k)),
    means: "inner radius of the flap's bend at the front",
    source: COMMON,
  },
  bulge: { kind: "length", default: 0, least: 0, most: from(["filledDepth"], (k) => times(0.5, k.q("filledDepth"))), means: "how far the filled front stands out where the flap is closed", source: COMMON },
  top: { kind: "choice", choices: ["straight", "dipped"], default: "straight", means: "the top edge of the front, and of the back where there is no flap", source: COMMON },
  dip: {
    kind: "length",
    default: from(["opening", "closure", "height", "topClear", "topWidth", "inset", "seamStart", ...LOW], (k) => least(times(0.1, k.q("height")), mostDip(k))),
    least: 0,
    most: from(["opening", "closure", "height", "topClear", "topWidth", "inset", "seamStart", ...LOW], (k) => mostDip(k)),
    means: "how far the middle of a dipped top lies below its sides",
    source: COMMON,
  },
  closureHeight: {
    kind: "length",
    default: from(["opening", "closure", "height", "top", "dip", "topClear", "frontFold", ...LOW], (k) => greatest(lowestClosure(k), least(times(0.45, k.q("height")), highestClosure(k)))),
    least: from(["opening", "closure", ...LOW], (k) => lowestClosure(k)),
    most: from(["opening", "closure", "closureRoom", "height", "top", "dip", "topClear", "frontFold"], (k) => highestClosure(k)),
    means: "the closure's middle over the bag's bottom",
    source: COMMON,
  },
  flapEnd: {
    kind: "length",
    default: from(["opening", "closure", "height", "closureHeight", "closureRoom"], (k) => (closes(k) ? minus(k.q("closureHeight"), k.q("closureRoom")) : times(0.3, k.q("height")))),
    least: from(["opening", "closure", "closureHeight", "closureRoom", "closureDrop"], (k) =>
      closes(k) && k.choice("closure") === BUCKLED ? greatest(0, minus(k.q("closureHeight"), greatest(k.q("closureRoom"), k.q("closureDrop")))) : millimetres(0),
    ),
    most: from(["opening", "closure", "height", "frontFold", "closureHeight", "closureRoom"], (k) =>
      closes(k) ? minus(k.q("closureHeight"), k.q("closureRoom")) : asLength(minus(sum(k.q("height"), FLAP_OVER_MM), k.q("frontFold"), LEAST_DROP_MM)),
    ),
    means: "the flap's end over the bag's bottom",
    source: COMMON,
  },
  flapEdge: { kind: "choice", choices: FLAP_EDGES, default: "straight", means: "the flap's edge; a tuck-in closure has its tongue", source: COMMON },
  flapCorner: { kind: "length", default: from(SHAPED, (k) => least(20, mostFlapCorner(k))), least: 3, most: from(SHAPED, (k) => mostFlapCorner(k)), means: "radius of the flap's corners", source: COMMON },
  flapShape: {
    kind: "length",
    default: from(SHAPE, (k) => greatest(leastShape(k), least(times(0.3, k.q("topWidth")), edgeOf(k) === "tongue" ? leastShape(k) : mostShape(k)))),
    least: from(SHAPE, (k) => leastShape(k)),
    most: from(SHAPE, (k) => mostShape(k)),
    means: "depth of the flap's shaped part; of a tongue its length",
    source: COMMON,
  },
  tongueWidth: {
    kind: "length",
    default: from(["opening", "closure", "flapEdge", "topWidth", "flapCorner"], (k) => least(greatest(LEAST_TONGUE_MM, least(60, times(0.25, k.q("topWidth")))), mostTongue(k))),
    least: LEAST_TONGUE_MM,
    most: from(["opening", "closure", "flapEdge", "topWidth", "flapCorner"], (k) => mostTongue(k)),
    means: "width of a tuck-in tongue",
    source: COMMON,
  },
  glueWidth: {
    kind: "length",
    default: from(["made", "inset"], (k) => (k.choice("made") === "turned gusset" ? times(0, k.q("inset")) : minus(k.q("inset"), 1))),
    least: 0,
    most: from(["inset"], (k) => minus(k.q("inset"), 0.5)),
    means: "strip along the seams that is glued before stitching",
    source: COMMON,
  },
} as const satisfies DimensionTable;

function leastBaseFold(k: Known): Quantity {
  const thickness = asLength(times(1, k.q("thickness")));
  if (k.choice("made") === "side gussets") return greatest(thickness, leastFootFold(k.q("gussetThickness")));
  return k.choice("made") === "end panels" ? greatest(thickness, leastEndFold(k.q("inset"))) : millimetres(1);
}
/** Something of the base stays flat between its two bends, and most of the front above its own. */
const mostBaseFold = (k: Known): Quantity => least(minus(over(k.q("depth"), 2), BASE_FLAT_MM), over(k.q("height"), 4));

/** The bend begins above the first stitch. */
const mostBackFold = (k: Known): Quantity => least(sum(k.q("seamStart"), FLAP_OVER_MM - 1), k.q("filledDepth"));
/** Both bends fit into what the flap reaches over. */
const mostFrontFold = (k: Known): Quantity => least(15, asLength(minus(sum(k.q("filledDepth"), k.q("thickness")), k.q("backFold"))));

function mostDip(k: Known): Quantity {
  const [width, inset, start] = [k.q("topWidth"), k.q("inset"), k.q("seamStart")];
  const clear: Quantity = {
    value: deepestDip(width.value, inset.value, start.value - inset.value),
    kind: "length",
    parts: ["(", start, " − ", inset, ") × ", width, " ÷ (2 × ", inset, ")"],
    inputs: [start, inset, width],
  };
  const free = closes(k) ? minus(k.q("height"), k.q("topClear"), CLOSURE_CLEAR_MM, leastClosure(k)) : times(0.5, k.q("height"));
  return greatest(0, least(times(0.25, k.q("height")), times(0.2, width), clear, asLength(free)));
}

const lowestClosure = (k: Known): Quantity => (closes(k) ? leastClosure(k) : millimetres(0));
function highestClosure(k: Known): Quantity {
  const height = k.q("height");
  if (!closes(k)) return height;
  const top = k.choice("top") === "dipped" ? sum(k.q("dip"), k.q("topClear"), CLOSURE_CLEAR_MM) : sum(k.q("topClear"), CLOSURE_CLEAR_MM);
  return least(
    asLength(minus(height, top)),
    asLength(minus(sum(height, FLAP_OVER_MM), k.q("frontFold"), k.choice("closure") === BUCKLED ? greatest(CLOSURE_CLEAR_MM, sum(k.q("closureRoom"), PAST_BEND_MM)) : CLOSURE_CLEAR_MM)),
  );
}

const mostTongue = (k: Known): Quantity => (edgeOf(k) === "tongue" ? asLength(minus(k.q("topWidth"), times(2, k.q("flapCorner")), 4 * TONGUE_FILLET_MM)) : k.q("topWidth"));
