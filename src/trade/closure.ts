import { circlePath, type Path, type Point, rectanglePath, slotPath } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Cutout, Hole, Mark } from "../model/piece.ts";
import { greatest, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { type ClosureKind, type closureTable, prongSlotWidth } from "./closureTable.ts";
import { type Parts, roundHole } from "./parts.ts";
import { slotLength, slotWidth } from "./slot.ts";

export { CLOSURES, type ClosureKind, closureTable } from "./closureTable.ts";

// What a closure needs on the flap and on the front: holes, slits, openings, and the outlines of its parts
// as marks. A closure's middle is `at`; across the bag is x, so that everything is the same turned half round.

export type ClosureValues = Values<typeof closureTable>;

/** The tongue of a flap that is tucked in: its breadth at the slot and its thickness. */
export type Tucked = { readonly width: Quantity; readonly thickness: Quantity };

export type Size = { readonly width: Quantity; readonly height: Quantity };

/** Leather beyond a cap, disc or plate, and beyond a rivet's head; mm, common practice, no source. */
const END_MM = 5;
const BEYOND_HEAD_MM = 3;
/** Least from a punched hole's middle to an edge, in diameters (trade practice, as the check has it). */
const EDGE_DIAMETERS = 1.5;

const NOTHING: Quantity = { value: 0, kind: "length", parts: ["0 mm, there is no closure"], inputs: [] };

/** Leather needed from the closure's middle to the flap's end, mm. 0 without a closure. */
export function closureRoom(kind: ClosureKind, v: ClosureValues): Quantity {
  return named(`${kind === "none" ? "no closure" : kind}, room to the flap's end`, roomOf(kind, v), {
    source: "common practice, no source",
    kind: "length",
  });
}

function roomOf(kind: ClosureKind, v: ClosureValues): Quantity {
  switch (kind) {
    case "none":
      return NOTHING;
    case "press stud":
      return greatest(sum(over(v.cap, 2), END_MM), times(EDGE_DIAMETERS, v.capHole));
    case "magnetic snap":
      return sum(over(v.disc, 2), END_MM);
    case "turn lock":
      return sum(over(v.plateWidth, 2), END_MM);
    case "strap and buckle":
      return sum(
        over(v.fixingSpacing, 2),
        greatest(sum(over(v.head, 2), BEYOND_HEAD_MM), times(EDGE_DIAMETERS, v.fixingHole)),
      );
    case "tuck-in tongue":
      return v.tuck;
  }
}

/** The slot that a tongue is tucked into: sizes over all, round ends. */
export function tuckSlot(
  v: ClosureValues,
  t: Tucked,
): { readonly length: Quantity; readonly width: Quantity } {
  const width = slotWidth("tuck-in", t.thickness);
  const bare = slotLength("tuck-in tongue's least", t.width, t.thickness, width);
  return { width, length: named("tuck-in slot length", sum(bare, v.slotRoom), { kind: "length" }) };
}

/** A closure's sizes as a maker asks for them, each with its history. */
export function closureSizes(kind: ClosureKind, v: ClosureValues, tongue?: Tucked): readonly Quantity[] {
  switch (kind) {
    case "press stud":
      return [v.cap, v.capHole, v.studHole];
    case "magnetic snap":
      return [v.disc, v.prongSpacing, prongSlot(v).length, prongSlot(v).width];
    case "turn lock":
      return [
        v.openingLength,
        v.openingWidth,
        plateProngs(v),
        v.prongSpacing,
        prongSlot(v).length,
        prongSlot(v).width,
      ];
    case "tuck-in tongue": {
      const slot = tongue && tuckSlot(v, tongue);
      return slot ? [slot.length, slot.width] : [];
    }
    default:
      return [];
  }
}

/**
 * What the closure takes of the leather on one side, mm: its cap, disc, plate, rivet heads or slot. A patch
 * behind it is larger by the patch's own border.
 */
export function patchSize(
  kind: ClosureKind,
  v: ClosureValues,
  side: "flap" | "front",
  tongue?: Tucked,
): Size | undefined {
  const across = (width: Quantity, height = width): Size => ({ width, height });
  switch (kind) {
    case "none":
      return undefined;
    case "press stud":
      return across(v.cap);
    case "magnetic snap":
      return across(v.disc);
    case "turn lock":
      return side === "flap" ? across(v.plateLength, v.plateWidth) : across(v.baseLength, v.baseWidth);
    case "strap and buckle":
      return across(v.head, sum(v.fixingSpacing, v.head));
    case "tuck-in tongue": {
      const slot = tongue && side === "front" ? tuckSlot(v, tongue) : undefined;
      return slot && across(slot.length, slot.width);
    }
  }
}

/**
 * Holes, cutouts and marks of the closure on one side, about its middle. `id` begins every part's name.
 * A tuck-in tongue needs `tongue` for its slot in the front; its flap has no parts. Throws without it.
 */
export function closureParts(
  kind: ClosureKind,
  v: ClosureValues,
  side: "flap" | "front",
  at: Point,
  id: string,
  tongue?: Tucked,
): Partial<Parts> {
  switch (kind) {
    case "none":
      return {};
    case "press stud":
      return studParts(v, side, at, id);
    case "magnetic snap":
      return {
        cutouts: prongSlots(v, v.prongSpacing.value, at, id),
        marks: [place(id, circlePath(at, v.disc.value / 2), "magnetic snap")],
      };
    case "turn lock":
      return side === "flap" ? plateParts(v, at, id) : buttonParts(v, at, id);
    case "strap and buckle":
      return { holes: rivetHoles(v, at, id) };
    case "tuck-in tongue":
      return side === "flap" ? {} : { cutouts: [tuckCutout(v, at, id, tongue)] };
  }
}

const place = (id: string, path: Path, label: string): Mark => ({
  id: `${id}.place`,
  kind: "place",
  path,
  label,
});

const rectangleAbout = ([x, y]: Point, width: number, height: number): Path =>
  rectanglePath([x - width / 2, y - height / 2], width, height);

function studParts(v: ClosureValues, side: "flap" | "front", at: Point, id: string): Partial<Parts> {
  const hole = side === "flap" ? v.capHole : v.studHole;
  return {
    holes: [roundHole(id, at, hole.value, "stud")],
    marks: [place(id, circlePath(at, v.cap.value / 2), side === "flap" ? "cap" : "stud")],
  };
}

/** A prong's slit: as long as the prong is broad, with room in both. */
function prongSlot(v: ClosureValues): { readonly length: Quantity; readonly width: Quantity } {
  const width = named("prong slot width", prongSlotWidth(v.prongThickness), { kind: "length" });
  return { width, length: slotLength("prong", v.prongBreadth, v.prongThickness, width, 0.5) };
}

/** From slit to slit of the plate: each half way from the opening's end to the plate's. */
const plateProngs = (v: ClosureValues): Quantity =>
  named(
    "plate's prongs apart",
    sum(v.openingLength, over({ ...minus(v.plateLength, v.openingLength), kind: "length" }, 2)),
  );

/** Two slits that stand square to the line between them. */
function prongSlots(v: ClosureValues, spacing: number, [x, y]: Point, id: string): readonly Cutout[] {
  const { length, width } = prongSlot(v);
  return [-1, 1].map((out, i) => ({
    id: `${id}.prong.${i + 1}`,
    use: "prong slot",
    outline: slotPath([x + (out * spacing) / 2, y], length.value, width.value, Math.PI / 2),
    length: length.value,
    width: width.value,
  }));
}

/** The plate covers the leather round the opening, so the opening is no slot that a pull tears. */
function plateParts(v: ClosureValues, at: Point, id: string): Partial<Parts> {
  const opening: Cutout = {
    id: `${id}.opening`,
    use: "opening",
    outline: slotPath(at, v.openingLength.value, v.openingWidth.value),
  };
  return {
    cutouts: [opening, ...prongSlots(v, plateProngs(v).value, at, id)],
    marks: [place(id, rectangleAbout(at, v.plateLength.value, v.plateWidth.value), "plate of the turn lock")],
  };
}

const buttonParts = (v: ClosureValues, at: Point, id: string): Partial<Parts> => ({
  cutouts: prongSlots(v, v.prongSpacing.value, at, id),
  marks: [place(id, rectangleAbout(at, v.baseLength.value, v.baseWidth.value), "turn button")],
});

/** Two rivets one over the other, as the closure's strap has them. */
const rivetHoles = (v: ClosureValues, [x, y]: Point, id: string): readonly Hole[] =>
  [-1, 1].map((way, i) =>
    roundHole(
      `${id}.rivet.${i + 1}`,
      [x, y + (way * v.fixingSpacing.value) / 2],
      v.fixingHole.value,
      "rivet",
    ),
  );

function tuckCutout(v: ClosureValues, at: Point, id: string, tongue: Tucked | undefined): Cutout {
  if (!tongue) throw new Error("closureParts: a tuck-in tongue's slot needs the tongue's sizes");
  const { length, width } = tuckSlot(v, tongue);
  return {
    id,
    use: "tuck-in slot",
    outline: slotPath(at, length.value, width.value),
    length: length.value,
    width: width.value,
  };
}
