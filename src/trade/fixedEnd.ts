import { line, type Path, type Point, polyline } from "../geometry/path.ts";
import type { Cutout, Hole, Section } from "../model/piece.ts";
import {
  asLength,
  greatest,
  least,
  minus,
  named,
  over,
  type Quantity,
  roundedDown,
  roundedUp,
  sum,
  times,
} from "../model/quantity.ts";
import * as trig from "../units/trigonometry.ts";
import { roundHole } from "./parts.ts";
import { slotLength, slotWidth } from "./slot.ts";
import { netSection, stitchedJoint, tearOut } from "./strength.ts";

// A strap end that is fixed flat to another piece: rivets or screws in line along the strap, or a closed box
// of stitches. It may go through a slot of that piece first, and be fixed behind it.

const COMMON = "common practice, no source";

/** Leather past a fixing's head, mm; common practice, no source. */
const PAST_HEAD_MM = 2;
/** From a hole's middle to any edge, in diameters; common practice, no source. */
const HOLE_TO_EDGE = 1.5;

export const FIXED_ENDS = ["riveted", "stitched"] as const;
export type FixedKind = (typeof FIXED_ENDS)[number];

export type FixedEndInput = {
  readonly label: string;
  readonly kind: FixedKind;
  readonly width: Quantity;
  readonly thickness: Quantity;
  /** Hole for the screw's barrel or the rivet's shank. */
  readonly hole: Quantity;
  readonly head: Quantity;
  readonly spacing: Quantity;
  /** Rivets or screws in line, 1 or 2. */
  readonly rivets: Quantity;
  /** Length of the box of stitches along the strap. */
  readonly box: Quantity;
  readonly inset: Quantity;
  readonly pitch: Quantity;
  /** The strap's thickest place, where it goes through a slot above its fixings. */
  readonly throughSlot?: Quantity;
};

/** Lengths in mm along the strap, from its end. */
export type FixedEnd = {
  readonly kind: FixedKind;
  /** End to the first hole's middle, or to the box's nearer line. */
  readonly toEnd: Quantity;
  /** First to last hole, or the box's length. */
  readonly row: Quantity;
  /** The slot it goes through, its middle `above` the last fixing. */
  readonly slot?: { readonly width: Quantity; readonly length: Quantity; readonly above: Quantity };
  /** End to where the strap's length is reckoned from: last hole, far line of the box, or the slot. */
  readonly reach: Quantity;
  /** How far what fixes it reaches beyond that place, along the strap. */
  readonly past: Quantity;
};

const none: Quantity = { value: 0, kind: "length", parts: ["0"], inputs: [] };

/** Works a fixed end: 1.5 holes beyond the last rivet, or the seam's inset beyond the box. */
export function fixedEnd(i: FixedEndInput): FixedEnd {
  const { label } = i;
  const riveted = i.kind === "riveted";
  const half = over(i.head, 2);
  const clear = greatest(times(HOLE_TO_EDGE, i.hole), sum(half, PAST_HEAD_MM));
  const toEnd = named(
    riveted ? `${label} first hole to end` : `${label} stitches to end`,
    riveted ? roundedUp(clear, 0.5) : i.inset,
    { source: COMMON, kind: "length" },
  );
  const row = named(
    riveted ? `${label} row of fixings` : `${label} box of stitches`,
    riveted ? asLength(times(minus(i.rivets, 1), i.spacing)) : i.box,
    { kind: "length" },
  );
  const slot = i.throughSlot ? slotOf(i, i.throughSlot, riveted ? clear : i.inset) : undefined;
  const reach = named(`${label} fixed part`, sum(toEnd, row, ...(slot ? [slot.above] : [])), {
    source: COMMON,
    kind: "length",
  });
  return { kind: i.kind, toEnd, row, ...(slot ? { slot } : {}), reach, past: slot || !riveted ? none : half };
}

/** The slot that the strap goes through, as far above the last fixing as that needs leather. */
function slotOf(i: FixedEndInput, thickest: Quantity, clear: Quantity): NonNullable<FixedEnd["slot"]> {
  const width = slotWidth(i.label, thickest);
  return {
    width,
    length: slotLength(i.label, i.width, thickest, width),
    above: named(`${i.label} slot above the fixings`, sum(clear, over(width, 2)), {
      source: COMMON,
      kind: "length",
    }),
  };
}

/** Places a fixed end: u along the strap from its end inward, v across. */
export type Placing = (u: number, v: number) => Point;

/** The strap's end at `at`, the strap leaving in the direction of `angle`. Right angles are exact. */
export function placingAt(at: Point, angle: number): Placing {
  const exact = (n: number): number => (Math.abs(n - Math.round(n)) < 1e-12 ? Math.round(n) : n);
  const [cos, sin] = [exact(trig.cos(angle)), exact(trig.sin(angle))];
  return (u, v) => [at[0] + u * cos - v * sin, at[1] + u * sin + v * cos];
}

/** How far from the end each rivet or screw goes through, from the end inward; none where it is stitched. */
export const fixingsAlong = (e: FixedEnd, rivets: number): readonly number[] =>
  e.kind === "stitched"
    ? []
    : Array.from(
        { length: rivets },
        (_, n) => e.toEnd.value + (rivets > 1 ? (n * e.row.value) / (rivets - 1) : 0),
      );

/** The holes of a riveted end, `${id}.1` nearest the end; the same on the strap and on what it is fixed to. */
export const fixedHoles = (
  e: FixedEnd,
  i: FixedEndInput,
  place: Placing,
  id: string,
  use: string,
): readonly Hole[] =>
  fixingsAlong(e, Math.round(i.rivets.value)).map((u, n) =>
    roundHole(`${id}.${n + 1}`, place(u, 0), i.hole.value, use),
  );

/** The box of a stitched end, closed, anticlockwise. */
export function stitchBox(e: FixedEnd, i: FixedEndInput, place: Placing): Path {
  const half = i.width.value / 2 - i.inset.value;
  const [u0, u1] = [e.toEnd.value, e.toEnd.value + e.row.value];
  return polyline([place(u0, -half), place(u1, -half), place(u1, half), place(u0, half)], true);
}

/** Outline of the strap where it lies on what it is fixed to, from its end to the last fixing and past it. */
export function footprint(e: FixedEnd, i: FixedEndInput, place: Placing): Path {
  const half = i.width.value / 2;
  const end = e.reach.value;
  const [start, ...rest] = [place(end, half), place(0, half), place(0, -half), place(end, -half)];
  return { start: start!, segments: rest.map(line), closed: false };
}

/** The slot across the strap, in the piece that it goes through. */
export function throughSlot(e: FixedEnd, place: Placing, id: string): Cutout | undefined {
  if (!e.slot) return undefined;
  const [length, width] = [e.slot.length.value, e.slot.width.value];
  const half = length / 2 - width / 2;
  const r = width / 2;
  const u = e.reach.value;
  const [a, b, c, d] = [place(u - r, half), place(u - r, -half), place(u + r, -half), place(u + r, half)];
  return {
    id,
    use: "strap slot",
    length,
    width,
    outline: {
      start: b,
      closed: true,
      segments: [
        { kind: "arc", to: c, centre: place(u, -half), ccw: true },
        line(d),
        { kind: "arc", to: a, centre: place(u, half), ccw: true },
        line(b),
      ],
    },
  };
}

/** Sections of a fixed end that are compared: net section and tear-out at rivets, or the stitched joint. */
export function fixedSections(i: FixedEndInput, e: FixedEnd, use: string): readonly Section[] {
  if (e.kind === "stitched") {
    const round = times(2, sum(i.box, minus(i.width, times(2, i.inset))));
    const stitches = named(`${i.label} stitches`, { ...roundedDown(over(round, i.pitch)), kind: "count" });
    const joint = stitchedJoint(`${i.label} stitched joint`, stitches, i.thickness);
    return [{ name: `${i.label}: stitched joint`, estimate: joint }];
  }
  const net = netSection(`${i.label} section at a ${use}`, i.width, i.hole, i.thickness);
  const last = tearOut(`${i.label} tear-out at the end`, e.toEnd, i.hole, i.thickness, net);
  const between = tearOut(`${i.label} tear-out between`, i.spacing, times(2, i.hole), i.thickness, net);
  const out =
    i.rivets.value > 1
      ? named(`${i.label} tear-out`, least(sum(last, between), net), { kind: "force" })
      : last;
  return [
    { name: `${i.label}: at a ${use} hole`, estimate: net },
    {
      name: `${i.label}: ${i.rivets.value > 1 ? `both ${use}s tear` : `the ${use} tears`} out`,
      estimate: out,
    },
  ];
}
