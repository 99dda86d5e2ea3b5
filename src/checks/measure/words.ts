import type { QuantityKind } from "../../model/quantity.ts";
import { sayValue } from "../../model/say.ts";
import { printNumber, roundMm } from "../../units/index.ts";
import type { Context } from "../rule.ts";

/** A value in words with its unit; what is no number says so. */
export const say = (value: number, kind: QuantityKind, { units }: Context): string =>
  Number.isFinite(value) ? sayValue(value, kind, units) : value === Infinity ? "without end" : "no number";

/** A length in words. */
export const sayLength = (mm: number, context: Context): string => say(mm, "length", context);

/** A length as an order writes it, exact to 0.001 mm. */
export const orderLength = (mm: number): string => `${roundMm(mm)} mm`;

/** A share as a percentage, to a tenth. */
export const sayShare = (share: number): string =>
  Number.isFinite(share) ? `${printNumber(100 * share, 1)} %` : "no number";

/** Mends of faults that no measure of the order mends. */
export const CONTRADICTION = "Don't cut: the drawing contradicts itself. Report it with the order.";
export const BAD_SHEETS = "Don't print: the sheets are laid out wrongly. Report it with the order.";
