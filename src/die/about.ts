// What a maker asks about a die, apart from its drawing.
import { type Derivation, derivationOf } from "../model/derivation.ts";
import { sayValue, type Units } from "../model/say.ts";
import { sayForce } from "../trade/force.ts";
import { printNumber } from "../units/index.ts";
import type { Die } from "./die.ts";
import { ruleLengths } from "./rulePaths.ts";

/** How the press load, and the pieces for each stroke, came about. */
export const dieDerivations = ({ load, press }: Die, name: string): readonly Derivation[] =>
  [load, ...(press ? [press.pieces] : [])].map((q) => derivationOf(name, q));

/** Rule, load, pieces for each stroke and price in one line. */
export function sayDie({ rules, load, press, price }: Die, units: Units): string {
  const { rule, tubes } = ruleLengths(rules);
  const count = rules.filter(({ kind }) => kind === "tube").length;
  return [
    `${sayValue(rule, "length", units)} of rule`,
    ...(tubes > 0 ? [`${count} ${count === 1 ? "tube" : "tubes"}`] : []),
    `press load about ${sayForce(load.value, "kN")} (${sayForce(load.value, "US short ton")})`,
    ...(press ? [`${printNumber(press.pieces.value, 0)} for each stroke`] : []),
    ...(price === undefined ? [] : [`rule for ${printNumber(price, 2)}`]),
  ].join(", ");
}
