import type { Known } from "../model/dimension.ts";
import { asLength, least, millimetres, minus, over, type Quantity, sum, times } from "../model/quantity.ts";
import { TONGUE_FILLET_MM } from "./flapEdge.ts";

// How large a flap's corners and its shaped part may be, from the dimensions of a bag's body.

/** The flap's inner face lies this much over the front's top edge, mm; common practice, no source. */
export const FLAP_OVER_MM = 2;
/** Between the slot and the flap's own edge, where a tongue leaves it, mm; common practice, no source. */
const TONGUE_SHOULDER_MM = 6;
/** A flap's shape begins this far past the bend at the front; the least depth of a shape; mm. */
export const PAST_BEND_MM = 2;
const LEAST_SHAPE_MM = 8;
/** No tongue is narrower, mm. */
export const LEAST_TONGUE_MM = 20;

/** True when a flap closes by something. */
export const closes = (k: Known): boolean => k.choice("opening") === "flap" && k.choice("closure") !== "none";
/** The flap's edge; a tuck-in closure has its tongue. */
export const edgeOf = (k: Known): string =>
  closes(k) && k.choice("closure") === "tuck-in tongue" ? "tongue" : k.choice("flapEdge");

/** How far down the front the flap hangs past its bend, along the leather, at least. */
const DROP = ["height", "frontFold", "flapEnd"];
const dropOf = (k: Known): Quantity =>
  asLength(minus(sum(k.q("height"), FLAP_OVER_MM), k.q("frontFold"), k.q("flapEnd")));

/** What the bounds of a flap's corner look at. */
export const SHAPED = ["opening", "closure", "flapEdge", "topWidth", "closureHeight", ...DROP];
/** What the shape takes of the drop at least, beside a corner above it. */
function shapeTakes(k: Known): Quantity | number {
  const edge = edgeOf(k);
  if (edge === "tongue") return sum(minus(k.q("closureHeight"), k.q("flapEnd")), TONGUE_SHOULDER_MM);
  return edge === "straight" ? 0 : LEAST_SHAPE_MM;
}

/** The most that a flap's corner may be. */
export function mostFlapCorner(k: Known): Quantity {
  const edge = edgeOf(k);
  const width = k.q("topWidth");
  const sides =
    edge === "tongue"
      ? minus(over(minus(width, LEAST_TONGUE_MM), 2), 2 * TONGUE_FILLET_MM)
      : times(edge === "straight" ? 0.45 : edge === "bell" ? 0.2 : 0.3, width);
  return least(asLength(sides), asLength(minus(dropOf(k), shapeTakes(k), PAST_BEND_MM)));
}

/** What the bounds of its shaped part look at. */
export const SHAPE = [...SHAPED, "flapCorner"];
/** The least depth of the shaped part. */
export function leastShape(k: Known): Quantity {
  const edge = edgeOf(k);
  if (edge === "straight") return millimetres(0);
  if (edge === "tongue") return asLength(sum(shapeTakes(k), 0));
  return edge === "bell" ? sum(k.q("flapCorner"), LEAST_SHAPE_MM) : millimetres(LEAST_SHAPE_MM);
}

/** The most. */
export function mostShape(k: Known): Quantity {
  const edge = edgeOf(k);
  const drop = asLength(minus(dropOf(k), PAST_BEND_MM));
  if (edge === "tongue") return minus(drop, k.q("flapCorner"));
  // A point no sharper than a right angle leaves a closure its leather on both sides.
  return edge === "pointed" ? least(times(0.5, k.q("topWidth")), minus(drop, k.q("flapCorner"))) : drop;
}
