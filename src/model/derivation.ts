import type { Origin, Part, Quantity } from "./quantity.ts";

/** One line of an explanation: a named value, the expression behind it, and what it changes with. */
export type DerivationStep = {
  readonly name: string;
  readonly value: number;
  readonly kind: Quantity["kind"];
  readonly parts: readonly (
    | string
    | { readonly name: string; readonly value: number; readonly kind: Quantity["kind"] }
  )[];
  readonly inputs: readonly string[];
  readonly source?: string;
  readonly origin?: Origin;
};

/** How one size came about: the steps in the order they are worked, the result last. */
export type Derivation = {
  readonly piece: string;
  readonly result: string;
  readonly value: number;
  readonly steps: readonly DerivationStep[];
};

const namedIn = (parts: readonly Part[]): readonly Quantity[] => parts.filter((p) => typeof p !== "string");

/** A quantity as one line of an explanation. */
export function stepOf(q: Quantity): DerivationStep {
  return {
    name: q.name ?? "",
    value: q.value,
    kind: q.kind,
    parts: q.parts.map((p) =>
      typeof p === "string" ? p : { name: p.name ?? "", value: p.value, kind: p.kind },
    ),
    inputs: q.inputs.map((i) => i.name ?? ""),
    ...(q.source === undefined ? {} : { source: q.source }),
    ...(q.origin === undefined ? {} : { origin: q.origin }),
  };
}

/** All that a quantity was worked from: values that were given first, then the steps, the quantity itself last. */
export function behind(result: Quantity): readonly Quantity[] {
  const seen = new Set<Quantity>();
  const leaves: Quantity[] = [];
  const worked: Quantity[] = [];
  const visit = (q: Quantity): void => {
    if (seen.has(q)) return;
    seen.add(q);
    for (const input of [...namedIn(q.parts), ...q.inputs]) visit(input);
    (q.origin === undefined ? worked : leaves).push(q);
  };
  visit(result);
  return [...leaves, ...worked];
}

/** Writes out a quantity's chain of named steps: values that were given first, the result last. */
export const derivationOf = (piece: string, result: Quantity): Derivation => ({
  piece,
  result: result.name ?? "",
  value: result.value,
  steps: behind(result).map(stepOf),
});
