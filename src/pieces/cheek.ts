import { offsetPath } from "../geometry/offset.ts";
import { closedPath, line, type Path, type Point } from "../geometry/path.ts";
import { mirroredInY, reversed } from "../geometry/transform.ts";
import type { Values } from "../model/dimension.ts";
import type { Mark, Piece, Zone } from "../model/piece.ts";
import { minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import { bitEnd } from "../trade/bitEnd.ts";
import { type BodyEdge, bodyEdge } from "../trade/body.ts";
import { buckleEnd } from "../trade/buckleEnd.ts";
import { drawBitEnd, drawBuckleEnd } from "../trade/drawTurnBack.ts";
import { creaseLines, stampNotes } from "../trade/finish.ts";
import { type EndFrame, together } from "../trade/parts.ts";
import { bitInput, type dimensions, type Room, topInput } from "./cheekTable.ts";

export { bitInput, dimensions } from "./cheekTable.ts";

// The cheek: from the crown's buckle down to the bit. On the flat it lies along x, the buckle's fold at
// x = 0, the bit's fold at greater x; each turn-back's back leg lies outside its fold.

type CheekValues = Values<typeof dimensions>;

/** What the article adds: how many, and of which leather. */
export type CheekOrder = { readonly count: number; readonly leather: string };

/** The ends of a cheek as worked, for the article to hand on. */
export const cheekEnds = (d: CheekValues): Room => ({
  top: buckleEnd(topInput(d, d.buckleTurnBack)),
  bit: bitEnd(bitInput(d, d.bitTurnBack)),
});

type Places = {
  readonly fold: number;
  readonly bodyFrom: number;
  readonly bodyTo: number;
  readonly start: number;
  readonly end: number;
};

/** Cut length, mm: (C − d_b/2) + (D_t − c_t + z_t) + (D_b − c_b + z_b); the straight part takes the allowance. */
export function cheekCutLength(d: CheekValues, { top, bit }: Room): Quantity {
  const between = times(d.lengthFactor, minus(d.effectiveLength, times(0.5, d.ring), top.clamp, bit.clamp));
  return named(
    "cheek cut length",
    {
      ...sum(
        top.length,
        times(0.5, top.developed.holeToMate),
        between,
        times(0.5, bit.developed.holeToMate),
        bit.length,
      ),
      kind: "length",
    },
    { source: "turn-backs and the part between their first holes", kind: "length" },
  );
}

function placesOf(d: CheekValues, { top, bit }: Room): Places {
  const between =
    (d.effectiveLength.value - d.ring.value / 2 - top.clamp.value - bit.clamp.value) * d.lengthFactor.value;
  const fold = top.developed.holeToMate.value / 2 + between + bit.developed.holeToMate.value / 2;
  return {
    fold,
    bodyFrom: d.swellFrom.value + top.takeUp.value,
    bodyTo: fold - (bit.developed.holeToMate.value / 2 + bit.beyond.value + 3),
    start: -top.length.value,
    end: fold + bit.length.value,
  };
}

/** Draws the cheek; grain side up, the near one. The values are resolved, so the ends have room. */
export function shape(d: CheekValues, order: CheekOrder): Piece {
  const room = cheekEnds(d);
  const at = placesOf(d, room);
  const edge = bodyEdge({
    kind: d.body,
    from: at.bodyFrom,
    to: at.bodyTo,
    widthFrom: d.width.value,
    widthTo: d.bitWidth.value,
    widest: d.widest.value,
    widestAt: d.widestAt.value,
    scallops: Math.round(d.scallops.value),
  });
  const outline = outlineOf(edge, at, d.width.value, d.bitWidth.value);
  const parts = together(
    drawBuckleEnd(
      strapAt({ id: "buckle", centre: 0, direction: 1 }, d, d.width),
      topInput(d, d.buckleTurnBack),
      room.top,
    ),
    drawBitEnd(
      strapAt({ id: "bit", centre: at.fold, direction: -1 }, d, d.bitWidth),
      {
        legs: bitInput(d).legs,
        ring: d.ring,
        hole: d.fixingHole,
        use: d.fixing === "rivet" ? "rivet" : "screw",
        label: "bit end",
      },
      room.bit,
    ),
    { zones: tooling(d, edge), marks: creases(d, outline) },
  );
  const cut = cheekCutLength(d, room);
  return {
    id: "cheek",
    name: "Cheek",
    count: order.count,
    hand: order.count === 2 ? "pair" : "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline,
    corners: cornersOf(edge, at, d.width.value, d.bitWidth.value),
    ...parts,
    grain: 0,
    straight: d.body === "straight",
    controls: [{ from: [0, 0], to: [at.fold, 0], words: "fold to fold" }],
    sizes: [
      cut,
      named("cheek widest", d.body === "swelled" || d.body === "scalloped" ? d.widest : d.width),
      d.effectiveLength,
      room.top.length,
      room.bit.length,
      room.top.developed.holeToMate,
      room.bit.developed.holeToMate,
      room.top.slotLength,
      room.top.reach.width,
    ],
    notes: toolingNotes(d, at),
  };
}

const strapAt = (frame: EndFrame, d: CheekValues, width: Quantity) => ({
  frame,
  width,
  thickness: d.thickness,
  inset: d.inset.value,
  backHoles: d.backHoles,
});

function outlineOf(edge: BodyEdge, at: Places, width: number, bitWidth: number): Path {
  const lower = mirroredInY(edge.path);
  const upper = reversed(edge.path);
  const [h, b] = [width / 2, bitWidth / 2];
  return closedPath(
    [at.start, -h],
    [
      line([at.bodyFrom, -h]),
      ...lower.segments,
      line([at.end, -b]),
      line([at.end, b]),
      line([at.bodyTo, b]),
      ...upper.segments,
      line([at.start, h]),
    ],
  );
}

function cornersOf(edge: BodyEdge, at: Places, width: number, bitWidth: number): Piece["corners"] {
  const [h, b] = [width / 2, bitWidth / 2];
  const cusps = edge.corners.flatMap(([x, y], i) => [
    { name: `scallop ${i + 1} upper`, at: [x, y] as Point },
    { name: `scallop ${i + 1} lower`, at: [x, -y] as Point },
  ]);
  return [
    { name: "buckle end lower", at: [at.start, -h] },
    { name: "bit end lower", at: [at.end, -b] },
    { name: "bit end upper", at: [at.end, b] },
    { name: "buckle end upper", at: [at.start, h] },
    ...cusps,
  ];
}

/** The body inside its border: the place for stamping or carving. */
function tooling(d: CheekValues, edge: BodyEdge): readonly Zone[] {
  if (!d.tooling) return [];
  const upper = edge.path;
  const lower = mirroredInY(upper);
  const end = upper.segments.at(-1)!.to;
  const body = closedPath(
    [upper.start[0], -upper.start[1]],
    [...lower.segments, line(end), ...reversed(upper).segments],
  );
  return offsetPath(body, d.toolingBorder.value).map((outline, i) => ({
    id: `tooling.${i + 1}`,
    kind: "tooling",
    outline,
    label: "tooling",
  }));
}

const creases = (d: CheekValues, outline: Path): readonly Mark[] =>
  d.crease ? creaseLines(outline, d.crease.value) : [];

function toolingNotes(d: CheekValues, at: Places): readonly string[] {
  if (!d.tooling) return [];
  return stampNotes(at.bodyTo - at.bodyFrom - 2 * d.toolingBorder.value, d.stamp?.value);
}
