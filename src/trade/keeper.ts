import { greatest, named, type Operand, type Quantity, sum, times } from "../model/quantity.ts";

const SOURCE = "a loop round a stack: geometry";

/** A keeper's opening, mm: what it goes round and the room left. */
export type Stack = { readonly width: Quantity; readonly height: Quantity };

/** The opening of a keeper: strap width and layers, each with its ease. Eases: common practice, no source. */
export function keeperStack(
  label: string,
  strapWidth: Operand,
  layers: readonly Operand[],
  easeWidth: Operand,
  easeHeight: Operand,
): Stack {
  return {
    width: named(`${label} opening width`, sum(strapWidth, easeWidth), { source: SOURCE, kind: "length" }),
    height: named(
      `${label} opening height`,
      { ...sum(...layers, easeHeight), kind: "length" },
      { source: SOURCE, kind: "length" },
    ),
  };
}

/** Girth along the keeper's neutral fibre, mm: G = 2W + 2H + 2π k t_k; its corners bend round the stack's edges. */
export function keeperGirth(label: string, stack: Stack, neutral: Operand, thickness: Operand): Quantity {
  const turned = times(2, Math.PI, neutral, thickness);
  return named(
    `${label} girth`,
    sum(times(2, stack.width), times(2, stack.height), { ...turned, kind: "length" }),
    { source: SOURCE, kind: "length" },
  );
}

/**
 * Breadth of a keeper, mm: 0.45 of the strap, at least 8, and room for two stitches through each end, 1.5 from its edges.
 * 0.45 lies between the handbook's 3/4 in on a 1 1/2 in strap and 3/8 in on 7/8 in
 * (P. N. Hasluck, Harness Making, 1904, pp. 49-50, 54).
 */
export const keeperBreadth = (strapWidth: Quantity, pitch: Quantity): Quantity =>
  greatest(times(0.45, strapWidth), 8, { ...sum(times(2, pitch), 3), kind: "length" });
