import { line, openPath } from "../geometry/path.ts";
import type { Fold, SeamEdge, Zone } from "../model/piece.ts";
import { minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { glueStrips } from "./bodyEdge.ts";
import { bendLength } from "./fold.ts";

// A body that wraps round: front, base and back in one piece, with a bend on each side of the base. On the flat
// y runs from the base's middle, the front towards −y.

const SOURCE = "wrap-round body with a boxed base: straight parts and bends, geometry";
const QUARTER = Math.PI / 2;

export type WrapSizes = {
  /** Outside, base to top. */
  readonly height: Quantity;
  /** Between the inner faces of front and back. */
  readonly depth: Quantity;
  /** Inner radius of both bends. */
  readonly baseFold: Quantity;
  readonly thickness: Quantity;
  readonly neutral: Quantity;
};

export type Wrap = {
  /** Front's top to back's top, flat. */
  readonly flat: Quantity;
  /** The outside of the base, carried straight on along the front or the back, from the base's middle. */
  readonly baseLine: Quantity;
  /** Each bend begins and ends so far from the base's middle; the tops lie at `top`. */
  readonly bendFrom: number;
  readonly bendTo: number;
  readonly top: number;
};

/** Develops the body, mm: 2 (H − ρ) + (B − 2ρ) + π (ρ + k t), H and B inside. */
export function developWrap(s: WrapSizes): Wrap {
  const bend = bendLength("base bend", QUARTER, s.baseFold, s.thickness, s.neutral);
  const inside = named("inside height", minus(s.height, s.thickness), { kind: "length" });
  const base = named("flat part of the base", minus(s.depth, times(2, s.baseFold)));
  const up = minus(inside, s.baseFold);
  const flat = named("body flat, front's top to back's top", sum(times(2, up), base, times(2, bend)), {
    source: SOURCE,
    kind: "length",
  });
  const baseLine = named(
    "base line from the base's middle",
    minus(sum(over(base, 2), bend), s.baseFold, s.thickness),
    { source: SOURCE, kind: "length" },
  );
  const from = base.value / 2;
  return { flat, baseLine, bendFrom: from, bendTo: from + bend.value, top: flat.value / 2 };
}

/** The two seams, from the front's top to the back's, `x` mm from the middle; they begin `start` below the tops. */
export function wrapSeams(
  { bendFrom, bendTo, top }: Wrap,
  x: number,
  start: number,
  inset: number,
): { readonly left: SeamEdge; readonly right: SeamEdge } {
  const end = top - start;
  const breaks = [
    { name: "front bend start", at: end - bendTo },
    { name: "front bend end", at: end - bendFrom },
    { name: "back bend start", at: end + bendFrom },
    { name: "back bend end", at: end + bendTo },
  ];
  const side = (id: string, at: number): SeamEdge => ({
    piece: "body",
    id,
    path: openPath([at, -end], [line([at, end])]),
    inset,
    breaks,
  });
  return { left: side("left", -x), right: side("right", x) };
}

/** The two bends beside the base, across a body of half this width. */
export function baseFolds(s: WrapSizes, { bendFrom, bendTo }: Wrap, half: number): readonly Fold[] {
  const bend = {
    inner: s.baseFold.value,
    angle: QUARTER,
    thickness: s.thickness.value,
    neutral: s.neutral.value,
    inside: "flesh" as const,
  };
  return (["front", "back"] as const).map((side) => {
    const y = ((bendFrom + bendTo) / 2) * (side === "front" ? -1 : 1);
    return { id: `base.${side}-fold`, from: [-half, y], to: [half, y], label: `base fold, ${side}`, bend };
  });
}

/** The stretches of y that are stitched straight: front, base and back, from `start` below each top. */
export const straightRuns = (
  { bendFrom, bendTo, top }: Wrap,
  start: number,
): readonly (readonly [from: number, to: number])[] => [
  [start - top, -bendTo],
  [-bendFrom, bendFrom],
  [bendTo, top - start],
];

/** Glue along both sides; where side gussets are notched at the bends, there is none. Lengths mm. */
export function wrapGlue(
  w: Wrap,
  width: number,
  glue: number,
  seamStart: number,
  notched: boolean,
): readonly Zone[] {
  if (glue <= 0) return [];
  const end = w.top - seamStart;
  const runs = notched ? straightRuns(w, seamStart) : [[-end, end] as const];
  return [
    ...glueStrips("glue.left", -width / 2, glue, runs),
    ...glueStrips("glue.right", width / 2, -glue, runs),
  ];
}
