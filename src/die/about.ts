// What a maker asks about a die, apart from its drawing.
import { type Derivation, derivationOf } from "../model/derivation.ts";
import type { Quantity } from "../model/quantity.ts";
import { sayValue, type Units } from "../model/say.ts";
import { type ForceUnit, NEWTONS_IN, sayForce } from "../trade/force.ts";
import { printNumber } from "../units/index.ts";
import { sayMoney } from "../units/money.ts";
import { inWords } from "./checks/ruleName.ts";
import type { Die } from "./die.ts";
import type { Price } from "./price.ts";
import { ruleLengths } from "./rulePaths.ts";

/** What is estimated is no surer than this many figures. */
export const ESTIMATE_FIGURES = 3;

/** Rounded to the figures that an estimate is worth. */
export const estimated = (value: number): number => Number(value.toPrecision(ESTIMATE_FIGURES));

/** An estimated force in one unit, rounded: `143 kN` of 142 652 N. */
export const sayEstimate = (newtons: number, unit: ForceUnit): string =>
  sayForce(estimated(newtons / NEWTONS_IN[unit]) * NEWTONS_IN[unit], unit);

/** How the press load, and the pieces for each stroke, came about; with `both`, also the load of a pair. */
export const dieDerivations = ({ load, press }: Die, name: string, both?: Quantity): readonly Derivation[] =>
  [load, ...(press ? [press.pieces] : []), ...(both ? [both] : [])].map((q) => derivationOf(name, q));

/** `rule, tubes and board for EUR 32.34`: an estimate by the order's prices. */
export const sayPrice = ({ lines, minor, currency }: Price): string =>
  `${inWords(lines.map(({ what }) => what))} for ${sayMoney(minor, currency)}`;

/** Rule, load, pieces for each stroke and price in one line. */
export function sayDie({ rules, load, press, price }: Die, units: Units): string {
  const { rule, tubes } = ruleLengths(rules);
  const count = rules.filter(({ kind }) => kind === "tube").length;
  return [
    `${sayValue(rule, "length", units)} of rule`,
    ...(tubes > 0 ? [`${count} ${count === 1 ? "tube" : "tubes"}`] : []),
    `press load about ${sayEstimate(load.value, "kN")} (${sayEstimate(load.value, "US short ton")})`,
    ...(press ? [`${printNumber(press.pieces.value, 0)} for each stroke`] : []),
    ...(price ? [sayPrice(price)] : []),
  ].join(", ");
}

/** Load and price of two on one board in one line. */
export const sayPair = ({ load, price }: { readonly load: Quantity; readonly price?: Price }): string =>
  [
    `press load about ${sayEstimate(load.value, "kN")} (${sayEstimate(load.value, "US short ton")}) for both together`,
    ...(price ? [sayPrice(price)] : []),
  ].join(", ");
