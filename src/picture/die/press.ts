// The press load in words, each part of it shown, and what to heed at the press.
import { PRESS_CAUTIONS } from "../../die/checks/index.ts";
import type { Die } from "../../die/die.ts";
import { type DerivationStep, derivationOf } from "../../model/derivation.ts";
import { sayFigure, sayValue, type Units } from "../../model/say.ts";
import { sayForce } from "../../trade/force.ts";
import { printNumber } from "../../units/index.ts";
import type { Table } from "./table.ts";

/** Where a step comes from: its expression, or the place that its value was given or taken from. */
function sayFrom({ parts, origin, source }: DerivationStep): string {
  if (origin) return origin.kind === "given" ? `the order: ${origin.where}` : origin.source;
  const text = parts.map((p) => (typeof p === "string" ? p : p.name)).join("");
  return source === undefined ? text : `${text} (${source})`;
}

/** A figure too small for its kind's usual decimals keeps two that count. */
function sayStep({ value, kind }: DerivationStep, units: Units): string {
  if (kind === "length") return sayFigure(value, kind, "mm");
  if (kind === "number") return printNumber(value, 1);
  return sayValue(value, kind, kind === "thickness" ? "mm" : units);
}

/** Every part of the load, the load itself last. */
export function loadTable(die: Die, units: Units): Table {
  const { steps } = derivationOf(die.piece.id, die.load);
  return {
    columns: [{ title: "part" }, { title: "value", figures: true }, { title: "from", folds: true }],
    rows: steps.map((step) => [step.name, sayStep(step, units), sayFrom(step)]),
    bold: [steps.length - 1],
  };
}

/** The load in the units that presses are rated in, and how many dies a stroke takes. */
export function sayLoad({ load, press }: Die): string {
  const units = ["kN", "US short ton", "metric ton"] as const;
  const all = units.map((unit) => sayForce(load.value, unit)).join(" = ");
  if (!press) return `About ${all} for one die. The order says nothing of the press: compare its plate.`;
  const { rating, pieces } = press;
  const takes =
    pieces.value >= 1 ? `it takes ${pieces.value} at a stroke` : "that is less than one die needs";
  return `About ${all} for one die. The press is rated for ${sayForce(rating.newtons, rating.unit)}: by the estimate ${takes}.`;
}

export const pressCautions = PRESS_CAUTIONS;
