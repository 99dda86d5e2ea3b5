import { boundsOf } from "../geometry/bounds.ts";
import { pathLength } from "../geometry/length.ts";
import { endPoint, type Path, type Point } from "../geometry/path.ts";
import { remembered } from "../geometry/remember.ts";
import { reversed } from "../geometry/transform.ts";
import type { Values } from "../model/dimension.ts";
import type { Fold, Piece, SeamEdge } from "../model/piece.ts";
import { greatest, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { wrapsRound } from "../trade/bagKinds.ts";
import { bendNote, centreLine, glueAlong, measuredOn, middleNotch, panelNotes } from "../trade/bodyEdge.ts";
import { type Flap, flapOutline, panelOutline, wrapOutline } from "../trade/bodyOutline.ts";
import { quarterNotches } from "../trade/clips.ts";
import { flapFoldLines, flapNotes } from "../trade/flapFolds.ts";
import { type FlapFold, flapRun } from "../trade/flapLength.ts";
import { FLAP_OVER_MM } from "../trade/flapRoom.ts";
import { turnedEdge } from "../trade/gusset.ts";
import { type PanelShape, panelOffset } from "../trade/panel.ts";
import { type Parts, together } from "../trade/parts.ts";
import { baseFolds, developWrap, wrapGlue, wrapSeams } from "../trade/wrapBody.ts";
import type { dimensions } from "./purseBodyTable.ts";

export { dimensions } from "./purseBodyTable.ts";

// The body of a bag, grain side up. A front or back: x across, centred; y = 0 the base, the top at y = height,
// the flap above the back's top. A body that wraps round: y = 0 the base's middle, the front below, back and
// flap above.

export type BodyValues = Values<typeof dimensions>;
type Order = { readonly leather: string; readonly count: number };

/** The shape of the finished edge of front and back. */
export const panelShape = (d: BodyValues): PanelShape => ({
  height: d.height.value,
  topWidth: d.topWidth.value,
  baseWidth: d.width.value,
  corners: d.corners,
  cornerSize: d.cornerRadius.value,
  clipRound: d.clipRound.value,
  baseSag: d.baseSag.value,
});

const isTurned = (d: BodyValues): boolean => d.made === "turned gusset";
const hasFlap = (d: BodyValues): boolean => d.opening === "flap";
const closes = (d: BodyValues): boolean => hasFlap(d) && d.closure !== "none";
const dipOf = (d: BodyValues): number => (d.top === "dipped" ? d.dip.value : 0);

/** How far outside the finished edge a turned piece is cut; nothing otherwise. */
const grown = (d: BodyValues): Quantity | undefined =>
  isTurned(d)
    ? turnedEdge("body's finished edge from the cut edge", d.allowance, d.thickness, d.neutral)
    : undefined;
const grownBy = (d: BodyValues): number => grown(d)?.value ?? 0;

const firstStitch = (d: BodyValues): number => d.height.value - d.seamStart.value;
/** The line so far inside the cut edge, from the first stitch round to the last. */
const insideCut = (d: BodyValues, inward: number): Path =>
  panelOffset(panelShape(d), inward - grownBy(d), firstStitch(d));

/** The panels' seams with the gusset, in one direction along it: the back is drawn as seen from outside. */
export const edges = remembered((d: BodyValues): { readonly front: SeamEdge; readonly back: SeamEdge } => {
  const path = insideCut(d, d.inset.value);
  const about = { id: "seam", inset: d.inset.value, breaks: [] };
  return {
    front: { piece: "front", path, ...about },
    back: { piece: "back", path: reversed(path), ...about },
  };
});

/** The two seams of a body that wraps round, both from the front's top to the back's top. */
export const wrapEdges = (d: BodyValues): { readonly left: SeamEdge; readonly right: SeamEdge } =>
  wrapSeams(developWrap(d), d.width.value / 2 - d.inset.value, d.seamStart.value, d.inset.value);

/** y of the base line on the front's piece and on the flap's; heights count from it, away from the base. */
export function baseLines(d: BodyValues): { readonly front: number; readonly flap: number } {
  if (!wrapsRound(d.made)) return { front: 0, flap: 0 };
  const y = developWrap(d).baseLine.value;
  return { front: -y, flap: y };
}

/** Where on the front a thing lies that is `height` over the bag's bottom and `x` to the right, seen from outside. */
export const frontPoint = (d: BodyValues, height: number, x = 0): Point =>
  wrapsRound(d.made) ? [0 - x, baseLines(d).front - height] : [x, height];

/** How the flap goes over the filled bag. */
export const flapFold = (d: BodyValues): FlapFold => ({
  label: "flap",
  // A lining lies between the flap and the front: the leather itself goes so much further round.
  over: named("flap over the base line", sum(d.height, FLAP_OVER_MM, d.flapLining)),
  reach: named("flap's reach over the top", sum(d.filledDepth, d.thickness, d.flapLining), {
    kind: "length",
  }),
  backFold: d.backFold,
  frontFold: d.frontFold,
  thickness: d.thickness,
  neutral: d.neutral,
  bulge: d.bulge,
});

/** Where on the flap that lies which meets `height` on the front, in the middle of the bag. */
export const flapPoint = (d: BodyValues, height: Quantity): Point => [
  0,
  baseLines(d).flap + flapRun(flapFold(d), height, "base line to what meets it").value,
];

/** The height that the flap meets the front at: its closure, or its end where it has none. */
const meets = (d: BodyValues): Quantity => (closes(d) ? d.closureHeight : d.flapEnd);

const toClosure = (d: BodyValues): Quantity =>
  flapRun(flapFold(d), d.closureHeight, "base line to the closure on the flap");

/** From the base line to the flap's end. Below a closure the flap hangs straight. */
function flapEndRun(d: BodyValues): Quantity {
  const name = "base line to the flap's end";
  if (!closes(d)) return flapRun(flapFold(d), d.flapEnd, name);
  return named(name, sum(toClosure(d), minus(d.closureHeight, d.flapEnd)));
}

/** The flap's end, in the middle of the bag. */
export const flapEndPoint = (d: BodyValues): Point => [0, baseLines(d).flap + flapEndRun(d).value];

const flapOf = (d: BodyValues): Flap => ({
  kind: closes(d) && d.closure === "tuck-in tongue" ? "tongue" : d.flapEdge,
  halfWidth: d.topWidth.value / 2,
  end: flapEndPoint(d)[1],
  corner: d.flapCorner.value,
  depth: d.flapShape.value,
  tongueWidth: d.tongueWidth.value,
});

function flapFolds(d: BodyValues): readonly Fold[] {
  const widens = Math.max(0, d.topWidth.value - d.width.value) / 2;
  const slope = widens / (d.height.value - d.baseSag.value);
  // The back's fold may lie a little below the top, where the panel is narrower.
  const half = (along: number): number => d.topWidth.value / 2 - slope * Math.max(0, d.height.value - along);
  return flapFoldLines(flapFold(d), meets(d), baseLines(d).flap, half);
}

function flapSizes(d: BodyValues): readonly Quantity[] {
  const length = named("flap beyond the back's top", minus(flapEndRun(d), d.height));
  return closes(d) ? [length, toClosure(d)] : [length];
}

const BACKBONE = Math.PI / 2;

/** What every piece of the body has in common. */
const common = (d: BodyValues, order: Order) => ({
  count: order.count,
  hand: "same" as const,
  leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
  grain: BACKBONE,
  straight: false,
});

/** What shapes a panel's edge. */
const shapedBy = (d: BodyValues): readonly Quantity[] => [
  d.width,
  d.height,
  d.topWidth,
  ...(d.corners === "square" ? [] : [d.cornerRadius]),
  // A round smaller than the inset is a corner on the seam line still.
  ...(d.corners === "clipped" && (isTurned(d) || d.clipRound.value >= d.inset.value) ? [d.clipRound] : []),
  d.baseSag,
];

/** Width of a panel's outline over all. */
function cutWidth(d: BodyValues, name: string, outline: Path): Quantity {
  const grow = grown(d);
  const widest = greatest(d.topWidth, d.width);
  if (d.topWidth.value === d.width.value) {
    // Whichever grows decides.
    const both = { ...widest, inputs: [d.topWidth, d.width] };
    return named(name, grow ? sum(both, times(2, grow)) : both);
  }
  if (!grow && (d.topWidth.value > d.width.value || d.corners === "square")) return named(name, widest);
  const { minX, maxX } = boundsOf(outline);
  return named(
    name,
    measuredOn("across the outline", maxX - minX, [...shapedBy(d), ...(grow ? [grow] : [])]),
  );
}

/** The seam line lies inside the finished edge, or, turned, outside it by what the thickness asks for. */
const seamLength = (d: BodyValues, id: string): Quantity =>
  named(
    `${id} seam length`,
    measuredOn("along the seam line", pathLength(edges(d).front.path), [
      ...shapedBy(d),
      d.seamStart,
      ...(isTurned(d) ? [d.thickness, d.neutral] : [d.inset]),
    ]),
  );

const ACROSS = "first stitch to first stitch, across";
/** A dip that comes below the first stitches leaves no leather straight across between them. */
const dipsBelow = (d: BodyValues): boolean => dipOf(d) >= d.seamStart.value;

/** What to measure beside the middle line. */
function besideMiddle(d: BodyValues, { path }: SeamEdge, foot: Point): Piece["controls"][number] {
  const [from, to] = [path.start, endPoint(path)];
  return dipsBelow(d)
    ? { from, to: foot, words: "first stitch to the base's middle" }
    : { from, to, words: ACROSS };
}

function panel(d: BodyValues, order: Order, id: "front" | "back", extra: Partial<Parts>): Piece {
  const flap = id === "back" && hasFlap(d);
  const edge = edges(d)[id];
  const drawn = { shape: panelShape(d), grown: grownBy(d) };
  const { outline, corners } = flap ? flapOutline(drawn, flapOf(d)) : panelOutline(drawn, dipOf(d));
  const grow = grown(d);
  const run = flap ? flapEndRun(d) : d.height;
  const foot: Point = [0, 0 - grownBy(d)];
  const end: Point = [0, flap ? run.value : d.height.value - dipOf(d)];
  const glue = d.glueWidth.value;
  const toEdge = id === "front" ? -d.inset.value : d.inset.value;
  return {
    id,
    name: flap ? "Back with flap" : id === "front" ? "Front" : "Back",
    ...common(d, order),
    outline,
    corners,
    ...together(
      {
        folds: flap ? flapFolds(d) : [],
        zones: glue > 0 ? [glueAlong("glue", insideCut(d, 0), insideCut(d, glue))] : [],
        marks: [centreLine(foot, end), ...quarterNotches(edge.id, edge.path, toEdge)],
      },
      extra,
    ),
    controls: [
      besideMiddle(d, edge, foot),
      { from: foot, to: end, words: flap ? "base to the flap's end" : "base to the top, in the middle" },
    ],
    sizes: [
      cutWidth(d, `${id} cut width`, outline),
      named(`${id} cut height`, grow ? sum(run, grow) : run),
      ...(flap ? flapSizes(d) : []),
      seamLength(d, id),
    ],
    notes: [...panelNotes(isTurned(d)), ...(flap ? flapNotes(flapFold(d), d.thickest) : [])],
  };
}

/** Draws the front: base line on y = 0, the finished top at y = height. `extra`: what other parts put on it. */
export const front = (d: BodyValues, order: Order, extra: Partial<Parts> = {}): Piece =>
  panel(d, order, "front", extra);

/** Draws the back as seen from outside, with the flap above it where the bag has one. */
export const back = (d: BodyValues, order: Order, extra: Partial<Parts> = {}): Piece =>
  panel(d, order, "back", extra);

/** First stitch to first stitch; where a dip comes below them, to the last on the other side. */
const acrossTop = (d: BodyValues, from: Point, last: Point, beside: Point): Piece["controls"][number] =>
  dipsBelow(d)
    ? { from, to: last, words: "first stitch to the last on the other side" }
    : { from, to: beside, words: ACROSS };

/** Draws a body that wraps round: front, base, back and flap in one piece. */
export function wrap(d: BodyValues, order: Order, extra: Partial<Parts> = {}): Piece {
  const [w, half, flap] = [developWrap(d), d.width.value / 2, hasFlap(d)];
  const { left, right } = wrapEdges(d);
  const { outline, corners } = wrapOutline(half, w.top, dipOf(d), flap ? flapOf(d) : undefined);
  const from: Point = [0, dipOf(d) - w.top];
  const to: Point = [0, flap ? w.baseLine.value + flapEndRun(d).value : w.top - dipOf(d)];
  const length = flap ? sum(over(w.flat, 2), w.baseLine, flapEndRun(d)) : w.flat;
  return {
    id: "body",
    name: flap ? "Body: front, base, back and flap" : "Body: front, base and back",
    ...common(d, order),
    outline,
    corners,
    ...together(
      {
        folds: [...baseFolds(d, w, half), ...(flap ? flapFolds(d) : [])],
        marks: [centreLine(from, to), middleNotch(left, d.inset.value), middleNotch(right, -d.inset.value)],
      },
      { zones: wrapGlue(w, d.width.value, d.glueWidth.value, d.seamStart.value, d.made === "side gussets") },
      extra,
    ),
    controls: [
      acrossTop(d, left.path.start, endPoint(right.path), right.path.start),
      { from: left.path.start, to: endPoint(left.path), words: "first stitch to last, along a side" },
      { from, to, words: `front's top to ${flap ? "the flap's end" : "back's top"}, in the middle` },
    ],
    sizes: [
      named("body cut length", length),
      named("body cut width", d.width),
      w.flat,
      ...(flap ? flapSizes(d) : []),
      named("body seam length", minus(w.flat, times(2, d.seamStart))),
    ],
    notes: [
      bendNote("base folds", d.baseFold, d.thickest),
      ...(flap ? flapNotes(flapFold(d), d.thickest) : []),
      ...panelNotes(false),
    ],
  };
}
