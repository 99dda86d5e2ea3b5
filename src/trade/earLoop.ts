import { greatest, named, over, type Quantity, sine, sum, times } from "../model/quantity.ts";

// A loop round the base of one ear: a band closed by the crown's edge, or a closed oval.

const SOURCE = "an arc closed by its chord: geometry";

/** Opening's perimeter, mm: the ear's base and its ease. */
export const openingPerimeter = (earBase: Quantity, ease: Quantity): Quantity =>
  named("ear opening perimeter", sum(earBase, ease), { kind: "length" });

/** Ease when the order doesn't say: 12 %, at least 25 mm; common practice, no source. */
export const defaultEase = (earBase: Quantity): Quantity => greatest(times(0.12, earBase), 25);

/** Radius of the band's inner edge, mm: ρ = P / (γ + 2 sin(γ/2)). */
export const bandRadius = (perimeter: Quantity, spread: Quantity): Quantity =>
  named(
    "ear band radius",
    over(perimeter, { ...sum(spread, times(2, sine(over(spread, 2)))), kind: "number" }),
    { source: SOURCE, kind: "length" },
  );

/** The crown's edge across the opening, mm: 2ρ sin(γ/2). */
export const bandChord = (radius: Quantity, spread: Quantity): Quantity =>
  named("ear opening chord", times(2, radius, sine(over(spread, 2))), { source: SOURCE, kind: "length" });

/** Half-width of an oval opening, mm: a = P / (2π + 4 (λ − 1)), λ its length over its width. */
export const ovalHalfWidth = (perimeter: Quantity, slenderness: Quantity): Quantity =>
  named(
    "ear opening half-width",
    over(perimeter, { ...sum(2 * Math.PI - 4, times(4, slenderness)), kind: "number" }),
    { source: "perimeter of a stadium: geometry", kind: "length" },
  );

/** Leather left between the opening and a slot, mm: 6, or two thicknesses. */
export const slotBridge = (thickness: Quantity): Quantity =>
  named("ear piece bridge", greatest(6, { ...times(2, thickness), kind: "length" }), {
    source: "common practice, no source",
    kind: "length",
  });
