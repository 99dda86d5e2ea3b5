import type { Derivation, DerivationStep } from "./derivation.ts";
import type { Origin } from "./quantity.ts";
import { sayFigure, sayValue, type Units } from "./say.ts";

/** Where a value comes from, in words. */
function sayOrigin(origin: Origin): string {
  switch (origin.kind) {
    case "given":
      return `you gave it, ${origin.where}`;
    case "default":
      return `default; ${origin.source}`;
    case "article":
      return origin.source;
    default:
      return origin.source;
  }
}

/** One step: its name and value, then the expression in names and in figures. */
export function sayStep(step: DerivationStep, units: Units): readonly string[] {
  const head = `${step.name} = ${sayValue(step.value, step.kind, units)}`;
  if (step.origin) return [`${head}   (${sayOrigin(step.origin)})`];
  const words = step.parts.map((p) => (typeof p === "string" ? p : p.name)).join("");
  const figures = step.parts
    .map((p) => (typeof p === "string" ? p : sayFigure(p.value, p.kind, units)))
    .join("");
  const source = step.source === undefined ? [] : [`      source: ${step.source}`];
  if (
    words ===
    step.parts
      .filter((p) => typeof p !== "string")
      .map((p) => (typeof p === "string" ? "" : p.name))
      .join("")
  )
    return [`${head}   (the same as ${words})`, ...source];
  return [head, `      = ${words}`, ...(figures === words ? [] : [`      = ${figures}`]), ...source];
}

export type Explained =
  | { readonly ok: true; readonly lines: readonly string[] }
  | { readonly ok: false; readonly message: string };

const sameStep = (a: DerivationStep, b: DerivationStep): boolean => a.name === b.name && a.value === b.value;

/** All sizes of one piece ("" is the whole article): the sizes, what they start from, then step by step. */
export function explainPiece(
  derivations: readonly Derivation[],
  piece: string,
  units: Units,
): readonly string[] {
  const steps = derivations.filter((d) => d.piece === piece).flatMap((d) => d.steps);
  const once = steps.filter((s, i) => steps.findIndex((t) => sameStep(s, t)) === i);
  const say = (some: readonly DerivationStep[]): readonly string[] =>
    some.flatMap((s) => sayStep(s, units)).map((l) => `  ${l}`);
  const results = derivations
    .filter((d) => d.piece === piece)
    .map((d) => `  ${d.result} = ${sayValue(d.value, d.steps.at(-1)?.kind ?? "number", units)}`);
  return [
    "In short",
    ...results,
    "",
    "What it starts from",
    ...say(once.filter((s) => s.origin)),
    "",
    "Step by step",
    ...say(once.filter((s) => !s.origin)),
  ];
}
