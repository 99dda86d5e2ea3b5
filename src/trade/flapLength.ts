import type { Bend } from "../model/piece.ts";
import { arcTangent, minus, named, over, type Quantity, root, square, sum } from "../model/quantity.ts";
import { bendLength } from "./fold.ts";

// A flap in section: up the back, round the back bend, over the top, round the front bend, down to the front.
// u runs from the back's inner face towards the front, heights are over the base line.

const SOURCE = "flap over the filled bag: straight parts and bends, geometry";
const QUARTER = over(Math.PI, 2);

export type FlapFold = {
  /** What the steps' names begin with, e.g. "flap". */
  readonly label: string;
  /** Height of the flap's inner face over the base line, where it lies flat over the top. */
  readonly over: Quantity;
  /** From the back's inner face to the front's outer face at the top, bag filled. */
  readonly reach: Quantity;
  /** Radius of the inner face in the bend at the back, and in the bend at the front. */
  readonly backFold: Quantity;
  readonly frontFold: Quantity;
  readonly thickness: Quantity;
  readonly neutral: Quantity;
  /** How far the filled front stands out, beyond its top edge, where the flap meets it; 0 for upright. */
  readonly bulge: Quantity;
};

type Parts = {
  readonly up: Quantity;
  readonly backBend: Quantity;
  readonly across: Quantity;
  /** What the front bend turns through: a quarter, and more or less where the front is bulged. */
  readonly turn: Quantity;
  readonly frontBend: Quantity;
  readonly down: Quantity;
};

/**
 * The parts of the way to what lies at `height` on the front. From the bend the flap runs straight, on a
 * tangent, to the front's outer face, which stands `bulge` out there. Upright: the turn is a quarter and the
 * straight part is the height that is left.
 */
function partsOf(f: FlapFold, height: Quantity): Parts {
  const step = (name: string, q: Quantity, kind: "length" | "angle" = "length"): Quantity =>
    named(`${f.label} ${name}`, q, { source: SOURCE, kind });
  const out = step("front bend to what it meets, forward", sum(f.frontFold, f.bulge));
  const below = step("front bend to what it meets, down", minus(f.over, f.frontFold, height));
  const down = step(
    "straight part down the front",
    root(minus(sum(square(out), square(below)), square(f.frontFold))),
  );
  // Seen from the bend's centre the straight part's two ends lie atan2(down, ρ) apart.
  const turn = step(
    "turn of the front bend",
    minus(sum(arcTangent(below, out), QUARTER), arcTangent(down, f.frontFold)),
    "angle",
  );
  const bend = (where: string, angle: Quantity, inner: Quantity): Quantity =>
    bendLength(`${f.label} ${where} bend`, angle, inner, f.thickness, f.neutral);
  return {
    up: step("straight part up the back", minus(f.over, f.backFold)),
    backBend: bend("back", QUARTER, f.backFold),
    across: step("straight part over the top", minus(f.reach, f.backFold, f.frontFold)),
    turn,
    frontBend: bend("front", turn, f.frontFold),
    down,
  };
}

/**
 * Length along the piece, on the flat, from the base line to what lies at `height` over it on the filled
 * front, mm: S = Z − ρ₁ + (π/2)(ρ₁ + k t) + B − ρ₁ − ρ₂ + τ (ρ₂ + k t) + s; upright that is
 * 2Z + B − z − (2 − π/2)(ρ₁ + ρ₂) + π k t. Holds where reach ≥ both bends and height ≤ over − front bend.
 */
export function flapRun(fold: FlapFold, height: Quantity, name: string): Quantity {
  const p = partsOf(fold, height);
  return named(name, sum(p.up, p.backBend, p.across, p.frontBend, p.down), {
    source: SOURCE,
    kind: "length",
  });
}

/** The flap's two bends: the middle of each, on the flat along the piece from the base line, and how it bends. */
export function flapBends(
  fold: FlapFold,
  height: Quantity,
): readonly { readonly centre: number; readonly bend: Bend }[] {
  const p = partsOf(fold, height);
  const bend = (inner: Quantity, angle: number): Bend => ({
    inner: inner.value,
    angle,
    thickness: fold.thickness.value,
    neutral: fold.neutral.value,
    inside: "flesh",
  });
  return [
    { centre: p.up.value + p.backBend.value / 2, bend: bend(fold.backFold, QUARTER.value) },
    {
      centre: p.up.value + p.backBend.value + p.across.value + p.frontBend.value / 2,
      bend: bend(fold.frontFold, p.turn.value),
    },
  ];
}
