import {
  asLength,
  greatest,
  least,
  millimetres,
  minus,
  named,
  type Quantity,
  sum,
  times,
} from "../model/quantity.ts";
import { type BodyValues, baseLines } from "../pieces/purseBody.ts";
import { wrapsRound } from "../trade/bagKinds.ts";

// Where a patch pocket may lie on its panel: clear of the seams, the gusset's flange, bends and hardware.

/** A pocket keeps this clear of the panel's own stitches, flange and bends, mm; common practice, no source. */
const CLEAR_MM = 6;
/** What a line at 45° that touches a round corner cuts off each edge, as a share of its radius. */
const TOUCHING = 2 - Math.SQRT2;

function cornerOf(d: BodyValues): Quantity {
  if (wrapsRound(d.made) || d.corners === "square") return millimetres(0, "no corners");
  return asLength(d.corners === "round" ? times(TOUCHING, d.cornerRadius) : times(1, d.cornerRadius));
}

/**
 * The rectangle on the panel, in the panel's coordinates, and what its corners take of it. `taken` is what
 * handles or tabs take at the top.
 */
export function pocketRoom(d: BodyValues, on: "front" | "back", taken: Quantity) {
  const wrapped = wrapsRound(d.made);
  const edge = asLength(
    sum(greatest(d.inset, d.flange.value > 0 ? sum(d.flange, d.gussetThickness) : d.inset), CLEAR_MM),
  );
  const base = wrapped ? asLength(sum(d.baseFold, d.thickness, CLEAR_MM)) : asLength(sum(edge, d.baseSag));
  const top = asLength(
    minus(d.height, d.top === "dipped" ? d.dip : 0, greatest(d.seamStart, taken), CLEAR_MM),
  );
  const line = wrapped ? baseLines(d)[on === "front" ? "front" : "flap"] : 0;
  const from = (q: Quantity): Quantity =>
    line === 0
      ? q
      : {
          ...sum(q, {
            ...millimetres(Math.abs(line), "the base line from the base's middle"),
            inputs: [d.depth, d.baseFold, d.thickness],
          }),
          kind: "length",
        };
  return {
    roomWidth: named(
      "width that is free for a pocket",
      greatest(0, minus(least(d.width, d.topWidth), times(2, edge))),
    ),
    roomBase: named("lowest line that is free for a pocket", from(base)),
    roomTop: named("highest line that is free for a pocket", from(top)),
    roomCorner: named("what the corners take of it", cornerOf(d)),
  };
}
