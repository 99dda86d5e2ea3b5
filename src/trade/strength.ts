import { leaf, least, minus, named, type Operand, over, type Quantity, times } from "../model/quantity.ts";

// Estimates for comparing designs, never a rating.

/**
 * Tensile strength of strap leather that estimates use, N/mm²: the upper part of the 8–25 N/mm² that a
 * leather dictionary gives for cow leather (leather-dictionary.com, Tensile strength). A shop that
 * tests its leather should enter its own.
 */
export const TENSILE = leaf("leather tensile strength", 20, "stress", {
  kind: "fact",
  source: "leather-dictionary.com, Tensile strength: cow leather 8 to 25 N/mm²",
});

/** Shear strength along a tear-out, N/mm²; common practice, no source. */
export const SHEAR = leaf("leather shear strength", 10, "stress", {
  kind: "fact",
  source: "common practice, no source",
});

/** Force that one stitch hole holds before the thread tears out, N per mm of thickness; stitch tear of bag leather, Dutta 1990, second hand: 30 kg/cm. */
export const STITCH_TEAR = leaf("stitch tear, N for each mm of thickness", 29.4, "number", {
  kind: "fact",
  source: "S. S. Dutta (1990), 30 kg/cm below 2 mm, quoted at draftlessig.org",
});

/** Net section at a hole, N: (w − d) t σ. */
export const netSection = (
  name: string,
  width: Operand,
  hole: Operand,
  thickness: Operand,
  tensile: Operand = TENSILE,
): Quantity =>
  named(
    name,
    { ...times(minus(width, hole), thickness, tensile), kind: "force" },
    { source: "net section: geometry", kind: "force" },
  );

/** Tear-out at a hole e from the end, N: 2 (e − d/2) t τ, no more than the net section. */
export const tearOut = (
  name: string,
  toEnd: Operand,
  hole: Operand,
  thickness: Operand,
  net: Quantity,
  shear: Operand = SHEAR,
): Quantity =>
  named(name, least({ ...times(2, minus(toEnd, over(hole, 2)), thickness, shear), kind: "force" }, net), {
    source: "two shear planes: geometry",
    kind: "force",
  });

/** A stitched joint, N: stitches × tear per hole. */
export const stitchedJoint = (
  name: string,
  stitches: Operand,
  thickness: Operand,
  tear: Operand = STITCH_TEAR,
): Quantity =>
  named(
    name,
    { ...times(stitches, thickness, tear), kind: "force" },
    { source: "stitches × tear per hole", kind: "force" },
  );
