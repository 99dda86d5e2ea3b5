import { offsetPath } from "../geometry/offset.ts";
import type { Path } from "../geometry/path.ts";
import type { Mark } from "../model/piece.ts";
import { printNumber } from "../units/index.ts";

/** Crease lines inside a piece's whole edge, mm from it. */
export function creaseLines(outline: Path, inset: number): readonly Mark[] {
  return offsetPath(outline, inset).map((path, i) => ({
    id: `crease.${i + 1}`,
    kind: "crease",
    path,
    label: "crease",
  }));
}

/** How often a stamp goes along a length, and what is left over, shared between the ends. */
export function stampNotes(length: number, stamp: number | undefined): readonly string[] {
  const zone = `tooling zone ${printNumber(length, 1)} mm long`;
  if (stamp === undefined) return [zone];
  const repeats = Math.floor(length / stamp + 1e-9);
  const over = length - repeats * stamp;
  return [
    `${zone}: ${repeats} stamps of ${printNumber(stamp, 1)} mm, ${printNumber(over, 1)} mm over: start ${printNumber(over / 2, 1)} mm in`,
  ];
}

/** The usual caution for adhesives, on every piece that is glued. */
export const GLUE_CAUTION = "glue with fresh air, as its maker's data sheet says";
