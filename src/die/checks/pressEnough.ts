import { sayForce } from "../../trade/force.ts";
import { printNumber } from "../../units/index.ts";
import { RESERVE } from "../press.ts";
import { dieRule } from "./dieRule.ts";

/** The press cuts at least one piece in a stroke; how many with the reserve kept, it says. */
export const pressEnough = dieRule(
  "die-press-load",
  "the press is rated for the load of the die",
  ({ press, load, piece }) => {
    if (!press) return [];
    const { rating, pieces } = press;
    const [needs, has] = [sayForce(load.value, rating.unit), sayForce(rating.newtons, rating.unit)];
    const count = pieces.value;
    if (count >= 1) {
      const many = count === 1 ? "1 die" : `${count} dies`;
      const full = load.value > RESERVE * rating.newtons;
      return [
        {
          severity: full ? ("caution" as const) : ("note" as const),
          place: "press",
          message: `By the estimate the press (${has}) takes ${many} of ${piece.name} in one stroke, at ${needs} for each${full ? ": hardly any reserve for an estimate" : `, with ${printNumber(100 * (1 - RESERVE), 0)} % of the rating or more in reserve`}.`,
          value: needs,
          limit: `up to ${has}`,
          mend: "Try it with one die first, and use no more force than cuts cleanly.",
        },
      ];
    }
    return [
      {
        severity: "error" as const,
        place: "press",
        message: `By the estimate the die of ${piece.name} needs ${needs}; the press is rated for ${has}.`,
        value: needs,
        limit: `up to ${has}`,
        mend: "Cut it on a larger press (die.press), in thinner leather, or leave slots and holes to be made by hand (die.least-slot, die.least-tube).",
      },
    ];
  },
);
