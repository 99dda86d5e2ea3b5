import {
  greatest,
  minus,
  named,
  type Operand,
  over,
  type Quantity,
  root,
  sine,
  square,
  sum,
  tangent,
} from "../model/quantity.ts";

const SOURCE = "a strap through a round-ended slot: geometry";

/** Room in a slot's width and in its length, mm; common practice, no source. */
export const SLOT_ROOM_WIDTH_MM = 0.5;
export const SLOT_ROOM_LENGTH_MM = 1;

/** Slot width for a strap that goes straight through it: t_s + 0.5. */
export const slotWidth = (label: string, thickness: Operand): Quantity =>
  named(
    `${label} slot width`,
    { ...sum(thickness, SLOT_ROOM_WIDTH_MM), kind: "length" },
    { source: SOURCE, kind: "length" },
  );

/** Slot width for a strap that weaves through at an angle ψ: t_s / sin ψ + T / tan ψ, T the slotted leather. */
export const weavingSlotWidth = (
  label: string,
  thickness: Operand,
  slotted: Operand,
  angle: Quantity,
): Quantity =>
  named(
    `${label} slot width`,
    { ...sum(over(thickness, sine(angle)), over(slotted, tangent(angle))), kind: "length" },
    { source: SOURCE, kind: "length" },
  );

/**
 * Slot length over all, round ends: w + b_s − √(b_s² − t_s²), and the room. The strap's corners meet
 * the round ends before its middle does. Never shorter than it is wide.
 */
export function slotLength(
  label: string,
  strapWidth: Operand,
  thickness: Operand,
  width: Quantity,
  room: number = SLOT_ROOM_LENGTH_MM,
): Quantity {
  const corner = minus(width, { ...root(minus(square(width), square(thickness))), kind: "length" });
  return named(`${label} slot length`, greatest(sum(strapWidth, corner, room), sum(width, room)), {
    source: SOURCE,
    kind: "length",
  });
}
