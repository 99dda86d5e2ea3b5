import { arc, closedPath, line, type Point, SAME_POINT_MM, type Segment } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Hole, Piece, SeamEdge } from "../model/piece.ts";
import { minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { drawBitEnd, drawBuckleEnd, drawLoopEnd } from "../trade/drawTurnBack.ts";
import { creaseLines } from "../trade/finish.ts";
import { fixedHoles, fixedSections, type Placing, placingAt, stitchBox } from "../trade/fixedEnd.ts";
import { type EndFrame, NO_PARTS, type Parts, roundHole, together } from "../trade/parts.ts";
import { drawPoint, pointLength } from "../trade/points.ts";
import { netSection, tearOut } from "../trade/strength.ts";
import { type dimensions, type fixedDimensions, type Side, type WorkedEnd, workEnd } from "./strapTable.ts";

export {
  dimensions,
  fixedDimensions,
  LENGTH_NAMES,
  leastStrap,
  STRAP_ENDS,
  type WorkedEnd,
} from "./strapTable.ts";

// The general strap: any two ends of a billet with holes and a point, a turn-back round a buckle, a ring
// or another strap, a plain end, or one fixed flat to another piece by rivets, screws or a box of stitches.
// Its left end lies at smaller x; a left fold at x = 0.

type FixedNames = Exclude<keyof typeof fixedDimensions, keyof typeof dimensions>;
export type StrapValues = Values<typeof dimensions> & {
  readonly [K in FixedNames]?: Values<typeof fixedDimensions>[K];
};

export type StrapOrder = {
  readonly leather: string;
  readonly count: number;
  /** "strap" unless said. */
  readonly id?: string;
  readonly name?: string;
  /** What a ring of it is called; "bit ring" unless said. */
  readonly ring?: string;
};

type Ends = { readonly left: WorkedEnd; readonly right: WorkedEnd };
export const strapEnds = (d: StrapValues): Ends => ({
  left: workEnd(d, "left", d.leftTurnBack),
  right: workEnd(d, "right", d.rightTurnBack),
});

/**
 * What lies beyond the point of reckoning, along the flat. In use: bar or ring centre to the end of the
 * turn-back, or middle hole to tip. Fold to fold: the turn-back's length.
 */
function beyond(d: StrapValues, e: WorkedEnd): Quantity {
  const inUse = d.reckoned === "in use";
  if ("end" in e) {
    if (!inUse) return e.end.length;
    // At a ring or a strap the length is reckoned where the leather bears; at a buckle, the bar's centre.
    const bears = e.kind === "ring" ? over(d.ring, 2) : e.kind === "loop" ? over(d.around, 2) : 0;
    return { ...minus(sum(e.end.takeUp, e.end.length), bears), kind: "length" };
  }
  if (e.kind === "billet" && inUse)
    return { ...sum(over(times(minus(d.holes, 1), d.holePitch), 2), d.toTip), kind: "length" };
  // Fixed flat, a strap's length is reckoned from the fixing nearest its body, or from the slot it goes through.
  if ("fixed" in e && inUse) return e.fixed.reach;
  return { value: 0, kind: "length", parts: ["0"], inputs: [] };
}

/** Cut length, mm: the length as reckoned and what each end takes beyond it. */
export function strapCut(d: StrapValues, ends: Ends): Quantity {
  return named("strap cut length", sum(d.length, beyond(d, ends.left), beyond(d, ends.right)), {
    source: "finished length and turn-backs",
    kind: "length",
  });
}

/** Draws the strap, grain side up. */
export function shape(d: StrapValues, order: StrapOrder): Piece {
  const ends = strapEnds(d);
  const cut = strapCut(d, ends);
  const startX = "end" in ends.left ? -ends.left.end.length.value : 0;
  const endX = startX + cut.value;
  const left = drawEnd(d, ends.left, { side: "left", at: startX, ring: order.ring });
  const right = drawEnd(d, ends.right, { side: "right", at: endX, ring: order.ring });
  const outline = closedPath(right.from, [...right.segments, line(left.from), ...left.segments]);
  return {
    id: order.id ?? "strap",
    name: order.name ?? "Strap",
    count: order.count,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline,
    corners: [...right.corners, ...left.corners],
    ...together(left.parts, right.parts, { marks: d.crease ? creaseLines(outline, d.crease.value) : [] }),
    grain: 0,
    straight: true,
    controls: [{ from: [left.control, 0], to: [right.control, 0], words: controlWords(ends) }],
    sizes: [
      cut,
      named("strap width", d.width),
      d.length,
      ...[ends.left, ends.right].flatMap((e) =>
        "end" in e ? [e.end.length, e.end.developed.holeToMate] : [],
      ),
      ...([ends.left, ends.right].some((e) => e.kind === "billet") ? [d.holePitch, d.toTip] : []),
      ...[ends.left, ends.right].flatMap((e) => ("fixed" in e ? [e.fixed.reach] : [])),
    ],
    notes: [],
  };
}

const endWord = (e: WorkedEnd): string => ("end" in e ? "fold" : e.kind === "billet" ? "first hole" : "end");
const controlWords = (e: Ends): string => `left ${endWord(e.left)} to right ${endWord(e.right)}`;

type DrawnEnd = {
  readonly from: Point;
  readonly segments: readonly Segment[];
  readonly corners: Piece["corners"];
  readonly parts: Parts;
  readonly control: number;
};

type EndPlace = { readonly side: Side; readonly at: number; readonly ring: string | undefined };

/** Draws one end at x = `at`; segments run anticlockwise, from `from` round the end. */
function drawEnd(d: StrapValues, e: WorkedEnd, { side, at, ring }: EndPlace): DrawnEnd {
  const out = side === "right" ? 1 : -1;
  const h = d.width.value / 2;
  const flip = ([x, y]: Point): Point => (out === 1 ? [at + x, y] : [at - x, -y]);
  const turn = (s: Segment): Segment =>
    s.kind === "arc"
      ? { ...s, to: flip(s.to), centre: flip(s.centre) }
      : s.kind === "line"
        ? line(flip(s.to))
        : s;
  if (e.kind === "billet") {
    const length = pointLength(d.point, d.width).value;
    const point = drawPoint(d.point, 0, d.width.value, length);
    const { holes, first } = billetHoles(d, side, at, out);
    return {
      from: flip([-length, -h]),
      segments: point.segments.map(turn),
      corners: point.corners.map((c) => ({ name: `${side} ${c.name}`, at: flip(c.at) })),
      parts: together({ holes, sections: billetSections(d, side) }),
      control: first,
    };
  }
  if ("fixed" in e) return drawFixed(d, e, side, at);
  const parts =
    "end" in e
      ? drawTurn(d, e, ring, {
          id: side,
          centre: at - out * e.end.length.value,
          direction: side === "left" ? 1 : -1,
        })
      : NO_PARTS;
  return {
    from: flip([0, -h]),
    segments: [line(flip([0, h]))],
    corners: [
      { name: `${side} corner 1`, at: flip([0, -h]) },
      { name: `${side} corner 2`, at: flip([0, h]) },
    ],
    parts,
    control: "end" in e ? at - out * e.end.length.value : at,
  };
}

type Turned = Extract<WorkedEnd, { readonly end: unknown }>;

function drawTurn(d: StrapValues, e: Turned, ring: string | undefined, frame: EndFrame): Parts {
  const strap = {
    frame,
    width: d.width,
    thickness: d.thickness,
    inset: d.inset.value,
    backHoles: "punched flat" as const,
  };
  if (e.kind === "buckle") return drawBuckleEnd(strap, e.input, e.end);
  if (e.kind === "loop") return drawLoopEnd(strap, e.input, e.end);
  return drawBitEnd(
    strap,
    {
      legs: e.input.legs,
      ring: e.input.ring,
      hole: e.input.hole,
      use: d.fixing === "rivet" ? "rivet" : "screw",
      label: e.input.label,
      ...(ring === undefined ? {} : { around: ring }),
    },
    e.end,
  );
}

type Fixed = Extract<WorkedEnd, { readonly fixed: unknown }>;

/** Lengths along a fixed end run from the strap's end inward. */
const placingOf = (side: Side, at: number): Placing => placingAt([at, 0], side === "left" ? 0 : Math.PI);

function drawFixed(d: StrapValues, e: Fixed, side: Side, at: number): DrawnEnd {
  const place = placingOf(side, at);
  const use = d.fixing === "rivet" ? "rivet" : "screw";
  const [h, r] = [d.width.value / 2, d.endCorner?.value ?? 0];
  const square = r < SAME_POINT_MM;
  // Anticlockwise round the end: from one edge to the other, u running back along the strap.
  const straight = 2 * (h - r) < SAME_POINT_MM ? [] : [line(place(0, r - h))];
  const round = [
    arc(place(0, h - r), place(r, h - r), true),
    ...straight,
    arc(place(r, -h), place(r, r - h), true),
  ];
  return {
    from: square ? place(0, h) : place(r, h),
    segments: square ? [line(place(0, -h))] : round,
    corners: square
      ? [
          { name: `${side} corner 1`, at: place(0, h) },
          { name: `${side} corner 2`, at: place(0, -h) },
        ]
      : [],
    parts: together({
      holes: fixedHoles(e.fixed, e.input, place, `${side}.${use}`, use),
      sections: fixedSections(e.input, e.fixed, use),
    }),
    control: at,
  };
}

/** The closed boxes that a strap's stitched ends are sewn by; their holes are laid with those of their mates. */
export function stitchedEdges(d: StrapValues, id: string): readonly SeamEdge[] {
  const ends = strapEnds(d);
  const startX = "end" in ends.left ? -ends.left.end.length.value : 0;
  const endX = startX + strapCut(d, ends).value;
  return (["left", "right"] as const).flatMap((side) => {
    const e = ends[side];
    if (!("fixed" in e) || e.kind !== "stitched") return [];
    const path = stitchBox(e.fixed, e.input, placingOf(side, side === "left" ? startX : endX));
    return [{ piece: id, id: `${side}.box`, path, inset: e.input.inset.value, breaks: [] }];
  });
}

/** Holes of a billet, numbered from the tip. */
function billetHoles(
  d: StrapValues,
  side: Side,
  tip: number,
  out: 1 | -1,
): { readonly holes: readonly Hole[]; readonly first: number } {
  const x = (i: number): number => tip - out * (d.toTip.value + i * d.holePitch.value);
  const holes = Array.from({ length: Math.round(d.holes.value) }, (_, i) =>
    roundHole(`${side}.${i + 1}`, [x(i), 0], d.holeSize.value, "buckle"),
  );
  return { holes, first: x(0) };
}

function billetSections(d: StrapValues, side: Side): Piece["sections"] {
  const net = netSection(`${side} hole section`, d.width, d.holeSize, d.thickness);
  return [
    { name: `${side} end: at a buckle hole`, estimate: net },
    {
      name: `${side} end: tear-out at the first hole`,
      estimate: tearOut(`${side} tear-out`, d.toTip, d.holeSize, d.thickness, net),
    },
  ];
}
