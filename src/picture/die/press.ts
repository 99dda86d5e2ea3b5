// The press load in words, each part of it shown, and what to heed at the press.
import { estimated, sayEstimate } from "../../die/about.ts";
import { PRESS_CAUTIONS } from "../../die/checks/index.ts";
import type { Die } from "../../die/die.ts";
import { type DerivationStep, derivationOf } from "../../model/derivation.ts";
import { sayForce } from "../../trade/force.ts";
import { printNumber } from "../../units/index.ts";
import type { Table } from "./table.ts";

/** What the order calls its settings, in words for who has never seen the order. */
const PLAIN: Readonly<Record<string, string>> = {
  "die shear": "shear strength of the leather",
  "die rubber strip": "strip of rubber on each side of the rule",
  "die rubber pressure": "pressure that squeezes the rubber",
  "die small tube extra": "extra share for small tubes",
  "die close rules extra": "extra share for close rules",
};
const nameOf = ({ name }: DerivationStep): string => PLAIN[name] ?? name.replace(/^die /, "");

const FIGURES = 6;
const MOST_DECIMALS = 9;
const UNIT: Partial<Record<DerivationStep["kind"], string>> = {
  length: " mm",
  thickness: " mm",
  area: " mm²",
  stress: " N/mm²",
  force: " N",
};

/**
 * What is taken has six figures that count, in units that fit one another: who works it out again comes to the
 * same load. What is worked out is an estimate and is printed rounded.
 */
function sayStep({ value: exact, kind, origin }: DerivationStep): string {
  const value = origin === undefined ? estimated(exact) : exact;
  const whole = Number(value.toExponential().split("e")[1]) + 1;
  const decimals = Math.min(MOST_DECIMALS, Math.max(0, FIGURES - whole));
  return `${printNumber(value, decimals)}${UNIT[kind] ?? ""}`;
}

/** What stands above the table. */
export const ROUNDED =
  "What is worked out is printed rounded to three figures, and carried on as it is, not rounded.";

/** i, l and o read as 1 and 0; the load has fewer than 20 steps. */
const SIGNS = "abcdefghjkmnpqrstuvwxyz";
/** `a`, `b` … for a step. */
const signOf = (index: number): string => SIGNS[index] ?? `z${index}`;

/** `a × g`: how a step is worked out from others. */
function formulaOf({ parts }: DerivationStep, steps: readonly DerivationStep[]): string {
  const sign = (name: string): string => {
    const index = steps.findIndex((step) => step.name === name);
    return index < 0 ? name : signOf(index);
  };
  return parts.map((p) => (typeof p === "string" ? p : sign(p.name))).join("");
}

const sourceOf = ({ origin, source }: DerivationStep): string =>
  (origin?.kind === "given" ? "the workshop's own figure" : origin?.source) ?? source ?? "";

export type LoadWorked = { readonly table: Table; readonly sources: string };

/**
 * Every part of the load, the load itself last: what is taken on the left, what is worked out on the right,
 * each by a letter, so that the whole takes few lines; and where each figure comes from.
 */
export function loadWorked({ piece, load }: Die): LoadWorked {
  const { steps } = derivationOf(piece.id, load);
  const taken = steps.filter(({ origin }) => origin !== undefined);
  const worked = steps.filter(({ origin }) => origin === undefined);
  const cellsOf = (step: DerivationStep | undefined, formula: boolean): readonly string[] => {
    if (!step) return formula ? ["", "", "", ""] : ["", "", ""];
    const cells = [signOf(steps.indexOf(step)), nameOf(step), sayStep(step)];
    return formula ? [...cells, formulaOf(step, steps)] : cells;
  };
  const count = Math.max(taken.length, worked.length);
  const sources = [...new Set(steps.map(sourceOf))].filter((s) => s !== "");
  const signs = (from: string): string =>
    steps.flatMap((step, i) => (sourceOf(step) === from ? [signOf(i)] : [])).join(", ");
  return {
    table: {
      columns: [
        { title: "" },
        { title: "taken" },
        { title: "value", figures: true },
        { title: "" },
        { title: "worked out" },
        { title: "value", figures: true },
        { title: "from", folds: true },
      ],
      rows: Array.from({ length: count }, (_, i) => [
        ...cellsOf(taken[i], false),
        ...cellsOf(worked[i], true),
      ]),
    },
    sources: `Where it comes from. ${sources.map((s) => `${signs(s)}: ${s}.`).join(" ")}`,
  };
}

/** The load in the units that presses are rated in, and how many dies a stroke takes. */
export function sayLoad({ load, press }: Die): string {
  const units = ["kN", "US short ton", "metric ton"] as const;
  const all = units.map((unit) => sayEstimate(load.value, unit)).join(" = ");
  if (!press) return `About ${all} for one die. The order says nothing of the press: compare its plate.`;
  const { rating, pieces } = press;
  const takes =
    pieces.value >= 1 ? `it takes ${pieces.value} at a stroke` : "that is less than one die needs";
  return `About ${all} for one die. The press is rated for ${sayForce(rating.newtons, rating.unit)}: by the estimate ${takes}.`;
}

export const pressCautions = PRESS_CAUTIONS;
