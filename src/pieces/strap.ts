import { closedPath, line, type Point, type Segment } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Hole, Piece } from "../model/piece.ts";
import { minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { drawBitEnd, drawBuckleEnd, drawLoopEnd } from "../trade/drawTurnBack.ts";
import { creaseLines } from "../trade/finish.ts";
import { type EndFrame, NO_PARTS, type Parts, roundHole, together } from "../trade/parts.ts";
import { drawPoint, pointLength } from "../trade/points.ts";
import { netSection, tearOut } from "../trade/strength.ts";
import { type dimensions, type Side, type WorkedEnd, workEnd } from "./strapTable.ts";

export { dimensions, STRAP_ENDS } from "./strapTable.ts";

// The general strap: any two ends of a billet with holes and a point, a turn-back round a buckle, a ring
// or another strap, or a plain end. Its left end lies at smaller x; a left fold at x = 0.

export type StrapValues = Values<typeof dimensions>;

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
export function shape(d: StrapValues, order: { readonly leather: string; readonly count: number }): Piece {
  const ends = strapEnds(d);
  const cut = strapCut(d, ends);
  const startX = "end" in ends.left ? -ends.left.end.length.value : 0;
  const endX = startX + cut.value;
  const left = drawEnd(d, ends.left, "left", startX);
  const right = drawEnd(d, ends.right, "right", endX);
  const outline = closedPath(right.from, [...right.segments, line(left.from), ...left.segments]);
  return {
    id: "strap",
    name: "Strap",
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

/** Draws one end at x = `at`; segments run anticlockwise, from `from` round the end. */
function drawEnd(d: StrapValues, e: WorkedEnd, side: Side, at: number): DrawnEnd {
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
  const parts =
    "end" in e
      ? drawTurn(d, e, {
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

function drawTurn(d: StrapValues, e: Extract<WorkedEnd, { readonly end: unknown }>, frame: EndFrame): Parts {
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
    },
    e.end,
  );
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
