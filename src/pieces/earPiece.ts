import {
  arc,
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  type Segment,
  slotPath,
} from "../geometry/path.ts";
import type { Cutout, Mark, Piece } from "../model/piece.ts";
import { named, type Quantity, times } from "../model/quantity.ts";
import * as trig from "../units/trigonometry.ts";
import { type EarValues, EDGE_DIAMETERS, type Frame, frameOf } from "./earPieceTable.ts";

export { dimensions, HOLE_CLEAR_MM } from "./earPieceTable.ts";

// The ear piece: a loop round one ear, threaded on the crown through two slots. On the flat the crown's
// centre line is y = 0, the loop lies above it, toward the nose; x = 0 is the loop's middle.

/** Draws the ear piece, grain side up. It is its own mirror image, so it serves either ear. */
export function shape(d: EarValues, order: { readonly leather: string }): Piece {
  const f = frameOf(d);
  const outline = d.shape === "band" ? bandOutline(d, f) : ovalOutline(d, f);
  const slots = [1, -1].map(
    (side): Cutout => ({
      id: side > 0 ? "slot.off" : "slot.near",
      use: "strap slot",
      outline: slotPath([side * f.slotAt.value, 0], f.slotLength.value, f.slotWidth.value, Math.PI / 2),
      length: f.slotLength.value,
      width: f.slotWidth.value,
    }),
  );
  const h = d.crownWidth.value / 2;
  const edge: Mark = {
    id: "crown-edge",
    kind: "place",
    path: openPath([-f.half, h], [line([f.half, h])]),
    label: "edge of the crown",
  };
  return {
    id: "ear-piece",
    name: `Ear piece, ${d.ear} ear`,
    count: 1,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline: outline.path,
    corners: outline.corners,
    cutouts: d.shape === "band" ? slots : [...slots, ovalCutout(d, f)],
    holes: [],
    seams: [],
    folds: [],
    turnBacks: [],
    zones: [],
    marks: d.shape === "band" ? [edge] : [],
    grain: 0,
    straight: false,
    controls: [{ from: [-f.slotAt.value, 0], to: [f.slotAt.value, 0], words: "slot to slot" }],
    sizes: [named("ear piece across the tabs", times(2, f.out)), d.band, ...f.sizes],
    sections: [],
    notes: [
      d.ear === "right"
        ? "for the right (off) ear: the loop toward the nose"
        : "for the left (near) ear: the loop toward the nose",
      "thread the crown from below through one slot, over, and down through the other",
    ],
  };
}

/** Half of the ear piece's length along the crown, mm. */
export const earHalfLength = (d: EarValues): Quantity => frameOf(d).out;

/** The slots' names, for the article's joins. */
export const SLOTS = ["slot.near", "slot.off"] as const;

const TAB_CORNER_MM = 5;
/** A narrow tab has smaller corners: together no more than this share of its width. */
const CORNER_SHARE = 0.45;
const cornerOf = (f: Frame): number => Math.min(TAB_CORNER_MM, CORNER_SHARE * (f.out.value - f.half));

/** A blend falls at least this far, and this many times as far as it goes sideways, so that it has no jog. */
const LEAST_FALL_MM = 12;
const FALL_TO_SIDE = 1.4;
const LIFT_STEP = Math.PI / 90;
const MOST_LIFT = Math.PI / 3;

type Meet = { readonly at: Point; readonly lift: number };

/** Where the tab's side may meet the loop's round: as low as gives an easy blend. */
function meetRound(out: number, shoulder: number, centreY: number, outer: number): Meet {
  const at = (lift: number): Point => [outer * trig.cos(lift), centreY + outer * trig.sin(lift)];
  const easy = ([x, y]: Point): boolean =>
    y - shoulder >= Math.max(LEAST_FALL_MM, FALL_TO_SIDE * Math.abs(out - x));
  let lift = 0;
  while (lift < MOST_LIFT && !easy(at(lift))) lift += LIFT_STEP;
  return { at: at(lift), lift };
}

/** The same on the straight side of a slender oval. */
function meetSide(out: number, shoulder: number, centreY: number, top: number, outer: number): Meet {
  const fall = Math.max(LEAST_FALL_MM, FALL_TO_SIDE * Math.abs(out - outer));
  return { at: [outer, Math.min(top, Math.max(centreY, shoulder + fall))], lift: 0 };
}

/** The outer edge: from the right tab's foot up and over the loop to the left tab's foot. */
function outerEdge(f: Frame, top: number, centreY: number, outer: number): readonly Segment[] {
  const r = cornerOf(f);
  const [y, out] = [-f.tabHalf, f.out.value];
  const shoulder = f.slotLength.value / 2 - f.slotWidth.value / 2 + EDGE_DIAMETERS * f.slotWidth.value;
  const round = top === centreY;
  const { at, lift } = round
    ? meetRound(out, shoulder, centreY, outer)
    : meetSide(out, shoulder, centreY, top, outer);
  const reach = 0.45 * (at[1] - shoulder);
  const below: Point = [at[0] + trig.sin(lift) * reach, at[1] - trig.cos(lift) * reach];
  const straight = (to: Point): readonly Segment[] => (round ? [] : [line(to)]);
  return [
    arc([out, y + r], [out - r, y + r], true),
    line([out, shoulder]),
    cubic([out, shoulder + reach], below, at),
    ...straight([outer, top]),
    arc([-at[0], round ? at[1] : top], [0, top], true),
    ...straight([-outer, at[1]]),
    cubic([-below[0], below[1]], [-out, shoulder + reach], [-out, shoulder]),
    line([-out, y + r]),
    arc([-out + r, y], [-out + r, y + r], true),
  ];
}

type Drawn = { readonly path: Path; readonly corners: Piece["corners"] };

function bandOutline(d: EarValues, f: Frame): Drawn {
  const h = d.crownWidth.value / 2;
  const r = cornerOf(f);
  const y = -f.tabHalf;
  const c = f.half;
  const centre: Point = [0, f.centreY];
  const path = closedPath(
    [c, h],
    [
      line([c, y + r]),
      arc([c + r, y], [c + r, y + r], true),
      line([f.out.value - r, y]),
      ...outerEdge(f, f.centreY, f.centreY, f.radius + d.band.value),
      line([-c - r, y]),
      arc([-c, y + r], [-c - r, y + r], true),
      line([-c, h]),
      arc([c, h], centre, false),
    ],
  );
  return {
    path,
    corners: [
      { name: "opening off corner", at: [c, h] },
      { name: "opening near corner", at: [-c, h] },
    ],
  };
}

function ovalOutline(d: EarValues, f: Frame): Drawn {
  const r = cornerOf(f);
  const y = -f.tabHalf;
  const a = f.radius;
  const top = d.crownWidth.value / 2 + 2 * a * d.slenderness.value - a;
  const slender = d.slenderness.value > 1 + 1e-6;
  const path = closedPath(
    [-f.out.value + r, y],
    [line([f.out.value - r, y]), ...outerEdge(f, slender ? top : f.centreY, f.centreY, a + d.band.value)],
  );
  return { path, corners: [] };
}

function ovalCutout(d: EarValues, f: Frame): Cutout {
  const a = f.radius;
  const length = 2 * a * d.slenderness.value;
  return {
    id: "opening",
    use: "opening",
    outline: slotPath([0, d.crownWidth.value / 2 + length / 2], length, 2 * a, Math.PI / 2),
  };
}
