import { minus, named, type Operand, over, type Quantity, sum, tangent, times } from "../model/quantity.ts";

// Bends of known radius. The neutral fibre keeps its length, so a bend takes on the flat what that fibre
// has in it; the faces beside it are pressed together or stretched.

const SOURCE = "bend allowance of sheet: angle × neutral radius, geometry";

/** Radius of the neutral fibre in a bend, mm; `neutral` is its share of the thickness from the flesh side. */
export const bendRadius = (
  inner: Operand,
  thickness: Operand,
  neutral: Operand,
  inside: "flesh" | "grain" = "flesh",
): Quantity =>
  inside === "flesh"
    ? sum(inner, times(neutral, thickness))
    : sum(inner, times(minus(1, neutral), thickness));

/**
 * Length that a bend takes on the flat, mm: α (ρ + k t), α in radians, ρ the radius of its inner face.
 * With the grain side inside, the neutral fibre lies (1 − k) t from the inner face.
 */
export function bendLength(
  label: string,
  angle: Operand,
  inner: Quantity,
  thickness: Quantity,
  neutral: Quantity,
  inside: "flesh" | "grain" = "flesh",
): Quantity {
  const length = times(angle, bendRadius(inner, thickness, neutral, inside));
  return named(`${label} on the flat`, length, { source: SOURCE, kind: "length" });
}

/**
 * What a bend takes off each of the two outside sizes that meet at it, mm: (ρ + t) tan(α/2). Under 150°;
 * beyond that the outside sizes run from tangent to tangent and nothing is taken off.
 */
export const setBack = (inner: Operand, thickness: Operand, angle: Operand): Quantity => ({
  ...times(sum(inner, thickness), tangent(over(angle, 2))),
  kind: "length",
});
