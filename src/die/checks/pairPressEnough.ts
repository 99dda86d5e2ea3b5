import type { Finding } from "../../model/finding.ts";
import type { Quantity } from "../../model/quantity.ts";
import { sayForce } from "../../trade/force.ts";
import type { Die } from "../die.ts";
import { RESERVE } from "../press.ts";
import { pressEnough } from "./pressEnough.ts";

/**
 * Whether the press takes two dies on one board at once; `load` is that of both, N. Nothing where no press is
 * known, or where it can't even take one die: that die's own check says so.
 */
export function pairPressEnough({ press, load: one, piece }: Die, load: Quantity): readonly Finding[] {
  if (!press || one.value > press.rating.newtons) return [];
  const { rating } = press;
  const [needs, has] = [sayForce(load.value, rating.unit), sayForce(rating.newtons, rating.unit)];
  const about = {
    rule: pressEnough.name,
    piece: piece.id,
    place: "press",
    value: needs,
    limit: `up to ${has}`,
  };
  if (load.value > rating.newtons) {
    return [
      {
        ...about,
        severity: "error",
        message: `By the estimate two of ${piece.name} on one board need ${needs}; the press is rated for ${has}, enough for one die only.`,
        mend: "Order single dies, without --nest, or cut the two on a larger press (die.press).",
      },
    ];
  }
  const full = load.value > RESERVE * rating.newtons;
  return [
    {
      ...about,
      severity: full ? "caution" : "note",
      message: `By the estimate the press (${has}) takes two of ${piece.name} on one board, at ${needs} for both${full ? ": hardly any reserve for an estimate" : ""}.`,
      mend: full
        ? "Order single dies, without --nest, or try the board with little force first, and use no more than cuts cleanly."
        : "Begin with little force, and use no more than cuts cleanly.",
    },
  ];
}
