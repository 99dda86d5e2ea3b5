import { closedPath, line, openPath, type Point, rectanglePath } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Hole, Mark, Piece } from "../model/piece.ts";
import { minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { crownCutBothSides, effectiveCrown, effectiveOneSide, holeRow } from "../trade/balance.ts";
import { type BitEnd, type BitEndInput, bitEnd } from "../trade/bitEnd.ts";
import { drawBitEnd } from "../trade/drawTurnBack.ts";
import { creaseLines } from "../trade/finish.ts";
import { NO_PARTS, type Parts, roundHole, together } from "../trade/parts.ts";
import { drawPoint, englishRadius } from "../trade/points.ts";
import { netSection, tearOut } from "../trade/strength.ts";
import { defaultWrapThickness } from "../trade/turnBack.ts";
import type { dimensions } from "./crownTable.ts";

export { dimensions } from "./crownTable.ts";

// The crown: the strap over the poll. On the flat it lies along x with the poll at x = 0, the near end
// at negative x. With a buckle on the near side only, its off end is the off cheek, folded round the bit.

export type CrownValues = Values<typeof dimensions>;

/** The off end of a crown that is the off cheek too. */
export function offEndInput(d: CrownValues): BitEndInput {
  const wrap =
    d.skiveTo ?? named("off cheek fold thickness", defaultWrapThickness(d.thickness, d.ring, d.neutral));
  return {
    label: "off bit end",
    ring: d.ring,
    legs: { label: "off bit end", neutral: d.neutral, front: d.thickness, back: wrap, wrap, caught: 0 },
    hole: d.fixingHole,
    head: d.head,
    spacing: d.fixingSpacing,
  };
}

/** Poll to the middle hole of one end, mm, and the cut length. */
export function crownSizes(d: CrownValues): {
  readonly effective: Quantity;
  readonly cut: Quantity;
  readonly row: Quantity;
  readonly half: number;
} {
  const row = holeRow(d.holes, d.holePitch);
  if (d.buckles === "both cheeks") {
    const effective = named(
      "crown effective length",
      times(
        d.lengthFactor,
        effectiveCrown({
          overPoll: d.overPoll,
          cheek: d.cheek,
          holeOffset: d.holeOffset,
          holes: d.holes,
          pitch: d.holePitch,
          toTip: d.toTip,
        }),
      ),
      { kind: "length" },
    );
    return { effective, row, cut: crownCutBothSides(effective, row, d.toTip), half: effective.value / 2 };
  }
  const off = bitEnd(offEndInput(d));
  const effective = named(
    "crown effective length",
    times(d.lengthFactor, effectiveOneSide(d.overPoll, d.cheek, d.holeOffset)),
    { kind: "length" },
  );
  const end = sum(minus(off.developed.holeToMate, off.clamp), off.beyond, times(-0.5, d.ring));
  const cut = named(
    "crown cut length",
    { ...sum(effective, over(row, 2), d.toTip, end), kind: "length" },
    { source: "balance of lengths round the head", kind: "length" },
  );
  return {
    effective,
    row,
    cut,
    half: (d.overPoll.value / 2 - d.cheek.value - d.holeOffset.value) * d.lengthFactor.value,
  };
}

type Ends = {
  readonly nearTip: number;
  readonly offEnd: number;
  readonly fold: number | undefined;
  readonly off: BitEnd | undefined;
};

function endsOf(d: CrownValues, half: number, row: number): Ends {
  const nearTip = -(half + row / 2 + d.toTip.value);
  if (d.buckles === "both cheeks") return { nearTip, offEnd: -nearTip, fold: undefined, off: undefined };
  const off = bitEnd(offEndInput(d));
  const fold =
    (d.overPoll.value / 2) * d.lengthFactor.value -
    d.ring.value / 2 -
    off.clamp.value +
    off.developed.holeToMate.value / 2;
  return { nearTip, offEnd: fold + off.length.value, fold, off };
}

/** Draws the crown, grain side up, the horse's nose toward the top of the drawing. */
export function shape(d: CrownValues, order: { readonly leather: string }): Piece {
  const { cut, row, half, effective } = crownSizes(d);
  const ends = endsOf(d, half, row.value);
  const { outline, corners } = outlineOf(d, ends);
  const holes = [
    ...buckleHoles("near", d, -half, -1),
    ...(ends.off ? [] : buckleHoles("off", d, half, 1)),
    ...tipNails(d, ends),
  ];
  const parts = together(ends.off && ends.fold !== undefined ? offCheek(d, ends.off, ends.fold) : NO_PARTS, {
    holes,
    marks: marksOf(d, outline),
    zones: earZone(d),
    sections: sections(d),
  });
  const first: Point = [-(half + row.value / 2), 0];
  const last: Point = ends.fold === undefined ? [half + row.value / 2, 0] : [ends.fold, 0];
  return {
    id: ends.off ? "crown-and-off-cheek" : "crown",
    name: ends.off ? "Crown and off cheek" : "Crown",
    count: 1,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline,
    corners,
    ...parts,
    grain: 0,
    straight: true,
    controls: [
      { from: [ends.nearTip, 0], to: first, words: "near tip to first hole" },
      {
        from: first,
        to: last,
        words:
          ends.fold === undefined ? "outermost hole to outermost hole" : "outermost hole to the off fold",
      },
      ...(ends.off ? [] : [{ from: last, to: [ends.offEnd, 0] as Point, words: "first hole to off tip" }]),
    ],
    sizes: [
      cut,
      d.width,
      effective,
      row,
      d.holePitch,
      d.toTip,
      d.pointLength,
      ...(d.point === "english" ? [englishRadius("crown", d.width, d.pointLength)] : []),
      ...(ends.off ? [ends.off.developed.holeToMate] : []),
    ],
    notes: [
      `hole ${(Math.round(d.holes.value) + 1) / 2} from the tip gives the measure as ordered`,
      "thread the ear piece on before the ends are buckled",
    ],
  };
}

function outlineOf(d: CrownValues, ends: Ends): Pick<Piece, "outline" | "corners"> {
  const [w, h, ℓ] = [d.width.value, d.width.value / 2, d.pointLength.value];
  const off = ends.off ? undefined : drawPoint(d.point, ends.offEnd, w, ℓ);
  const near = drawPoint(d.point, -ends.nearTip, w, ℓ);
  // The near point is the off point turned half round.
  const turned = near.segments.map((s) =>
    s.kind === "arc"
      ? { ...s, to: flip(s.to), centre: flip(s.centre) }
      : s.kind === "line"
        ? line(flip(s.to))
        : s,
  );
  const squareEnd = [line([ends.offEnd, -h]), line([ends.offEnd, h])];
  const offStart: Point = [ends.offEnd - ℓ, -h];
  const outline = closedPath(
    [ends.nearTip + ℓ, -h],
    [...(off ? [line(offStart), ...off.segments] : squareEnd), line([ends.nearTip + ℓ, h]), ...turned],
  );
  const corners = [
    ...(off
      ? off.corners.map((c) => ({ ...c, name: `off ${c.name}` }))
      : [
          { name: "off end lower", at: [ends.offEnd, -h] as Point },
          { name: "off end upper", at: [ends.offEnd, h] as Point },
        ]),
    ...near.corners.map((c) => ({ name: `near ${c.name}`, at: flip(c.at) })),
  ];
  return { outline, corners };
}

const flip = ([x, y]: Point): Point => [-x, -y];

/** Holes named from the tip: 1 is the outermost. `outward` is the direction of the tip. */
function buckleHoles(side: string, d: CrownValues, middle: number, outward: 1 | -1): readonly Hole[] {
  const n = Math.round(d.holes.value);
  return Array.from({ length: n }, (_, i) =>
    roundHole(
      `${side}.${i + 1}`,
      [middle + outward * ((n - 1) / 2 - i) * d.holePitch.value, 0],
      d.holeSize.value,
      "buckle",
    ),
  );
}

/** A tip's nail goes through the middle of the point's root. */
function tipNails(d: CrownValues, ends: Ends): readonly Hole[] {
  if (!d.tip) return [];
  const root = d.pointLength.value * 1.2;
  const near = roundHole("near.nail", [ends.nearTip + root, 0], d.tipNail.value, "nail");
  return ends.off ? [near] : [near, roundHole("off.nail", [ends.offEnd - root, 0], d.tipNail.value, "nail")];
}

function offCheek(d: CrownValues, off: BitEnd, fold: number): Parts {
  const strap = {
    frame: { id: "bit", centre: fold, direction: -1 as const },
    width: d.width,
    thickness: d.thickness,
    inset: 0,
    backHoles: "punched flat" as const,
  };
  const i = offEndInput(d);
  return drawBitEnd(
    strap,
    {
      legs: i.legs,
      ring: i.ring,
      hole: i.hole,
      use: d.fixing === "rivet" ? "rivet" : "screw",
      label: i.label,
    },
    off,
  );
}

function marksOf(d: CrownValues, outline: Piece["outline"]): readonly Mark[] {
  const h = d.width.value / 2;
  const poll: Mark = {
    id: "poll",
    kind: "centre",
    path: openPath([0, -h], [line([0, h])]),
    label: "middle of the poll",
  };
  return [poll, ...(d.crease ? creaseLines(outline, d.crease.value) : [])];
}

/** Where the ear piece lies under or over the crown. */
function earZone(d: CrownValues): Piece["zones"] {
  if (!d.earFrom || !d.earTo) return [];
  const outline = rectanglePath(
    [d.earFrom.value, -d.width.value / 2],
    d.earTo.value - d.earFrom.value,
    d.width.value,
  );
  return [{ id: "ear", kind: "overlap", outline, label: "ear piece" }];
}

function sections(d: CrownValues): Piece["sections"] {
  const net = netSection("crown hole section", d.width, d.holeSize, d.thickness);
  return [
    { name: "at a buckle hole", estimate: net },
    {
      name: "tear-out at the first hole",
      estimate: tearOut("crown tear-out", d.toTip, d.holeSize, d.thickness, net),
    },
  ];
}
