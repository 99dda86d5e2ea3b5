import type { Fold } from "../model/piece.ts";
import type { Quantity } from "../model/quantity.ts";
import { bendNote } from "./bodyEdge.ts";
import { type FlapFold, flapBends } from "./flapLength.ts";

// A flap's two bends as they are drawn and said on its piece.

const SIDES = ["back", "front"] as const;

/**
 * The flap's fold lines across its piece: `height` is where the flap meets the front, `baseLine` the base line's
 * y, `half` half the piece's width so far along it from the base line; mm.
 */
export const flapFoldLines = (
  fold: FlapFold,
  height: Quantity,
  baseLine: number,
  half: (along: number) => number,
): readonly Fold[] =>
  flapBends(fold, height).map(({ centre, bend }, i) => {
    const [x, y] = [half(centre), baseLine + centre];
    const label = `flap's ${SIDES[i]} fold`;
    return { id: `flap.${SIDES[i]}-fold`, from: [-x, y], to: [x, y], label, bend };
  });

/** What to do at them, in leather that is `thickest` at its thickest place. */
export const flapNotes = (fold: FlapFold, thickest: Quantity): readonly string[] => [
  bendNote("flap's back fold", fold.backFold, thickest),
  bendNote("flap's front fold", fold.frontFold, thickest),
];
