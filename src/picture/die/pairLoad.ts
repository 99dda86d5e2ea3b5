// What the sheet of a nested die says about the press: the load of both together.
import { sayEstimate } from "../../die/about.ts";
import type { Die } from "../../die/die.ts";
import type { Nest } from "../../die/nest.ts";
import { pairLoad } from "../../die/pairDie.ts";
import type { Quantity } from "../../model/quantity.ts";
import { sayForce } from "../../trade/force.ts";

type Pair = { readonly die: Die; readonly nest: Nest };

/** Whether the press that the order names takes two at once. */
function sayPress({ press }: Die, both: Quantity): readonly string[] {
  if (!press) return [];
  const has = sayForce(press.rating.newtons, press.rating.unit);
  return both.value > press.rating.newtons
    ? [`TOO MUCH for the press of the order, which is rated for ${has}: don't make this one for it.`]
    : [`The press of the order is rated for ${has}.`];
}

const sayBothUnits = (newtons: number): string =>
  `${sayEstimate(newtons, "kN")} (${sayEstimate(newtons, "US short ton")})`;

/** The load of both together in words, and whether the order's press takes it; a paragraph each. */
export function loadWords({ die, nest }: Pair): readonly string[] {
  const both = pairLoad(die, nest);
  const more = both.value - 2 * die.load.value;
  const close =
    more > 0 ? `, and ${sayBothUnits(more)} where rules of the one stand close to the other's` : "";
  return [
    `Press load of both together about ${sayBothUnits(both.value)}, an estimate, rounded: twice one die's ${sayEstimate(die.load.value, "kN")}${close}.`,
    ...sayPress(die, both),
  ];
}
